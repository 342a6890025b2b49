package packpot.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import packpot.solver.LinearModel.Variable;

@Tag("native")
class OrToolsSolverTest {
    private static final double INF = Double.POSITIVE_INFINITY;
    private static final Solver SOLVER = new OrToolsSolver();

    private final LinearModel<String> model = new LinearModel<>();

    private Solution solve() {
        return SOLVER.solve(model, SolveLimits.USUAL);
    }

    /** Values 60, 100, 120, weights 10, 20, 30, room for 50: the last two, worth 220. */
    @Test
    void aKnapsackIsFilledAsKnown() {
        double[] values = {60, 100, 120};
        double[] weights = {10, 20, 30};
        Expression weight = new Expression();
        for (int i = 0; i < values.length; i++) {
            Variable take = model.choice("take " + i);
            model.objective().add(-values[i], take);
            weight.add(weights[i], take);
        }
        model.atMost("room", weight, 50, null);
        Solution solution = solve();
        assertThat(solution.status()).isEqualTo(Solution.Status.OPTIMAL);
        assertThat(solution.values()).containsExactly(0.0, 1.0, 1.0);
        assertThat(solution.objective()).isEqualTo(-220);
        assertThat(solution.bound()).isLessThanOrEqualTo(solution.objective()).isCloseTo(-220, within(0.3));
    }

    /** Packs of 7 at 5, loose at 0.8: for 20, three packs cost 15, loose alone 16, two packs and six loose 14.8. */
    @Test
    void packsAndLooseTogetherAreCheaperThanEitherAlone() {
        Variable packs = model.whole("packs", 0, 100);
        Variable loose = model.variable("loose", 0, INF);
        model.objective().add(5, packs).add(0.8, loose);
        model.atLeast("grams", new Expression().add(7, packs).add(1, loose), 20, null);
        Solution solution = solve();
        assertThat(solution.value(packs)).isEqualTo(2);
        assertThat(solution.value(loose)).isCloseTo(6, within(1e-6));
        assertThat(solution.objective()).isCloseTo(14.8, within(1e-6));
    }

    @Test
    void aModelWithoutRoomIsInfeasible() {
        Variable x = model.variable("x", 0, 1);
        model.atLeast("too much", new Expression().add(1, x), 2, null);
        assertThat(solve().status()).isEqualTo(Solution.Status.INFEASIBLE);
        assertThat(solve().hasValues()).isFalse();
    }

    @Test
    void aModelOfWholeNumbersWithoutRoomIsInfeasible() {
        Variable x = model.whole("x", 0, 10);
        model.equal("odd", new Expression().add(2, x), 7, null);
        assertThat(solve().status()).isEqualTo(Solution.Status.INFEASIBLE);
    }

    @Test
    void aModelThatCanFallWithoutEndHasNoSolution() {
        Variable x = model.variable("x", 0, INF);
        model.objective().add(-1, x);
        model.atLeast("some", new Expression().add(1, x), 1, null);
        assertThat(solve().status()).isEqualTo(Solution.Status.UNBOUNDED);
        model.choice("a whole number");
        assertThat(solve().status()).isEqualTo(Solution.Status.UNBOUNDED);
    }

    @Test
    void withoutAnObjectiveAnySolutionIsOptimal() {
        Variable x = model.variable("x", 0, 10);
        model.row("between", new Expression().add(1, x), 3, 4, null);
        Solution solution = solve();
        assertThat(solution.status()).isEqualTo(Solution.Status.OPTIMAL);
        assertThat(solution.objective()).isZero();
        assertThat(solution.value(x)).isBetween(3.0, 4.0);
        assertThat(solution.relativeGap()).isZero();
    }

    @Test
    void withoutRowsEveryVariableGoesToItsCheapBound() {
        Variable up = model.variable("up", -2, 5);
        Variable down = model.variable("down", -2, 5);
        model.objective().add(-1, up).add(1, down);
        Solution solution = solve();
        assertThat(solution.value(up)).isEqualTo(5);
        assertThat(solution.value(down)).isEqualTo(-2);
    }

    @Test
    void equalityRowsAndFreeVariablesAreHeld() {
        Variable x = model.variable("x", Double.NEGATIVE_INFINITY, INF);
        Variable y = model.variable("y", Double.NEGATIVE_INFINITY, INF);
        model.objective().add(1, x);
        model.equal("sum", new Expression().add(1, x).add(1, y), 1, null);
        model.equal("difference", new Expression().add(1, x).add(-1, y), -7, null);
        Solution solution = solve();
        assertThat(solution.value(x)).isCloseTo(-3, within(1e-9));
        assertThat(solution.value(y)).isCloseTo(4, within(1e-9));
    }

    @Test
    void rowsOfVerySmallAndVeryLargeFiguresAreHeldAlike() {
        Variable x = model.variable("micrograms", 0, INF);
        Variable y = model.variable("tonnes", 0, INF);
        model.objective().add(1, x).add(1, y);
        model.atLeast("small", new Expression().add(2e-7, x), 1e-6, null);
        model.atLeast("large", new Expression().add(4e7, y), 1e8, null);
        Solution solution = solve();
        assertThat(solution.value(x)).isCloseTo(5, within(1e-6));
        assertThat(solution.value(y)).isCloseTo(2.5, within(1e-6));
    }

    @Test
    void termsOfOneVariableAddUp() {
        Variable x = model.variable("x", 0, INF);
        model.objective().add(1, x).add(2, x);
        model.atLeast("row", new Expression().add(1, x).add(1, x), 4, null);
        assertThat(solve().objective()).isCloseTo(6, within(1e-9));
    }

    /**
     * A switch whose row has a huge coefficient can be open by a hair within a solver's tolerance. Such an answer is mended,
     * and never passed on as it is.
     */
    @Test
    void aSwitchThatIsOpenByAHairIsNeverPassedOn() {
        Variable open = model.choice("open");
        Variable flow = model.variable("flow", 0, INF);
        model.objective().add(1000, open).add(-1, flow);
        model.atMost("only when open", new Expression().add(1, flow).add(-1e9, open), 0, null);
        Variable other = model.variable("other", 0, INF);
        model.atMost("pipe", new Expression().add(1, flow).add(1, other), 500, null);
        assertThat(solve().objective()).isCloseTo(0, within(1e-3));
    }

    @Test
    void nonsenseIsRefusedWhenTheModelIsBuilt() {
        assertThatThrownBy(() -> model.variable("x", 2, 1)).hasMessageContaining("x has no room between 2.0 and 1.0");
        assertThatThrownBy(() -> model.variable("x", Double.NaN, 1)).hasMessageContaining("x has no room");
        Variable x = model.variable("x", 0, 1);
        assertThatThrownBy(() -> new Expression().add(Double.NaN, x))
                .hasMessageContaining("the coefficient of x is NaN");
        assertThatThrownBy(() -> new Expression().add(INF, x)).hasMessageContaining("the coefficient of x is Infinity");
    }
}
