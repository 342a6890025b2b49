package packpot.solver;

import com.google.ortools.Loader;
import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPSolverParameters;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;

/**
 * The one door to the solver library. Linear models go to GLOP and models with integers to SCIP; rows are scaled so
 * that their coefficients lie near 1, and what comes back is checked against the model before it is passed on.
 */
public final class OrToolsSolver implements Solver {
    private static final double ROW_TOLERANCE = 1e-5;
    private static final double INTEGER_TOLERANCE = 1e-5;
    /**
     * Settings of SCIP for models of this size: a hundred or two whole numbers. Measured: rounds of cuts take longer than
     * the branching that they save.
     */
    private static final String SCIP_SETTINGS = "separating/maxroundsroot = 0\nseparating/maxrounds = 0";

    private static volatile boolean loaded;

    private static void load() {
        if (!loaded) {
            synchronized (OrToolsSolver.class) {
                if (!loaded) {
                    try {
                        Loader.loadNativeLibraries();
                    } catch (RuntimeException | UnsatisfiedLinkError e) {
                        throw new SolverException(
                                "the solver's native library cannot be loaded on this system ("
                                        + System.getProperty("os.name") + " " + System.getProperty("os.arch") + "): "
                                        + e.getMessage(),
                                e);
                    }
                    loaded = true;
                }
            }
        }
    }

    @Override
    public <T> Solution solve(LinearModel<T> model, SolveLimits limits) {
        load();
        String backend = model.hasIntegers() ? "SCIP" : "GLOP";
        MPSolver solver = MPSolver.createSolver(backend);
        if (solver == null) {
            throw new SolverException("the solver library has no " + backend);
        }
        try {
            if (model.hasIntegers() && !solver.setSolverSpecificParametersAsString(SCIP_SETTINGS)) {
                throw new SolverException("the solver library refuses the settings " + SCIP_SETTINGS);
            }
            return solve(solver, model, limits);
        } finally {
            solver.delete();
        }
    }

    private static <T> Solution solve(MPSolver solver, LinearModel<T> model, SolveLimits limits) {
        List<MPVariable> variables = new ArrayList<>();
        for (Variable v : model.variables()) {
            variables.add(solver.makeVar(finite(v.lower()), finite(v.upper()), v.integer(), ""));
        }
        for (Row<T> row : model.rows()) {
            double scale = scale(row.expression());
            MPConstraint constraint =
                    solver.makeConstraint(finite(row.lower() * scale), finite(row.upper() * scale), "");
            row.expression()
                    .forEach((v, coefficient) ->
                            constraint.setCoefficient(variables.get(v.index()), coefficient * scale));
        }
        MPObjective objective = solver.objective();
        model.objective().forEach((v, coefficient) -> objective.setCoefficient(variables.get(v.index()), coefficient));
        objective.setMinimization();
        solver.setTimeLimit(Math.max(1, Math.round(limits.seconds() * 1000)));
        long started = System.nanoTime();
        MPSolverParameters parameters = new MPSolverParameters();
        MPSolver.ResultStatus status;
        try {
            parameters.setDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, limits.relativeGap());
            status = solver.solve(parameters);
        } finally {
            parameters.delete();
        }
        double seconds = (System.nanoTime() - started) / 1e9;
        return switch (status) {
            case OPTIMAL, FEASIBLE -> {
                double[] values = values(model, variables);
                verify(model, values);
                double cost = model.objective().value(values);
                // A linear solver reports no bound of its own; an optimum is its own bound.
                double bound = model.hasIntegers() ? Math.min(cost, objective.bestBound()) : cost;
                yield new Solution(
                        status == MPSolver.ResultStatus.OPTIMAL ? Solution.Status.OPTIMAL : Solution.Status.FEASIBLE,
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

    private static <T> void verify(LinearModel<T> model, double[] values) {
        for (Row<T> row : model.rows()) {
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
}
