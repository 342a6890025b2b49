package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.search.Programs.INF;

import org.junit.jupiter.api.Test;
import packpot.search.DualSimplex.End;

/** A dictionary that says what is not so: the simplex method does not believe it, reckons it anew, or says that it is lost. */
class LostDigitsTest {
    private final Work work = new Work();

    /** Three needs of 10, 5 and 4 at 2 a piece up to 6, and at 3 beyond: 24, 10 and 8 together. */
    private static Programs needs() {
        return Programs.minimise(2, 3, 2, 3, 2, 3)
                .upper(6, 20, 6, 20, 6, 20)
                .atLeast(10, 1, 1, 0, 0, 0, 0)
                .atLeast(5, 0, 0, 1, 1, 0, 0)
                .atLeast(4, 0, 0, 0, 0, 1, 1);
    }

    /** The first need is met: y has come in for it, x is at its most. */
    private static Dictionary firstMet() {
        Dictionary dictionary = needs().withAllRows();
        dictionary.exchange(0, 1, true);
        assertThat(dictionary.cost()).isCloseTo(24, within(1e-12));
        return dictionary;
    }

    private DualSimplex on(Dictionary dictionary) {
        return new DualSimplex(dictionary, work);
    }

    private static void isSolved(Dictionary dictionary) {
        assertThat(dictionary.values()).containsExactly(new double[] {6, 4, 5, 0, 4, 0}, within(1e-9));
        Programs.check(dictionary);
    }

    @Test
    void valuesThatTheProgramDoesNotGiveAreReckonedAnew() {
        Dictionary dictionary = firstMet();
        DualSimplex simplex = on(dictionary);
        simplex.solve(INF, 100);
        isSolved(dictionary);
        long before = work.entries();
        dictionary.basicValue[0] += 0.5;
        assertThat(simplex.solve(INF, 100)).isEqualTo(End.OPTIMAL);
        isSolved(dictionary);
        assertThat(work.entries()).isEqualTo(before);
    }

    @Test
    void whatOnlyLooksImpossibleIsReckonedAnew() {
        Dictionary dictionary = firstMet();
        dictionary.table[1][2] = 0;
        dictionary.table[1][3] = 0;
        assertThat(on(dictionary).solve(INF, 100)).isEqualTo(End.OPTIMAL);
        isSolved(dictionary);
    }

    @Test
    void whatOnlyLooksDearIsReckonedAnew() {
        Dictionary dictionary = firstMet();
        dictionary.basicValue[0] += 9;
        assertThat(dictionary.cost()).isCloseTo(24 + 27, within(1e-9));
        assertThat(on(dictionary).solve(45, 100)).isEqualTo(End.OPTIMAL);
        isSolved(dictionary);
    }

    /** Without one millionth of the first need's price of 3, 24 is less by 10 - 6 millionths. */
    @Test
    void aCostThatIsAlmostProvedIsProvedALittleFarther() {
        Dictionary dictionary = firstMet();
        dictionary.reduced[1] -= 1e-6;
        assertThat(Certificate.bound(dictionary)).isCloseTo(24 - 4e-6, within(1e-9));
        assertThat(on(dictionary).solve(24, 100)).isEqualTo(End.DEAR);
        assertThat(Certificate.bound(dictionary)).isCloseTo(24 - 4e-6 + 10, within(1e-9));
        // One step in three rows of six columns, and nothing was reckoned anew.
        assertThat(work.entries()).isEqualTo(3 * 6);
        assertThat(dictionary.reduced[1]).isCloseTo(3 - 1e-6, within(1e-12));
    }

    @Test
    void aCostThatIsFarFromProvedIsReckonedAnew() {
        Dictionary dictionary = firstMet();
        dictionary.reduced[1] -= 1e-2;
        assertThat(Certificate.bound(dictionary)).isCloseTo(24 - 4e-2, within(1e-9));
        assertThat(on(dictionary).solve(24, 100)).isEqualTo(End.DEAR);
        assertThat(Certificate.bound(dictionary)).isCloseTo(24, within(1e-9));
        assertThat(work.entries()).isZero();
    }

    /** A coefficient that steps take for nothing: what it could bring, 4.5 or 50, is not nothing to who would prove that. */
    @Test
    void whatCannotBeProvedIsLost() {
        for (double most : new double[] {9e10, 1e12}) {
            Programs programs = Programs.minimise(1).upper(most).atLeast(5, 0.5e-10);
            DualSimplex simplex = on(new Dictionary(programs.program()));
            assertThat(simplex.solve(INF, 1000)).isEqualTo(most < 1e11 ? End.IMPOSSIBLE : End.LOST);
            Tree.Result result = new Tree(programs.program(), 0, Long.MAX_VALUE, () -> false).search(null);
            assertThat(result.lost()).isEqualTo(most > 1e11);
            assertThat(result.complete()).isEqualTo(most < 1e11);
            assertThat(result.bound()).isEqualTo(most < 1e11 ? INF : -INF);
        }
    }

    /** The program of {@link WholesTest} in which n is whole but for its digits, and nothing can bring what rounding takes. */
    @Test
    void whatRoundingBreaksAndNothingMendsIsLost() {
        for (double most : new double[] {9, 0.001}) {
            Compact program = Programs.minimise(1, 1, 1e5)
                    .lower(2, 2, 0)
                    .upper(9, 9, most)
                    .whole(1, 0, 0)
                    .atLeast(0.009, 1e4, -1e4, 1)
                    .program();
            Tree.Result result = new Tree(program, 0, Long.MAX_VALUE, () -> false).search(null);
            assertThat(result.lost()).isEqualTo(most < 1);
            assertThat(result.x() == null).isEqualTo(most < 1);
        }
    }
}
