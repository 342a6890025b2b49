package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import packpot.solver.Expression;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;

/** Models of a few whole numbers, against trying all of them out; and with fractions, against optima worked by hand. */
class SmallModelsTest {
    private static final SolveLimits EXACT = new SolveLimits(60, 1e-6);

    /** Up to five whole numbers of up to five values each, in up to five rows. */
    private static LinearModel<String> whole(Random random) {
        LinearModel<String> model = new LinearModel<>();
        int n = 2 + random.nextInt(4);
        for (int j = 0; j < n; j++) {
            int least = random.nextInt(4) - 2;
            Variable v = model.whole("n" + j, least, least + 1 + random.nextInt(4));
            model.objective().add(random.nextInt(21) - 7, v);
        }
        int rows = 1 + random.nextInt(5);
        for (int i = 0; i < rows; i++) {
            Expression sum = new Expression();
            model.variables().forEach(v -> sum.add(random.nextInt(3) == 0 ? 0 : random.nextInt(19) - 9, v));
            int limit = random.nextInt(21) - 8;
            switch (random.nextInt(4)) {
                case 0 -> model.row("both" + i, sum, limit - 6, limit + 3, null);
                case 1 -> model.atMost("most" + i, sum, limit, null);
                default -> model.atLeast("least" + i, sum, limit, null);
            }
        }
        return model;
    }

    /** The least cost of all that is allowed; infinite where nothing is. */
    private static double tried(LinearModel<String> model, double[] values, int at) {
        List<Variable> variables = model.variables();
        if (at == values.length) {
            boolean allowed = model.rows().stream().allMatch(row -> {
                double sum = row.expression().value(values);
                return sum >= row.lower() && sum <= row.upper();
            });
            return allowed ? model.objective().value(values) : Double.POSITIVE_INFINITY;
        }
        double best = Double.POSITIVE_INFINITY;
        for (double value = variables.get(at).lower();
                value <= variables.get(at).upper();
                value++) {
            values[at] = value;
            best = Math.min(best, tried(model, values, at + 1));
        }
        return best;
    }

    @Test
    void allOfWholeNumbersIsAsTryingEverythingOut() {
        Random random = new Random(5);
        int withSolution = 0;
        for (int i = 0; i < 150; i++) {
            LinearModel<String> model = whole(random);
            double best = tried(model, new double[model.variables().size()], 0);
            Solution found = new Search().solve(model, EXACT);
            if (Double.isInfinite(best)) {
                assertThat(found.status()).as("model %s", i).isEqualTo(Solution.Status.INFEASIBLE);
            } else {
                withSolution++;
                check(model, found, best, "model " + i);
            }
        }
        assertThat(withSolution).isBetween(40, 140);
    }

    private static void check(LinearModel<String> model, Solution found, double best, String which) {
        double size = 1 + Math.abs(best);
        assertThat(found.status()).as(which).isEqualTo(Solution.Status.OPTIMAL);
        assertThat(found.objective()).as(which).isCloseTo(best, within(2e-6 * size));
        assertThat(found.bound()).as(which).isBetween(best - 2e-6 * size, best + 1e-9 * size);
        double[] values =
                found.values().stream().mapToDouble(Double::doubleValue).toArray();
        model.check(values);
        assertThat(model.objective().value(values)).as(which).isEqualTo(found.objective());
        for (Variable v : model.variables()) {
            assertThat(found.value(v)).isBetween(v.lower(), v.upper());
            assertThat(!v.integer() || found.value(v) == Math.rint(found.value(v)))
                    .isTrue();
        }
    }

    /**
     * Packs of 7 at 5 and loose ones at 0.8, with n packs: at least 20 need 20 - 7 n loose ones. 2 packs and 6 loose ones
     * cost 14.8, 3 packs 15, one pack and 13 loose ones 15.4. Where packs cost 4.9 they are 14.6, 14.7 and 15.3.
     */
    @Test
    void packsAndLooseOnes() {
        for (double price : new double[] {5, 4.9}) {
            LinearModel<String> model = new LinearModel<>();
            Variable packs = model.whole("packs", 0, 100);
            Variable loose = model.variable("loose", 0, 50);
            model.objective().add(price, packs).add(0.8, loose);
            model.atLeast("need", new Expression().add(7, packs).add(1, loose), 20, null);
            check(model, new Search().solve(model, EXACT), price == 5 ? 14.8 : 14.6, "at " + price);
        }
    }

    /** One shop opens for 10 and sells at 1, up to 8; the other for 4 at 2, up to 5: for few the second, for many the first. */
    @Test
    void aChoiceThatOpensWhatItCostsAndNoMore() {
        double[][] needsAndCosts = {{4, 12}, {5, 14}, {6, 16}, {7, 17}, {8, 18}, {9, 24}, {13, 32}};
        for (double[] line : needsAndCosts) {
            LinearModel<String> model = new LinearModel<>();
            Variable first = model.choice("first opens");
            Variable second = model.choice("second opens");
            Variable x = model.variable("of the first", 0, 8);
            Variable y = model.variable("of the second", 0, 5);
            Variable all = model.variable("all", 0, 100);
            model.objective().add(10, first).add(4, second).add(1, x).add(2, y);
            model.atMost("first", new Expression().add(1, x).add(-8, first), 0, null);
            model.atMost("second", new Expression().add(1, y).add(-5, second), 0, null);
            model.equal("all", new Expression().add(1, x).add(1, y).add(-1, all), 0, null);
            model.atLeast("need", new Expression().add(1, all), line[0], null);
            check(model, new Search().solve(model, EXACT), line[1], "need of " + line[0]);
        }
    }

    @Test
    void aStartThatFitsIsAnswerEnoughWithinTheGap() {
        LinearModel<String> model = new LinearModel<>();
        Variable packs = model.whole("packs", 0, 100);
        Variable loose = model.variable("loose", 0, 50);
        model.objective().add(5, packs).add(0.8, loose);
        model.atLeast("need", new Expression().add(7, packs).add(1, loose), 20, null);
        Solution begun = new Search().solve(model, new SolveLimits(60, 0.1), List.of(3.0, 0.0));
        assertThat(begun.objective()).isLessThanOrEqualTo(15 + 1e-9);
        assertThat(begun.relativeGap()).isLessThanOrEqualTo(0.1);
        assertThat(begun.bound()).isLessThanOrEqualTo(14.8 + 1e-9);
    }
}
