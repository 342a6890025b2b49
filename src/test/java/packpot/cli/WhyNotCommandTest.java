package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WhyNotCommandTest {
    private static final String FOLDER = "src/test/resources/why-not/";

    @Test
    void planExplainsInShortAndSaysHowToGetMore() {
        Run ended = Run.of("plan", FOLDER + "nutrient-minimum.json");
        assertThat(ended.exitCode()).isEqualTo(ExitCode.NO_PLAN);
        assertThat(ended.out())
                .contains("Clash.", "iodine at least 250 ug per 1000 kcal")
                .contains("packpot why-not " + FOLDER + "nutrient-minimum.json");
        assertThat(ended.out().lines()).allMatch(line -> line.length() <= 80);
    }

    @Test
    void whyNotExplainsForPeople() {
        Run ended = Run.of("why-not", FOLDER + "must-use.json", "--time-limit", "120");
        assertThat(ended.exitCode()).isEqualTo(ExitCode.NO_PLAN);
        assertThat(ended.out())
                .contains("use at least 6,000 g of carrots", "can be reached", "What would mend it", "at the till")
                .contains("not a veterinarian");
        assertThat(ended.out().lines()).allMatch(line -> line.length() <= 80);
    }

    @Test
    void whyNotExplainsForPrograms() throws Exception {
        Run ended = Run.of("why-not", FOLDER + "nutrient-minimum.json", "--json", "--time-limit", "120");
        assertThat(ended.exitCode()).isEqualTo(ExitCode.NO_PLAN);
        JsonNode root = new JsonMapper().readTree(ended.out());
        assertThat(root.path("hasPlan").booleanValue()).isFalse();
        JsonNode wish = root.path("clashes").path(0).path("wishes").path(0);
        assertThat(wish.path("kind").textValue()).isEqualTo("NUTRIENT_MINIMUM");
        assertThat(wish.path("asked").doubleValue())
                .isGreaterThan(wish.path("reached").doubleValue());
        assertThat(root.path("mends").path(0).path("plans").path(0).path("pot").size())
                .isPositive();
    }

    @Test
    void whyNotExplainsAScenarioAfterAChange() {
        Run ended = Run.of("why-not", FOLDER + "has-a-plan.json", "--change", "budget: $1");
        assertThat(ended.exitCode()).isEqualTo(ExitCode.NO_PLAN);
        assertThat(ended.out()).contains("spend at most $1.00", "spend up to");
        Run has = Run.of("why-not", FOLDER + "has-a-plan.json", "--change", "days: 6");
        assertThat(has.exitCode()).isEqualTo(ExitCode.DONE);
        assertThat(has.out()).startsWith("There is a plan for Moss and Pip after what changes");
    }

    @Test
    void whyNotOfAScenarioWithAPlanSaysSo() {
        Run ended = Run.of("why-not", FOLDER + "has-a-plan.json");
        assertThat(ended.exitCode()).isEqualTo(ExitCode.DONE);
        assertThat(ended.out()).startsWith("There is a plan for Moss and Pip");
    }

    @Test
    void aTimeLimitOfNothingIsRefused() {
        assertThat(Run.of("why-not", FOLDER + "has-a-plan.json", "--time-limit", "0")
                        .exitCode())
                .isEqualTo(ExitCode.WRONG_USE);
    }

    @Test
    void aMendIsTakenOverIntoAFileThatHasAPlan(@TempDir Path folder) throws Exception {
        Path mended = folder.resolve("mended.json");
        Run ended = Run.of("why-not", FOLDER + "freezer.json", "--apply", "1", "--to", mended.toString());
        assertThat(ended.exitCode()).isEqualTo(ExitCode.DONE);
        assertThat(ended.out()).contains("1. ", "--apply 1 --to FILE");
        assertThat(ended.err()).contains("Mend 1, ", "packpot plan " + mended);
        assertThat(Run.of("plan", mended.toString()).exitCode()).isEqualTo(ExitCode.DONE);
        Run again = Run.of("why-not", FOLDER + "freezer.json", "--apply", "1", "--to", mended.toString());
        assertThat(again.exitCode()).isEqualTo(ExitCode.NOT_WRITTEN);
        assertThat(again.err()).contains("exists already");
    }

    @Test
    void whatChangesAreAskedForStandsInTheFileToo(@TempDir Path folder) throws Exception {
        Path mended = folder.resolve("mended.json");
        Run ended = Run.of(
                "why-not",
                FOLDER + "has-a-plan.json",
                "--change",
                "budget: $1",
                "--change",
                "days: 6",
                "--apply",
                "1",
                "--to",
                mended.toString());
        assertThat(ended.exitCode()).isEqualTo(ExitCode.DONE);
        JsonNode file = new JsonMapper().readTree(mended.toFile());
        assertThat(file.path("kitchen").path("days").intValue()).isEqualTo(6);
        assertThat(file.path("budget").isTextual()).isTrue();
    }

    @Test
    void aMendThatIsNoneOfTheListOrNoChangeOfOneScenarioIsNotWritten(@TempDir Path folder) throws Exception {
        Path mended = folder.resolve("mended.json");
        Run list = Run.of("why-not", FOLDER + "cannot-share.json", "--json");
        JsonNode mends = new JsonMapper().readTree(list.out()).path("mends");
        int pots = 0;
        for (JsonNode mend : mends) {
            pots = mend.path("kind").asText().equals("SECOND_POT")
                    ? mend.path("number").intValue()
                    : pots;
        }
        assertThat(pots).isPositive();
        Run none = Run.of("why-not", FOLDER + "cannot-share.json", "--apply", "" + pots, "--to", mended.toString());
        assertThat(none.exitCode()).isEqualTo(ExitCode.WRONG_USE);
        assertThat(none.err()).contains("is more than one scenario can say");
        Run beyond = Run.of("why-not", FOLDER + "cannot-share.json", "--apply", "99", "--to", mended.toString());
        assertThat(beyond.exitCode()).isEqualTo(ExitCode.WRONG_USE);
        assertThat(beyond.err()).contains("There is no mend 99: expected --apply 1 to ");
        assertThat(mended).doesNotExist();
    }

    @Test
    void wrongUseOfApplyIsTold(@TempDir Path folder) {
        Path mended = folder.resolve("mended.json");
        String scenario = FOLDER + "has-a-plan.json";
        Run needless = Run.of("why-not", scenario, "--apply", "1", "--to", mended.toString());
        assertThat(needless.exitCode()).isEqualTo(ExitCode.WRONG_USE);
        assertThat(needless.err()).contains("There is a plan without any mend");
        assertThat(mended).doesNotExist();
        Run nowhere = Run.of("why-not", scenario, "--apply", "1");
        assertThat(nowhere.exitCode()).isEqualTo(ExitCode.WRONG_USE);
        assertThat(nowhere.err()).contains("--apply and --to go together");
        Run zero = Run.of("why-not", scenario, "--apply", "0", "--to", mended.toString());
        assertThat(zero.exitCode()).isEqualTo(ExitCode.WRONG_USE);
    }
}
