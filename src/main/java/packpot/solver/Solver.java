package packpot.solver;

/** Minimises linear models. */
public interface Solver {
    /**
     * Solves a model.
     *
     * @throws SolverException when the solver itself fails, or returns something that breaks the model
     */
    <T> Solution solve(LinearModel<T> model, SolveLimits limits);
}
