package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import packpot.solver.Expression;
import packpot.solver.LinearModel.Variable;

/** Programs written down as they stand in a book, and what is true of every dictionary of one. */
final class Programs {
    static final double INF = Double.POSITIVE_INFINITY;

    private final double[] cost;
    private final double[] lower;
    private final double[] upper;
    private final double[] unit;
    private final List<double[]> rows = new ArrayList<>();
    private final List<Double> rowLower = new ArrayList<>();
    private final List<Double> rowUpper = new ArrayList<>();
    private double offset;

    private Programs(double[] cost) {
        this.cost = cost;
        lower = new double[cost.length];
        upper = new double[cost.length];
        unit = new double[cost.length];
        Arrays.fill(upper, INF);
    }

    /** Minimises these costs of columns that are at least nothing. */
    static Programs minimise(double... cost) {
        return new Programs(cost);
    }

    Programs offset(double figure) {
        offset = figure;
        return this;
    }

    Programs lower(double... bounds) {
        System.arraycopy(bounds, 0, lower, 0, lower.length);
        return this;
    }

    Programs upper(double... bounds) {
        System.arraycopy(bounds, 0, upper, 0, upper.length);
        return this;
    }

    Programs upperAll(double bound) {
        Arrays.fill(upper, bound);
        return this;
    }

    /** Whole numbers, each so much in its column's own scale; 0 for fractions. */
    Programs whole(double... units) {
        System.arraycopy(units, 0, unit, 0, unit.length);
        return this;
    }

    Programs wholeAll() {
        Arrays.fill(unit, 1);
        return this;
    }

    Programs row(double least, double most, double... coefficients) {
        rows.add(coefficients);
        rowLower.add(least);
        rowUpper.add(most);
        return this;
    }

    Programs atMost(double most, double... coefficients) {
        return row(-INF, most, coefficients);
    }

    Programs atLeast(double least, double... coefficients) {
        return row(least, INF, coefficients);
    }

    Compact program() {
        int n = cost.length;
        int[][] index = new int[rows.size()][];
        double[][] value = new double[rows.size()][];
        for (int i = 0; i < index.length; i++) {
            double[] row = rows.get(i);
            index[i] = IntStream.range(0, n).filter(j -> row[j] != 0).toArray();
            value[i] = Arrays.stream(index[i]).mapToDouble(j -> row[j]).toArray();
        }
        int[] columns = IntStream.range(0, n).toArray();
        double[] ones = new double[n];
        Arrays.fill(ones, 1);
        return new Compact(
                cost,
                lower,
                upper,
                unit,
                index,
                value,
                rowLower.stream().mapToDouble(x -> x).toArray(),
                rowUpper.stream().mapToDouble(x -> x).toArray(),
                offset,
                new Compact.Way(columns, ones, new double[n], List.of()));
    }

    /** A dictionary of this program that has all its rows, every one of them basic. */
    Dictionary withAllRows() {
        Dictionary dictionary = new Dictionary(program());
        double[] far = new double[cost.length];
        for (int attempt = 0; dictionary.count < rows.size() && attempt < 100; attempt++) {
            // No row is kept at all of these places.
            for (int j = 0; j < far.length; j++) {
                far[j] = (attempt % 2 == 0 ? 1e6 : -1e6) * (1 + j * 0.1 + attempt);
            }
            dictionary.addBroken(far);
        }
        assertThat(dictionary.count).isEqualTo(rows.size());
        return dictionary;
    }

    /** Each basic variable is the sum of the nonbasic ones that the program says, and so are its value and the cost. */
    static void check(Dictionary dictionary) {
        Compact program = dictionary.program;
        Random random = new Random(1);
        for (int turn = 0; turn < 3; turn++) {
            double[] x = random.doubles(dictionary.columns, -5, 5).toArray();
            double cost = program.offset();
            for (int j = 0; j < dictionary.columns; j++) {
                cost += dictionary.reduced[j] * of(program, dictionary.nonbasic[j], x);
            }
            assertThat(cost).isCloseTo(program.cost(x), within(1e-7 * (1 + Math.abs(cost))));
            for (int i = 0; i < dictionary.count; i++) {
                double sum = 0;
                for (int j = 0; j < dictionary.columns; j++) {
                    sum += dictionary.table[i][j] * of(program, dictionary.nonbasic[j], x);
                }
                assertThat(sum).isCloseTo(of(program, dictionary.basic[i], x), within(1e-7 * (1 + Math.abs(sum))));
            }
        }
        double[] values = dictionary.values();
        assertThat(dictionary.cost()).isCloseTo(program.cost(values), within(1e-7));
        for (int j = 0; j < dictionary.columns; j++) {
            int v = dictionary.nonbasic[j];
            assertThat(dictionary.row(v)).isEqualTo(~j);
            assertThat(of(program, v, values)).isCloseTo(dictionary.resting(v), within(1e-6));
        }
        for (int i = 0; i < dictionary.count; i++) {
            assertThat(dictionary.row(dictionary.basic[i])).isEqualTo(i);
            assertThat(of(program, dictionary.basic[i], values)).isCloseTo(dictionary.basicValue[i], within(1e-6));
        }
    }

    private static double of(Compact program, int variable, double[] x) {
        return variable < program.columns() ? x[variable] : program.activity(variable - program.columns(), x);
    }

    /** A sum of coefficients and variables by turns. */
    static Expression sum(Object... coefficientsAndVariables) {
        Expression sum = new Expression();
        for (int i = 0; i < coefficientsAndVariables.length; i += 2) {
            sum.add(((Number) coefficientsAndVariables[i]).doubleValue(), (Variable) coefficientsAndVariables[i + 1]);
        }
        return sum;
    }
}
