package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.search.Programs.INF;

import org.junit.jupiter.api.Test;
import packpot.search.DualSimplex.End;

/** Whole numbers among the columns, one of them in steps of a quarter in its own scale. */
class WholesTest {
    private static DualSimplex solved(Programs programs) {
        DualSimplex simplex = new DualSimplex(new Dictionary(programs.program()), new Work());
        assertThat(simplex.solve(INF, 100)).isEqualTo(End.OPTIMAL);
        return simplex;
    }

    @Test
    void whatIsNotWholeIsFound() {
        DualSimplex simplex = solved(Programs.minimise(1, 1, 1, 1)
                .upperAll(9)
                .whole(1, 0.25, 0, 1)
                .atLeast(2.5, 1, 0, 0, 0)
                .atLeast(1.75, 0, 1, 0, 0)
                .atLeast(1.6, 0, 0, 1, 0)
                .atLeast(3 + 2e-6, 0, 0, 0, 1));
        assertThat(Wholes.fractional(simplex.dictionary())).containsExactly(0, 3);
        assertThat(Wholes.whole(simplex.dictionary(), 0)).isEqualTo(2.5);
        assertThat(Wholes.whole(simplex.dictionary(), 1)).isEqualTo(7);
    }

    @Test
    void aMillionthOfAWholeNumberIsNothing() {
        for (double more : new double[] {-1.1e-6, -0.9e-6, 0.9e-6, 1.1e-6}) {
            DualSimplex simplex =
                    solved(Programs.minimise(1).upperAll(9).whole(0.25).atLeast((7 + more) * 0.25, 1));
            assertThat(Wholes.fractional(simplex.dictionary()).length).isEqualTo(Math.abs(more) > 1e-6 ? 1 : 0);
        }
    }

    @Test
    void lostDigitsDoNotCarryANumberBeyondItsBounds() {
        Dictionary dictionary = solved(Programs.minimise(1).upper(3).whole(0.25).atLeast(1.75, 1))
                .dictionary();
        dictionary.bound(0, 2, 3);
        assertThat(Wholes.whole(dictionary, 0)).isEqualTo(8);
        dictionary.bound(0, 0, 1.5);
        assertThat(Wholes.whole(dictionary, 0)).isEqualTo(6);
        assertThat(Wholes.rounded(dictionary.program, 0, 1.8)).isEqualTo(1.75);
        assertThat(Wholes.rounded(dictionary.program, 0, 1.9)).isEqualTo(2);
    }

    /** n is as good as 2, and 1000 n + x is at least 2000 - 0.0005: with n at 2 that holds without more. */
    @Test
    void whatRoundingDoesNotDisturbIsRounded() {
        DualSimplex simplex = solved(Programs.minimise(1, 5)
                .upperAll(9)
                .whole(1, 0)
                .atLeast(2 - 5e-7, 1, 0)
                .atLeast(0.5, 0, 1));
        assertThat(simplex.dictionary().value(0)).isEqualTo(2 - 5e-7);
        assertThat(Wholes.solution(simplex)).containsExactly(2, 0.5);
    }

    /** 10,000 (n - m) + x at least 0.009, n and m at least 2: n a little above 2 is cheapest, but with n at 2 it is x. */
    @Test
    void whatRoundingDisturbsIsSolvedAnew() {
        for (double most : new double[] {9, 0.001}) {
            DualSimplex simplex = solved(Programs.minimise(1, 1, 1e5)
                    .lower(2, 2, 0)
                    .upper(9, 9, most)
                    .whole(1, 0, 0)
                    .atLeast(0.009, 1e4, -1e4, 1));
            assertThat(simplex.dictionary().values()).containsExactly(new double[] {2 + 9e-7, 2, 0}, within(1e-12));
            assertThat(Wholes.fractional(simplex.dictionary())).isEmpty();
            if (most < 1) {
                assertThat(Wholes.solution(simplex)).isNull();
            } else {
                assertThat(Wholes.solution(simplex)).containsExactly(new double[] {2, 2, 0.009}, within(1e-9));
            }
            // What it was asked of stays as it is.
            assertThat(simplex.dictionary().upper[0]).isEqualTo(9);
        }
    }
}
