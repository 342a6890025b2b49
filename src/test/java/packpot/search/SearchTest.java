package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.Demo;
import packpot.Reference;
import packpot.household.Household;
import packpot.needs.Needs;
import packpot.ration.RationModel;
import packpot.ration.RationPlanner;
import packpot.solver.CancelledException;
import packpot.solver.Expression;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;
import packpot.solver.OrToolsSolver;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.SolverException;

/** The search of our own against the library's SCIP, which shares no code with it, and against trying everything out. */
class SearchTest {
    private static final double GAP = 1e-6;
    private static final SolveLimits EXACT = new SolveLimits(60, GAP);

    @Tag("native")
    @ParameterizedTest
    @ValueSource(strings = {"three-adults", "growing-puppy", "foster-home", "tiny-freezer"})
    void demosCostWhatTheLibrarySays(String name) {
        Household household = Demo.read(Demo.text(Demo.file(name)));
        Needs needs = Needs.of(household, Demo.knowledge());
        LinearModel<?> model = RationModel.of(household, Demo.knowledge(), needs, RationPlanner.sharesByNeed(needs))
                .linearModel();
        SolveLimits limits = new SolveLimits(60, 1e-3);

        Solution ours = new Search().solve(model, limits);
        Solution theirs = new OrToolsSolver().solve(model, limits);

        assertThat(ours.status()).isEqualTo(Solution.Status.OPTIMAL);
        assertThat(ours.relativeGap()).isLessThanOrEqualTo(1e-3);
        // Each has a solution, which the other's bound must not pass.
        assertThat(ours.bound()).isLessThanOrEqualTo(theirs.objective() * (1 + 1e-9));
        assertThat(theirs.bound()).isLessThanOrEqualTo(ours.objective() * (1 + 1e-6));
    }

    /** Choices, whole numbers and fractions, equations, limits on either or both sides; about half have no solution. */
    static LinearModel<String> random(long seed) {
        Random random = new Random(seed);
        LinearModel<String> model = new LinearModel<>();
        List<Variable> variables = new ArrayList<>();
        int n = 4 + random.nextInt(12);
        for (int j = 0; j < n; j++) {
            double least = random.nextInt(4) == 0 ? random.nextInt(5) - 3 : 0;
            variables.add(
                    switch (random.nextInt(3)) {
                        case 0 -> model.choice("u" + j);
                        case 1 -> model.whole("n" + j, least, least + 1 + random.nextInt(9));
                        default -> model.variable("x" + j, least, least + 10 * random.nextDouble());
                    });
            model.objective().add(random.nextInt(3) == 0 ? 0 : random.nextDouble() * 6 - 1, variables.get(j));
        }
        int rows = 2 + random.nextInt(10);
        for (int i = 0; i < rows; i++) {
            Expression sum = new Expression();
            for (Variable v : variables) {
                sum.add(random.nextInt(2) == 0 ? 0 : Math.round(random.nextGaussian() * 40) / 10.0, v);
            }
            double limit = Math.round(random.nextGaussian() * 60) / 10.0;
            switch (random.nextInt(8)) {
                case 0 -> {
                    Variable total = model.variable("sum" + i, -200, 200);
                    model.equal("sum" + i, sum.add(-1, total), limit, null);
                    model.atMost("of sum" + i, new Expression().add(1, total), 5, null);
                }
                case 1 -> model.row("both" + i, sum, limit - 4, limit + 4, null);
                case 2, 3, 4 -> model.atMost("most" + i, sum, limit + 4, null);
                default -> model.atLeast("least" + i, sum, limit - 4, null);
            }
        }
        return model;
    }

    @Tag("native")
    @Test
    void randomModelsHaveTheLibrarysOptimum() {
        int withSolution = 0;
        for (long seed = 1; seed <= 400; seed++) {
            LinearModel<String> model = random(seed);
            Solution ours = new Search().solve(model, EXACT);
            Solution theirs = new OrToolsSolver().solve(model, EXACT);
            assertThat(ours.status()).as("seed %s", seed).isEqualTo(theirs.status());
            if (ours.hasValues()) {
                withSolution++;
                double size = 1 + Math.abs(theirs.objective());
                assertThat(ours.objective()).as("seed %s", seed).isCloseTo(theirs.objective(), within(1e-5 * size));
                assertThat(ours.bound()).as("seed %s", seed).isLessThanOrEqualTo(theirs.objective() + 1e-6 * size);
            }
        }
        assertThat(withSolution).isBetween(100, 350);
    }

    /** The optima that the library gave for the first of them, so that they can be held to without it. */
    @Test
    void randomModelsHaveTheRecordedOptimum() {
        for (Reference.Line line : Reference.table("search_optima.csv")) {
            Solution ours = new Search().solve(random((long) line.number("seed")), EXACT);
            OptionalDouble recorded = line.optional("objective");
            assertThat(ours.hasValues()).as("%s", line).isEqualTo(recorded.isPresent());
            if (recorded.isPresent()) {
                double size = 1 + Math.abs(recorded.getAsDouble());
                assertThat(ours.objective()).as("%s", line).isCloseTo(recorded.getAsDouble(), within(1e-5 * size));
                assertThat(ours.bound())
                        .as("%s", line)
                        .isBetween(recorded.getAsDouble() - 1e-5 * size, recorded.getAsDouble() + 1e-6 * size);
            }
        }
    }

    @Tag("native")
    @Test
    void theRecordedOptimaAreTheLibrarys() {
        for (Reference.Line line : Reference.table("search_optima.csv")) {
            Solution theirs = new OrToolsSolver().solve(random((long) line.number("seed")), EXACT);
            OptionalDouble recorded = line.optional("objective");
            assertThat(theirs.hasValues()).as("%s", line).isEqualTo(recorded.isPresent());
            recorded.ifPresent(figure ->
                    assertThat(theirs.objective()).isCloseTo(figure, within(1e-5 * (1 + Math.abs(figure)))));
        }
    }

    @Test
    void smallKnapsacksAreAsTryingEverythingOut() {
        for (long seed = 1; seed <= 40; seed++) {
            Random random = new Random(seed);
            int n = 10;
            int[] weight = random.ints(n, 3, 40).toArray();
            int[] worth = random.ints(n, 1, 60).toArray();
            LinearModel<String> model = new LinearModel<>();
            Expression sum = new Expression();
            for (int j = 0; j < n; j++) {
                Variable taken = model.choice("u" + j);
                sum.add(weight[j], taken);
                model.objective().add(-worth[j], taken);
            }
            model.atMost("room", sum, 80, null);
            int best = 0;
            for (int set = 0; set < 1 << n; set++) {
                int heavy = 0;
                int worthy = 0;
                for (int j = 0; j < n; j++) {
                    heavy += (set >> j & 1) * weight[j];
                    worthy += (set >> j & 1) * worth[j];
                }
                best = heavy <= 80 ? Math.max(best, worthy) : best;
            }
            assertThat(new Search().solve(model, EXACT).objective()).isCloseTo(-best, within(1e-6 * best));
        }
    }

    @Test
    void aStartIsTakenUpWhateverItIsWorth() {
        for (long seed = 1; seed <= 60; seed++) {
            LinearModel<String> model = random(seed);
            Solution cold = new Search().solve(model, EXACT);
            if (cold.hasValues()) {
                List<Double> nonsense = cold.values().stream().map(x -> x + 3).toList();
                for (List<Double> start : List.of(cold.values(), cold.values().subList(0, 2), nonsense)) {
                    Solution warm = new Search().solve(model, EXACT, start);
                    assertThat(warm.objective())
                            .as("seed %s", seed)
                            .isCloseTo(cold.objective(), within(1e-5 * (1 + Math.abs(cold.objective()))));
                }
            }
        }
    }

    @Test
    void theSameQuestionGetsTheSameAnswer() {
        LinearModel<String> model = random(3);
        assertThat(new Search().solve(model, EXACT).values())
                .isEqualTo(new Search().solve(model, EXACT).values());
    }

    @Test
    void aCancelledSearchEnds() {
        Search search = new Search();
        search.cancel();
        assertThatThrownBy(() -> search.solve(random(1), EXACT)).isInstanceOf(CancelledException.class);
    }

    @Tag("demos")
    @Test
    void withoutTimeTheBoundHoldsStill() {
        Household household = Demo.read(Demo.text(Demo.file("foster-home")));
        Needs needs = Needs.of(household, Demo.knowledge());
        LinearModel<?> model = RationModel.of(household, Demo.knowledge(), needs, RationPlanner.sharesByNeed(needs))
                .linearModel();
        Solution hurried = new Search().solve(model, new SolveLimits(0, 1e-3));
        assertThat(hurried.status()).isIn(Solution.Status.UNKNOWN, Solution.Status.FEASIBLE);
        Solution whole = new Search().solve(model, new SolveLimits(60, 1e-3));
        if (hurried.hasValues()) {
            assertThat(hurried.bound()).isLessThanOrEqualTo(whole.objective());
        }
        Solution begun = new Search().solve(model, new SolveLimits(0, 1e-3), whole.values());
        assertThat(begun.objective()).isCloseTo(whole.objective(), within(1e-6 * whole.objective()));
        assertThat(begun.bound()).isFinite().isLessThanOrEqualTo(whole.objective());
    }

    private static LinearModel<?> threeAdults() {
        Household household = Demo.read(Demo.text(Demo.file("three-adults")));
        Needs needs = Needs.of(household, Demo.knowledge());
        return RationModel.of(household, Demo.knowledge(), needs, RationPlanner.sharesByNeed(needs))
                .linearModel();
    }

    /** Given up after little work, after some, gone on with a little: always within the gap of the same optimum. */
    @Tag("native")
    @ParameterizedTest
    @ValueSource(longs = {1, 1_600_000, 6_400_000, 9_000_000, 11_000_000})
    void whatIsGivenUpTheLibraryProves(long mostWork) {
        SolveLimits limits = new SolveLimits(60, 1e-3);
        Solution whole = new Search().solve(threeAdults(), limits);
        AtomicInteger asked = new AtomicInteger();
        Solution found = Searches.givingUp(mostWork, asked::incrementAndGet).solve(threeAdults(), limits);
        assertThat(found.status()).isEqualTo(Solution.Status.OPTIMAL);
        assertThat(found.bound()).isLessThanOrEqualTo(whole.objective() * (1 + 1e-6));
        assertThat(whole.bound()).isLessThanOrEqualTo(found.objective() * (1 + 1e-6));
        assertThat(asked).hasValueLessThanOrEqualTo(1);
        assertThat(mostWork > 1 || asked.get() == 1).isTrue();
    }

    @Tag("demos")
    @Test
    void aSearchInShortSpellsEndsLikeOneThatIsNotBrokenOff() {
        Compact program = Reducer.reduce(threeAdults()).orElseThrow();
        Tree.Result whole = new Tree(program, 1e-3, Long.MAX_VALUE, () -> false).search(null);
        Tree broken = new Tree(program, 1e-3, 500_000, () -> false);
        Tree.Result spell = broken.search(null);
        int spells = 1;
        double bound = Double.NEGATIVE_INFINITY;
        while (!spell.complete()) {
            spell = broken.goOn(500_000);
            assertThat(spell.bound()).isGreaterThanOrEqualTo(bound);
            bound = spell.bound();
            spells++;
        }
        assertThat(spells).isGreaterThan(5);
        double[] x = Objects.requireNonNull(spell.x());
        double[] y = Objects.requireNonNull(whole.x());
        assertThat(spell.bound()).isLessThanOrEqualTo(program.cost(y)).isGreaterThan(0.999 * program.cost(x) - 1e-9);
        assertThat(whole.bound()).isLessThanOrEqualTo(program.cost(x));
    }

    @Tag("demos")
    @Test
    void whereTheLibraryFailsWhatWasFoundIsKept() {
        SolveLimits limits = new SolveLimits(60, 1e-3);
        Solution whole = new Search().solve(threeAdults(), limits);
        Search alone = Searches.givingUp(1, () -> {
            throw new SolverException("no library here");
        });
        Solution kept = alone.solve(threeAdults(), limits, whole.values());
        assertThat(kept.objective()).isCloseTo(whole.objective(), within(1e-6 * whole.objective()));
        assertThat(kept.bound()).isLessThanOrEqualTo(whole.objective());
        assertThatThrownBy(() -> alone.solve(threeAdults(), limits)).hasMessage("no library here");
    }
}
