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
import packpot.solver.SolverException;

/**
 * The solver of households: models with whole numbers are searched here; what is large, what turns out hard, what has no whole
 * numbers, and what digits were lost in goes to the library, with what was found so far. Answers are checked against the model
 * before they are passed on, and are the same on every machine unless time runs out.
 */
public final class Search implements Solver, LinearSolver {
    /** Columns times rows: a dictionary of more fits no cache, and steps become slow. */
    private static final long LARGE = 40_000_000;
    /** Entries of dictionaries: a second or two. Most searches take a tenth; what takes more may well take hours. */
    private static final long MOST_WORK = 2_000_000_000L;
    /** What has no more than so many times the gap by then is likely to be proved soon, and may do more. */
    private static final double NEAR = 3;

    private static final long TIMES_MORE = 4;

    private final OrToolsSolver library = new OrToolsSolver();
    private final Solver other;
    private final long mostWork;
    private volatile boolean cancelled;

    public Search() {
        other = library;
        mostWork = MOST_WORK;
    }

    /** With another solver for what is not searched here, or takes more work. */
    Search(Solver other) {
        this(other, MOST_WORK);
    }

    /** The same, where less work is done first. */
    Search(Solver other, long mostWork) {
        this.other = other;
        this.mostWork = mostWork;
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
            return without(Solution.Status.INFEASIBLE, since(begun));
        }
        Compact program = reduced.get();
        if ((long) program.columns() * program.rows() > LARGE) {
            return other.solve(model, limits, start);
        }
        Tree tree =
                new Tree(program, limits.relativeGap(), mostWork, () -> cancelled || since(begun) > limits.seconds());
        Tree.Result result = tree.search(start.isEmpty() ? null : program.shrink(start));
        if (!result.complete() && !result.lost() && isNear(result, program, limits.relativeGap())) {
            result = tree.goOn(TIMES_MORE * mostWork);
        }
        if (result.x() == null && cancelled) {
            throw new CancelledException();
        }
        Solution ours = solution(model, program, result, since(begun));
        boolean done = result.complete() && ours.status() != Solution.Status.UNKNOWN;
        double left = limits.seconds() - since(begun);
        return done || cancelled || left <= 0
                ? ours
                : better(
                        ours,
                        theirs(model, new SolveLimits(left, limits.relativeGap()), ours, start),
                        limits,
                        since(begun));
    }

    /** What the other solver finds from here; nothing where it fails and there is an answer without it. */
    private <T> Solution theirs(LinearModel<T> model, SolveLimits limits, Solution ours, List<Double> start) {
        if (!ours.hasValues()) {
            return other.solve(model, limits, start);
        }
        try {
            return other.solve(model, limits, ours.values());
        } catch (SolverException e) {
            return without(Solution.Status.UNKNOWN, 0);
        }
    }

    private static boolean isNear(Tree.Result result, Compact program, double gap) {
        double @Nullable [] x = result.x();
        return x != null && program.cost(x) - result.bound() <= NEAR * gap * Math.abs(program.cost(x));
    }

    /** What two solvers know together. */
    private static Solution better(Solution ours, Solution theirs, SolveLimits limits, double seconds) {
        if (!theirs.hasValues()) {
            return !ours.hasValues() && theirs.status() == Solution.Status.INFEASIBLE ? theirs : ours;
        }
        Solution best = ours.hasValues() && ours.objective() <= theirs.objective() ? ours : theirs;
        double bound =
                Math.min(best.objective(), ours.hasValues() ? Math.max(ours.bound(), theirs.bound()) : theirs.bound());
        boolean proved = best.objective() - bound <= limits.relativeGap() * Math.abs(best.objective());
        return new Solution(
                proved ? Solution.Status.OPTIMAL : Solution.Status.FEASIBLE,
                best.values(),
                best.objective(),
                bound,
                seconds);
    }

    private static Solution without(Solution.Status status, double seconds) {
        return new Solution(status, List.of(), Double.NaN, Double.NaN, seconds);
    }

    private static double since(long begun) {
        return (System.nanoTime() - begun) / 1e9;
    }

    private static <T> Solution solution(LinearModel<T> model, Compact program, Tree.Result result, double seconds) {
        double @Nullable [] x = result.x();
        if (x == null) {
            Solution.Status status = result.complete() ? Solution.Status.INFEASIBLE : Solution.Status.UNKNOWN;
            return without(status, seconds);
        }
        double[] values = program.expand(x);
        for (Variable v : model.variables()) {
            double value = values[v.index()];
            values[v.index()] = Math.min(v.upper(), Math.max(v.lower(), v.integer() ? Math.rint(value) : value));
        }
        try {
            model.check(values);
        } catch (SolverException e) {
            // Digits were lost on the way back.
            return without(Solution.Status.UNKNOWN, seconds);
        }
        double cost = model.objective().value(values);
        return new Solution(
                result.complete() ? Solution.Status.OPTIMAL : Solution.Status.FEASIBLE,
                Arrays.stream(values).boxed().toList(),
                cost,
                Math.min(cost, Math.max(program.leastCost(), result.bound())),
                seconds);
    }
}
