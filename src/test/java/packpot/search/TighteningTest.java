package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import packpot.search.Draft.Line;
import packpot.solver.Expression;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;

/** What rows leave to bounds and coefficients, by hand and against all points of a grid. */
class TighteningTest {
    private static final double INF = Double.POSITIVE_INFINITY;

    private final LinearModel<String> model = new LinearModel<>();

    private static Expression sum(double a, Variable x) {
        return new Expression().add(a, x);
    }

    private static Expression sum(double a, Variable x, double b, Variable y) {
        return new Expression().add(a, x).add(b, y);
    }

    private Draft tightened() {
        Draft draft = new Draft(model);
        Tightening.apply(draft);
        return draft;
    }

    /** A bound follows up to a thousandth part of a millionth of itself, so that no digit cuts a solution off. */
    private static void follows(double bound, double from, double outwards) {
        double room = outwards * (bound - from) / (1e-9 * (1 + Math.abs(from)));
        assertThat(room).isBetween(0.9, 1.1);
    }

    @Test
    void aRowBoundsEachOfItsVariables() {
        Variable x = model.variable("x", 0, 5000);
        Variable y = model.variable("y", 20, 5000);
        Variable z = model.variable("z", -INF, INF);
        // x at most (1000 - 4 * 20) / 2, y at most 1000 / 4; z at least 2 * 20 - 300.
        model.atMost("most", sum(2, x, 4, y), 1000, null);
        model.atLeast("least", sum(-2, y, 1, z), -300, null);
        Draft draft = tightened();
        follows(draft.upper[0], 460, 1);
        follows(draft.upper[1], 250, 1);
        follows(draft.lower[2], -260, -1);
        assertThat(draft.lower).startsWith(0, 20);
        assertThat(draft.upper[2]).isEqualTo(INF);
        assertThat(draft.lines).hasSize(2);
        assertThat(draft.impossible).isFalse();
    }

    @Test
    void wholeNumbersAreBoundedByWholeNumbers() {
        Variable n = model.whole("n", -90, 90);
        Variable m = model.whole("m", -90, 90);
        model.row("n", sum(4, n), -31, 31, null);
        model.row("m", sum(4, m), -32 - 3.9e-6, 32 - 3.9e-6, null);
        Draft draft = tightened();
        assertThat(draft.lower).containsExactly(-7, -8);
        assertThat(draft.upper).containsExactly(7, 8);
        // 4 n up to 28 keeps to its row whatever it is.
        assertThat(draft.lines).hasSize(1);
        assertThat(draft.lines.get(0).index).containsExactly(1);
    }

    /** Of 1000 that a variable has, 1 is a thousandth. */
    @Test
    void aLittleIsNotWorthARound() {
        model.atMost("a", sum(1, model.variable("a", 0, 1000), 1, model.variable("o", 0, 9)), 999.1, null);
        model.atMost("b", sum(1, model.variable("b", 0, 1000), 1, model.variable("p", 0, 9)), 998.9, null);
        model.atLeast("c", sum(1, model.variable("c", 0, 1000), 1, model.variable("q", 0, 9)), 9.9, null);
        model.atLeast("d", sum(1, model.variable("d", 0, 1000), 1, model.variable("r", 0, 9)), 10.1, null);
        Draft draft = tightened();
        assertThat(draft.upper[0]).isEqualTo(1000);
        follows(draft.upper[2], 998.9, 1);
        assertThat(draft.lower[4]).isZero();
        follows(draft.lower[6], 1.1, -1);
        // The same small step is taken where there is no end on the other side.
        LinearModel<String> open = new LinearModel<>();
        open.atMost("e", sum(1, open.variable("e", -INF, 1000), 1, open.variable("s", 0, 9)), 999.1, null);
        Draft other = new Draft(open);
        Tightening.apply(other);
        follows(other.upper[0], 999.1, 1);
    }

    @Test
    void whatFollowsFromOneRowGoesOnToTheNextForSixRounds() {
        // Each is at most the next one, and the last at most 3, which is read last.
        Variable[] x = new Variable[9];
        for (int i = 0; i < 9; i++) {
            x[i] = model.variable("x" + i, 0, 100);
        }
        for (int i = 0; i < 8; i++) {
            model.atMost("less " + i, sum(1, x[i], -1, x[i + 1]), 0, null);
        }
        model.atMost("last", sum(1, x[8]), 3, null);
        Draft draft = tightened();
        for (int i = 0; i < 9; i++) {
            assertThat(draft.upper[i]).isCloseTo(i < 3 ? 100 : 3, within(1e-6));
        }
    }

    /** 3 x up to 6 - d with x from 2 on: 7 millionths, of 1 + 6, may be lost digits. */
    @Test
    void whatIsBrokenByDigitsAloneIsNotImpossible() {
        for (double lacking : new double[] {-1e-3, 6.9e-6, 7.1e-6}) {
            for (int sign : new int[] {1, -1}) {
                LinearModel<String> small = new LinearModel<>();
                Variable x = small.variable("x", 2, 10);
                double limit = sign * (6 - lacking);
                small.row("row", sum(3 * sign, x), sign > 0 ? -INF : limit, sign > 0 ? limit : INF, null);
                Draft draft = new Draft(small);
                Tightening.apply(draft);
                assertThat(draft.impossible).isEqualTo(lacking > 7e-6);
                if (lacking > 0 && !draft.impossible) {
                    assertThat(draft.lower[0]).isEqualTo(draft.upper[0]).isCloseTo(2, within(3e-6));
                }
            }
        }
    }

    /** A thousandth of x up to 0.002 less a little: the row itself is nearly kept, but x would be below 2 by much. */
    @Test
    void aVariableWithoutRoomIsImpossible() {
        for (double lacking : new double[] {2.9e-9, 3.1e-9}) {
            LinearModel<String> small = new LinearModel<>();
            small.atMost("row", sum(1e-3, small.variable("x", 2, 10)), 2e-3 - lacking - 3e-12, null);
            Draft draft = new Draft(small);
            Tightening.apply(draft);
            assertThat(draft.impossible).isEqualTo(lacking > 3e-9);
        }
        model.row("half", sum(2, model.whole("n", 0, 9)), 5, 5, null);
        assertThat(tightened().impossible).isTrue();
    }

    /** x + y from 2 on is at least 2; that it should be 3 thousandth parts of a millionth more may be lost digits. */
    @Test
    void aLimitThatIsKeptUpToDigitsIsDropped() {
        for (double more : new double[] {2.9e-9, 3.1e-9}) {
            LinearModel<String> small = new LinearModel<>();
            Variable x = small.variable("x", 1, 9);
            Variable y = small.variable("y", 1, 9);
            small.atLeast("least", sum(1, x, 1, y), 2 + more, null);
            small.atMost("most", sum(-1, x, -1, y), -2 - more, null);
            Draft draft = new Draft(small);
            Tightening.apply(draft);
            assertThat(draft.lines.isEmpty()).isEqualTo(more < 3e-9);
        }
    }

    @Test
    void whatCannotMoveGoesToTheLimits() {
        Variable x = model.variable("x", 0, 9);
        Variable held = model.variable("held", 3, 3);
        Variable y = model.variable("y", 0, 9);
        model.row("row", sum(2, x, 5, held).add(1, y), 18, 21, null);
        Draft draft = tightened();
        // 2 x + y from 3 to 6.
        assertThat(draft.lines).hasSize(1);
        assertThat(draft.lines.get(0).index).containsExactly(0, 2);
        assertThat(draft.lines.get(0).lower).isEqualTo(3);
        assertThat(draft.lines.get(0).upper).isEqualTo(6);
        follows(draft.upper[0], 3, 1);
        follows(draft.upper[2], 6, 1);
    }

    private static final int POINTS = 4;

    /** Two choices, a whole number from -1 on and a fraction from nothing on, in rows of whole coefficients. */
    private static LinearModel<String> random(Random random) {
        LinearModel<String> drawn = new LinearModel<>();
        List<Variable> variables =
                List.of(drawn.choice("u"), drawn.choice("w"), drawn.whole("n", -1, 2), drawn.variable("x", 0, 1.5));
        int rows = 1 + random.nextInt(4);
        for (int i = 0; i < rows; i++) {
            Expression sum = new Expression();
            variables.forEach(v -> sum.add(random.nextInt(4) == 0 ? 0 : random.nextInt(17) - 8, v));
            int limit = random.nextInt(21) - 8;
            switch (random.nextInt(4)) {
                case 0 -> drawn.row("both" + i, sum, limit - 6, limit, null);
                case 1, 2 -> drawn.atMost("most" + i, sum, limit, null);
                default -> drawn.atLeast("least" + i, sum, -limit, null);
            }
        }
        return drawn;
    }

    private static boolean allows(Draft draft, double[] point) {
        for (int j = 0; j < point.length; j++) {
            if (point[j] < draft.lower[j] - 1e-7 || point[j] > draft.upper[j] + 1e-7) {
                return false;
            }
        }
        for (Line line : draft.lines) {
            double sum = 0;
            for (int k = 0; k < line.index.length; k++) {
                sum += line.value[k] * point[line.index[k]];
            }
            if (sum < line.lower - 1e-7 || sum > line.upper + 1e-7) {
                return false;
            }
        }
        return true;
    }

    @Test
    void noSolutionIsLostAndNoneIsAdded() {
        Random random = new Random(31);
        int impossible = 0;
        for (int i = 0; i < 600; i++) {
            LinearModel<String> drawn = random(random);
            Draft before = new Draft(drawn);
            Draft after = new Draft(drawn);
            Tightening.apply(after);
            impossible += after.impossible ? 1 : 0;
            for (int number = 0; number < 4 * POINTS * POINTS; number++) {
                double[] point = {
                    number % 2, number / 2 % 2, number / 4 % POINTS - 1, number / (4 * POINTS) * 0.5,
                };
                boolean solution = allows(before, point);
                assertThat(after.impossible && solution).as("model %s", i).isFalse();
                if (!after.impossible) {
                    assertThat(allows(after, point)).as("model %s", i).isEqualTo(solution);
                }
            }
        }
        assertThat(impossible).isBetween(60, 300);
    }
}
