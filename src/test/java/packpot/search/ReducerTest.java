package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.search.Programs.sum;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;

/** What is made of small models before they are searched, as it follows by hand. */
class ReducerTest {
    private static final double INF = Double.POSITIVE_INFINITY;

    private final LinearModel<String> model = new LinearModel<>();

    private Compact reduced() {
        return Reducer.reduce(model).orElseThrow();
    }

    private boolean impossible() {
        return Reducer.reduce(model).isEmpty();
    }

    private static double lower(Compact program, Variable v) {
        int column = program.way().column()[v.index()];
        return column < 0
                ? program.way().fixed()[v.index()]
                : program.lower()[column] * program.way().scale()[v.index()];
    }

    private static double upper(Compact program, Variable v) {
        int column = program.way().column()[v.index()];
        return column < 0
                ? program.way().fixed()[v.index()]
                : program.upper()[column] * program.way().scale()[v.index()];
    }

    /** A row in the model's own units, such that its first coefficient is 1: lower limit, coefficients, upper limit. */
    private static List<Double> row(Compact program, int i) {
        double[] scale = new double[program.columns()];
        for (int v = 0; v < program.way().column().length; v++) {
            if (program.way().column()[v] >= 0) {
                scale[program.way().column()[v]] = program.way().scale()[v];
            }
        }
        int[] index = program.index()[i];
        double first = program.value()[i][0] / scale[index[0]];
        List<Double> row = new ArrayList<>();
        double one = program.rowLower()[i] / first;
        double two = program.rowUpper()[i] / first;
        row.add(Math.min(one, two));
        for (int k = 0; k < index.length; k++) {
            row.add(program.value()[i][k] / scale[index[k]] / first);
        }
        row.add(Math.max(one, two) + 0.0);
        return row;
    }

    @Test
    void aRowThatCannotBeBrokenIsLeftOut() {
        Variable x = model.variable("x", 0, 10);
        Variable y = model.variable("y", -2, 10);
        model.atMost("loose", sum(1, x, 1, y), 20, null);
        model.atLeast("loose too", sum(1, x, -1, y), -10, null);
        assertThat(reduced().rows()).isZero();
        model.atMost("tight", sum(1, x, 1, y), 19, null);
        model.atLeast("tight too", sum(1, x, -1, y), -9, null);
        assertThat(reduced().rows()).isEqualTo(2);
        assertThat(row(reduced(), 0)).containsExactly(-INF, 1.0, 1.0, 19.0);
        assertThat(row(reduced(), 1)).containsExactly(-9.0, 1.0, -1.0, INF);
    }

    @Test
    void aRowOfWhichOneSideCannotBeBrokenKeepsTheOther() {
        Variable x = model.variable("x", 0, 10);
        Variable y = model.variable("y", 0, 10);
        model.row("both", sum(1, x, 2, y), -1, 25, null);
        assertThat(row(reduced(), 0)).containsExactly(-INF, 1.0, 2.0, 25.0);
        model.row("both too", sum(3, x, 2, y), 4, 60, null);
        assertThat(row(reduced(), 1).get(0)).isCloseTo(4.0 / 3, within(1e-12));
        assertThat(row(reduced(), 1).get(3)).isEqualTo(INF);
    }

    @Test
    void aRowLeavesItsVariablesWhatTheOthersLeave() {
        Variable n = model.whole("n", 0, 100);
        Variable x = model.variable("x", 1, 100);
        Variable y = model.variable("y", -50, 3);
        // 2 n + x <= 12 with x from 1 on: n is at most 5, x at most 12. n - y <= 5: y is at least -5.
        model.atMost("most", sum(2, n, 1, x), 12, null);
        model.atMost("difference", sum(1, n, -1, y), 5, null);
        Compact program = reduced();
        assertThat(upper(program, n)).isEqualTo(5);
        assertThat(upper(program, x)).isCloseTo(12, within(1e-6));
        assertThat(lower(program, y)).isCloseTo(-5, within(1e-6));
        assertThat(upper(program, y)).isEqualTo(3);
        assertThat(lower(program, x)).isEqualTo(1);
    }

    @Test
    void whatHasNoSolutionIsSeen() {
        Variable x = model.variable("x", 0, 10);
        Variable y = model.variable("y", 0, 10);
        model.atLeast("much", sum(1, x, 1, y), 20, null);
        assertThat(impossible()).isFalse();
        model.atLeast("too much", sum(1, x, 2, y), 30.1, null);
        assertThat(impossible()).isTrue();
    }

    @Test
    void aWholeNumberBetweenTwoOthersHasNoRoom() {
        Variable n = model.whole("n", 1.2, 2.9);
        assertThat(lower(reduced(), n)).isEqualTo(2);
        assertThat(upper(reduced(), n)).isEqualTo(2);
        model.whole("none", 1.2, 1.9);
        assertThat(impossible()).isTrue();
    }

    @Test
    void aLimitBelowWhatIsThereAtLeastIsSeen() {
        Variable x = model.variable("x", 2, 10);
        model.atMost("little", sum(3, x), 5.9, null);
        assertThat(impossible()).isTrue();
    }

    @Test
    void whatCannotMoveIsReckonedIn() {
        Variable x = model.variable("x", 0, 10);
        Variable held = model.variable("held", 3, 3);
        Variable y = model.variable("y", 0, 10);
        model.objective().add(1, x).add(5, held).add(1, y);
        model.atLeast("need", sum(1, x, 2, held, 1, y), 11, null);
        Compact program = reduced();
        assertThat(program.columns()).isEqualTo(2);
        assertThat(program.offset()).isEqualTo(15);
        assertThat(row(program, 0)).containsExactly(5.0, 1.0, 1.0, INF);
        assertThat(program.expand(program.shrink(List.of(4.0, 3.0, 1.0)))).containsExactly(4, 3, 1);
        assertThat(program.cost(program.shrink(List.of(4.0, 3.0, 1.0)))).isEqualTo(20);
    }

    /** 2 s = 4 + 6 x - 2 y, so s = 2 + 3 x - y, at 7 a piece. */
    @Test
    void whatAnEquationDefinesFollowsFromTheRest() {
        Variable x = model.variable("x", 0, 2);
        Variable y = model.variable("y", 0, 1);
        Variable s = model.variable("s", -100, 100);
        model.objective().add(1, x).add(7, s);
        model.equal("s", sum(2, s, -6, x, 2, y), 4, null);
        model.atMost("room", sum(1, s, 1, x, 1, y), 8, null);
        Compact program = reduced();
        assertThat(program.columns()).isEqualTo(2);
        assertThat(program.offset()).isEqualTo(14);
        // s + x + y <= 8 is 4 x <= 6.
        assertThat(upper(program, x)).isCloseTo(1.5, within(1e-6));
        assertThat(program.expand(program.shrink(List.of(1.0, 0.5)))).containsExactly(1, 0.5, 4.5);
        assertThat(program.cost(program.shrink(List.of(1.0, 0.5)))).isCloseTo(1 + 7 * 4.5, within(1e-12));
    }

    @Test
    void boundsOfADefinedVariableThatDoNotFollowStayAsARow() {
        Variable x = model.variable("x", 0, 10);
        Variable y = model.variable("y", 0, 10);
        Variable s = model.variable("s", 1, 12);
        model.objective().add(-1, x).add(-1, y);
        model.equal("s", sum(1, s, -1, x, -1, y), 0, null);
        Compact program = reduced();
        assertThat(program.columns()).isEqualTo(2);
        assertThat(program.rows()).isEqualTo(1);
        // x = s - y, from 0 to 10.
        assertThat(row(program, 0)).containsExactly(-10.0, 1.0, -1.0, 0.0);
    }

    @Test
    void aDefinitionOfOneThatIsDefinedItselfIsReckonedAfterIt() {
        Variable x = model.whole("x", 0, 3);
        Variable a = model.variable("a", -100, 100);
        Variable b = model.variable("b", -100, 100);
        model.objective().add(1, b);
        model.equal("a", sum(1, a, -2, x), 1, null);
        model.equal("b", sum(1, b, -3, a), 0, null);
        Compact program = reduced();
        assertThat(program.columns()).isEqualTo(1);
        assertThat(program.expand(program.shrink(List.of(2.0)))).containsExactly(2, 5, 15);
        assertThat(program.offset() + program.cost()[0] * 2 / program.way().scale()[0])
                .isEqualTo(15);
    }

    /** 10 u + x <= 12 with x up to 5 says no more than 3 u + x <= 5 does; and -10 u - x >= -12 the same. */
    @Test
    void aChoicesCoefficientIsNoLargerThanItNeedBe() {
        Variable u = model.choice("u");
        Variable x = model.variable("x", 0, 5);
        model.atMost("most", sum(10, u, 1, x), 12, null);
        assertThat(row(reduced(), 0).get(1)).isEqualTo(1);
        assertThat(row(reduced(), 0).get(2)).isCloseTo(1.0 / 3, within(1e-12));
        assertThat(row(reduced(), 0).get(3)).isCloseTo(5.0 / 3, within(1e-12));
    }

    @Test
    void aChoiceThatMakesRoomMakesNoMoreThanNeeded() {
        Variable u = model.choice("u");
        Variable x = model.variable("x", 0, 5);
        // x <= 100 u: no more than 5 can come of it.
        model.atLeast("open", sum(100, u, -1, x), 0, null);
        assertThat(row(reduced(), 0).get(2)).isCloseTo(-0.2, within(1e-12));
        assertThat(row(reduced(), 0).get(0)).isCloseTo(0, within(1e-12));
    }

    @Test
    void ofMultiplesTheTighterLimitsStay() {
        Variable x = model.variable("x", 0, 10);
        Variable y = model.variable("y", 0, 10);
        model.atMost("one", sum(1, x, 2, y), 12, null);
        model.atMost("two", sum(2, x, 4, y), 20, null);
        model.atLeast("three", sum(-3, x, -6, y), -33, null);
        model.atLeast("four", sum(1, x, 2, y), 4, null);
        model.atMost("other", sum(1, x, 2.5, y), 11, null);
        assertThat(reduced().rows()).isEqualTo(2);
        assertThat(row(reduced(), 0)).containsExactly(4.0, 1.0, 2.0, 10.0);
    }

    @Test
    void theWayBackKeepsWhatIsNotKnown() {
        Variable x = model.whole("x", 0, 10);
        Variable y = model.variable("y", 0, 10);
        model.atLeast("need", sum(8, x, 1, y), 9, null);
        Compact program = reduced();
        assertThat(program.shrink(List.of(4.0))[0] * program.way().scale()[0]).isEqualTo(4);
        assertThat(program.shrink(List.of(4.0))[1]).isNaN();
        assertThat(program.whole(0)).isTrue();
        assertThat(program.whole(1)).isFalse();
        assertThat(program.unit()[0]).isEqualTo(1 / program.way().scale()[0]);
    }
}
