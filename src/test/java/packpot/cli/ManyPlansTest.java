package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import packpot.Demo;
import packpot.audit.Finding;
import packpot.audit.Verdict;
import packpot.report.PlansReport;
import packpot.solver.LinearModel;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import packpot.solver.SolverException;

/** Several scenarios in one run of the command that plans. */
class ManyPlansTest {
    private static final JsonMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();
    private static final String GOOD = Demo.file("tiny-freezer").toString();
    private static final SolveLimits LIMITS = new SolveLimits(20, 0.001);

    @TempDir
    private Path folder;

    private String faulty;
    private String withoutPlan;

    @BeforeEach
    void write() throws IOException {
        faulty = Files.writeString(
                        folder.resolve("bad.json"), "{\"packpot\": 1, \"dogs\": [{\"name\": \"Ash\"}], \"pantry\": []}")
                .toString();
        withoutPlan = Files.writeString(
                        folder.resolve("no-zinc.json"),
                        Demo.text(Path.of(GOOD)).replaceAll("(?m)^.*zinc gluconate.*\\R", ""))
                .toString();
    }

    @Test
    void eachFileHasItsLineAndTheWorstItsExitCode() {
        Run run = Run.of("plan", faulty, GOOD, withoutPlan, "none.json");
        assertThat(run.exitCode()).isEqualTo(ExitCode.SCENARIO_FAULTS);
        assertThat(run.lines()).hasSize(7).allMatch(line -> line.length() <= 80);
        assertThat(run.lines().get(0)).matches("file +household +a day  proved to");
        assertThat(run.lines().get(1)).contains("bad.json  3 faults; dogs[0].");
        assertThat(run.lines().get(2)).matches("scenarios/tiny-freezer.json +Two dogs and a .*€3\\.8\\d +0\\.\\d\\d %");
        assertThat(run.lines().get(3)).contains("no-zinc.json  no plan: ", "zinc at least");
        assertThat(run.lines().get(4)).startsWith("none.json ").contains("no such file");
        assertThat(run.lines().get(5)).isEmpty();
        assertThat(run.lines().get(6)).isEqualTo("4 scenarios: 1 planned, 1 without a plan, 2 with faults.");
        assertThat(run.err()).contains("plan it alone").doesNotContain("\tat ");
    }

    @Test
    void programsGetADocumentALineAsOfEachFileAlone() throws IOException {
        Run run = Run.of("plan", GOOD, withoutPlan, faulty, "--json");
        assertThat(run.exitCode()).isEqualTo(ExitCode.SCENARIO_FAULTS);
        assertThat(run.lines()).hasSize(3);
        assertThat(run.err()).isEqualTo("3 scenarios: 1 planned, 1 without a plan, 1 with faults.\n");
        List<String> files = List.of(GOOD, withoutPlan, faulty);
        for (int i = 0; i < files.size(); i++) {
            assertThat(schemaErrors(run.lines().get(i))).as(files.get(i)).isEmpty();
            ObjectNode document = (ObjectNode) JSON.readTree(run.lines().get(i));
            assertThat(document.path("file").textValue()).isEqualTo(files.get(i));
            document.remove("file");
            if (!files.get(i).equals(faulty)) {
                Run alone = Run.of("plan", files.get(i), "--json");
                assertThat(timeless(document)).isEqualTo(timeless(JSON.readTree(alone.out())));
            }
        }
        JsonNode failed = JSON.readTree(run.lines().get(2));
        assertThat(failed.path("failure").textValue()).isEqualTo("SCENARIO_FAULTS");
        assertThat(failed.path("faults").findValuesAsText("path")).contains("dogs[0].weight", "pantry");
        assertThat(schemaErrors(run.lines().get(2).replace("\"faults\"", "\"fault\"")))
                .isNotEmpty();
    }

    private static JsonNode timeless(JsonNode document) {
        if (document.path("plan").path("proof") instanceof ObjectNode proof) {
            assertThat(proof.remove("solveSeconds").doubleValue()).isPositive();
        }
        return document;
    }

    private static List<?> schemaErrors(String json) {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Demo.text(Path.of("models", "plan.schema.json")), InputFormat.JSON)
                .validate(json, InputFormat.JSON);
    }

    @Test
    void theOrderIsThatOfTheFilesHoweverLongTheyTake() {
        List<String> arguments = new ArrayList<>(List.of("plan", GOOD));
        IntStream.range(0, 60).forEach(i -> arguments.add("none-" + i + ".json"));
        arguments.add(GOOD);
        Run run = Run.of(arguments.toArray(String[]::new));
        for (int i = 1; i < arguments.size(); i++) {
            assertThat(run.lines().get(i)).startsWith(arguments.get(i) + " ");
        }
        assertThat(run.lines()).endsWith("62 scenarios: 2 planned, 60 with faults.");
    }

    @Test
    void outIsForThePlanOfOne() {
        Path file = folder.resolve("plans.txt");
        Run run = Run.of("plan", GOOD, withoutPlan, "--out", file.toString());
        assertThat(run.exitCode()).isEqualTo(ExitCode.WRONG_USE);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("--out takes the plan of one scenario, and here are 2", "> plans.jsonl");
        assertThat(file).doesNotExist();
    }

    /** Answers of the files with a solver that never finds anything. */
    private static List<ManyPlans.Answer> answers(Supplier<Solution> never, boolean json, String... files)
            throws OutputException {
        Solver solver = new Solver() {
            @Override
            public <T> Solution solve(LinearModel<T> model, SolveLimits limits) {
                return never.get();
            }
        };
        List<ManyPlans.Answer> answers = new ArrayList<>();
        new ManyPlans(Demo.knowledge(), solver, LIMITS, 1, new PlansReport(List.of(files), json))
                .plan(Stream.of(files).map(Path::of).toList(), answers::add);
        return answers;
    }

    @Test
    void timeThatIsOverIsTold() throws OutputException {
        Supplier<Solution> nothing = () -> new Solution(Solution.Status.UNKNOWN, List.of(), 0, 0, 20);
        ManyPlans.Answer text = answers(nothing, false, GOOD).get(0);
        assertThat(text.exitCode()).isEqualTo(ExitCode.NO_PLAN_IN_TIME);
        assertThat(text.text()).contains("no plan was found in 20 s");
        String json = answers(nothing, true, GOOD).get(0).text();
        assertThat(json).contains("NO_PLAN_IN_TIME", "--time-limit");
        assertThat(schemaErrors(json)).isEmpty();
    }

    @Test
    void aFaultOfTheProgramStopsNoOtherFile() throws OutputException {
        Supplier<Solution> failing = () -> {
            throw new SolverException("it lost its way");
        };
        List<ManyPlans.Answer> answers = answers(failing, false, GOOD, faulty);
        assertThat(answers)
                .extracting(ManyPlans.Answer::exitCode)
                .containsExactly(ExitCode.FAULT_OF_PROGRAM, ExitCode.SCENARIO_FAULTS);
        assertThat(answers.get(0).text()).contains("The solver failed: it lost its way");
    }

    @Test
    void aPlanThatFailedTheCheckShowsNoCost() {
        Demo.Planned demo = Demo.planned("tiny-freezer");
        Verdict failed = new Verdict(List.of(new Finding("Rusk", "zinc is short")), List.of());
        String line = new PlansReport(List.of(GOOD), false).planned(GOOD, demo.plan(), failed);
        assertThat(line).contains("FAILED THE CHECK: Rusk: zinc is short").doesNotContain("€");
    }

    @Test
    void longNamesAndHostileOnesKeepToTheirColumn() {
        String hostile = "a".repeat(200) + "/last\u001b[2J.json";
        PlansReport report = new PlansReport(List.of(hostile, "b.json"), false);
        Demo.Planned demo = Demo.planned("three-adults");
        for (String file : List.of(hostile, "b.json")) {
            String line = report.planned(file, demo.plan(), demo.verdict());
            assertThat(line.strip().length()).isLessThanOrEqualTo(80);
            assertThat(line).doesNotContain("\u001b").matches("(?s).{28}  .*Three adults .*%\n");
        }
    }

    @Test
    void theWorstExitCodeIsThatOfTheHelp() {
        Tally tally = new Tally();
        assertThat(tally.exitCode()).isZero();
        for (int code : new int[] {0, 4, 6, 3, 5, 1}) {
            tally.add(new ManyPlans.Answer(code, "", code != 0));
            assertThat(tally.exitCode()).isEqualTo(code);
        }
        assertThat(tally.words())
                .isEqualTo(
                        "6 scenarios: 1 planned (1 not to the wished gap), 1 without a plan, 1 not planned in the time"
                                + " given, 1 with faults, 1 FAILED THE CHECK, 1 stopped by a fault of the program");
        assertThat(Run.of("plan", "--help").out().replaceAll("\\s+", " ")).contains("1, 5, 3, 6, 4, 0");
    }
}
