package packpot.solver;

/** Minimises linear models without integers and says what their limits cost. */
public interface LinearSolver {
    /**
     * Solves a model.
     *
     * @throws IllegalArgumentException when the model has integers: a linear solver would take them for fractions and call
     *     the answer optimal
     * @throws SolverException when the solver itself fails, or its values, its prices or their agreement are wrong
     */
    <T> LinearSolution solveLinear(LinearModel<T> model, double seconds);
}
