package packpot.search;

import java.util.Arrays;

/** Powers of two that bring the coefficients of a matrix near 1. */
final class Scaling {
    private Scaling() {}

    /**
     * Scales rows and their limits in place, and columns.
     *
     * @return the scale of each column: what was x is now x divided by it
     */
    static double[] of(int columns, int[][] index, double[][] value, double[] rowLower, double[] rowUpper, int rounds) {
        double[] scales = new double[columns];
        Arrays.fill(scales, 1);
        for (int round = 0; round < rounds; round++) {
            double[] logs = new double[columns];
            int[] counts = new int[columns];
            for (int i = 0; i < index.length; i++) {
                double factor = power(-meanLog(value[i]));
                rowLower[i] *= factor;
                rowUpper[i] *= factor;
                for (int k = 0; k < index[i].length; k++) {
                    value[i][k] *= factor;
                    logs[index[i][k]] += log(value[i][k]);
                    counts[index[i][k]]++;
                }
            }
            double[] factors = new double[columns];
            for (int j = 0; j < columns; j++) {
                factors[j] = counts[j] == 0 ? 1 : power(-logs[j] / counts[j]);
                scales[j] *= factors[j];
            }
            for (int i = 0; i < index.length; i++) {
                for (int k = 0; k < index[i].length; k++) {
                    value[i][k] *= factors[index[i][k]];
                }
            }
        }
        return scales;
    }

    private static double meanLog(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += log(value);
        }
        return values.length == 0 ? 0 : sum / values.length;
    }

    private static double log(double value) {
        return Math.log(Math.abs(value)) / Math.log(2);
    }

    private static double power(double log) {
        return Math.scalb(1.0, (int) Math.rint(log));
    }
}
