package packpot.solver;

import java.util.List;
import packpot.solver.LinearModel.Variable;

/**
 * What a solver found.
 *
 * @param values by variable index; empty without a solution
 * @param objective value of the best solution
 * @param bound no solution can be cheaper than this
 * @param seconds wall time of the solve
 */
public record Solution(Status status, List<Double> values, double objective, double bound, double seconds) {

    /** How a solve ended. */
    public enum Status {
        /** Proved to be within the gap that was asked for. */
        OPTIMAL,
        /** A solution, but the time ran out before the proof. */
        FEASIBLE,
        /** Proved that there is none. */
        INFEASIBLE,
        /** The objective can fall without end: the model is wrong. */
        UNBOUNDED,
        /** The time ran out before anything was found. */
        UNKNOWN
    }

    public Solution {
        values = List.copyOf(values);
    }

    public double value(Variable variable) {
        return values.get(variable.index());
    }

    public boolean hasValues() {
        return status == Status.OPTIMAL || status == Status.FEASIBLE;
    }

    /** How far the solution may be off, as a share of its own value. */
    public double relativeGap() {
        return Math.abs(objective - bound) / Math.max(1e-9, Math.abs(objective));
    }
}
