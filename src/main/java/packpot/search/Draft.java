package packpot.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import packpot.solver.Expression;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;

/** A model while it is made small. */
final class Draft {
    static final double TOLERANCE = 1e-9;
    /** What a whole number's bound may lack of being whole. */
    static final double WHOLE = 1e-6;

    /** A row; its columns in rising order. */
    static final class Line {
        int[] index;
        double[] value;
        double lower;
        double upper;
        boolean gone;

        Line(int[] index, double[] value, double lower, double upper) {
            this.index = index;
            this.value = value;
            this.lower = lower;
            this.upper = upper;
        }

        /** Where a variable stands; negative where it does not. */
        int at(int variable) {
            return Arrays.binarySearch(index, variable);
        }
    }

    /** Least and most of a sum; infinite parts are counted, so that one can be taken out. */
    static final class Reach {
        private double least;
        private int leastInfinite;
        private double most;
        private int mostInfinite;

        double least() {
            return leastInfinite > 0 ? Double.NEGATIVE_INFINITY : least;
        }

        double most() {
            return mostInfinite > 0 ? Double.POSITIVE_INFINITY : most;
        }

        /** Without a part that is at least so much. */
        double leastWithout(double part) {
            boolean infinite = Double.isInfinite(part);
            if (leastInfinite > (infinite ? 1 : 0)) {
                return Double.NEGATIVE_INFINITY;
            }
            return infinite ? least : least - part;
        }

        /** Without a part that is at most so much. */
        double mostWithout(double part) {
            boolean infinite = Double.isInfinite(part);
            if (mostInfinite > (infinite ? 1 : 0)) {
                return Double.POSITIVE_INFINITY;
            }
            return infinite ? most : most - part;
        }
    }

    final double[] lower;
    final double[] upper;
    final boolean[] whole;
    final double[] cost;
    final boolean[] defined;
    final List<Compact.Defined> definitions = new ArrayList<>();
    final List<Line> lines = new ArrayList<>();
    double offset;
    /** Whether it is shown that there is no solution. */
    boolean impossible;

    Draft(LinearModel<?> model) {
        List<Variable> variables = model.variables();
        int n = variables.size();
        lower = new double[n];
        upper = new double[n];
        whole = new boolean[n];
        cost = new double[n];
        defined = new boolean[n];
        for (Variable v : variables) {
            int j = v.index();
            whole[j] = v.integer();
            lower[j] = whole[j] ? Math.ceil(v.lower() - WHOLE) : v.lower();
            upper[j] = whole[j] ? Math.floor(v.upper() + WHOLE) : v.upper();
            impossible |= lower[j] > upper[j];
        }
        model.objective().forEach((v, coefficient) -> cost[v.index()] = coefficient);
        for (Row<?> row : model.rows()) {
            lines.add(line(row.expression(), row.lower(), row.upper()));
        }
    }

    private static Line line(Expression expression, double lower, double upper) {
        int[] index = new int[expression.size()];
        double[] value = new double[index.length];
        int[] kept = {0};
        expression.forEach((v, coefficient) -> {
            if (coefficient != 0) {
                index[kept[0]] = v.index();
                value[kept[0]++] = coefficient;
            }
        });
        return new Line(Arrays.copyOf(index, kept[0]), Arrays.copyOf(value, kept[0]), lower, upper);
    }

    /** What a term is at least. */
    double low(double coefficient, int variable) {
        return coefficient > 0 ? coefficient * lower[variable] : coefficient * upper[variable];
    }

    /** What a term is at most. */
    double high(double coefficient, int variable) {
        return coefficient > 0 ? coefficient * upper[variable] : coefficient * lower[variable];
    }

    Reach reach(Line line) {
        Reach reach = new Reach();
        for (int k = 0; k < line.index.length; k++) {
            double low = low(line.value[k], line.index[k]);
            double high = high(line.value[k], line.index[k]);
            if (Double.isInfinite(low)) {
                reach.leastInfinite++;
            } else {
                reach.least += low;
            }
            if (Double.isInfinite(high)) {
                reach.mostInfinite++;
            } else {
                reach.most += high;
            }
        }
        return reach;
    }

    /** Moves what cannot move to the limits of a row. */
    void takeOutFixed(Line line) {
        int kept = 0;
        double sum = 0;
        for (int k = 0; k < line.index.length; k++) {
            int v = line.index[k];
            if (lower[v] == upper[v]) {
                sum += line.value[k] * lower[v];
            } else {
                line.index[kept] = v;
                line.value[kept++] = line.value[k];
            }
        }
        if (kept < line.index.length) {
            line.index = Arrays.copyOf(line.index, kept);
            line.value = Arrays.copyOf(line.value, kept);
            line.lower -= sum;
            line.upper -= sum;
        }
    }

    static double size(double limit) {
        return Double.isInfinite(limit) ? 0 : Math.abs(limit);
    }
}
