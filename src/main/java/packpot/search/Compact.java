package packpot.search;

import java.util.Arrays;
import java.util.List;

/**
 * A linear program with whole numbers in arrays: minimise cost x + offset, with row limits on A x and bounds on x. Made of a
 * model by a {@link Reducer}; its columns and rows are scaled by powers of two, which changes no digit.
 *
 * @param cost of one unit of each column
 * @param lower bound of each column; finite
 * @param upper bound of each column; finite
 * @param unit what one whole number is in a column's own scale; 0 for a column that takes fractions
 * @param index columns of each row
 * @param value coefficients of each row
 * @param rowLower limit of each row; may be minus infinity
 * @param rowUpper limit of each row; may be infinity
 * @param offset what is added to the cost
 * @param way back to the variables of the model
 */
// Steps read these arrays millions of times; nothing compares programs.
@SuppressWarnings("ArrayRecordComponent")
record Compact(
        double[] cost,
        double[] lower,
        double[] upper,
        double[] unit,
        int[][] index,
        double[][] value,
        double[] rowLower,
        double[] rowUpper,
        double offset,
        Way way) {
    private static final double FEASIBLE = 1e-6;

    /**
     * How values of columns become values of the model's variables.
     *
     * @param column of each variable; negative where it has none
     * @param scale of each variable's column: variable = scale times column
     * @param fixed values of variables without a column
     * @param defined variables that follow from others, in the order in which they are reckoned
     */
    record Way(int[] column, double[] scale, double[] fixed, List<Defined> defined) {}

    /** A variable = constant + sum of coefficients times variables. */
    record Defined(int variable, double constant, int[] index, double[] value) {}

    int columns() {
        return cost.length;
    }

    int rows() {
        return rowLower.length;
    }

    boolean whole(int column) {
        return unit[column] > 0;
    }

    double activity(int row, double[] x) {
        int[] columns = index[row];
        double[] coefficients = value[row];
        double sum = 0;
        for (int k = 0; k < columns.length; k++) {
            sum += coefficients[k] * x[columns[k]];
        }
        return sum;
    }

    /** The sum of the terms without their signs: what is lost in digits is a part of it. */
    double size(int row, double[] x) {
        double sum = 0;
        for (int k = 0; k < index[row].length; k++) {
            sum += Math.abs(value[row][k] * x[index[row][k]]);
        }
        return sum;
    }

    /** Whether values keep to every row and bound, up to a little. */
    boolean allows(double[] x) {
        for (int i = 0; i < rows(); i++) {
            double activity = activity(i, x);
            double slack = FEASIBLE * (1 + Math.abs(activity) + FEASIBLE * size(i, x));
            if (activity < rowLower[i] - slack || activity > rowUpper[i] + slack) {
                return false;
            }
        }
        for (int j = 0; j < columns(); j++) {
            double slack = FEASIBLE * (1 + Math.abs(x[j]));
            if (x[j] < lower[j] - slack || x[j] > upper[j] + slack) {
                return false;
            }
        }
        return true;
    }

    /** What no solution costs less than, whatever the rows say. */
    double leastCost() {
        double sum = offset;
        for (int j = 0; j < cost.length; j++) {
            sum += cost[j] == 0 ? 0 : cost[j] * (cost[j] > 0 ? lower[j] : upper[j]);
        }
        return sum;
    }

    double cost(double[] x) {
        double sum = offset;
        for (int j = 0; j < cost.length; j++) {
            sum += cost[j] * x[j];
        }
        return sum;
    }

    /** Values of the model's variables. */
    double[] expand(double[] x) {
        double[] values = way.fixed().clone();
        for (int v = 0; v < values.length; v++) {
            if (way.column()[v] >= 0) {
                values[v] = x[way.column()[v]] * way.scale()[v];
            }
        }
        for (Defined defined : way.defined()) {
            double sum = defined.constant();
            for (int k = 0; k < defined.index().length; k++) {
                sum += defined.value()[k] * values[defined.index()[k]];
            }
            values[defined.variable()] = sum;
        }
        return values;
    }

    /** Values of the columns from those of the model's first variables; NaN where they are not known. */
    double[] shrink(List<Double> values) {
        double[] x = new double[columns()];
        Arrays.fill(x, Double.NaN);
        for (int v = 0; v < way.column().length && v < values.size(); v++) {
            if (way.column()[v] >= 0) {
                x[way.column()[v]] = values.get(v) / way.scale()[v];
            }
        }
        return x;
    }
}
