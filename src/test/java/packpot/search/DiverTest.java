package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.search.Programs.INF;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import packpot.search.DualSimplex.End;

/** Roundings of small programs, each worked by hand. */
class DiverTest {
    private static double @Nullable [] dive(Programs programs, double dear) {
        DualSimplex simplex = new DualSimplex(new Dictionary(programs.program()), new Work());
        assertThat(simplex.solve(INF, 100)).isEqualTo(End.OPTIMAL);
        double[] before = simplex.dictionary().values();
        double @Nullable [] found = Diver.dive(simplex, dear);
        assertThat(simplex.dictionary().values()).isEqualTo(before);
        return found;
    }

    /** Packs of 7 at 5 and loose ones at 0.8: 20 are 2.857 packs, 14.8 with two packs and 15 with three. */
    private static Programs packs(double mostLoose) {
        return Programs.minimise(5, 0.8).upper(100, mostLoose).whole(1, 0).atLeast(20, 7, 1);
    }

    @Test
    void roundsToTheCheaperSide() {
        assertThat(dive(packs(50), INF)).containsExactly(new double[] {2, 6}, within(1e-9));
        assertThat(dive(packs(50), 14.81)).containsExactly(new double[] {2, 6}, within(1e-9));
    }

    @Test
    void roundsToTheOtherSideWhereTheCheaperOneLeadsNowhere() {
        assertThat(dive(packs(5), INF)).containsExactly(new double[] {3, 0}, within(1e-9));
    }

    /** 14.28 before anything is rounded. */
    @Test
    void whereEveryRoundingIsTooDearNothingIsFound() {
        assertThat(dive(packs(50), 14.29)).isNotNull();
        assertThat(dive(packs(50), 14.28)).isNull();
    }

    @Test
    void whatIsWholeAlreadyIsTaken() {
        assertThat(dive(Programs.minimise(5, 0.8).upper(100, 50).whole(1, 0).atLeast(21, 7, 1), INF))
                .containsExactly(3, 0);
    }

    /** n + s at least a need, n at 2: either side costs the same, and the nearer one is taken. */
    @Test
    void ofTwoSidesThatCostTheSameTheOneThatIsNotFartherOff() {
        assertThat(dive(Programs.minimise(2, 4).upperAll(9).whole(1, 0).atLeast(2.5, 1, 1), INF))
                .containsExactly(3, 0);
        assertThat(dive(Programs.minimise(2, 8).upperAll(9).whole(1, 0).atLeast(2.25, 1, 1), INF))
                .containsExactly(2, 0.25);
        assertThat(dive(Programs.minimise(6, 8).upperAll(9).whole(1, 0).atLeast(2.75, 1, 1), INF))
                .containsExactly(3, 0);
    }

    /** Quarters: 2.6 lies between 2.5 and 2.75, and fractions bring the rest or do not. */
    @Test
    void roundsInTheColumnsOwnScale() {
        assertThat(dive(Programs.minimise(2, 3).upperAll(9).whole(0.25, 0).atLeast(2.6, 1, 1), INF))
                .containsExactly(new double[] {2.5, 0.1}, within(1e-9));
        assertThat(dive(Programs.minimise(2, 9).upperAll(9).whole(0.25, 0).atLeast(2.6, 1, 1), INF))
                .containsExactly(new double[] {2.75, 0}, within(1e-9));
    }

    /**
     * n + s and m + t at least 2.5 each, and s + t at most half. Rounding up costs 1 for n and 2 for m, rounding down half each:
     * m goes first, and takes the half.
     */
    @Test
    void theNumberWhoseWrongSideCostsMostGoesFirst() {
        assertThat(dive(
                        Programs.minimise(2, 4, 3, 5)
                                .upperAll(9)
                                .whole(1, 1, 0, 0)
                                .atLeast(2.5, 1, 0, 1, 0)
                                .atLeast(2.5, 0, 1, 0, 1)
                                .atMost(0.5, 0, 0, 1, 1),
                        INF))
                .containsExactly(new double[] {3, 2, 0, 0.5}, within(1e-9));
        assertThat(dive(
                        Programs.minimise(4, 2, 5, 3)
                                .upperAll(9)
                                .whole(1, 1, 0, 0)
                                .atLeast(2.5, 1, 0, 1, 0)
                                .atLeast(2.5, 0, 1, 0, 1)
                                .atMost(0.5, 0, 0, 1, 1),
                        INF))
                .containsExactly(new double[] {2, 3, 0.5, 0}, within(1e-9));
    }

    /** 2 n + 2 m = 3: halves keep to it, whole numbers do not. */
    @Test
    void whereNoRoundingFitsNothingIsFound() {
        assertThat(dive(Programs.minimise(1, 2).upperAll(1).wholeAll().row(3, 3, 2, 2), INF))
                .isNull();
    }
}
