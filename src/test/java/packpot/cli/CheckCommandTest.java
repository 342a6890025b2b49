package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The command that checks a recipe, from its arguments to its output and exit code. */
class CheckCommandTest {
    private static final JsonMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();
    private static final String DOGS = "scenarios/three-adults.json";

    @TempDir
    private Path folder;

    private static String recipe(String name) {
        return "scenarios/recipes/" + name + ".json";
    }

    /** All that the command tells of a recipe for the three adults. */
    private static Run checked(String name) {
        String old = name.equals("meat-and-rice") ? "turkey" : "beef";
        return Run.once(
                "check",
                DOGS,
                "--recipe",
                recipe(name),
                "--swap",
                old + "=chicken thigh, skinless",
                "--swap-by",
                "energy");
    }

    @ParameterizedTest
    @ValueSource(strings = {"meat-and-rice", "meat-vegetables-pulses", "meat-and-potato"})
    void aRecipeIsCheckedMendedAndSwappedInEightyColumns(String name) {
        Run run = checked(name);
        assertThat(run.exitCode()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.lines()).noneMatch(line -> line.length() > 80);
        assertThat(run.out())
                .contains(
                        "It is NOT complete",
                        "SHORT, in % of the minimum",
                        "Swap, by equal energy",
                        "not a veterinarian")
                .contains("Mend 1: additions only", "Mend 2: the smallest change", "Mend 3: the cheapest")
                .doesNotContain("NaN", "Infinity", "null");
    }

    @Test
    void jsonHoldsTheVerdictTheSwapAndTheMends() throws JsonProcessingException {
        Run run = Run.of(
                "check",
                DOGS,
                "--recipe",
                recipe("meat-vegetables-pulses"),
                "--swap",
                "beef=chicken thigh, skinless",
                "--json");
        JsonNode root = JSON.readTree(run.out());
        assertThat(root.path("packpotRecipeCheck").intValue()).isEqualTo(1);
        assertThat(root.path("good").booleanValue()).isFalse();
        assertThat(root.at("/verdict/dogs")).hasSize(3);
        assertThat(root.at("/swap/exchanges/0/to").textValue()).isEqualTo("chicken thigh, skinless");
        assertThat(root.path("mends")).hasSize(3);
        assertThat(root.path("mends"))
                .anySatisfy(
                        mend -> assertThat(mend.path("found").booleanValue()).isTrue());
        for (JsonNode mend : root.path("mends")) {
            if (mend.path("found").booleanValue()) {
                assertThat(mend.path("auditPassed").booleanValue()).isTrue();
                assertThat(mend.at("/plan/pot")).isNotEmpty();
            } else {
                assertThat(mend.path("reason").textValue()).isNotBlank();
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"three-adults", "tiny-freezer"})
    void theSmallestChangeAsPrintedAndTypedBackIsComplete(String dogs) throws IOException {
        String scenario = "scenarios/" + dogs + ".json";
        Run check = scenario.equals(DOGS)
                ? checked("meat-and-rice")
                : Run.of("check", scenario, "--recipe", recipe("meat-and-rice"));
        assertThat(check.lines()).noneMatch(line -> line.matches(".* 0 m?g +new .*"));
        Path file = folder.resolve(dogs + ".json");
        Files.writeString(file, TypedBack.recipe(check.lines(), 2, 7));
        Run again = Run.of("check", scenario, "--recipe", file.toString(), "--no-mends");
        assertThat(again.err()).isEmpty();
        assertThat(again.out()).contains("It is good as it stands").doesNotContain("SHORT", "OVER");
    }

    @Test
    void aMendSaysWhatToMindOfItsSupplementsAndIsShownInFull() {
        Run check = checked("meat-and-rice");
        String[] halves = check.out().split("Mend 2: the smallest change", 2);
        String mend = halves[1].split("\nMend 3", 2)[0];
        assertThat(mend)
                .contains("Mind: vitamin d3 drops: Easy to overdose: count every drop.")
                .contains("nearest to a limit: ");
        Run shown = Run.of("check", DOGS, "--recipe", recipe("meat-and-rice"), "--show", "2");
        assertThat(shown.exitCode()).isZero();
        assertThat(shown.out())
                .contains("Mend 2: the smallest change of the amounts", "Shopping list", "per 1000 kcal", "Cautions")
                .doesNotContain("Cheapest", "too dear");
    }

    @Test
    void aMendThatIsNotThereCannotBeShown() throws IOException {
        Path dogs = Files.writeString(
                folder.resolve("dogs.json"),
                Files.readString(Path.of(DOGS))
                        .replace("\"name\": \"Moss\",", "\"name\": \"Moss\", \"avoid\": [\"turkey\"],"));
        Run run = Run.of("check", dogs.toString(), "--recipe", recipe("meat-and-rice"), "--show", "3");
        assertThat(run.exitCode()).isEqualTo(4);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("There is no such mend to show: Moss must not get ground turkey");
    }

    @Test
    void dogsThatGetTheSameShareATable() {
        Run run = Run.of("check", DOGS, "--recipe", recipe("meat-and-rice"), "--no-mends");
        assertThat(run.out().split("per 1000 kcal +minimum", -1)).hasSize(2);
    }

    @Test
    void aCheckAloneLooksForNoMend() {
        Run run = Run.of("check", DOGS, "--recipe", recipe("meat-and-rice"), "--no-mends");
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).doesNotContain("Mend 1");
    }

    @Test
    void faultsOfARecipeEndWithThree() throws IOException {
        Path file = folder.resolve("bad.json");
        Files.writeString(
                file, "{\"foods\": [{\"food\": \"raisins\", \"amount\": \"1 cup\"}, {\"food\": \"carots\"}]}");
        Run run = Run.of("check", DOGS, "--recipe", file.toString());
        assertThat(run.exitCode()).isEqualTo(3);
        assertThat(run.out()).isEmpty();
        assertThat(run.err())
                .contains("bad.json has 2 faults:", "foods[0].food: \"raisins\" is refused", "near it: \"carrots\"");
    }

    @Test
    void aSwapOfAFoodThatIsNotThereEndsWithThreeAndTheNearest() {
        Run run = Run.of("check", DOGS, "--recipe", recipe("meat-and-rice"), "--swap", "ground turkie=egg, whole");
        assertThat(run.exitCode()).isEqualTo(3);
        assertThat(run.err()).contains("is not in the recipe", "near it: \"ground turkey, 93 % lean\"");
    }

    @ParameterizedTest
    @ValueSource(strings = {"--band=150", "--moved=-1", "--time-limit=0", "--swap-by=colour", "--show=4"})
    void aWrongOptionEndsWithTwo(String option) {
        Run run = Run.of("check", DOGS, "--recipe", recipe("meat-and-rice"), option);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
    }
}
