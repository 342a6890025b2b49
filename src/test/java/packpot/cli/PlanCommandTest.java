package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.Demo;
import packpot.report.TextReport;

/** The command that plans, from its arguments to its output and exit code. */
class PlanCommandTest {
    private static final JsonMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();
    private static final String QUICK = Demo.file("tiny-freezer").toString();

    @TempDir
    private Path folder;

    static Stream<Demo.Planned> demos() {
        return Demo.all();
    }

    @Test
    void aGoodPlanEndsWithZero() {
        Run run = Run.of("plan", QUICK);
        assertThat(run.exitCode()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).contains("Checked: every printed amount meets every minimum and maximum");
    }

    @ParameterizedTest
    @MethodSource("demos")
    void noLineIsWiderThanATerminal(Demo.Planned demo) {
        String text =
                TextReport.of(demo.plan(), demo.verdict(), demo.household().units());
        assertThat(text.lines().filter(line -> line.length() > 80)).isEmpty();
        assertThat(text).contains("not a veterinarian", demo.household().name());
        demo.household().dogs().forEach(dog -> assertThat(text).contains(dog.name()));
    }

    @Test
    void jsonIsPureJson() throws JsonProcessingException {
        Run run = Run.of("plan", QUICK, "--json");
        assertThat(run.exitCode()).isZero();
        assertThat(run.err()).isEmpty();
        JsonNode root = JSON.readTree(run.out());
        assertThat(root.path("auditPassed").booleanValue()).isTrue();
        assertThat(root.path("plan").path("dogs").size()).isEqualTo(2);
    }

    @Test
    void outWritesTheWholeFileAndNothingElse() throws IOException {
        Path file = folder.resolve("plan.json");
        Run run = Run.of("plan", QUICK, "--json", "--out", file.toString());
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).isEmpty();
        assertThat(JSON.readTree(Files.readString(file)).path("plan").isObject())
                .isTrue();
        assertThat(inFolder()).containsExactly("plan.json");
    }

    @Test
    void outDoesNotOverwriteUnlessAsked() throws IOException {
        Path file = Files.writeString(folder.resolve("mine.txt"), "my own notes");
        Run refused = Run.of("targets", QUICK, "--out", file.toString());
        assertThat(refused.exitCode()).isEqualTo(7);
        assertThat(refused.err()).contains("mine.txt", "exists already", "--overwrite");
        assertThat(file).hasContent("my own notes");
        assertThat(Run.of("targets", QUICK, "--out", file.toString(), "--overwrite")
                        .exitCode())
                .isZero();
        assertThat(Files.readString(file)).contains("Clover");
        assertThat(inFolder()).containsExactly("mine.txt");
    }

    @Test
    void outIntoAFolderThatIsNotThereWritesNothing() throws IOException {
        Run run = Run.of(
                "targets",
                QUICK,
                "--out",
                folder.resolve("none").resolve("plan.txt").toString());
        assertThat(run.exitCode()).isEqualTo(7);
        assertThat(run.err()).contains("no folder").doesNotContain("\tat ");
        assertThat(inFolder()).isEmpty();
        assertThat(Run.of("targets", QUICK, "--out", folder.toString()).exitCode())
                .isEqualTo(7);
    }

    @Test
    void aFaultyScenarioEndsWithThreeAndWritesNothing() throws IOException {
        Path scenario = Files.writeString(
                folder.resolve("bad.json"), "{\"packpot\": 1, \"dogs\": [{\"name\": \"Ash\"}], \"pantry\": []}");
        Run run = Run.of(
                "plan", scenario.toString(), "--out", folder.resolve("plan.txt").toString());
        assertThat(run.exitCode()).isEqualTo(3);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("bad.json", "weight", "pantry").doesNotContain("\tat ");
        assertThat(inFolder()).containsExactly("bad.json");
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void withoutAnySourceOfZincThereIsNoPlanAndZincIsNamed(boolean json) throws IOException {
        Path scenario = Files.writeString(
                folder.resolve("no-zinc.json"),
                Demo.text(Demo.file("tiny-freezer")).replaceAll("(?m)^.*zinc gluconate.*\\R", ""));
        Run run = json ? Run.of("plan", scenario.toString(), "--json") : Run.of("plan", scenario.toString());
        assertThat(run.exitCode()).isEqualTo(4);
        assertThat(run.out()).contains("zinc at least").doesNotContain("copper", "iodine");
        if (json) {
            JsonNode root = JSON.readTree(run.out());
            assertThat(root.path("plan").isNull()).isTrue();
            assertThat(root.path("clashes").size()).isPositive();
        } else {
            assertThat(run.lines()).allMatch(line -> line.length() <= 80);
        }
    }

    private List<String> inFolder() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void aFileThatCannotBeWrittenIsToldBeforeTheScenarioIsRead() throws IOException {
        Path file = Files.writeString(folder.resolve("mine.txt"), "my own notes");
        for (String command : List.of("plan", "check", "losses", "drivers", "alternatives", "why-not", "calendar")) {
            Run refused = Run.of(command, "no-such-scenario.json", "--out", file.toString());
            assertThat(refused.exitCode()).as(command).isEqualTo(7);
        }
    }
}
