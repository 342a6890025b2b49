package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.household.Wish;
import packpot.search.Search;
import packpot.solver.Expression;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;
import packpot.solver.OrToolsSolver;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;

/** Clashes of small random models against an exhaustive search of all sets of their wishes. */
class ClashFinderTest {
    private static final int WISHES = 7;
    private static final int EACH = 8;

    /** Whole and real variables, and rows that often cannot all hold. */
    private static LinearModel<Wish> model(Random random) {
        LinearModel<Wish> model = new LinearModel<>();
        List<Variable> variables = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            variables.add(i % 2 == 0 ? model.whole("n" + i, 0, 4) : model.variable("x" + i, 0, 4));
        }
        for (int i = 0; i < WISHES; i++) {
            Expression sum = new Expression();
            for (Variable v : variables) {
                if (random.nextInt(3) > 0) {
                    sum.add(1 + random.nextInt(5), v);
                }
            }
            sum.add(1, variables.get(random.nextInt(variables.size())));
            Wish wish = new Wish(Wish.Kind.values()[random.nextInt(3) + 1], "", "row", "wish " + i, 1);
            double bound = 1 + random.nextInt(24);
            if (random.nextBoolean()) {
                model.atLeast("row " + i, sum, bound, wish);
            } else {
                model.atMost("row " + i, sum, bound, wish);
            }
        }
        return model;
    }

    private static boolean holds(LinearModel<Wish> whole, Set<String> sentences) {
        LinearModel<Wish> part = new LinearModel<>();
        for (Variable v : whole.variables()) {
            if (v.integer()) {
                part.whole(v.name(), v.lower(), v.upper());
            } else {
                part.variable(v.name(), v.lower(), v.upper());
            }
        }
        whole.rows().stream()
                .filter(row -> row.tag() != null && sentences.contains(row.tag().sentence()))
                .forEach(row -> part.row(row.name(), row.expression(), row.lower(), row.upper(), row.tag()));
        Solution solution = new OrToolsSolver().solve(part, new SolveLimits(10, 1));
        assertThat(solution.status()).isIn(Solution.Status.OPTIMAL, Solution.Status.INFEASIBLE);
        return solution.hasValues();
    }

    /** Every set that cannot hold though each of its parts can, by trying all sets. */
    private static Set<Set<String>> exhaustive(LinearModel<Wish> model) {
        List<String> all =
                model.rows().stream().map(Demand::tag).map(Wish::sentence).toList();
        boolean[] holds = new boolean[1 << all.size()];
        Set<Set<String>> smallest = new HashSet<>();
        for (int mask = 0; mask < holds.length; mask++) {
            Set<String> some = new HashSet<>();
            boolean partsHold = true;
            for (int i = 0; i < all.size(); i++) {
                if ((mask & (1 << i)) != 0) {
                    some.add(all.get(i));
                    partsHold &= holds[mask ^ (1 << i)];
                }
            }
            // What holds a set that cannot hold cannot hold itself.
            holds[mask] = partsHold && holds(model, some);
            if (partsHold && !holds[mask]) {
                smallest.add(some);
            }
        }
        return smallest;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void everyClashIsOneOfTheSmallestSetsAndNoneIsLeftBeside(long seed) {
        Random random = new Random(seed);
        int withClash = 0;
        for (int i = 0; i < EACH; i++) {
            LinearModel<Wish> model = model(random);
            Set<Set<String>> smallest = exhaustive(model);
            ClashFinder.All found = new ClashFinder(model, new Search(), new TimeBudget(60)).all();
            Set<String> used = new HashSet<>();
            for (ClashFinder.Found clash : found.clashes()) {
                Set<String> sentences = clash.demands().stream()
                        .map(demand -> demand.wish().sentence())
                        .collect(Collectors.toSet());
                assertThat(smallest).contains(sentences);
                assertThat(used).doesNotContainAnyElementsOf(sentences);
                assertThat(clash.irreducible()).isTrue();
                used.addAll(sentences);
            }
            assertThat(found.complete()).isTrue();
            assertThat(smallest)
                    .as("every other clash overlaps")
                    .allMatch(set -> set.stream().anyMatch(used::contains));
            withClash += smallest.isEmpty() ? 0 : 1;
        }
        assertThat(withClash).as("models with a clash").isGreaterThan(EACH / 3);
    }
}
