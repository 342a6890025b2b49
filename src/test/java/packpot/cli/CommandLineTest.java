package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Help, version, completion, and what is said when the program is used wrongly. */
class CommandLineTest {

    @ParameterizedTest
    @ValueSource(strings = {"plan", "targets", "foods", "model", "spread"})
    void everyCommandHasHelpWithAnExample(String command) {
        Run run = Run.of(command, "--help");
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("Usage: packpot " + command, "Example:", "  packpot " + command + " ");
        assertThat(run.lines()).allMatch(line -> line.length() <= 80);
        assertThat(run.err()).isEmpty();
    }

    @Test
    void theProgramHasHelpWithAnExampleAndItsCommands() {
        Run run = Run.of("--help");
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("Example:", "plan", "targets", "foods", "model", "not a veterinarian");
        assertThat(run.lines()).allMatch(line -> line.length() <= 80);
    }

    @Test
    void theHelpOfPlanNamesEveryExitCode() {
        String help = Run.of("plan", "--help").out();
        for (int code = 0; code <= 7; code++) {
            assertThat(help).containsPattern("(?m)^ +" + code + " +\\S");
        }
    }

    @Test
    void theVersionIsTheBuildsOwn() {
        Run run = Run.of("--version");
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).containsPattern("packpot \\d+\\.\\d+").contains("format 1");
    }

    @Test
    void thereIsACompletionScript() {
        Run run = Run.of("generate-completion");
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).startsWith("#!").contains("complete", "packpot", "--time-limit");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "plan",
                "cook",
                "plan a.json --colour",
                "plan a.json --time-limit soon",
                "targets a.json b.json"
            })
    void wrongUseEndsWithTwoAndSaysWhy(String arguments) {
        Run run = Run.of(arguments.isEmpty() ? new String[0] : arguments.split(" "));
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).isNotBlank().doesNotContain("\tat ");
    }

    @ParameterizedTest
    @CsvSource({"--time-limit, 0", "--time-limit, -3", "--time-limit, NaN", "--gap, -1", "--gap, 101"})
    void limitsOutOfRangeAreWrongUse(String option, String value) {
        Run run = Run.of("plan", "scenarios/three-adults.json", option + "=" + value);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err().lines().toList())
                .last()
                .asString()
                .startsWith(option + " is from ")
                .endsWith("read " + value);
    }

    @Test
    void aMisspeltCommandIsAnsweredWithTheNearest() {
        assertThat(Run.of("pln", "scenarios/three-adults.json").err()).contains("plan");
    }

    @ParameterizedTest
    @ValueSource(strings = {"plan", "targets", "model"})
    void aScenarioThatIsNotThereEndsWithThree(String command, @TempDir Path folder) {
        Run run = Run.of(command, folder.resolve("none.json").toString());
        assertThat(run.exitCode()).isEqualTo(3);
        assertThat(run.out()).isEmpty();
        assertThat(run.err())
                .contains("none.json", "no such file", "Nothing was written")
                .doesNotContain("\tat ");
    }

    @Test
    void foodsAreFoundByTheirWords() {
        Run run = Run.of("foods", "turkey", "ground");
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("ground turkey, 93 % lean");
        assertThat(run.lines()).allMatch(line -> line.length() <= 80);
    }
}
