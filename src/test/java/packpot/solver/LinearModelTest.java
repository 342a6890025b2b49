package packpot.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;

/** Models, their terms and their answers, reckoned by hand. */
class LinearModelTest {
    private static final double INF = Double.POSITIVE_INFINITY;

    private final LinearModel<String> model = new LinearModel<>();
    private final Variable x = model.variable("x", 1, 4);
    private final Variable n = model.whole("n", -2, 9);
    private final Variable u = model.choice("u");
    private final Row<String> row = model.row("sum", new Expression().add(2, x).add(3, n), 5, 10, "tag");

    LinearModelTest() {
        model.objective().add(7, x).add(-1, u);
    }

    @Test
    void variablesAreWhatTheyWereMadeAs() {
        assertThat(model.variables()).containsExactly(x, n, u);
        assertThat(model.variables()).extracting(Variable::index).containsExactly(0, 1, 2);
        assertThat(model.variables()).extracting(Variable::name).containsExactly("x", "n", "u");
        assertThat(model.variables()).extracting(Variable::lower).containsExactly(1.0, -2.0, 0.0);
        assertThat(model.variables()).extracting(Variable::upper).containsExactly(4.0, 9.0, 1.0);
        assertThat(model.variables()).extracting(Variable::integer).containsExactly(false, true, true);
        assertThat(model.hasIntegers()).isTrue();
        assertThat(model.relaxed().hasIntegers()).isFalse();
        assertThatThrownBy(() -> model.variable("y", 2, 1)).hasMessage("y has no room between 2.0 and 1.0");
        assertThatThrownBy(() -> model.variable("y", Double.NaN, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThat(model.variable("y", 2, 2).upper()).isEqualTo(2);
    }

    @Test
    void rowsHoldFromOneSideOrBoth() {
        Expression one = new Expression().add(1, x);
        assertThat(model.atLeast("least", one, 2, "a")).isEqualTo(new Row<>("least", one, 2, INF, "a"));
        assertThat(model.atMost("most", one, 3, "b")).isEqualTo(new Row<>("most", one, -INF, 3, "b"));
        assertThat(model.equal("equal", one, 3, null)).isEqualTo(new Row<>("equal", one, 3, 3, null));
        assertThat(model.rows()).extracting(Row::name).containsExactly("sum", "least", "most", "equal");
    }

    @Test
    void termsOfOneVariableAddUp() {
        Expression sum = new Expression().add(2, n).add(1, x).add(3, n).add(0, u);
        assertThat(sum.coefficient(n)).isEqualTo(5);
        assertThat(sum.coefficient(u)).isZero();
        assertThat(sum.size()).isEqualTo(2);
        assertThat(sum.isEmpty()).isFalse();
        assertThat(new Expression().isEmpty()).isTrue();
        assertThat(sum.value(new double[] {10, 3, 1})).isEqualTo(25);
        assertThat(new Expression().add(1, x).add(-2, sum).coefficient(x)).isEqualTo(-1);
        assertThat(new Expression().add(1, x).add(-2, sum).coefficient(n)).isEqualTo(-10);
        List<Variable> order = new ArrayList<>();
        sum.forEach((v, coefficient) -> order.add(v));
        assertThat(order).containsExactly(x, n);
        assertThatThrownBy(() -> sum.add(Double.NaN, x)).hasMessage("the coefficient of x is NaN");
        assertThatThrownBy(() -> sum.add(INF, x)).hasMessage("the coefficient of x is Infinity");
    }

    @Test
    void whatIsFixedHasNoRoomAndNothingElseChanges() {
        LinearModel<String> fixed = model.withFixed(Map.of(1, 3.0));
        assertThat(fixed.variables()).extracting(Variable::lower).containsExactly(1.0, 3.0, 0.0);
        assertThat(fixed.variables()).extracting(Variable::upper).containsExactly(4.0, 3.0, 1.0);
        for (LinearModel<String> copy : List.of(fixed, model.relaxed())) {
            Row<String> same = copy.rows().get(0);
            assertThat(List.of(same.name(), same.lower(), same.upper(), same.tag()))
                    .isEqualTo(List.of("sum", 5.0, 10.0, "tag"));
            assertThat(same.expression().coefficient(n)).isEqualTo(3);
            assertThat(same.expression().coefficient(x)).isEqualTo(2);
            assertThat(copy.objective().coefficient(x)).isEqualTo(7);
            assertThat(copy.objective().coefficient(u)).isEqualTo(-1);
        }
        assertThat(model.relaxed().variables()).extracting(Variable::upper).containsExactly(4.0, 9.0, 1.0);
    }

    /** The sum's largest term is 6, so that it may be off by 6e-5. */
    @Test
    void anAnswerIsCheckedAgainstEveryRow() {
        assertThatCode(() -> model.check(new double[] {2.0 + 2.9e-5, 2, 0})).doesNotThrowAnyException();
        assertThatThrownBy(() -> model.check(new double[] {2.0 + 3.1e-5, 2, 0}))
                .isInstanceOf(SolverException.class)
                .hasMessageStartingWith("the solver's answer breaks \"sum\": 10.0000")
                .hasMessageEndingWith(" is not within 5.0 and 10.0");
        assertThatCode(() -> model.check(new double[] {2.5 - 2.4e-5, 0, 0})).doesNotThrowAnyException();
        assertThatThrownBy(() -> model.check(new double[] {2.5 - 2.6e-5, 0, 0})).isInstanceOf(SolverException.class);
        assertThat(row.tag()).isEqualTo("tag");
    }

    @Test
    void aSolutionTellsHowFarItMayBeOff() {
        Solution solution = new Solution(Solution.Status.OPTIMAL, List.of(1.0, 2.0, 0.0), -8, -10, 1);
        assertThat(solution.value(n)).isEqualTo(2);
        assertThat(solution.relativeGap()).isEqualTo(0.25);
        assertThat(new Solution(Solution.Status.OPTIMAL, List.of(), 0, 0, 1).relativeGap())
                .isZero();
        for (Solution.Status status : Solution.Status.values()) {
            assertThat(new Solution(status, List.of(), 1, 1, 1).hasValues())
                    .isEqualTo(status == Solution.Status.OPTIMAL || status == Solution.Status.FEASIBLE);
        }
    }

    @Test
    void pricesOfTheWorkshopSayItsProfit() {
        LinearModel<String> workshop = HandWorked.workshop(4, 12, 18, 3, 5).model();
        LinearSolution solution = new Corners().solveLinear(workshop, 1);
        assertThat(solution.isOptimal()).isTrue();
        assertThat(LinearSolution.without(Solution.Status.UNKNOWN).isOptimal()).isFalse();
        assertThat(solution.value(workshop.variables().get(1))).isEqualTo(6);
        assertThat(solution.duals()).containsExactly(0.0, -1.5, -1.0);
        assertThat(solution.dualObjective(workshop)).isCloseTo(-36, within(1e-9));
        assertThat(solution.firstOrder(workshop)).isCloseTo(-36, within(1e-9));
        // An hour more in the third shop, a profit of 4 instead of 3, and 3 hours instead of 2 for y in the second.
        assertThat(solution.firstOrder(HandWorked.workshop(4, 12, 19, 3, 5).model()))
                .isCloseTo(-37, within(1e-9));
        assertThat(solution.firstOrder(HandWorked.workshop(4, 12, 18, 4, 5).model()))
                .isCloseTo(-38, within(1e-9));
        LinearModel<String> slower = HandWorked.workshop(4, 12, 18, 3, 5).model();
        LinearModel<String> more = new Variant<>(slower)
                .add(
                        slower.rows().get(1),
                        1,
                        new Expression().add(1, slower.variables().get(1)))
                .model();
        assertThat(solution.firstOrder(more)).isCloseTo(-36 + 1.5 * 6, within(1e-9));
    }

    @Test
    void pricesOfTheFeedsSayTheirCost() {
        LinearModel<String> feed = HandWorked.feed(10, 6, 2, 3).model();
        LinearSolution solution = new Corners().solveLinear(feed, 1);
        assertThat(solution.reducedCosts()).containsExactly(-1.0, 0.0);
        assertThat(solution.dualObjective(feed)).isCloseTo(24, within(1e-9));
        assertThat(solution.firstOrder(HandWorked.feed(11, 6, 2, 3).model())).isCloseTo(27, within(1e-9));
        assertThat(solution.firstOrder(HandWorked.feed(10, 7, 2, 3).model())).isCloseTo(23, within(1e-9));
        assertThat(solution.firstOrder(HandWorked.feed(10, INF, 2, 3).model())).isCloseTo(24, within(1e-9));
        LinearModel<String> none =
                new Variant<>(feed).shift(feed.rows().get(0), -INF, 0).model();
        assertThat(solution.firstOrder(none)).isCloseTo(24, within(1e-9));
        assertThat(solution.dualObjective(none)).isCloseTo(-6, within(1e-9));
        // At no more than 2 of the dear one, a price above 0 stands at the lower bound of 0.
        LinearModel<String> little = HandWorked.feed(5, 6, 2, 3).model();
        LinearSolution cheap = new Corners().solveLinear(little, 1);
        assertThat(cheap.reducedCosts()).containsExactly(0.0, 1.0);
        assertThat(cheap.dualObjective(little)).isCloseTo(10, within(1e-9));
        LinearModel<String> least =
                new Variant<>(little).bound(little.variables().get(1), 2, 9).model();
        assertThat(cheap.firstOrder(least)).isCloseTo(12, within(1e-9));
        assertThat(cheap.dualObjective(least)).isCloseTo(12, within(1e-9));
    }

    @Test
    void changesOfAVariantAddUp() {
        LinearModel<String> changed = new Variant<>(model)
                .shift(row, 1, 2)
                .shift(row, 1, 2)
                .add(row, 2, new Expression().add(1, u))
                .bound(n, 0, 3)
                .charge(2, new Expression().add(1, n))
                .minimise(new Expression().add(1, n))
                .model();
        Row<String> now = changed.rows().get(0);
        assertThat(now.lower()).isEqualTo(7);
        assertThat(now.upper()).isEqualTo(14);
        assertThat(now.tag()).isEqualTo("tag");
        assertThat(now.expression().coefficient(u)).isEqualTo(2);
        assertThat(now.expression().coefficient(n)).isEqualTo(3);
        assertThat(changed.variables().get(1).lower()).isZero();
        assertThat(changed.variables().get(1).integer()).isTrue();
        assertThat(changed.objective().coefficient(n)).isEqualTo(1);
        assertThat(changed.objective().coefficient(x)).isZero();
        LinearModel<String> fixed =
                new Variant<>(model).withIntegersFixed(v -> v.index() + 0.4).model();
        assertThat(fixed.hasIntegers()).isFalse();
        assertThat(fixed.variables()).extracting(Variable::lower).containsExactly(1.0, 1.0, 2.0);
        assertThat(fixed.variables()).extracting(Variable::upper).containsExactly(4.0, 1.0, 2.0);
    }
}
