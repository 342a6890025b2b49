package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.search.Programs.sum;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import packpot.search.Draft.Line;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;

/** Which variable an equation defines, and what becomes of the other rows and of the cost; all by hand. */
class SubstitutionTest {
    private static final double INF = Double.POSITIVE_INFINITY;

    private final LinearModel<String> model = new LinearModel<>();

    private Draft substituted() {
        Draft draft = new Draft(model);
        Substitution.apply(draft);
        return draft;
    }

    private static List<Integer> defined(Draft draft) {
        return IntStream.range(0, draft.defined.length)
                .filter(v -> draft.defined[v])
                .boxed()
                .toList();
    }

    private static void is(Line line, double lower, int[] index, double[] value, double upper) {
        assertThat(line.index).isEqualTo(index);
        assertThat(line.value).containsExactly(value, within(1e-12));
        assertThat(line.lower).isEqualTo(lower);
        assertThat(line.upper).isEqualTo(upper);
    }

    /** 2 s - 6 x + 4 y = 10, so s = 5 + 3 x - 2 y, at 7. */
    @Test
    void whatIsDefinedIsPutInItsPlace() {
        Variable x = model.variable("x", 0, 2);
        Variable s = model.variable("s", -100, 100);
        Variable y = model.variable("y", 0, 1);
        Variable z = model.variable("z", 0, 1);
        model.objective().add(1, x).add(7, s).add(1, z);
        model.row("before", sum(1, x, 1, s, 1, z), 0, 20, null);
        model.equal("s", sum(-6, x, 2, s, 4, y), 10, null);
        model.atMost("after", sum(3, s, 6, y), 30, null);
        model.atMost("without", sum(1, x, 1, z), 2, null);
        Draft draft = substituted();
        assertThat(defined(draft)).containsExactly(1);
        Compact.Defined definition = draft.definitions.get(0);
        assertThat(definition.variable()).isEqualTo(1);
        assertThat(definition.constant()).isEqualTo(5);
        assertThat(definition.index()).containsExactly(0, 2);
        assertThat(definition.value()).containsExactly(3, -2);
        assertThat(draft.cost).containsExactly(22, 0, -14, 1);
        assertThat(draft.offset).isEqualTo(35);
        assertThat(draft.lines).hasSize(3);
        is(draft.lines.get(0), -5, new int[] {0, 2, 3}, new double[] {4, -2, 1}, 15);
        // 3 (5 + 3 x - 2 y) + 6 y: nothing is left of y.
        is(draft.lines.get(1), -INF, new int[] {0}, new double[] {9}, 15);
        is(draft.lines.get(2), -INF, new int[] {0, 3}, new double[] {1, 1}, 2);
    }

    @Test
    void whatIsCancelledUpToTheLastDigitIsGone() {
        Variable s = model.variable("s", -100, 100);
        Variable x = model.variable("x", 0, 1);
        Variable y = model.variable("y", 0, 1);
        // 3 * 0.1 is not 0.3 in binary digits.
        model.equal("s", sum(1, s, -0.1, x, -1, y), 0, null);
        model.atMost("row", sum(3, s, -0.3, x), 2, null);
        assertThat(3 * 0.1 == 0.3).isFalse();
        is(substituted().lines.get(0), -INF, new int[] {2}, new double[] {3}, 2);
    }

    @Test
    void onlyEquationsDefineAndOnlyFractionsAreDefined() {
        Variable x = model.variable("x", -9, 9);
        Variable n = model.whole("n", 0, 3);
        Variable m = model.whole("m", 0, 3);
        model.row("nearly", sum(1, x, 1, n), 0, 1, null);
        model.equal("whole", sum(1, n, -1, m), 0, null);
        assertThat(defined(substituted())).isEmpty();
        model.equal("with a fraction", sum(1, n, -1, x), 0, null);
        assertThat(defined(substituted())).containsExactly(0);
    }

    @Test
    void theOneThatIsUsedLeastIsDefined() {
        Variable s = model.variable("s", -99, 99);
        Variable t = model.variable("t", -99, 99);
        model.equal("equation", sum(1, s, 1, t, 1, model.variable("o", -1, 1)), 0, null);
        model.atMost("one", sum(1, s, 2, model.variable("p", 0, 9)), 5, null);
        model.atMost("two", sum(1, s, 3, model.variable("q", 0, 9)), 5, null);
        model.atMost("three", sum(1, t, 3, model.variable("r", 0, 9)), 5, null);
        model.objective().add(1, s);
        // The third of them is used once, but its bounds do not follow: 1 at most, and 198 may come of the others.
        LinearModel<String> first = new LinearModel<>();
        Variable a = first.variable("a", -1, 1);
        Variable b = first.variable("b", -99, 99);
        first.equal("equation", sum(1, a, 1, b), 0, null);
        first.atMost("b", sum(1, b, 1, first.variable("c", 0, 9)), 5, null);
        first.atMost("b too", sum(1, b, 2, first.variable("d", 0, 9)), 5, null);
        Draft of = new Draft(first);
        Substitution.apply(of);
        assertThat(defined(of)).containsExactly(1);
        assertThat(of.lines).hasSize(2);
        // Here no bounds follow, and the one that is used least leaves them as a row.
        Draft draft = substituted();
        assertThat(defined(draft)).containsExactly(2);
        is(draft.lines.get(3), -1, new int[] {0, 1}, new double[] {-1, -1}, 1);
    }

    /** s = x + y and w: after the first equation, x and y stand wherever s stood, so that of x and w it is w that is defined. */
    @Test
    void whatIsPutInCounts() {
        Variable x = model.variable("x", -50, 50);
        Variable y = model.variable("y", 0, 9);
        Variable s = model.variable("s", -99, 99);
        Variable w = model.variable("w", -50, 50);
        Variable o = model.variable("o", 0, 9);
        model.equal("s", sum(1, s, -1, x, -1, y), 0, null);
        model.equal("w", sum(1, x, 1, w), 0, null);
        model.atMost("s one", sum(1, s, 1, o), 5, null);
        model.atMost("w one", sum(1, w, 2, o), 5, null);
        model.atMost("w two", sum(1, w, 3, o), 5, null);
        model.atMost("s two", sum(1, s, 4, o), 5, null);
        model.atMost("s three", sum(1, s, 5, o), 5, null);
        assertThat(defined(substituted())).containsExactly(2, 3);
    }

    /** s = p - x makes x + s in two rows p alone: x is used less than y from then on, and of these two it is x that is defined. */
    @Test
    void whatIsTakenOutCountsNoLonger() {
        Variable x = model.variable("x", -50, 50);
        Variable y = model.variable("y", -50, 50);
        Variable o = model.variable("o", 0, 9);
        Variable p = model.variable("p", 0, 9);
        Variable s = model.variable("s", -99, 99);
        model.equal("s", sum(1, s, 1, x, -1, p), 0, null);
        model.atMost("one", sum(1, x, 1, s, 1, o), 5, null);
        model.atMost("two", sum(2, x, 2, s, 3, o), 5, null);
        model.equal("x and y", sum(1, x, -1, y), 0, null);
        model.atMost("y one", sum(1, y, 1, o), 5, null);
        model.atMost("y two", sum(1, y, 2, o), 5, null);
        Draft draft = substituted();
        assertThat(defined(draft)).containsExactly(0, 4);
    }

    @Test
    void aSmallCoefficientDefinesNothing() {
        for (double coefficient : new double[] {0.9e-3, 1.1e-3, -1.1e-3}) {
            LinearModel<String> small = new LinearModel<>();
            Variable n = small.whole("n", 0, 3);
            Variable x = small.variable("x", -INF, INF);
            small.equal("x", sum(-4, n, 4 * coefficient, x), 0, null);
            Draft draft = new Draft(small);
            Substitution.apply(draft);
            assertThat(defined(draft)).hasSize(Math.abs(coefficient) < 1e-3 ? 0 : 1);
        }
    }

    /** s = (1 + n - 2 m) / 4 with n and m up to 3 goes from -1.25 to 1. */
    @Test
    void boundsThatFollowAreNoRow() {
        double[][] bounds = {
            {-1.25, 1}, {-1.3, 1.1}, {-1.24, 1}, {-1.25, 0.99}, {-INF, 1}, {-1.25, INF},
        };
        boolean[] follow = {true, true, false, false, true, true};
        for (int i = 0; i < bounds.length; i++) {
            for (int sign : new int[] {1, -1}) {
                LinearModel<String> one = new LinearModel<>();
                Variable n = one.whole("n", 0, 3);
                Variable m = one.whole("m", 0, 3);
                Variable s = one.variable("s", bounds[i][0], bounds[i][1]);
                one.equal("s", sum(-sign, n, 2 * sign, m, 4 * sign, s), sign, null);
                Draft draft = new Draft(one);
                Substitution.apply(draft);
                assertThat(defined(draft)).containsExactly(2);
                assertThat(draft.lines).hasSize(follow[i] ? 0 : 1);
                if (!follow[i]) {
                    is(
                            draft.lines.get(0),
                            bounds[i][0] - 0.25,
                            new int[] {0, 1},
                            new double[] {0.25, -0.5},
                            bounds[i][1] - 0.25);
                }
            }
        }
    }

    /** A ten millionth of 1 + 1.25 + 1 is lost digits. */
    @Test
    void boundsFollowUpToDigits() {
        for (double lacking : new double[] {3.2e-7, 3.3e-7}) {
            for (boolean below : new boolean[] {true, false}) {
                LinearModel<String> one = new LinearModel<>();
                Variable n = one.whole("n", 0, 3);
                Variable m = one.whole("m", 0, 3);
                Variable s = one.variable("s", -1.25 + (below ? lacking : 0), 1 - (below ? 0 : lacking));
                one.equal("s", sum(-1, n, 2, m, 4, s), 1, null);
                Draft draft = new Draft(one);
                Substitution.apply(draft);
                assertThat(draft.lines).hasSize(lacking < 3.25e-7 ? 0 : 1);
            }
        }
    }

    @Test
    void whatCannotMoveIsNoPartOfADefinition() {
        Variable x = model.variable("x", 0, 9);
        Variable held = model.variable("held", 4, 4);
        Variable s = model.variable("s", -99, 99);
        model.equal("s", sum(1, s, -1, x, -2, held), 1, null);
        Compact.Defined definition = substituted().definitions.get(0);
        assertThat(definition.variable()).isEqualTo(2);
        assertThat(definition.constant()).isEqualTo(9);
        assertThat(definition.index()).containsExactly(0);
    }
}
