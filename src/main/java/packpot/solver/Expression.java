package packpot.solver;

import java.util.TreeMap;
import java.util.function.BiConsumer;
import packpot.solver.LinearModel.Variable;

/** A sum of coefficients times variables. Terms of one variable add up; the order of adding does not matter. */
public final class Expression {
    private final TreeMap<Integer, Double> coefficients = new TreeMap<>();
    private final TreeMap<Integer, Variable> variables = new TreeMap<>();

    /** Adds a term. */
    public Expression add(double coefficient, Variable variable) {
        if (Double.isNaN(coefficient) || Double.isInfinite(coefficient)) {
            throw new IllegalArgumentException("the coefficient of " + variable.name() + " is " + coefficient);
        }
        if (coefficient != 0) {
            coefficients.merge(variable.index(), coefficient, Double::sum);
            variables.put(variable.index(), variable);
        }
        return this;
    }

    /** Adds every term of another expression, times a factor. */
    public Expression add(double factor, Expression other) {
        other.forEach((variable, coefficient) -> add(factor * coefficient, variable));
        return this;
    }

    /** Calls back for every term, in the order of the variables. */
    public void forEach(BiConsumer<Variable, Double> term) {
        variables.forEach((index, variable) -> term.accept(variable, coefficient(variable)));
    }

    public double coefficient(Variable variable) {
        return coefficients.getOrDefault(variable.index(), 0.0);
    }

    /** How many terms there are. */
    public int size() {
        return coefficients.size();
    }

    public boolean isEmpty() {
        return coefficients.isEmpty();
    }

    /** The value at given values of the variables. */
    public double value(double[] values) {
        double[] sum = {0};
        forEach((variable, coefficient) -> sum[0] += coefficient * values[variable.index()]);
        return sum[0];
    }
}
