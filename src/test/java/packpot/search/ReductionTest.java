package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import packpot.solver.Expression;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;

/** What the parts of the reduction do for each other. */
class ReductionTest {
    private final LinearModel<String> model = new LinearModel<>();

    /** s = x + y up to 100, where x and y are up to 5 by their rows: once that is seen, nothing is left to say of s. */
    @Test
    void boundsAreDrawnCloseBeforeAnEquationDefines() {
        Variable x = model.variable("x", 0, 1000);
        Variable y = model.variable("y", 0, 1000);
        Variable s = model.variable("s", 0, 100);
        model.equal("s", new Expression().add(1, s).add(-1, x).add(-1, y), 0, null);
        model.atMost("x", new Expression().add(1, x), 5, null);
        model.atMost("y", new Expression().add(1, y), 5, null);
        model.objective().add(-1, s);
        Compact program = Reducer.reduce(model).orElseThrow();
        assertThat(program.columns()).isEqualTo(2);
        assertThat(program.rows()).isZero();
    }

    /** b stands in the definition of a, which comes first; b has to be reckoned before it. */
    @Test
    void whatIsDefinedLaterIsReckonedEarlier() {
        Variable n = model.whole("n", 0, 3);
        Variable a = model.variable("a", -100, 100);
        Variable b = model.variable("b", -100, 100);
        Variable c = model.variable("c", -100, 100);
        model.equal("a", new Expression().add(1, a).add(-2, b), 1, null);
        model.equal("b", new Expression().add(1, b).add(-3, c), 2, null);
        model.equal("c", new Expression().add(1, c).add(-4, n), 3, null);
        Compact program = Reducer.reduce(model).orElseThrow();
        assertThat(program.columns()).isEqualTo(1);
        // c = 3 + 8, b = 2 + 33, a = 1 + 70.
        assertThat(program.expand(program.shrink(List.of(2.0)))).containsExactly(2, 71, 35, 11);
    }

    /**
     * Two rows of thirteen whole numbers, each the same as the next and the last 3, written so that one is found in a round: in
     * the twelfth and last one the second of each, whose sum should be no more than a limit.
     */
    private static Optional<Compact> chains(int limit) {
        LinearModel<String> chains = new LinearModel<>();
        Variable[] a = new Variable[13];
        Variable[] b = new Variable[13];
        for (int i = 0; i < 13; i++) {
            a[i] = chains.whole("a" + i, 0, 9);
            b[i] = chains.whole("b" + i, 0, 9);
        }
        chains.atMost("sum", new Expression().add(1, a[1]).add(1, b[1]), limit, null);
        for (int i = 0; i < 12; i++) {
            chains.equal("a" + i, new Expression().add(1, a[i]).add(-1, a[i + 1]), 0, null);
            chains.equal("b" + i, new Expression().add(1, b[i]).add(-1, b[i + 1]), 0, null);
        }
        chains.equal("a", new Expression().add(1, a[12]), 3, null);
        chains.equal("b", new Expression().add(1, b[12]), 3, null);
        return Reducer.reduce(chains);
    }

    @Test
    void whatTheLastRoundFindsIsReckonedIn() {
        assertThat(chains(5)).isEmpty();
        Compact program = chains(6).orElseThrow();
        // The first of each is left, and the row that says it is 3.
        assertThat(program.columns()).isEqualTo(2);
        assertThat(program.rows()).isEqualTo(2);
        for (int[] index : program.index()) {
            assertThat(index).hasSize(1);
        }
        Tree.Result result = new Tree(program, 0, Long.MAX_VALUE, () -> false).search(null);
        assertThat(result.x()).isNotNull();
        double[] x = result.x() == null ? new double[2] : result.x();
        assertThat(program.expand(x)).containsOnly(3);
    }

    @Test
    void whatIsImpossibleFromTheStartOrInEitherPartIsSeen() {
        LinearModel<String> none = new LinearModel<>();
        none.whole("none", 1.2, 1.8);
        assertThat(Reducer.reduce(none)).isEmpty();
        // s = 2 n, at most 1 and at least 1, is no whole number twice.
        Variable n = model.whole("n", 0, 9);
        Variable s = model.variable("s", 1, 1.5);
        model.equal("s", new Expression().add(1, s).add(-2, n), 0, null);
        assertThat(Reducer.reduce(model)).isEmpty();
    }
}
