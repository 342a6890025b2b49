package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.search.Programs.INF;

import java.util.Arrays;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Branch and bound against trying everything out, whole and in spells, within a gap and exactly. */
class TreeTest {
    private static final int MOST = 3;

    private static Tree tree(Compact program, double gap, long mostWork) {
        return new Tree(program, gap, mostWork, () -> false);
    }

    /** Up to six whole numbers up to three, in some rows. */
    private static Compact random(Random random) {
        int n = 3 + random.nextInt(4);
        double price = random.nextBoolean() ? 1 : 0.01;
        Programs programs = Programs.minimise(
                        random.ints(n, -9, 20).mapToDouble(cost -> price * cost).toArray())
                .offset(price * random.nextInt(30))
                .upperAll(MOST)
                .wholeAll();
        int rows = 1 + random.nextInt(4);
        for (int i = 0; i < rows; i++) {
            double[] row = random.ints(n, -4, 10).asDoubleStream().toArray();
            if (random.nextBoolean()) {
                programs.atLeast(1 + random.nextInt(25), row);
            } else {
                programs.atMost(random.nextInt(25), row);
            }
        }
        return programs.program();
    }

    private static double tried(Compact program) {
        int n = program.columns();
        double best = INF;
        for (int number = 0; number < Math.pow(MOST + 1, n); number++) {
            double[] x = new double[n];
            for (int j = 0, left = number; j < n; j++, left /= MOST + 1) {
                x[j] = left % (MOST + 1);
            }
            if (program.allows(x)) {
                best = Math.min(best, program.cost(x));
            }
        }
        return best;
    }

    /** What is said is true: the values are allowed, nothing costs less than the bound, and they are within the gap of it. */
    private static void check(Compact program, Tree.Result result, double best, double gap) {
        assertThat(result.lost()).isFalse();
        double[] x = result.x();
        if (x != null) {
            assertThat(program.allows(x)).isTrue();
            assertThat(x).containsExactly(Arrays.stream(x).map(Math::rint).toArray());
            assertThat(program.cost(x)).isGreaterThanOrEqualTo(best - 1e-9);
        }
        if (Double.isInfinite(best)) {
            assertThat(x).isNull();
        } else {
            assertThat(result.bound()).isLessThanOrEqualTo(best + 1e-6);
        }
        if (result.complete()) {
            assertThat(x == null).isEqualTo(Double.isInfinite(best));
            if (x != null) {
                assertThat(program.cost(x) - result.bound())
                        .isLessThanOrEqualTo(gap * Math.abs(program.cost(x)) + 1e-6);
            }
        }
    }

    @Test
    void isAsTryingEverythingOut() {
        Random random = new Random(21);
        double[] gaps = {0, 0.05, 0.3};
        int[] looks = new int[gaps.length];
        int solved = 0;
        for (int i = 0; i < 150; i++) {
            Compact program = random(random);
            double best = tried(program);
            solved += Double.isInfinite(best) ? 0 : 1;
            for (int g = 0; g < gaps.length; g++) {
                int which = g;
                Tree.Result result = new Tree(program, gaps[g], Long.MAX_VALUE, () -> ++looks[which] < 0).search(null);
                assertThat(result.complete()).isTrue();
                check(program, result, best, gaps[g]);
            }
        }
        // The wider the gap, the sooner it is reached.
        assertThat(looks[2]).isLessThan(looks[1]);
        assertThat(looks[1]).isLessThan(looks[0]);
        assertThat(solved).isBetween(70, 140);
    }

    @Test
    void inSpellsItComesToTheSame() {
        Random random = new Random(22);
        int spells = 0;
        for (int i = 0; i < 60; i++) {
            Compact program = random(random);
            double best = tried(program);
            Tree tree = tree(program, 0, 1);
            Tree.Result result = tree.search(null);
            double bound = -INF;
            // A spell that is too short for a single branch would come to nothing, so that they grow.
            for (int turn = 1; !result.complete(); turn++) {
                spells++;
                check(program, result, best, 0);
                assertThat(result.bound()).isGreaterThanOrEqualTo(bound);
                bound = result.bound();
                result = tree.goOn(20L * turn);
            }
            check(program, result, best, 0);
        }
        assertThat(spells).isGreaterThan(100);
    }

    /**
     * S. Martello and P. Toth, Knapsack Problems (1990), example 2.1: worth 107 with the first and the fourth; with fractions
     * 107.55, by Dantzig's bound.
     */
    private static final Compact KNAPSACK = Programs.minimise(-70, -20, -39, -37, -7, -5, -10)
            .upperAll(1)
            .wholeAll()
            .atMost(50, 31, 10, 20, 19, 4, 3, 6)
            .program();

    @Test
    void thePublishedKnapsack() {
        Tree.Result result = tree(KNAPSACK, 0, Long.MAX_VALUE).search(null);
        assertThat(result.x()).containsExactly(new double[] {1, 0, 0, 1, 0, 0, 0}, within(0.0));
        assertThat(result.bound()).isCloseTo(-107, within(1e-9));
    }

    @Test
    void withoutWorkOnlyTheStartIsKnown() {
        Tree tree = tree(KNAPSACK, 0, 0);
        Tree.Result none = tree.search(null);
        assertThat(none.complete()).isFalse();
        // One step of one row in seven columns is done before anybody looks.
        assertThat(none.bound()).isEqualTo(-INF);
        check(KNAPSACK, tree.goOn(Long.MAX_VALUE / 2), -107, 0);

        double[] start = {1, 1, 0, 0, 1, 1, 0};
        Tree.Result begun = tree(KNAPSACK, 0, 0).search(start);
        assertThat(begun.complete()).isFalse();
        assertThat(begun.x()).containsExactly(start);
        double[] nothingLater = {0, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, 0};
        Tree.Result partly = tree(KNAPSACK, 0, 0).search(nothingLater);
        double[] x = Objects.requireNonNull(partly.x());
        assertThat(x[0] + x[6]).isZero();
        assertThat(KNAPSACK.allows(x)).isTrue();
        assertThat(KNAPSACK.cost(x)).isLessThan(0);
    }

    @Test
    void aStartBeyondTheBoundsIsTakenAtThemAndOneThatDoesNotFitIsLeft() {
        double[] far = {3, -2, 0, 1.2, 0, 0, 0};
        assertThat(tree(KNAPSACK, 0, 0).search(far).x()).containsExactly(1, 0, 0, 1, 0, 0, 0);
        double[] heavy = {1, 1, 1, 1, 1, 1, 1};
        assertThat(tree(KNAPSACK, 0, 0).search(heavy).x()).isNull();
        check(KNAPSACK, tree(KNAPSACK, 0, Long.MAX_VALUE).search(heavy), -107, 0);
    }

    @Test
    void toldToStopItStops() {
        Tree.Result result = new Tree(KNAPSACK, 0, Long.MAX_VALUE, () -> true).search(null);
        assertThat(result.complete()).isFalse();
        assertThat(result.x()).isNull();
        assertThat(result.bound()).isEqualTo(-INF);
        for (int looks = 1; looks < 12; looks++) {
            int[] left = {looks};
            check(KNAPSACK, new Tree(KNAPSACK, 0, Long.MAX_VALUE, () -> left[0]-- < 0).search(null), -107, 0);
        }
    }

    /** Some hundred steps for what is not given in a start: whether to stop is asked on the way. */
    @Test
    void aStartThatTakesLongIsBrokenOffWhenToldToStop() {
        int n = 400;
        double[] price = new double[n];
        Arrays.fill(price, 1);
        Programs chain = Programs.minimise(price).upperAll(9).whole(new double[n]);
        for (int j = 1; j < n; j++) {
            double[] row = new double[n];
            row[j - 1] = 1 + j % 5;
            row[j] = 1;
            chain.atLeast(1, row);
        }
        double[] start = new double[n];
        Arrays.fill(start, Double.NaN);
        for (boolean told : new boolean[] {true, false}) {
            int[] looks = {0};
            Tree tree = new Tree(chain.program(), 0, -1, () -> ++looks[0] > 0 && told);
            assertThat(tree.search(start).x() == null).isEqualTo(told);
            assertThat(looks[0]).isPositive();
        }
    }

    /** One look is taken before the first branch is solved, one after it, and one before the next. */
    @Test
    void aSolutionIsKnownFromTheFirstBranchOn() {
        for (int looks = 1; looks < 3; looks++) {
            int[] left = {looks};
            Tree.Result result = new Tree(KNAPSACK, 0, Long.MAX_VALUE, () -> --left[0] < 0).search(null);
            assertThat(result.complete()).isFalse();
            check(KNAPSACK, result, -107, 0);
            assertThat(result.x() == null).isEqualTo(looks < 2);
        }
    }

    @Test
    void whatPaysWithoutEndIsLeftToOthers() {
        Compact open = Programs.minimise(-1, 1)
                .upper(INF, 3)
                .whole(0, 1)
                .atMost(4, 1, -1)
                .program();
        Tree.Result result = tree(open, 0, Long.MAX_VALUE).search(null);
        assertThat(result.lost()).isTrue();
        assertThat(result.complete()).isFalse();
        assertThat(result.bound()).isEqualTo(-INF);
    }
}
