package packpot.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.Reference;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;

/** Duals and reduced costs, against problems worked by hand, published prices, and the theory. */
@Tag("native")
class LinearPricesTest {
    private static final OrToolsSolver SOLVER = new OrToolsSolver();
    private static final double SECONDS = 20;

    @Test
    void pricesOfTheWorkshopAreThoseWorkedByHand() {
        HandWorked.Workshop workshop = HandWorked.workshop(4, 12, 18, 3, 5);
        LinearSolution solution = SOLVER.solveLinear(workshop.model(), SECONDS);
        assertThat(solution.objective()).isCloseTo(-36, within(1e-9));
        assertThat(solution.value(workshop.x())).isCloseTo(2, within(1e-9));
        assertThat(solution.value(workshop.y())).isCloseTo(6, within(1e-9));
        // Profit is minimised with its sign turned, so an hour more lowers the objective.
        assertThat(solution.duals().get(0)).isCloseTo(0, within(1e-9));
        assertThat(solution.duals().get(1)).isCloseTo(-1.5, within(1e-9));
        assertThat(solution.duals().get(2)).isCloseTo(-1, within(1e-9));
        assertThat(solution.rowStatus())
                .containsExactly(
                        LinearSolution.Basis.BASIC, LinearSolution.Basis.AT_UPPER, LinearSolution.Basis.AT_UPPER);
        assertThat(solution.variableStatus()).containsOnly(LinearSolution.Basis.BASIC);
    }

    @Test
    void pricesOfTheCheapFeedThatRunsOutAreThoseWorkedByHand() {
        HandWorked.Feed feed = HandWorked.feed(10, 6, 2, 3);
        LinearSolution solution = SOLVER.solveLinear(feed.model(), SECONDS);
        assertThat(solution.objective()).isCloseTo(24, within(1e-9));
        assertThat(solution.duals().get(0)).isCloseTo(3, within(1e-9));
        assertThat(solution.reducedCosts().get(feed.cheap().index())).isCloseTo(-1, within(1e-9));
        assertThat(solution.reducedCosts().get(feed.dear().index())).isCloseTo(0, within(1e-9));
        assertThat(solution.variableStatus().get(feed.cheap().index())).isEqualTo(LinearSolution.Basis.AT_UPPER);
    }

    @Test
    void shadowPricesOfStiglersDietAreThePublishedOnes() {
        LinearModel<String> model = DietModels.stigler().model();
        LinearSolution solution = SOLVER.solveLinear(model, SECONDS);
        for (Reference.Line minimum : Reference.table("stigler_1945_minimums.csv")) {
            int row = model.rows().stream().map(Row::name).toList().indexOf(minimum.text("nutrient"));
            assertThat(solution.duals().get(row))
                    .as(minimum.text("nutrient"))
                    .isCloseTo(minimum.number("shadow_price_dollars_per_unit"), within(1e-11));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-6, 1e-3, 1, 1e3, 1e6})
    void aRowInAnotherUnitHasItsPriceInThatUnit(double factor) {
        LinearModel<String> model = new LinearModel<>();
        Variable x = model.variable("x", 0, 100);
        Variable y = model.variable("y", 0, 100);
        model.objective().add(2, x).add(3, y);
        model.atLeast("need", new Expression().add(1 * factor, x).add(2 * factor, y), 10 * factor, null);
        LinearSolution solution = SOLVER.solveLinear(model, SECONDS);
        assertThat(solution.objective()).isCloseTo(15, within(1e-9));
        assertThat(solution.duals().get(0) * factor).isCloseTo(1.5, within(1e-9));
    }

    @Test
    void wholeNumbersAreRefusedAndNotTakenForFractions() {
        LinearModel<String> model = new LinearModel<>();
        Variable packs = model.whole("packs", 0, 10);
        model.objective().add(1, packs);
        model.atLeast("grams", new Expression().add(7, packs), 10, null);
        assertThatThrownBy(() -> SOLVER.solveLinear(model, SECONDS))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("whole numbers");
        Solution solution = SOLVER.solve(model, SolveLimits.USUAL);
        LinearModel<String> fixed =
                new Variant<>(model).withIntegersFixed(solution::value).model();
        assertThat(SOLVER.solveLinear(fixed, SECONDS).objective()).isCloseTo(2, within(1e-9));
    }

    @Test
    void withoutASolutionThereAreNoPricesAndNotZeros() {
        LinearModel<String> model = new LinearModel<>();
        Variable x = model.variable("x", 0, 1);
        model.objective().add(1, x);
        model.atLeast("too much", new Expression().add(1, x), 2, null);
        LinearSolution solution = SOLVER.solveLinear(model, SECONDS);
        assertThat(solution.status()).isEqualTo(Solution.Status.INFEASIBLE);
        assertThat(solution.duals()).isEmpty();
        assertThat(solution.reducedCosts()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void onRandomModelsPricesAndValuesProveEachOther(long seed) {
        LinearModel<String> model = random(seed);
        LinearSolution solution = SOLVER.solveLinear(model, SECONDS);
        assertThat(solution.status()).isEqualTo(Solution.Status.OPTIMAL);
        double size = Math.max(1, Math.abs(solution.objective()));

        double[] values =
                solution.values().stream().mapToDouble(Double::doubleValue).toArray();
        double dualObjective = 0;
        List<Row<String>> rows = model.rows();
        for (int i = 0; i < rows.size(); i++) {
            double price = solution.duals().get(i);
            double at = rows.get(i).expression().value(values);
            double limit = price > 0 ? rows.get(i).lower() : rows.get(i).upper();
            if (Math.abs(price) > 1e-9) {
                dualObjective += price * limit;
                assertThat(price * (at - limit)).as("slack times price").isCloseTo(0, within(1e-6 * size));
            }
        }
        for (Variable v : model.variables()) {
            double reduced = model.objective().coefficient(v);
            for (int i = 0; i < rows.size(); i++) {
                reduced -= solution.duals().get(i) * rows.get(i).expression().coefficient(v);
            }
            assertThat(solution.reducedCosts().get(v.index()))
                    .as("reduced cost of " + v.name())
                    .isCloseTo(
                            reduced,
                            within(1e-6 * Math.max(1, Math.abs(model.objective().coefficient(v)))));
            dualObjective += Math.abs(reduced) < 1e-9 ? 0 : reduced * (reduced > 0 ? v.lower() : v.upper());
        }
        assertThat(dualObjective).as("strong duality").isCloseTo(solution.objective(), within(1e-6 * size));
        assertThat(solution.dualObjective(model)).isCloseTo(solution.objective(), within(1e-6 * size));
    }

    /** Bounded, with a point that fits every row, and rows whose units lie up to a million apart. */
    private static LinearModel<String> random(long seed) {
        Random random = new Random(seed);
        LinearModel<String> model = new LinearModel<>();
        List<Variable> variables = new ArrayList<>();
        double[] point = new double[12];
        for (int i = 0; i < point.length; i++) {
            point[i] = random.nextDouble() * 50;
            Variable v = model.variable("x" + i, 0, 60 + random.nextDouble() * 40);
            model.objective().add(random.nextDouble() * 10 - 2, v);
            variables.add(v);
        }
        for (int r = 0; r < 10; r++) {
            double unit = Math.pow(10, random.nextInt(7) - 3);
            Expression sum = new Expression();
            for (Variable v : variables) {
                if (random.nextInt(3) > 0) {
                    sum.add(unit * (random.nextDouble() * 4 - 1), v);
                }
            }
            double at = sum.value(point);
            double room = unit * random.nextDouble() * 10;
            switch (random.nextInt(4)) {
                case 0 -> model.equal("row " + r, sum, at, null);
                case 1 -> model.row("row " + r, sum, at - room, at + room, null);
                case 2 -> model.atLeast("row " + r, sum, at - room, null);
                default -> model.atMost("row " + r, sum, at + room, null);
            }
        }
        return model;
    }
}
