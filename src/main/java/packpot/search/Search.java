package packpot.search;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import packpot.solver.CancelledException;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;
import packpot.solver.LinearSolution;
import packpot.solver.LinearSolver;
import packpot.solver.OrToolsSolver;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/**
 * The solver of households: models with whole numbers are searched here, as long as they are small; what is larger, what has no
 * whole numbers, and what digits were lost in goes to the library. Answers are checked against the model before they are passed
 * on, and are the same on every machine unless time runs out.
 */
public final class Search implements Solver, LinearSolver {
    /** Columns times rows: a dictionary of more fits no cache, and steps become slow. */
    private static final long LARGE = 4_000_000;

    private final OrToolsSolver library = new OrToolsSolver();
    private final Solver other;
    private volatile boolean cancelled;

    public Search() {
        other = library;
    }

    /** With another solver for what is not searched here. */
    Search(Solver other) {
        this.other = other;
    }

    /** Ends what this solver is at, and whatever it is asked from now on. May be called from any thread. */
    public void cancel() {
        cancelled = true;
        library.cancel();
    }

    @Override
    public <T> LinearSolution solveLinear(LinearModel<T> model, double seconds) {
        return library.solveLinear(model, seconds);
    }

    @Override
    public <T> Solution solve(LinearModel<T> model, SolveLimits limits) {
        return solve(model, limits, List.of());
    }

    @Override
    public <T> Solution solve(LinearModel<T> model, SolveLimits limits, List<Double> start) {
        if (!model.hasIntegers()) {
            return other.solve(model, limits, start);
        }
        if (cancelled) {
            throw new CancelledException();
        }
        long begun = System.nanoTime();
        Optional<Compact> reduced = Reducer.reduce(model);
        if (reduced.isEmpty()) {
            return new Solution(Solution.Status.INFEASIBLE, List.of(), Double.NaN, Double.NaN, since(begun));
        }
        Compact program = reduced.get();
        if ((long) program.columns() * program.rows() > LARGE) {
            return other.solve(model, limits, start);
        }
        Tree tree = new Tree(program, limits.relativeGap(), () -> cancelled || since(begun) > limits.seconds());
        Tree.Result result = tree.search(start.isEmpty() ? null : program.shrink(start));
        if (result.x() == null && cancelled) {
            throw new CancelledException();
        }
        if (result.lost()) {
            return other.solve(model, limits, start);
        }
        return solution(model, program, result, since(begun));
    }

    private static double since(long begun) {
        return (System.nanoTime() - begun) / 1e9;
    }

    private static <T> Solution solution(LinearModel<T> model, Compact program, Tree.Result result, double seconds) {
        double @Nullable [] x = result.x();
        if (x == null) {
            Solution.Status status = result.complete() ? Solution.Status.INFEASIBLE : Solution.Status.UNKNOWN;
            return new Solution(status, List.of(), Double.NaN, Double.NaN, seconds);
        }
        double[] values = program.expand(x);
        for (Variable v : model.variables()) {
            double value = values[v.index()];
            values[v.index()] = Math.min(v.upper(), Math.max(v.lower(), v.integer() ? Math.rint(value) : value));
        }
        model.check(values);
        double cost = model.objective().value(values);
        return new Solution(
                result.complete() ? Solution.Status.OPTIMAL : Solution.Status.FEASIBLE,
                Arrays.stream(values).boxed().toList(),
                cost,
                Math.min(cost, result.bound()),
                seconds);
    }
}
