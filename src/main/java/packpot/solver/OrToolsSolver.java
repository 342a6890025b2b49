package packpot.solver;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPSolverParameters;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;

/**
 * The one door to the solver library. Linear models go to GLOP and models with integers to SCIP; rows are scaled so
 * that their coefficients lie near 1, and what comes back is checked against the model before it is passed on.
 */
public final class OrToolsSolver implements Solver, LinearSolver {
    private static final double INTEGER_TOLERANCE = 1e-5;
    /** By how much the cost of values and the cost by prices may differ, as a share. */
    private static final double DUALITY_TOLERANCE = 1e-6;
    /**
     * Settings of SCIP for models of this size: a hundred or two whole numbers. No probing, no conflict analysis and no
     * beginning once more: each takes longer than the branching that it saves. Scaling once more what comes scaled makes
     * it slower by a third to a half.
     */
    private static final String WITHOUT_PRESOLVING = "use_preprocessing: false";

    private static final String SCIP_SETTINGS = "separating/maxrounds = 0\nlp/scaling = 0\npresolving/maxrestarts = 0\n"
            + "propagating/probing/maxprerounds = 0\nconflict/enable = FALSE\nseparating/maxroundsroot = ";
    /** Cuts at the root pay where so many whole numbers are open and there is no good plan to begin with. */
    private static final int MANY_WHOLE_NUMBERS = 120;

    private static final int CUT_ROUNDS = 3;

    private static volatile boolean loaded;

    private final Set<MPSolver> running = new HashSet<>();
    private boolean cancelled;

    private static void load() {
        if (!loaded) {
            synchronized (OrToolsSolver.class) {
                if (!loaded) {
                    try {
                        NativeLibrary.load();
                    } catch (RuntimeException | UnsatisfiedLinkError e) {
                        throw new SolverException(
                                "its native code cannot be loaded on this system ("
                                        + System.getProperty("os.name") + " " + System.getProperty("os.arch")
                                        + "). A jar holds that of the kind of system that it was built on; build it here"
                                        + " (" + e.getMessage() + ")",
                                e);
                    }
                    loaded = true;
                }
            }
        }
    }

    /**
     * Ends what this solver is at, and whatever it is asked from now on: with what was found so far, or a {@link
     * CancelledException}. May be called from any thread.
     */
    public void cancel() {
        synchronized (running) {
            cancelled = true;
            running.forEach(MPSolver::interruptSolve);
        }
    }

    private void begin(MPSolver solver) {
        synchronized (running) {
            if (cancelled) {
                throw new CancelledException();
            }
            running.add(solver);
        }
    }

    /** Before its memory is given back, since it could not be interrupted after that. */
    private void end(MPSolver solver) {
        synchronized (running) {
            running.remove(solver);
        }
    }

    @Override
    public <T> Solution solve(LinearModel<T> model, SolveLimits limits) {
        return solve(model, limits, List.of());
    }

    @Override
    public <T> Solution solve(LinearModel<T> model, SolveLimits limits, List<Double> start) {
        load();
        String backend = model.hasIntegers() ? "SCIP" : "GLOP";
        MPSolver solver = MPSolver.createSolver(backend);
        if (solver == null) {
            throw new SolverException("the solver library has no " + backend);
        }
        try {
            begin(solver);
            String settings = SCIP_SETTINGS + (start.isEmpty() && isLarge(model) ? CUT_ROUNDS : 0);
            if (model.hasIntegers() && !solver.setSolverSpecificParametersAsString(settings)) {
                throw new SolverException("the solver library refuses the settings " + settings);
            }
            return solve(solver, model, limits, start);
        } finally {
            end(solver);
            solver.delete();
        }
    }

    private static <T> boolean isLarge(LinearModel<T> model) {
        return model.variables().stream()
                        .filter(v -> v.integer() && v.lower() < v.upper())
                        .count()
                >= MANY_WHOLE_NUMBERS;
    }

    /** A model as the library holds it; its rows are the model's, each times its scale. */
    private record Held(List<MPVariable> variables, List<MPConstraint> rows, List<Double> scales) {}

    private static <T> Held hold(MPSolver solver, LinearModel<T> model, SolveLimits limits) {
        List<MPVariable> variables = new ArrayList<>();
        for (Variable v : model.variables()) {
            variables.add(solver.makeVar(finite(v.lower()), finite(v.upper()), v.integer(), ""));
        }
        List<MPConstraint> rows = new ArrayList<>();
        List<Double> scales = new ArrayList<>();
        for (Row<T> row : model.rows()) {
            double scale = scale(row.expression());
            MPConstraint constraint =
                    solver.makeConstraint(finite(row.lower() * scale), finite(row.upper() * scale), "");
            row.expression()
                    .forEach((v, coefficient) ->
                            constraint.setCoefficient(variables.get(v.index()), coefficient * scale));
            rows.add(constraint);
            scales.add(scale);
        }
        MPObjective objective = solver.objective();
        model.objective().forEach((v, coefficient) -> objective.setCoefficient(variables.get(v.index()), coefficient));
        objective.setMinimization();
        solver.setTimeLimit(Math.max(1, Math.round(limits.seconds() * 1000)));
        return new Held(variables, rows, scales);
    }

    private <T> Solution solve(MPSolver solver, LinearModel<T> model, SolveLimits limits, List<Double> start) {
        List<MPVariable> variables = hold(solver, model, limits).variables();
        if (!start.isEmpty()) {
            int known = Math.min(start.size(), variables.size());
            solver.setHint(
                    variables.subList(0, known).toArray(MPVariable[]::new),
                    start.subList(0, known).stream()
                            .mapToDouble(Double::doubleValue)
                            .toArray());
        }
        MPObjective objective = solver.objective();
        long started = System.nanoTime();
        MPSolverParameters parameters = new MPSolverParameters();
        MPSolver.ResultStatus status;
        try {
            parameters.setDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, limits.relativeGap());
            status = model.hasIntegers() ? solver.solve(parameters) : linear(solver);
        } finally {
            parameters.delete();
        }
        double seconds = (System.nanoTime() - started) / 1e9;
        return switch (status) {
            case OPTIMAL, FEASIBLE -> {
                double[] given = values(model, variables);
                double[] values = kept(model, given, limits);
                double cost = model.objective().value(values);
                // A linear solver reports no bound of its own; an optimum is its own bound.
                double bound = model.hasIntegers() ? Math.min(cost, objective.bestBound()) : cost;
                boolean proved = status == MPSolver.ResultStatus.OPTIMAL
                        && (values == given || cost - bound <= limits.relativeGap() * Math.abs(cost));
                yield new Solution(
                        proved ? Solution.Status.OPTIMAL : Solution.Status.FEASIBLE,
                        Arrays.stream(values).boxed().toList(),
                        cost,
                        bound,
                        seconds);
            }
            case INFEASIBLE -> without(withoutRoom(solver, model), seconds);
            case UNBOUNDED -> without(Solution.Status.UNBOUNDED, seconds);
            case NOT_SOLVED -> without(Solution.Status.UNKNOWN, seconds);
            default -> throw new SolverException("the solver ended abnormally (" + status + ")");
        };
    }

    /**
     * Values that keep to every row. A choice that was open by a hair is shut when it is made whole, and a row that hung on it
     * may be broken then: the rest is sought once more with the whole numbers as they are.
     */
    private <T> double[] kept(LinearModel<T> model, double[] values, SolveLimits limits) {
        try {
            model.check(values);
            return values;
        } catch (SolverException broken) {
            Map<Integer, Double> whole = new HashMap<>();
            model.variables().stream().filter(Variable::integer).forEach(v -> whole.put(v.index(), values[v.index()]));
            Solution rest = whole.isEmpty()
                    ? without(Solution.Status.UNKNOWN, 0)
                    : solve(model.withFixed(whole).relaxed(), limits);
            if (!rest.hasValues()) {
                throw broken;
            }
            return rest.values().stream().mapToDouble(Double::doubleValue).toArray();
        }
    }

    /** Where GLOP's presolving loses itself, which happens to models without a solution, it is done without. */
    private static MPSolver.ResultStatus linear(MPSolver solver) {
        MPSolver.ResultStatus status = solver.solve();
        return status == MPSolver.ResultStatus.ABNORMAL
                        && solver.setSolverSpecificParametersAsString(WITHOUT_PRESOLVING)
                ? solver.solve()
                : status;
    }

    @Override
    public <T> LinearSolution solveLinear(LinearModel<T> model, double seconds) {
        if (model.hasIntegers()) {
            throw new IllegalArgumentException("a model with whole numbers has no prices; fix them first");
        }
        load();
        MPSolver solver = MPSolver.createSolver("GLOP");
        if (solver == null) {
            throw new SolverException("the solver library has no GLOP");
        }
        try {
            if (solver.isMip()) {
                throw new SolverException("the solver took a linear model for one with whole numbers");
            }
            Held held = hold(solver, model, new SolveLimits(seconds, 0));
            MPSolver.ResultStatus status = linear(solver);
            return switch (status) {
                case OPTIMAL -> priced(model, held);
                case INFEASIBLE -> LinearSolution.without(withoutRoom(solver, model));
                case UNBOUNDED -> LinearSolution.without(Solution.Status.UNBOUNDED);
                // Prices of a solution that is not proved optimal mean nothing.
                case FEASIBLE, NOT_SOLVED -> LinearSolution.without(Solution.Status.UNKNOWN);
                default -> throw new SolverException("the solver ended abnormally (" + status + ")");
            };
        } finally {
            solver.delete();
        }
    }

    private static <T> LinearSolution priced(LinearModel<T> model, Held held) {
        double[] values = values(model, held.variables());
        model.check(values);
        List<Double> duals = new ArrayList<>();
        List<LinearSolution.Basis> rowStatus = new ArrayList<>();
        for (int i = 0; i < held.rows().size(); i++) {
            // A row times s has a price divided by s.
            duals.add(held.rows().get(i).dualValue() * held.scales().get(i));
            rowStatus.add(basis(held.rows().get(i).basisStatus()));
        }
        List<Double> reducedCosts = new ArrayList<>();
        List<LinearSolution.Basis> variableStatus = new ArrayList<>();
        for (MPVariable variable : held.variables()) {
            reducedCosts.add(variable.reducedCost());
            variableStatus.add(basis(variable.basisStatus()));
        }
        LinearSolution solution = new LinearSolution(
                Solution.Status.OPTIMAL,
                Arrays.stream(values).boxed().toList(),
                model.objective().value(values),
                duals,
                reducedCosts,
                rowStatus,
                variableStatus);
        double byPrices = solution.dualObjective(model);
        if (!(Math.abs(byPrices - solution.objective())
                <= DUALITY_TOLERANCE * Math.max(1, Math.abs(solution.objective())))) {
            throw new SolverException("the solver's prices are wrong: by them the optimum is " + byPrices
                    + ", by its values " + solution.objective());
        }
        return solution;
    }

    private static LinearSolution.Basis basis(MPSolver.BasisStatus status) {
        return switch (status) {
            case BASIC -> LinearSolution.Basis.BASIC;
            case AT_LOWER_BOUND -> LinearSolution.Basis.AT_LOWER;
            case AT_UPPER_BOUND -> LinearSolution.Basis.AT_UPPER;
            case FIXED_VALUE -> LinearSolution.Basis.FIXED;
            case FREE -> LinearSolution.Basis.FREE;
        };
    }

    /** GLOP calls a model infeasible too whose objective falls without end; without an objective it tells the two apart. */
    private static <T> Solution.Status withoutRoom(MPSolver solver, LinearModel<T> model) {
        if (model.hasIntegers() || model.objective().isEmpty()) {
            return Solution.Status.INFEASIBLE;
        }
        solver.objective().clear();
        return solver.solve() == MPSolver.ResultStatus.OPTIMAL ? Solution.Status.UNBOUNDED : Solution.Status.INFEASIBLE;
    }

    private static Solution without(Solution.Status status, double seconds) {
        return new Solution(status, List.of(), Double.NaN, Double.NaN, seconds);
    }

    private static double finite(double limit) {
        return Double.isInfinite(limit) ? Math.copySign(MPSolver.infinity(), limit) : limit;
    }

    /** A power of two, so that scaling loses nothing, which brings the middle of a row's coefficients near 1. */
    private static double scale(Expression expression) {
        double[] logs = {0, 0};
        expression.forEach((v, coefficient) -> {
            logs[0] += Math.log(Math.abs(coefficient));
            logs[1]++;
        });
        return logs[1] == 0 ? 1 : Math.scalb(1.0, (int) Math.round(-logs[0] / logs[1] / Math.log(2)));
    }

    private static <T> double[] values(LinearModel<T> model, List<MPVariable> variables) {
        double[] values = new double[variables.size()];
        for (Variable v : model.variables()) {
            double value = variables.get(v.index()).solutionValue();
            if (v.integer()) {
                if (Math.abs(value - Math.rint(value)) > INTEGER_TOLERANCE) {
                    throw new SolverException("the solver gave " + value + " for a whole number, " + v.name());
                }
                value = Math.rint(value);
            }
            values[v.index()] = Math.min(v.upper(), Math.max(v.lower(), value));
        }
        return values;
    }
}
