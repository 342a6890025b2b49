package packpot.explain;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import packpot.household.Wish;
import packpot.solver.Expression;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import packpot.solver.SolverException;

/**
 * Solves a model with some of its wishes: those that hold, those that may be missed at a price, and none of the others.
 * Rows without a wish always hold.
 */
final class Trial {
    private static final Solution NOT_KNOWN =
            new Solution(Solution.Status.UNKNOWN, List.of(), Double.NaN, Double.NaN, 0);

    private final LinearModel<Wish> whole;
    private final List<Row<Wish>> facts;
    private final Solver solver;

    Trial(LinearModel<Wish> whole, Solver solver) {
        this.whole = whole;
        this.facts = whole.rows().stream().filter(row -> row.tag() == null).toList();
        this.solver = solver;
    }

    /**
     * A wish that may be missed.
     *
     * @param weight of a miss as large as the wish itself
     * @param most that it may be missed by, as a share of it
     */
    record Soft(Demand demand, double weight, double most) {}

    /** A solution, and by what share of itself each soft wish is missed in it. */
    record Outcome(Solution solution, Map<Demand, Double> misses) {
        double missed(Demand demand) {
            return misses.getOrDefault(demand, 0.0);
        }
    }

    /** Whether wishes can hold together. */
    Solution holds(Collection<Demand> hard, boolean integers, SolveLimits limits) {
        return solve(hard, List.of(), integers, limits).solution();
    }

    /** Holds the hard wishes and misses the soft ones as little as can be. */
    Outcome solve(Collection<Demand> hard, Collection<Soft> soft, boolean integers, SolveLimits limits) {
        LinearModel<Wish> model = new LinearModel<>();
        for (Variable v : whole.variables()) {
            // In the same order, so that the rows of the whole model speak of these variables.
            if (v.integer() && integers) {
                model.whole(v.name(), v.lower(), v.upper());
            } else {
                model.variable(v.name(), v.lower(), v.upper());
            }
        }
        facts.forEach(row -> copy(model, row));
        hard.forEach(demand -> demand.rows().forEach(row -> copy(model, row)));
        Map<Demand, Variable> slacks = new LinkedHashMap<>();
        for (Soft each : soft) {
            Variable slack = model.variable("miss of " + each.demand().key(), 0, each.most());
            model.objective().add(each.weight(), slack);
            slacks.put(each.demand(), slack);
            each.demand().rows().forEach(row -> soften(model, row, slack));
        }
        Solution solution;
        try {
            solution = solver.solve(model, limits);
        } catch (SolverException e) {
            // A solver that stumbles has proved nothing; what is shown in the end is proved by another solve.
            solution = NOT_KNOWN;
        }
        Map<Demand, Double> misses = new LinkedHashMap<>();
        if (solution.hasValues()) {
            for (Soft each : soft) {
                Variable slack = slacks.get(each.demand());
                misses.put(each.demand(), slack == null ? 0.0 : solution.value(slack));
            }
        }
        return new Outcome(solution, misses);
    }

    private static void copy(LinearModel<Wish> model, Row<Wish> row) {
        model.row(row.name(), row.expression(), row.lower(), row.upper(), row.tag());
    }

    private static void soften(LinearModel<Wish> model, Row<Wish> row, Variable slack) {
        double size = Demand.tag(row).size();
        if (!Double.isInfinite(row.lower())) {
            model.atLeast(
                    row.name(), new Expression().add(1, row.expression()).add(size, slack), row.lower(), row.tag());
        }
        if (!Double.isInfinite(row.upper())) {
            model.atMost(
                    row.name(), new Expression().add(1, row.expression()).add(-size, slack), row.upper(), row.tag());
        }
    }
}
