package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import packpot.search.Draft.Line;
import packpot.solver.Expression;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;

/**
 * Coefficients of choices and rows that say the same. M. W. P. Savelsbergh, Preprocessing and probing techniques (1994): where
 * a row is slack by d for one side of a choice, its coefficient is drawn close by d.
 */
class ChoiceRowsTest {
    private final LinearModel<String> model = new LinearModel<>();
    private final Variable u = model.choice("u");
    private final Variable x = model.variable("x", 0, 5);

    private Line row(double a, double b, boolean atMost, double limit) {
        LinearModel<String> one = new LinearModel<>();
        Expression sum = new Expression().add(a, one.choice("u")).add(b, one.variable("x", 0, 5));
        if (atMost) {
            one.atMost("row", sum, limit, null);
        } else {
            one.atLeast("row", sum, limit, null);
        }
        Draft draft = new Draft(one);
        Tightening.apply(draft);
        return draft.lines.get(0);
    }

    private static void is(Line line, double a, double b, double limit) {
        assertThat(line.value).containsExactly(new double[] {a, b}, within(1e-12));
        assertThat(Double.isInfinite(line.lower) ? line.upper : line.lower).isCloseTo(limit, within(1e-12));
    }

    @Test
    void theSideThatIsSlackIsDrawnClose() {
        // With u at nothing x is at most 5 whatever the row says, which is 7 less than 12.
        is(row(10, 1, true, 12), 3, 1, 5);
        is(row(-10, -1, false, -12), -3, -1, -5);
        // With u at 1, 5 is 95 less than 100.
        is(row(-100, 1, true, 0), -5, 1, 0);
        is(row(100, -1, false, 0), 5, -1, 0);
        // With u at 1, 5 is 7 less than 12.
        is(row(-10, 1, true, 2), -3, 1, 2);
    }

    @Test
    void whatIsCloseAlreadyStays() {
        is(row(3, 1, true, 5), 3, 1, 5);
        is(row(-5, 1, true, 0), -5, 1, 0);
        is(row(3, 1, true, 5 + 8e-6), 3, 1, 5 + 8e-6);
        is(row(3, 1, true, 5 + 1e-5), 3 - 1e-5, 1, 5);
        is(row(-5 - 5.9e-6, 1, true, 0), -5 - 5.9e-6, 1, 0);
        is(row(-5 - 6.1e-6, 1, true, 0), -5, 1, 0);
    }

    @Test
    void ofTwoChoicesTheSecondSeesWhatTheFirstHasBecome() {
        Variable w = model.choice("w");
        // 4 u + 3 w + x at most 10 with x up to 5 is broken by both alone: 2 u + 2 w + x at most 7, since 12 is 2 too
        // much.
        model.atMost("row", new Expression().add(4, u).add(3, w).add(1, x), 10, null);
        Draft draft = new Draft(model);
        Tightening.apply(draft);
        Line line = draft.lines.get(0);
        double[] value = line.value;
        assertThat(value).containsExactly(new double[] {2, 1, 2}, within(1e-12));
        assertThat(line.upper).isCloseTo(7, within(1e-12));
    }

    @Test
    void onlyRowsWithOneLimitAndChoicesAreDrawnClose() {
        Variable n = model.whole("n", 0, 2);
        Variable v = model.whole("v", 1, 2);
        Variable open = model.variable("open", 0, Double.POSITIVE_INFINITY);
        model.row("both", new Expression().add(10, u).add(1, x), 1, 12, null);
        model.atMost("n", new Expression().add(10, n).add(1, x), 22, null);
        model.atMost("v", new Expression().add(10, v).add(1, x), 22, null);
        model.atLeast("open", new Expression().add(10, u).add(1, open), 8, null);
        model.atMost("not open", new Expression().add(10, u).add(-1, open), 8, null);
        Draft draft = new Draft(model);
        Tightening.apply(draft);
        assertThat(draft.lines.get(0).value).containsExactly(10, 1);
        assertThat(draft.lines.get(1).value).containsExactly(1, 10);
        assertThat(draft.lines.get(2).value).containsExactly(1, 10);
        // At most 8 of 10 are needed where nothing else is there, and 2 less than nothing.
        assertThat(draft.lines.get(3).value).containsExactly(new double[] {8, 1}, within(1e-12));
        assertThat(draft.lines.get(4).value).containsExactly(new double[] {2, -1}, within(1e-12));
        assertThat(draft.lines.get(4).upper).isCloseTo(0, within(1e-12));
    }

    private Draft withRows(double[][] coefficientsAndLimits) {
        Variable y = model.variable("y", 0, 5);
        for (double[] row : coefficientsAndLimits) {
            model.row("row", new Expression().add(row[1], x).add(row[2], y), row[0], row[3], null);
        }
        Draft draft = new Draft(model);
        Tightening.apply(draft);
        return draft;
    }

    @Test
    void ofMultiplesTheTighterLimitsStay() {
        Draft draft = withRows(new double[][] {{2, 1, 2, 12}, {5, 2, 4, 20}, {-33, -3, -6, -10}});
        assertThat(draft.lines).hasSize(1);
        assertThat(draft.lines.get(0).value).containsExactly(1, 2);
        assertThat(draft.lines.get(0).lower).isCloseTo(10.0 / 3, within(1e-12));
        assertThat(draft.lines.get(0).upper).isCloseTo(10, within(1e-12));
    }

    @Test
    void whatIsNoMultipleStays() {
        assertThat(withRows(new double[][] {{2, 1, 2, 9}, {3, 1, 2.001, 8}}).lines)
                .hasSize(2);
    }

    /** More digits than the rows are first told apart by. */
    @Test
    void whatIsNearlyAMultipleStays() {
        assertThat(withRows(new double[][] {{2, 1, 2, 9}, {3, 1, 2 + 1e-9, 8}}).lines)
                .hasSize(2);
    }

    @Test
    void multiplesAreFoundBehindOtherRows() {
        assertThat(withRows(new double[][] {{2, 1, 3, 12}, {2, 1, 2, 12}, {5, 2, 4, 20}}).lines)
                .hasSize(2);
    }

    /** Java's hash of (0, 33) is that of (1, 2). */
    @Test
    void theSameCoefficientsOfOtherVariablesAreAnotherRow() {
        LinearModel<String> wide = new LinearModel<>();
        Variable[] v = new Variable[34];
        for (int i = 0; i < v.length; i++) {
            v[i] = wide.variable("v" + i, 0, 5);
        }
        assertThat(Arrays.hashCode(new int[] {0, 33})).isEqualTo(Arrays.hashCode(new int[] {1, 2}));
        wide.atMost("one", new Expression().add(1, v[0]).add(2, v[33]), 10, null);
        wide.atMost("two", new Expression().add(1, v[1]).add(2, v[2]), 9, null);
        Draft draft = new Draft(wide);
        Tightening.apply(draft);
        assertThat(draft.lines).hasSize(2);
    }

    @Test
    void whatIsAMultipleUpToTheLastDigitsIsOne() {
        Draft draft = withRows(new double[][] {{0.7, 0.1, 0.3, 1.2}, {2.2, 0.3, 0.9, 3.3}});
        assertThat(0.1 * 9 == 0.9 && 0.3 / 0.1 == 0.9 / 0.3).isFalse();
        assertThat(draft.lines).hasSize(1);
        assertThat(draft.lines.get(0).upper).isCloseTo(1.1, within(1e-12));
    }
}
