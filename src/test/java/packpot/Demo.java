package packpot;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import packpot.audit.PlanAudit;
import packpot.audit.Verdict;
import packpot.explain.MendEdits;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioChanges;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;
import packpot.needs.Needs;
import packpot.plan.Amounts;
import packpot.plan.Plan;
import packpot.plan.PlanBuilder;
import packpot.ration.RationModel;
import packpot.ration.RationPlanner;
import packpot.ration.RationPlanner.Outcome;
import packpot.solver.LinearModel;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/** The demo scenarios and small households of the tests, each demo planned once for all tests. */
public final class Demo {
    /** The gap that every plan of the tests is proved to, as a share of its cost. */
    public static final double GAP = 0.001;

    private static final double LONGEST_SECONDS = 120;
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 7);
    private static final Knowledge KNOWLEDGE = Knowledge.load();
    private static final Map<Path, Planned> PLANNED = new ConcurrentHashMap<>();

    private Demo() {}

    /** A household with its plan and what the audit says of it. */
    public record Planned(
            Household household,
            Needs needs,
            LinearModel<?> model,
            Solution solution,
            Amounts amounts,
            Plan plan,
            Verdict verdict) {
        @Override
        public String toString() {
            return household.name();
        }
    }

    public static Knowledge knowledge() {
        return KNOWLEDGE;
    }

    /** How mends of a scenario are taken over into it. */
    public static MendEdits edits(Path file) {
        try {
            ScenarioReader reader = new ScenarioReader(KNOWLEDGE, TODAY);
            return new MendEdits(
                    KNOWLEDGE,
                    reader,
                    new ScenarioChanges(KNOWLEDGE, reader, file.toString(), ScenarioReader.text(file))
                            .scenario(List.of(), List.of()));
        } catch (ScenarioException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Every scenario of the folder, in the order of their names. */
    public static List<Path> files() {
        try (Stream<Path> files = Files.list(Path.of("scenarios"))) {
            return files.filter(file -> file.toString().endsWith(".json"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The scenario of that name, such as "three-adults". */
    public static Path file(String name) {
        return Path.of("scenarios", name + ".json");
    }

    /** Every demo, planned. */
    public static Stream<Planned> all() {
        return files().stream().map(Demo::planned);
    }

    /** The demo of that name, planned. */
    public static Planned planned(String name) {
        return planned(file(name));
    }

    /** One demo, planned at the first call. */
    public static Planned planned(Path file) {
        return PLANNED.computeIfAbsent(file, key -> plan(read(text(key))));
    }

    /** The text of a file. */
    public static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The household of a scenario's text, which has no faults. */
    public static Household read(String scenario) {
        try {
            return new ScenarioReader(KNOWLEDGE, TODAY).read("test.json", scenario.getBytes(StandardCharsets.UTF_8));
        } catch (ScenarioException e) {
            throw new AssertionError(e.getMessage(), e);
        }
    }

    /** The whole model of a household, with the shares of energy. */
    public static LinearModel<?> model(Household household) {
        Needs needs = Needs.of(household, KNOWLEDGE);
        return RationModel.of(household, KNOWLEDGE, needs, RationPlanner.sharesByNeed(needs))
                .linearModel();
    }

    /** Plans a household that has a plan. */
    public static Planned plan(Household household) {
        return planIfAny(household).orElseThrow(() -> new AssertionError(household.name() + " has no plan"));
    }

    /** Plans a household; empty when it is proved that there is no plan. */
    public static Optional<Planned> planIfAny(Household household) {
        Needs needs = Needs.of(household, KNOWLEDGE);
        Recorder recorder = new Recorder();
        Outcome outcome =
                new RationPlanner(KNOWLEDGE, recorder).plan(household, needs, new SolveLimits(LONGEST_SECONDS, GAP));
        if (outcome instanceof Outcome.None none) {
            assertThat(none.provedImpossible())
                    .as("time to plan " + household.name())
                    .isTrue();
            return Optional.empty();
        }
        Amounts amounts = ((Outcome.Found) outcome).amounts();
        Plan plan = PlanBuilder.build(household, KNOWLEDGE, needs, amounts);
        Verdict verdict = PlanAudit.check(plan, household, KNOWLEDGE);
        return Optional.of(new Planned(
                household, needs, recorder.models.getLast(), recorder.solutions.getLast(), amounts, plan, verdict));
    }

    /** Keeps what passes through the solver. */
    private static final class Recorder implements Solver {
        private final Deque<LinearModel<?>> models = new ArrayDeque<>();
        private final Deque<Solution> solutions = new ArrayDeque<>();

        @Override
        public <T> Solution solve(LinearModel<T> model, SolveLimits limits) {
            Solution solution = new SharedSolver().solve(model, limits);
            models.add(model);
            solutions.add(solution);
            return solution;
        }
    }
}
