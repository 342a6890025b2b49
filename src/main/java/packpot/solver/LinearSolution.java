package packpot.solver;

import java.util.List;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;

/**
 * The optimum of a linear model without integers, and its prices. All are in the model's own units, whatever scaling
 * the solver worked with, and by index of the model's rows and variables; lists are empty when there is no optimum.
 *
 * @param duals by how much the optimum rises when a row's binding limit rises by one: at least 0 for a limit from below,
 *     at most 0 for one from above, 0 for a row that does not bind
 * @param reducedCosts the same for the bound at which a variable stands; 0 for one between its bounds
 * @param rowStatus where each row stands in the basis
 * @param variableStatus where each variable does
 */
public record LinearSolution(
        Solution.Status status,
        List<Double> values,
        double objective,
        List<Double> duals,
        List<Double> reducedCosts,
        List<Basis> rowStatus,
        List<Basis> variableStatus) {

    /** Where a row or a variable stands in the basis of an optimum. */
    public enum Basis {
        /** Between its limits, or at one by chance. */
        BASIC,
        AT_LOWER,
        AT_UPPER,
        /** Both limits are the same. */
        FIXED,
        /** Without limits, and at 0. */
        FREE
    }

    public LinearSolution {
        values = List.copyOf(values);
        duals = List.copyOf(duals);
        reducedCosts = List.copyOf(reducedCosts);
        rowStatus = List.copyOf(rowStatus);
        variableStatus = List.copyOf(variableStatus);
    }

    static LinearSolution without(Solution.Status status) {
        return new LinearSolution(status, List.of(), Double.NaN, List.of(), List.of(), List.of(), List.of());
    }

    public boolean isOptimal() {
        return status == Solution.Status.OPTIMAL;
    }

    public double value(Variable variable) {
        return values.get(variable.index());
    }

    /**
     * What the prices alone say the optimum is: each price times the limit that it is for. At an optimum it equals the
     * objective, which is the strongest check of both.
     */
    public <T> double dualObjective(LinearModel<T> model) {
        double sum = 0;
        List<Row<T>> rows = model.rows();
        for (int i = 0; i < rows.size(); i++) {
            sum += priced(duals.get(i), rows.get(i).lower(), rows.get(i).upper());
        }
        for (Variable v : model.variables()) {
            sum += priced(reducedCosts.get(v.index()), v.lower(), v.upper());
        }
        return sum;
    }

    private static double priced(double price, double lower, double upper) {
        double limit = price > 0 ? lower : upper;
        return Double.isInfinite(limit) ? 0 : price * limit;
    }

    /**
     * The objective of a model a little different from the one solved, to first order: its cost of these values, and
     * its limits where they bind, at these prices. The difference to the same of the model solved is how the optimum
     * begins to move, whether a cost, a limit or a coefficient is what differs.
     *
     * @param model with the same rows and variables in the same order
     */
    public <T> double firstOrder(LinearModel<T> model) {
        double[] at = values.stream().mapToDouble(Double::doubleValue).toArray();
        double sum = model.objective().value(at);
        List<Row<T>> rows = model.rows();
        for (int i = 0; i < rows.size(); i++) {
            double price = duals.get(i);
            Row<T> row = rows.get(i);
            if (price != 0) {
                double limit = price > 0 ? row.lower() : row.upper();
                sum += Double.isInfinite(limit)
                        ? 0
                        : price * (limit - row.expression().value(at));
            }
        }
        for (Variable v : model.variables()) {
            double price = reducedCosts.get(v.index());
            double limit = price > 0 ? v.lower() : v.upper();
            sum += price == 0 || Double.isInfinite(limit) ? 0 : price * (limit - at[v.index()]);
        }
        return sum;
    }
}
