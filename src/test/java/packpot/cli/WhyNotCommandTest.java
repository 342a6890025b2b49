package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import org.junit.jupiter.api.Test;

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
}
