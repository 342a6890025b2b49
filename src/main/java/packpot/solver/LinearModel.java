package packpot.solver;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A linear model with integers, to be minimised. Rows and bounds carry a tag, which is whatever the builder wants to
 * find again; names are for files and debugging alone.
 *
 * @param <T> the tag
 */
public final class LinearModel<T> {
    private static final double ROW_TOLERANCE = 1e-5;

    /** A decision. */
    public static final class Variable {
        private final int index;
        private final String name;
        private final double lower;
        private final double upper;
        private final boolean integer;

        private Variable(int index, String name, double lower, double upper, boolean integer) {
            this.index = index;
            this.name = name;
            this.lower = lower;
            this.upper = upper;
            this.integer = integer;
        }

        public int index() {
            return index;
        }

        public String name() {
            return name;
        }

        public double lower() {
            return lower;
        }

        public double upper() {
            return upper;
        }

        public boolean integer() {
            return integer;
        }
    }

    /**
     * A linear expression held between two limits.
     *
     * @param lower may be minus infinity
     * @param upper may be infinity
     */
    public record Row<T>(
            String name,
            Expression expression,
            double lower,
            double upper,
            @Nullable T tag) {}

    private final List<Variable> variables = new ArrayList<>();
    private final List<Row<T>> rows = new ArrayList<>();
    private final Expression objective = new Expression();

    /** A continuous variable. */
    public Variable variable(String name, double lower, double upper) {
        return add(name, lower, upper, false);
    }

    /** A whole-numbered variable. */
    public Variable whole(String name, double lower, double upper) {
        return add(name, lower, upper, true);
    }

    /** A variable that is 0 or 1. */
    public Variable choice(String name) {
        return add(name, 0, 1, true);
    }

    private Variable add(String name, double lower, double upper, boolean integer) {
        if (!(lower <= upper)) {
            throw new IllegalArgumentException(name + " has no room between " + lower + " and " + upper);
        }
        Variable variable = new Variable(variables.size(), name, lower, upper, integer);
        variables.add(variable);
        return variable;
    }

    /** Holds an expression between two limits; the expression must not be changed afterwards. */
    public Row<T> row(String name, Expression expression, double lower, double upper, @Nullable T tag) {
        Row<T> row = new Row<>(name, expression, lower, upper, tag);
        rows.add(row);
        return row;
    }

    /** Holds an expression at or above a limit. */
    public Row<T> atLeast(String name, Expression expression, double lower, @Nullable T tag) {
        return row(name, expression, lower, Double.POSITIVE_INFINITY, tag);
    }

    /** Holds an expression at or below a limit. */
    public Row<T> atMost(String name, Expression expression, double upper, @Nullable T tag) {
        return row(name, expression, Double.NEGATIVE_INFINITY, upper, tag);
    }

    /** Holds an expression at a value. */
    public Row<T> equal(String name, Expression expression, double value, @Nullable T tag) {
        return row(name, expression, value, value, tag);
    }

    /** What is minimised; add terms to it. */
    public Expression objective() {
        return objective;
    }

    public List<Variable> variables() {
        return List.copyOf(variables);
    }

    public List<Row<T>> rows() {
        return List.copyOf(rows);
    }

    /**
     * The same model with other bounds on some variables; variables keep their indexes. More rows and variables can be
     * added to the copy.
     *
     * @param fixed values at which variables are held, by index
     */
    public LinearModel<T> withFixed(Map<Integer, Double> fixed) {
        LinearModel<T> copy = new LinearModel<>();
        for (Variable v : variables) {
            Double value = fixed.get(v.index);
            copy.add(v.name, value == null ? v.lower : value, value == null ? v.upper : value, v.integer);
        }
        for (Row<T> row : rows) {
            copy.row(row.name(), copy.translated(row.expression()), row.lower(), row.upper(), row.tag());
        }
        copy.objective.add(1, copy.translated(objective));
        return copy;
    }

    /** The same model with fractions where whole numbers are asked for. */
    public LinearModel<T> relaxed() {
        LinearModel<T> copy = new LinearModel<>();
        variables.forEach(v -> copy.add(v.name, v.lower, v.upper, false));
        rows.forEach(
                row -> copy.row(row.name(), copy.translated(row.expression()), row.lower(), row.upper(), row.tag()));
        copy.objective.add(1, copy.translated(objective));
        return copy;
    }

    private Expression translated(Expression expression) {
        Expression own = new Expression();
        expression.forEach((v, coefficient) -> own.add(coefficient, variables.get(v.index)));
        return own;
    }

    /**
     * Checks values against every row, up to a little of what is added up.
     *
     * @param values by index of the variables
     * @throws SolverException when they break a row
     */
    public void check(double[] values) {
        for (Row<T> row : rows) {
            double value = row.expression().value(values);
            double[] size = {1};
            row.expression()
                    .forEach((v, coefficient) ->
                            size[0] = Math.max(size[0], Math.abs(coefficient * values[v.index()])));
            double slack = ROW_TOLERANCE * size[0];
            if (value < row.lower() - slack || value > row.upper() + slack) {
                throw new SolverException("the solver's answer breaks \"" + row.name() + "\": " + value
                        + " is not within " + row.lower() + " and " + row.upper());
            }
        }
    }

    public boolean hasIntegers() {
        return variables.stream().anyMatch(Variable::integer);
    }
}
