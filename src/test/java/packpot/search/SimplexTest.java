package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.search.Programs.INF;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import packpot.search.DualSimplex.End;

/**
 * Optima of linear programs: published ones, and such as prove themselves, since values that keep to all rows and prices of the
 * rows that say nothing costs less ({@link Certificate}) are an optimum whoever found them.
 */
class SimplexTest {
    private static DualSimplex of(Compact program) {
        return new DualSimplex(new Dictionary(program), new Work());
    }

    private static double[] optimum(Programs programs) {
        Compact program = programs.program();
        DualSimplex simplex = of(program);
        assertThat(simplex.solve(INF, 10_000)).isEqualTo(End.OPTIMAL);
        provesItself(simplex);
        return simplex.dictionary().values();
    }

    private static void provesItself(DualSimplex simplex) {
        Dictionary dictionary = simplex.dictionary();
        double cost = dictionary.cost();
        Programs.check(dictionary);
        assertThat(dictionary.program.allows(dictionary.values())).isTrue();
        assertThat(Certificate.bound(dictionary)).isCloseTo(cost, within(1e-6 * (1 + Math.abs(cost))));
    }

    /** V. Chvátal, Linear Programming (1983), chapter 2: 13 at (2, 0, 1). */
    @Test
    void chvatalsFirstExample() {
        double[] x = optimum(Programs.minimise(-5, -4, -3)
                .upperAll(10)
                .atMost(5, 2, 3, 1)
                .atMost(11, 4, 1, 2)
                .atMost(8, 3, 4, 2));
        assertThat(x).containsExactly(new double[] {2, 0, 1}, within(1e-9));
    }

    /** E. M. L. Beale, Cycling in the dual simplex algorithm (1955): 1/20 at (1/25, 0, 1, 0). */
    @Test
    void bealesExampleThatCycles() {
        double[] x = optimum(Programs.minimise(-0.75, 150, -0.02, 6)
                .upperAll(10)
                .atMost(0, 0.25, -60, -1.0 / 25, 9)
                .atMost(0, 0.5, -90, -1.0 / 50, 3)
                .atMost(1, 0, 0, 1, 0));
        assertThat(x).containsExactly(new double[] {0.04, 0, 1, 0}, within(1e-9));
    }

    /** V. Klee and G. J. Minty (1972), as in Chvátal, chapter 4: all of it is the last one. */
    @Test
    void kleeAndMintysCube() {
        double[] x = optimum(Programs.minimise(-100, -10, -1)
                .upperAll(20_000)
                .atMost(1, 1, 0, 0)
                .atMost(100, 20, 1, 0)
                .atMost(10_000, 200, 20, 1));
        assertThat(x).containsExactly(new double[] {0, 0, 10_000}, within(1e-6));
    }

    /**
     * x from -4, without an upper bound, y without a lower one, whatever the signs: x + y is 1 and y - x at least -5, so y is
     * at least -2; x + 2 y is 1 + y.
     */
    @Test
    void boundsOnOneSideAlone() {
        double[] x = optimum(Programs.minimise(1, 2)
                .lower(-4, -100)
                .upper(INF, 8)
                .row(1, 1, 1, 1)
                .atLeast(-5, -1, 1));
        assertThat(x).containsExactly(new double[] {3, -2}, within(1e-9));
        x = optimum(Programs.minimise(-1, -2)
                .lower(-INF, -8)
                .upper(4, 100)
                .row(-1, -1, 1, 1)
                .atMost(5, -1, 1));
        assertThat(x).containsExactly(new double[] {-3, 2}, within(1e-9));
    }

    /** Of fractions, equations and limits on one side or both, all of them kept to by some values that were drawn first. */
    private static Programs random(Random random, int n, int rows) {
        double[] inside = random.doubles(n, -3, 3).toArray();
        Programs programs = Programs.minimise(random.doubles(n, -5, 5).toArray())
                .lower(Arrays.stream(inside).map(x -> x - random.nextInt(4)).toArray())
                .upper(Arrays.stream(inside).map(x -> x + random.nextInt(4)).toArray());
        for (int i = 0; i < rows; i++) {
            double[] row = new double[n];
            double sum = 0;
            for (int j = 0; j < n; j++) {
                row[j] = random.nextInt(3) == 0 ? 0 : Math.round(random.nextGaussian() * 50) / 10.0;
                sum += row[j] * inside[j];
            }
            switch (random.nextInt(6)) {
                case 0 -> programs.row(sum, sum, row);
                case 1 -> programs.row(sum - 2, sum + 1, row);
                case 2, 3 -> programs.atMost(sum + random.nextInt(2), row);
                default -> programs.atLeast(sum - random.nextInt(2), row);
            }
        }
        return programs;
    }

    @Test
    void whatHasASolutionHasAnOptimumThatProvesItself() {
        Random random = new Random(11);
        for (int i = 0; i < 150; i++) {
            optimum(random(random, 2 + random.nextInt(12), 1 + random.nextInt(12)));
        }
    }

    /** A cost that nobody wants to know more beyond is passed only with a bound that proves it. */
    @Test
    void whatIsDearIsProvedToBe() {
        Random random = new Random(12);
        int dear = 0;
        for (int i = 0; i < 60; i++) {
            Compact program = random(random, 8, 9).program();
            DualSimplex whole = of(program);
            assertThat(whole.solve(INF, 10_000)).isEqualTo(End.OPTIMAL);
            double optimum = whole.dictionary().cost();
            double step = 1e-3 * (1 + Math.abs(optimum));
            for (double limit : new double[] {optimum - 9, optimum - step, optimum + step}) {
                DualSimplex simplex = of(program);
                End end = simplex.solve(limit, 10_000);
                if (end == End.DEAR) {
                    dear++;
                    assertThat(limit).isLessThan(optimum);
                    assertThat(Certificate.bound(simplex.dictionary())).isBetween(limit, optimum + 1e-6);
                } else {
                    assertThat(end).isEqualTo(End.OPTIMAL);
                    provesItself(simplex);
                }
            }
        }
        assertThat(dear).isGreaterThan(40);
    }

    /** x + y + z at most 2, and 2 x + y + z at least 4.5, with x at most 2: nothing keeps to both. */
    @Test
    void whatIsImpossible() {
        Programs programs =
                Programs.minimise(1, 1, 1).upper(2, 10, 10).atMost(2, 1, 1, 1).atLeast(4.5, 2, 1, 1);
        assertThat(of(programs.program()).solve(INF, 100)).isEqualTo(End.IMPOSSIBLE);
        programs =
                Programs.minimise(1, 1, 1).upper(2, 10, 10).atMost(2, 1, 1, 1).atLeast(4, 2, 1, 1);
        assertThat(optimum(programs)).containsExactly(new double[] {2, 0, 0}, within(1e-9));
    }

    /** Where nothing costs anything no step gains anything; after some hundred of them costs are moved a little. */
    @Test
    void manyStepsThatGainNothing() {
        Random random = new Random(13);
        int n = 200;
        double[] inside = random.doubles(n).toArray();
        Programs programs = Programs.minimise(new double[n]).upperAll(1);
        for (int i = 0; i < 160; i++) {
            double[] row = random.doubles(n, -1, 1).toArray();
            double sum = 0;
            for (int j = 0; j < n; j++) {
                sum += row[j] * inside[j];
            }
            programs.row(sum, sum, row);
        }
        DualSimplex few = new DualSimplex(programs.withAllRows(), new Work());
        assertThat(few.solve(INF, 299)).isEqualTo(End.LIMIT);
        assertThat(few.dictionary().reduced).containsOnly(0);
        DualSimplex simplex = new DualSimplex(programs.withAllRows(), new Work());
        assertThat(simplex.solve(INF, 301)).isEqualTo(End.LIMIT);
        assertThat(simplex.dictionary().reduced).doesNotContain(0);
        assertThat(simplex.solve(INF, 10_000)).isEqualTo(End.OPTIMAL);
        assertThat(simplex.dictionary().program.allows(simplex.dictionary().values()))
                .isTrue();
    }
}
