package packpot.explain;

import java.util.ArrayList;
import java.util.Comparator;
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

/**
 * Where there is no plan, the plan that comes nearest: every wish may be missed, and the sum of the misses, each as a
 * share of its wish, is as small as can be. The wishes that are still missed are where the household must give.
 */
public final class Shortfall {
    private static final double NOTICEABLE = 1e-4;
    private static final double ENERGY_WEIGHT = 50;

    /**
     * A wish that the nearest plan misses.
     *
     * @param share by how much, as a share of what is wished
     */
    public record Miss(Wish wish, double share) {}

    private Shortfall() {}

    /** The misses of the nearest plan, the largest first; empty when none was found in time. */
    public static List<Miss> of(LinearModel<Wish> model, Solver solver, SolveLimits limits) {
        LinearModel<Wish> elastic = new LinearModel<>();
        List<Variable> copies = new ArrayList<>();
        for (Variable v : model.variables()) {
            copies.add(
                    v.integer()
                            ? elastic.whole(v.name(), v.lower(), v.upper())
                            : elastic.variable(v.name(), v.lower(), v.upper()));
        }
        Map<Variable, Wish> slacks = new LinkedHashMap<>();
        for (Row<Wish> row : model.rows()) {
            Expression expression = new Expression();
            row.expression().forEach((v, coefficient) -> expression.add(coefficient, copies.get(v.index())));
            Wish wish = row.tag();
            if (wish != null && wish.size() > 0) {
                double weight = (wish.kind() == Wish.Kind.ENERGY ? ENERGY_WEIGHT : 1);
                if (!Double.isInfinite(row.lower())) {
                    expression.add(wish.size(), slack(elastic, wish, weight, slacks));
                }
                if (!Double.isInfinite(row.upper())) {
                    expression.add(-wish.size(), slack(elastic, wish, weight, slacks));
                }
            }
            elastic.row(row.name(), expression, row.lower(), row.upper(), wish);
        }
        Solution solution = solver.solve(elastic, limits);
        if (!solution.hasValues()) {
            return List.of();
        }
        List<Miss> misses = new ArrayList<>();
        slacks.forEach((slack, wish) -> {
            if (solution.value(slack) > NOTICEABLE) {
                misses.add(new Miss(wish, solution.value(slack)));
            }
        });
        misses.sort(Comparator.comparingDouble(Miss::share).reversed());
        return misses;
    }

    private static Variable slack(LinearModel<Wish> elastic, Wish wish, double weight, Map<Variable, Wish> slacks) {
        Variable slack = elastic.variable("miss of " + wish.sentence(), 0, Double.POSITIVE_INFINITY);
        elastic.objective().add(weight, slack);
        slacks.put(slack, wish);
        return slack;
    }
}
