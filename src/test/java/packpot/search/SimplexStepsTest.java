package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.search.Programs.INF;

import java.util.Comparator;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import packpot.search.DualSimplex.End;

/** Single steps of the dual simplex method: which row is mended, by which column, and what goes to its other bound. */
class SimplexStepsTest {
    private final Work work = new Work();

    private DualSimplex of(Programs programs) {
        return new DualSimplex(new Dictionary(programs.program()), work);
    }

    /** Where the columns are after the first step. */
    private double[] afterOne(Programs programs) {
        DualSimplex simplex = of(programs);
        simplex.solve(INF, 1);
        Programs.check(simplex.dictionary());
        return simplex.dictionary().values();
    }

    /** G. B. Dantzig, Discrete-variable extremum problems (1957): the best for its weight first, the last one in part. */
    private static double[] filled(double[] weight, double[] price, double need, boolean cheapFirst) {
        Comparator<Integer> byPrice = Comparator.comparingDouble(j -> price[j] / weight[j]);
        double[] x = new double[weight.length];
        double left = need;
        for (int j : IntStream.range(0, weight.length)
                .boxed()
                .sorted(cheapFirst ? byPrice : byPrice.reversed())
                .toList()) {
            x[j] = Math.min(1, left / weight[j]);
            left -= x[j] * weight[j];
        }
        return x;
    }

    @Test
    void aKnapsackWithFractionsIsFilledInOneStep() {
        Random random = new Random(3);
        for (int i = 0; i < 20; i++) {
            int n = 30;
            double[] weight = random.doubles(n, 1, 9).toArray();
            double[] price = random.doubles(n, 1, 9).toArray();
            double[] worth = IntStream.range(0, n).mapToDouble(j -> -price[j]).toArray();
            double need = random.nextDouble(20, 80);
            long before = work.entries();

            DualSimplex buying = of(Programs.minimise(price).upperAll(1).atLeast(need, weight));
            assertThat(buying.solve(INF, 100)).isEqualTo(End.OPTIMAL);
            assertThat(buying.dictionary().values()).containsExactly(filled(weight, price, need, true), within(1e-9));
            DualSimplex packing = of(Programs.minimise(worth).upperAll(1).atMost(need, weight));
            assertThat(packing.solve(INF, 100)).isEqualTo(End.OPTIMAL);
            assertThat(packing.dictionary().values()).containsExactly(filled(weight, price, need, false), within(1e-9));
            // One step each, in a dictionary of one row.
            assertThat(work.entries() - before).isEqualTo(2 * n);
        }
    }

    @Test
    void stepsAreNoMoreThanGranted() {
        Programs programs = Programs.minimise(1, 1, 1)
                .upperAll(9)
                .atLeast(4, 1, 0, 0)
                .atLeast(3, 0, 1, 0)
                .atLeast(2, 0, 0, 1);
        DualSimplex simplex = of(programs);
        assertThat(simplex.solve(INF, 0)).isEqualTo(End.LIMIT);
        assertThat(simplex.dictionary().values()).containsExactly(0, 0, 0);
        assertThat(simplex.solve(INF, 1)).isEqualTo(End.LIMIT);
        assertThat(simplex.dictionary().values()).containsExactly(4, 0, 0);
        assertThat(simplex.solve(INF, 1)).isEqualTo(End.LIMIT);
        assertThat(simplex.dictionary().values()).containsExactly(4, 3, 0);
        assertThat(simplex.solve(INF, 1)).isEqualTo(End.OPTIMAL);
        assertThat(simplex.dictionary().values()).containsExactly(4, 3, 2);
        // Three steps in three rows of three columns.
        assertThat(work.entries()).isEqualTo(3 * 3 * 3);
    }

    /** 10 x at least 30 lacks 30 in a row of length &radic;101, which is 2.99; y at least 4 lacks 4 in one of &radic;2. */
    @Test
    void theRowThatIsFarthestFromItsLimitIsMendedFirst() {
        for (double sign : new double[] {1, -1}) {
            for (double[] needAndFirst : new double[][] {{4, 3, 0}, {4.5, 0, 4.5}}) {
                double[] x = afterOne(Programs.minimise(1, 1)
                        .upperAll(100)
                        .row(sign > 0 ? 30 : -INF, sign > 0 ? INF : -30, sign * 10, 0)
                        .row(sign > 0 ? needAndFirst[0] : -INF, sign > 0 ? INF : -needAndFirst[0], 0, sign));
                assertThat(x).containsExactly(needAndFirst[1], needAndFirst[2]);
            }
        }
    }

    /** x + 10 y at least 10, at about the same price for one of the row: the larger coefficient loses fewer digits. */
    @Test
    void ofThoseThatCostTheSameTheOneThatStandsFirmest() {
        assertThat(afterOne(Programs.minimise(2, 20).upperAll(99).atLeast(10, 1, 10)))
                .containsExactly(0, 1);
        assertThat(afterOne(Programs.minimise(20, 2).upperAll(99).atLeast(10, 10, 1)))
                .containsExactly(1, 0);
        assertThat(afterOne(Programs.minimise(2, 20 + 5e-9).upperAll(99).atLeast(10, 1, 10)))
                .containsExactly(0, 1);
        assertThat(afterOne(Programs.minimise(2, 20 + 2e-8).upperAll(99).atLeast(10, 1, 10)))
                .containsExactly(10, 0);
        assertThat(afterOne(Programs.minimise(2, 21).upperAll(99).atLeast(10, 1, 10)))
                .containsExactly(10, 0);
        assertThat(afterOne(Programs.minimise(2, 30, 20).upperAll(99).atLeast(10, 1, 20, 10)))
                .containsExactly(0, 0.5, 0);
    }

    /**
     * At least 2 of x at 1, up to 1, and of a column with a very small coefficient at twice the price: the step that would
     * take the small one takes x, beyond its bound, and goes on from there.
     */
    @Test
    void aSmallCoefficientIsAvoidedWhereAFirmOneIsNear() {
        double small = 1e-5;
        Programs programs = Programs.minimise(1, 2 * small).upper(1, 1e6).atLeast(2, 1, small);
        assertThat(afterOne(programs)).containsExactly(2, 0);
        DualSimplex simplex = of(programs);
        assertThat(simplex.solve(INF, 100)).isEqualTo(End.OPTIMAL);
        assertThat(simplex.dictionary().values()).containsExactly(new double[] {1, 1 / small}, within(1e-5));
        // Not so small.
        assertThat(afterOne(Programs.minimise(1, 4e-4).upper(1, 1e6).atLeast(2, 1, 2e-4)))
                .containsExactly(new double[] {1, 5000}, within(1e-6));
        // The other is not much firmer.
        assertThat(afterOne(Programs.minimise(9e-4, 2 * small).upper(1, 1e6).atLeast(2, 9e-4, small))[0])
                .isEqualTo(1);
        assertThat(afterOne(Programs.minimise(1.1e-3, 2 * small).upper(1, 1e6).atLeast(2, 1.1e-3, small))[0])
                .isGreaterThan(1);
    }

    @Test
    void whatIsPassedOnTheWayToAFirmOneGoesToItsOtherBoundAndNoMore() {
        double small = 1e-5;
        // x, then y, then the small one: y is the last that stands firm.
        assertThat(afterOne(
                        Programs.minimise(1, 1.5, 2 * small).upper(1, 1, 1e6).atLeast(3, 1, 1, small)))
                .containsExactly(1, 2, 0);
        // Here the second does not.
        assertThat(afterOne(Programs.minimise(1, 1.5 * small, 2 * small)
                        .upper(1, 1, 1e6)
                        .atLeast(3, 1, small, small)))
                .containsExactly(3, 0, 0);
    }

    /** What cannot move, rests where it would make things worse, or is lost digits, mends no row. */
    @Test
    void whatMendsNoRow() {
        Programs fixed = Programs.minimise(1, 5).lower(3, 0).upper(3, 9).atLeast(5, 1, 1);
        assertThat(afterOne(fixed)).containsExactly(3, 2);
        Programs wrongWay = Programs.minimise(1, 5).upperAll(9).atLeast(5, -1, 1);
        assertThat(afterOne(wrongWay)).containsExactly(0, 5);
        Programs fromAbove = Programs.minimise(-1, 5).upperAll(9).atLeast(5, 1, 1);
        assertThat(afterOne(fromAbove)).containsExactly(9, 0);
        Programs fromAboveToo = Programs.minimise(-1, 5).upperAll(9).atLeast(-5, -1, 1);
        assertThat(afterOne(fromAboveToo)).containsExactly(5, 0);
        // Half a ten millionth may be lost digits, whatever it costs.
        for (double coefficient : new double[] {0.5e-7, 2e-7}) {
            DualSimplex simplex = of(Programs.minimise(1e-9, 5).upper(1e9, 9).atLeast(5, coefficient, 1));
            simplex.solve(INF, 1);
            assertThat(simplex.dictionary().row(coefficient < 1e-7 ? 1 : 0)).isZero();
        }
        // Unless there is nothing else.
        assertThat(afterOne(Programs.minimise(1).upperAll(1e9).atLeast(5, 0.5e-7)))
                .containsExactly(new double[] {1e8}, within(1e-3));
        assertThat(of(Programs.minimise(1).upperAll(1e12).atLeast(5, 0.5e-10)).solve(INF, 9))
                .isNotEqualTo(End.OPTIMAL);
    }

    /** In the last dictionary of {@link DictionaryTest}, x = 2 a - 2 y - c and z = -3 a + y + 2 c with x = 2 and z = 1. */
    @Test
    void whatOneStepWouldCost() {
        Dictionary dictionary = Programs.minimise(-5, -4, -3)
                .upperAll(10)
                .atMost(5, 2, 3, 1)
                .atMost(11, 4, 1, 2)
                .atMost(8, 3, 4, 2)
                .withAllRows();
        dictionary.exchange(0, 0, false);
        dictionary.exchange(2, 2, false);
        DualSimplex simplex = new DualSimplex(dictionary, work);
        // One less of a, at 1, takes 2 off x; one more of y, at 3, the same; one less of c adds 1.
        assertThat(simplex.penalty(0, 1)).isCloseTo(0.5, within(1e-12));
        assertThat(simplex.penalty(0, 0)).isCloseTo(1, within(1e-12));
        assertThat(simplex.penalty(0, 4)).isCloseTo(2, within(1e-12));
        // One less of c, at 1, takes 2 off z; one less of a adds 3, one more of y, at 3, adds 1.
        assertThat(simplex.penalty(2, 0)).isCloseTo(0.5, within(1e-12));
        assertThat(simplex.penalty(2, 4)).isCloseTo(1, within(1e-12));
        dictionary.lower[5] = 8;
        assertThat(simplex.penalty(0, 4)).isInfinite();
        dictionary.bound(1, 0, 0);
        dictionary.lower[3] = 5;
        assertThat(simplex.penalty(2, 4)).isInfinite();
    }
}
