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

    @ParameterizedTest
    @ValueSource(strings = {"meat-and-rice", "meat-vegetables-pulses", "meat-and-potato"})
    void aRecipeIsCheckedMendedAndSwappedInEightyColumns(String name) {
        String old = name.equals("meat-and-rice") ? "turkey" : "beef";
        Run run = Run.of(
                "check",
                DOGS,
                "--recipe",
                recipe(name),
                "--swap",
                old + "=chicken thigh, skinless",
                "--swap-by",
                "energy");
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
    @ValueSource(strings = {"--band=150", "--moved=-1", "--time-limit=0", "--swap-by=colour"})
    void aWrongOptionEndsWithTwo(String option) {
        Run run = Run.of("check", DOGS, "--recipe", recipe("meat-and-rice"), option);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
    }
}
