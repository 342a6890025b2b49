package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.search.Programs.INF;

import org.junit.jupiter.api.Test;
import packpot.search.Brancher.Choice;
import packpot.search.Brancher.Only;
import packpot.search.DualSimplex.End;

/**
 * Needs that a whole number and fractions meet together. With n at 2 and s at 3, n + s at least 2.5: n is 2.5, for 5. With n at
 * most 2 it is 5.5, with n at least 3 it is 6: half more on the one side, 1 on the other.
 */
class BrancherTest {
    private final Work work = new Work();

    private DualSimplex solved(Programs programs) {
        DualSimplex simplex = new DualSimplex(new Dictionary(programs.program()), work);
        assertThat(simplex.solve(INF, 100)).isEqualTo(End.OPTIMAL);
        return simplex;
    }

    private static Programs one(double need, double price, double other) {
        return Programs.minimise(price, other).upper(9, 5).whole(1, 0).atLeast(need, 1, 1);
    }

    private Choice choice(Programs programs, double dear) {
        DualSimplex simplex = solved(programs);
        return new Brancher(simplex.dictionary().columns)
                .choose(simplex, Wholes.fractional(simplex.dictionary()), dear);
    }

    @Test
    void theNearerSideIsTheCheaperOne() {
        assertThat(choice(one(2.5, 2, 3), INF)).isEqualTo(new Choice(0, 2, Only.BOTH, false));
        // 3 more for one of n less, 2 for one more.
        assertThat(choice(one(2.5, 2, 5), INF)).isEqualTo(new Choice(0, 2, Only.BOTH, true));
    }

    @Test
    void ofTwoSidesThatCostTheSameTheOneThatIsNotFartherOff() {
        assertThat(choice(one(2.5, 2, 4), INF).upFirst()).isTrue();
        // A quarter at 6 more, or three quarters at 2.
        assertThat(choice(one(2.25, 2, 8), INF).upFirst()).isFalse();
        // Three quarters at 2 more, or a quarter at 6.
        assertThat(choice(one(2.75, 6, 8), INF).upFirst()).isTrue();
    }

    @Test
    void aSideThatCannotBeLeavesTheOther() {
        Programs above = Programs.minimise(2).upper(9).whole(1).atLeast(2.5, 1);
        assertThat(choice(above, INF)).isEqualTo(new Choice(0, 2, Only.UP, true));
        Programs below = Programs.minimise(-2).upper(9).whole(1).atMost(2.5, 1);
        assertThat(choice(below, INF)).isEqualTo(new Choice(0, 2, Only.DOWN, false));
        Programs quarters = Programs.minimise(-2).upper(9).whole(0.25).atMost(2.6, 1);
        assertThat(choice(quarters, INF)).isEqualTo(new Choice(0, 2.5, Only.DOWN, false));
    }

    /** As before, but s beyond 0.2 takes t at 10, and n beyond 2.8 takes u at 20, which is found after the first step. */
    @Test
    void aSideThatIsTooDearLeavesTheOtherAndItsBoundIsKept() {
        DualSimplex simplex = solved(Programs.minimise(2, 3, 10, 20)
                .upperAll(9)
                .whole(1, 0, 0, 0)
                .atLeast(2.5, 1, 1, 0, 0)
                .atMost(0.2, 0, 1, -1, 0)
                .atMost(2.8, 1, 0, 0, -1));
        Brancher brancher = new Brancher(4);
        assertThat(brancher.leastDear()).isEqualTo(INF);
        assertThat(brancher.choose(simplex, new int[] {0}, 5.9)).isEqualTo(new Choice(0, 2, Only.DOWN, false));
        assertThat(brancher.leastDear()).isCloseTo(6, within(1e-12));
        assertThat(brancher.choose(simplex, new int[] {0}, 5.4)).isEqualTo(new Choice(0, 2, Only.UP, true));
        assertThat(brancher.leastDear()).isCloseTo(5.5, within(1e-12));
        assertThat(brancher.choose(simplex, new int[] {0}, 5.9).only()).isEqualTo(Only.DOWN);
        assertThat(brancher.leastDear()).isCloseTo(5.5, within(1e-12));
        assertThat(brancher.choose(simplex, new int[] {0}, 6.1).only()).isEqualTo(Only.BOTH);
        // Trying out left everything where it was.
        assertThat(simplex.dictionary().values()).containsExactly(2.5, 0, 0, 0);
        assertThat(simplex.dictionary().upper[0]).isEqualTo(9);
    }

    /** Needs side by side, the whole numbers first and the fractions after them. */
    private static Programs beside(double[] price, double[] other) {
        int n = price.length;
        double[] cost = new double[2 * n];
        double[] unit = new double[2 * n];
        for (int j = 0; j < n; j++) {
            cost[j] = price[j];
            cost[n + j] = other[j];
            unit[j] = 1;
        }
        Programs programs = Programs.minimise(cost).upperAll(9).whole(unit);
        for (int j = 0; j < n; j++) {
            double[] row = new double[2 * n];
            row[j] = 1;
            row[n + j] = 1;
            programs.atLeast(2.5, row);
        }
        return programs;
    }

    /** Costs of both sides: 0.5 and 1; 0.75 and 0.9; 0.2 and 5. With a sixth of the dearer: 0.667, 0.9, 1.03. */
    @Test
    void theCheaperSideCountsAndASixthOfTheDearer() {
        assertThat(choice(beside(new double[] {2, 1.8}, new double[] {3, 3.3}), INF)
                        .column())
                .isEqualTo(1);
        assertThat(choice(beside(new double[] {1.8, 2}, new double[] {3.3, 3}), INF)
                        .column())
                .isZero();
        assertThat(choice(beside(new double[] {2, 1.8, 10}, new double[] {3, 3.3, 10.4}), INF)
                        .column())
                .isEqualTo(2);
        assertThat(choice(beside(new double[] {2, 1.8, 8}, new double[] {3, 3.3, 8.4}), INF)
                        .column())
                .isEqualTo(1);
    }

    /** Of six numbers four are tried out, each side in one step; after two times, those are known and two others are tried. */
    @Test
    void aNumberIsTriedOutTwiceAndNoMoreThanFourAtATime() {
        DualSimplex simplex =
                solved(beside(new double[] {2, 2.1, 2.2, 2.3, 2.4, 2.5}, new double[] {9, 9, 9, 9, 9, 9}));
        int[] all = {0, 1, 2, 3, 4, 5};
        long step = 6 * 12;
        Brancher brancher = new Brancher(12);
        long[] steps = new long[5];
        for (int turn = 0; turn < steps.length; turn++) {
            long before = work.entries();
            assertThat(brancher.choose(simplex, all, INF)).isEqualTo(new Choice(5, 2, Only.BOTH, true));
            steps[turn] = (work.entries() - before) / step;
        }
        assertThat(steps).containsExactly(8, 8, 4, 4, 0);
    }

    /**
     * Only 0.1 of s at 3, and t at 9: with n at most 2 it is 0.1 at 1 more and 0.4 at 7 more, 2.9 together, where one step sees
     * 0.5. Known after two times, and held against a number that costs 1 on either side.
     */
    @Test
    void whatASideCostBeforeIsRemembered() {
        Programs programs = Programs.minimise(2, 3, 9, 2, 4)
                .upper(9, 0.1, 9, 9, 9)
                .whole(1, 0, 0, 1, 0)
                .atLeast(2.5, 1, 1, 1, 0, 0)
                .atLeast(2.5, 0, 0, 0, 1, 1);
        DualSimplex simplex = solved(programs);
        Brancher brancher = new Brancher(5);
        for (int turn = 0; turn < 2; turn++) {
            assertThat(brancher.choose(simplex, new int[] {0, 3}, INF).column()).isZero();
        }
        long before = work.entries();
        Choice choice = brancher.choose(simplex, new int[] {0, 3}, INF);
        assertThat(work.entries()).isEqualTo(before);
        // 2.9 below, so that the upper side is nearer, which one step would not have said.
        assertThat(choice).isEqualTo(new Choice(0, 2, Only.BOTH, true));
    }

    /** Of several times it is the mean that is remembered: a number that costs 3 and 2 comes before one of 2.9 and 1. */
    @Test
    void whatASideCostBeforeIsTheMean() {
        Programs programs = Programs.minimise(2, 3, 9, 4, 10)
                .upper(9, 0.1, 9, 9, 9)
                .whole(1, 0, 0, 1, 0)
                .atLeast(2.5, 1, 1, 1, 0, 0)
                .atLeast(2.5, 0, 0, 0, 1, 1);
        DualSimplex simplex = solved(programs);
        Brancher brancher = new Brancher(5);
        for (int turn = 0; turn < 4; turn++) {
            assertThat(brancher.choose(simplex, new int[] {0}, INF).column()).isZero();
        }
        assertThat(brancher.choose(simplex, new int[] {0, 3}, INF).column()).isEqualTo(3);
    }

    /**
     * 5.8 for one of n less, 2 for one more: at 2.5 it is 2.9 and 1, at 2.25 it is 1.45 and 1.5, at 2.3 it is 1.74 and 1.4. At
     * first only one step is seen, which costs 0.5 and 1.
     */
    @Test
    void whatItCostBeforeCountsByTheDistance() {
        Brancher brancher = new Brancher(3);
        double[] needs = {2.5, 2.5, 2.25, 2.3, 2.2};
        boolean[] upFirst = {false, true, false, true, false};
        for (int i = 0; i < needs.length; i++) {
            Programs programs =
                    Programs.minimise(2, 3, 9).upper(9, 0.1, 9).whole(1, 0, 0).atLeast(needs[i], 1, 1, 1);
            Choice choice = brancher.choose(solved(programs), new int[] {0}, INF);
            assertThat(choice.upFirst()).as("turn %s", i).isEqualTo(upFirst[i]);
        }
    }

    /** The same the other way round: n that saves 2 is at most 6.5 and what s and t add to it. */
    @Test
    void whatTheUpperSideCostBeforeCountsByTheDistance() {
        Brancher brancher = new Brancher(3);
        double[] limits = {6.5, 6.5, 6.75, 6.7, 6.8};
        boolean[] upFirst = {true, false, true, false, true};
        for (int i = 0; i < limits.length; i++) {
            Programs programs =
                    Programs.minimise(-2, 3, 9).upper(9, 0.1, 9).whole(1, 0, 0).atMost(limits[i], 1, -1, -1);
            Choice choice = brancher.choose(solved(programs), new int[] {0}, INF);
            assertThat(choice.upFirst()).as("turn %s", i).isEqualTo(upFirst[i]);
        }
    }
}
