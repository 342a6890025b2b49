package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Sums over rows and columns, and scales, reckoned by hand. */
class CompactTest {
    private static final double INF = Double.POSITIVE_INFINITY;
    private static final Compact PROGRAM = new Compact(
            new double[] {2, -3, 0},
            new double[] {1, -1, 0},
            new double[] {4, 5, 9},
            new double[] {1, 0, 0.5},
            new int[][] {{0, 1}, {1, 2}},
            new double[][] {{2, -1}, {3, 4}},
            new double[] {-INF, 1},
            new double[] {6, INF},
            10,
            new Compact.Way(new int[] {0, 1, 2}, new double[] {1, 1, 1}, new double[3], List.of()));

    @Test
    void sumsOfARow() {
        double[] x = {3, -1, 2};
        assertThat(PROGRAM.activity(0, x)).isEqualTo(7);
        assertThat(PROGRAM.size(0, x)).isEqualTo(7);
        assertThat(PROGRAM.activity(1, x)).isEqualTo(5);
        assertThat(PROGRAM.size(1, x)).isEqualTo(11);
        assertThat(PROGRAM.cost(x)).isEqualTo(10 + 6 + 3);
        assertThat(PROGRAM.leastCost()).isEqualTo(10 + 2 - 15);
        assertThat(PROGRAM.columns()).isEqualTo(3);
        assertThat(PROGRAM.rows()).isEqualTo(2);
        assertThat(PROGRAM.whole(0)).isTrue();
        assertThat(PROGRAM.whole(1)).isFalse();
    }

    @Test
    void valuesKeepToRowsAndBoundsUpToAMillionth() {
        assertThat(PROGRAM.allows(new double[] {3, 0, 1})).isTrue();
        assertThat(PROGRAM.allows(new double[] {3 + 3.4e-6, 0, 1})).isTrue();
        assertThat(PROGRAM.allows(new double[] {3 + 3.6e-6, 0, 1})).isFalse();
        assertThat(PROGRAM.allows(new double[] {1, -1, 1 - 0.4e-6})).isTrue();
        assertThat(PROGRAM.allows(new double[] {1, -1, 1 - 0.6e-6})).isFalse();
        assertThat(PROGRAM.allows(new double[] {1 - 1.9e-6, 1, 1})).isTrue();
        assertThat(PROGRAM.allows(new double[] {1 - 2.1e-6, 1, 1})).isFalse();
        assertThat(PROGRAM.allows(new double[] {4, 5 + 5.9e-6, 1})).isTrue();
        assertThat(PROGRAM.allows(new double[] {4, 5 + 6.1e-6, 1})).isFalse();
        assertThat(PROGRAM.allows(new double[] {4, 5, 9.1})).isFalse();
    }

    /** Terms of a million that cancel out may lose a millionth part of a millionth more. */
    @Test
    void whereLargeTermsCancelOutMoreMayBeLost() {
        Compact program = Programs.minimise(0, 0)
                .lower(-1e9, -1e9)
                .upper(1e9, 1e9)
                .row(0, 0, 1, -1)
                .program();
        assertThat(program.allows(new double[] {1e6 + 2.9e-6, 1e6})).isTrue();
        assertThat(program.allows(new double[] {1e6 + 3.1e-6, 1e6})).isFalse();
        assertThat(program.allows(new double[] {1 + 2.9e-6, 1})).isFalse();
        assertThat(program.allows(new double[] {1e6, 1e6 + 2.9e-6})).isTrue();
        assertThat(program.allows(new double[] {1e6, 1e6 + 3.1e-6})).isFalse();
    }

    @Test
    void scalesArePowersOfTwoThatBringCoefficientsNearOneAndChangeNoRow() {
        int[][] index = {{0, 1}, {0, 1}, {2}};
        double[][] value = {{1024, 3}, {4096, 12}, {0.25}};
        double[] lower = {-INF, 8, 1};
        double[] upper = {64, INF, 2};
        double[] scales = Scaling.of(4, index, value, lower, upper, 4);
        double[][] before = {{1024, 3}, {4096, 12}, {0.25}};
        double[] sides = {64, 8, 1};
        for (int i = 0; i < 3; i++) {
            double side = i == 0 ? upper[i] : lower[i];
            double factor = side / sides[i];
            assertThat(Math.log(factor) / Math.log(2))
                    .isCloseTo(Math.rint(Math.log(factor) / Math.log(2)), within(1e-9));
            for (int k = 0; k < index[i].length; k++) {
                assertThat(value[i][k]).isEqualTo(before[i][k] * factor * scales[index[i][k]]);
                assertThat(Math.abs(value[i][k])).isBetween(0.5, 2.0);
            }
        }
        assertThat(scales[3]).isEqualTo(1);
        assertThat(upper[2]).isEqualTo(2 * lower[2]);
    }
}
