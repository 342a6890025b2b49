package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.Demo;

/** Households at the ends of what may be asked, and a machine at its end. What takes long is run with the long runner. */
class ExtremesTest {
    private static final String CHECKED = "Checked: every printed amount meets every minimum and maximum";
    private static final String[] SOON = {"--gap", "5", "--time-limit", "20"};

    @TempDir
    private Path folder;

    /** The smallest demo, changed, its kitchen without limits. */
    private String scenario(Consumer<ObjectNode> change) throws IOException {
        ObjectNode scenario = (ObjectNode) Mutations.tree(Mutations.bytes(Demo.file("tiny-freezer")));
        scenario.putObject("kitchen").put("days", 7).put("bag", "1 l");
        change.accept(scenario);
        Path file = folder.resolve("scenario.json");
        Files.writeString(file, scenario.toString());
        return file.toString();
    }

    private static Run plan(String file) {
        return Run.of("plan", file, SOON[0], SOON[1], SOON[2], SOON[3]);
    }

    @Test
    void aDogOfFourHundredGramsNeedsLittle() throws IOException {
        Run run = Run.of("targets", scenario(scenario -> firstDog(scenario).put("weight", "0.4 kg")));
        // 110 kcal x 0.4^0.75
        assertThat(run.out()).contains("Clover, 0.4 kg", "55 kcal a day");
    }

    private static ObjectNode firstDog(ObjectNode scenario) {
        return (ObjectNode) scenario.at("/dogs/0");
    }

    private static Consumer<ObjectNode> dogs(int count) {
        return scenario -> {
            ObjectNode one = firstDog(scenario).deepCopy();
            ArrayNode dogs = scenario.putArray("dogs");
            IntStream.range(0, count)
                    .forEach(i ->
                            dogs.add(one.deepCopy().put("name", "Dog " + i).put("weight", 3 + i * 7 % 60 + " kg")));
        };
    }

    private static Consumer<ObjectNode> foods(int count) {
        return scenario -> IntStream.range(0, count).forEach(i -> {
            ObjectNode own = scenario.withArray("/ownFoods").addObject();
            own.put("name", "greens " + i).put("group", "vegetable").put("per", "100 g");
            own.putObject("holds").put("protein_g", 2 + i % 5 * 0.1).put("fat_g", 0.2);
            scenario.withArray("/pantry")
                    .addObject()
                    .put("food", "greens " + i)
                    .put("price", String.format(Locale.ROOT, "€%.2f/kg", 1 + i % 90 / 100.0));
        });
    }

    @Test
    void aHouseholdWithoutDogsIsAskedForOne() throws IOException {
        Run run = plan(scenario(dogs(0)));
        assertThat(run.exitCode()).isEqualTo(ExitCode.SCENARIO_FAULTS);
        assertThat(run.err()).contains("dogs: no dog is given");
    }

    @ParameterizedTest
    @ValueSource(strings = {"€0", "€1000000000"})
    void pricesAtBothEndsArePlanned(String price) throws IOException {
        Run run = plan(scenario(scenario -> scenario.path("pantry").forEach(item -> {
            if (item.has("price")) {
                ((ObjectNode) item).put("price", price);
            }
        })));
        assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.DONE);
        assertThat(run.out()).contains(CHECKED);
    }

    @Test
    void aGiantIsPlanned() throws IOException {
        Run run = plan(scenario(scenario -> firstDog(scenario).put("weight", "120 kg")));
        assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.DONE);
        assertThat(run.out()).contains(CHECKED);
    }

    /** A tablet may be too much for so small a dog alone: then that is said, with figures. */
    @Test
    @EnabledIfSystemProperty(named = "fuzz.seconds", matches = ".+")
    void aDogOfFourHundredGramsIsPlannedOrToldWhyNot() throws IOException {
        Run run = plan(scenario(scenario -> firstDog(dogs(1, scenario)).put("weight", "0.4 kg")));
        assertThat(run.exitCode()).isIn(ExitCode.DONE, ExitCode.NO_PLAN);
        assertThat(run.out()).containsAnyOf(CHECKED, "There is no plan");
    }

    private static ObjectNode dogs(int count, ObjectNode scenario) {
        dogs(count).accept(scenario);
        return scenario;
    }

    @Test
    void twoHundredDogsAndAThousandFoodsAreRead() throws IOException {
        Run dogs = Run.of("targets", scenario(dogs(200)));
        assertThat(dogs.exitCode()).isEqualTo(ExitCode.DONE);
        assertThat(dogs.out()).contains("Dog 199, 16.0 kg");
        assertThat(Run.of("targets", scenario(foods(1000))).exitCode()).isEqualTo(ExitCode.DONE);
    }

    @Test
    @EnabledIfSystemProperty(named = "fuzz.seconds", matches = ".+")
    void twoHundredDogsAreAnsweredInWords() throws IOException {
        Run run = plan(scenario(dogs(200)));
        assertThat(run.exitCode()).isIn(ExitCode.DONE, ExitCode.NO_PLAN, ExitCode.NO_PLAN_IN_TIME);
        assertThat(run.out() + run.err())
                .containsAnyOf(CHECKED, "There is no plan", "Give more time with --time-limit");
    }

    @Test
    @EnabledIfSystemProperty(named = "fuzz.seconds", matches = ".+")
    void aThousandFoodsArePlanned() throws IOException {
        Run run = plan(scenario(foods(1000)));
        assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.DONE);
        assertThat(run.out()).contains(CHECKED);
    }

    /** A process of its own, which may fail for want of memory. */
    private Process program(Path told, List<String> java, String... arguments) throws IOException {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:+UseSerialGC"));
        command.addAll(java);
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), "packpot.cli.Main"));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(told.toFile())
                .start();
    }

    private List<String> names() throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.map(each -> each.getFileName().toString()).sorted().toList();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"plan -Xmx5m", "sheets -Xmx24m"})
    void memoryThatIsFullIsSaidAndNothingIsHalfWritten(String which) throws Exception {
        String[] parts = which.split(" ");
        Path told = folder.resolve("told");
        Path out = folder.resolve("out.pdf");
        String file = Demo.file("tiny-freezer").toString();
        Process process = parts[0].equals("plan")
                ? program(told, List.of(parts[1]), "plan", file, "--out", out.toString())
                : program(told, List.of(parts[1]), "sheets", file, "--no-stand-ins", "--to", out.toString());
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isEqualTo(ExitCode.FAULT_OF_PROGRAM);
        assertThat(Files.readString(told))
                .contains("The memory that Java may use is full")
                .doesNotContain("\tat ");
        assertThat(names()).containsExactly("told");
    }

    @Test
    void aSystemWithoutTheSolverIsTold() throws Exception {
        Path told = folder.resolve("told");
        Process process = program(
                told,
                List.of("-Dos.arch=none"),
                "drivers",
                Demo.file("tiny-freezer").toString());
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isEqualTo(ExitCode.FAULT_OF_PROGRAM);
        assertThat(Files.readString(told)).contains("The solver failed: its native code", "none", "build it here");
    }

    /** As the system does when memory is short: nobody can say a word then, but files are whole or not there. */
    @Test
    void aProgramKilledInItsSearchLeavesNoFile() throws Exception {
        Path told = folder.resolve("told");
        Process process = program(
                told,
                List.of(),
                "plan",
                scenario(dogs(60)),
                "--out",
                folder.resolve("out.txt").toString());
        assertThat(process.waitFor(3, TimeUnit.SECONDS)).isFalse();
        process.destroyForcibly().waitFor();
        assertThat(names()).containsExactly("scenario.json", "told");
    }
}
