package packpot.explain;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.plan.Plan;
import packpot.solver.Expression;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import packpot.solver.Variant;

/**
 * Plans at nearly the same cost whose foods differ as much as they can.
 *
 * <p>Each plan after the cheapest is solved for: among all plans within the share of the optimum, the one whose distance
 * to the nearest plan already chosen is largest. With u[i] for a food in the pot and S for the foods of a chosen plan, the
 * distance to it is &Sigma;<sub>S</sub> (1 - u[i]) + &Sigma;<sub>not S</sub> u[i] over four times the most foods, plus the
 * cooked mass of foods that are not in S over the usual mass of the batch. Then the cheapest plan with these foods, no
 * nearer by a tenth, is taken.
 */
public final class Alternatives {
    /** A distance need not be proved the largest to be large. */
    private static final double DISTANCE_GAP = 0.05;

    private static final double COST_GAP = 1e-3;
    private static final double KEPT_SHARE_OF_DISTANCE = 0.9;
    /** Weighing in whole steps and the till may cost this share more than the model says. */
    private static final double ROUNDING_SHARE = 0.004;
    /** As a part of the time for one plan; the rest is for its cost. */
    private static final double SEARCH_SHARE_OF_TIME = 0.75;
    /** Foods that differ count a quarter of the mass that does: a spoon of another oil is no other dinner. */
    private static final double FOODS_COUNT = 4;

    /** Below this distance a plan is the same plan. */
    private static final double SAME = 0.02;

    /**
     * Plans side by side.
     *
     * @param within the share of the cheapest plan's cost that any may cost more
     * @param plans the cheapest first, then in the order in which they were found; each passed the audit
     * @param refused how many were found that failed the audit or, once weighed in whole steps, cost too much
     * @param reason why there are no more, in a sentence; empty when there are as many as asked for
     */
    public record Found(double within, List<Alternative> plans, int refused, String reason) {
        public Found {
            plans = List.copyOf(plans);
        }
    }

    /**
     * One of the plans.
     *
     * @param costsMoreShare than the cheapest plan, as a share of that
     * @param nearest the share of the cooked mass that must be other food to make it any earlier plan; 1 for the first
     */
    public record Alternative(Planner.Result.Planned planned, double costsMoreShare, double nearest) {}

    /** What the search gave. */
    public sealed interface Result {
        /** Plans. */
        record Several(Found found) implements Result {}

        /** There is not even one. */
        record NoBase(Planner.Result.NoPlan none) implements Result {}
    }

    private final Knowledge knowledge;
    private final Solver solver;

    public Alternatives(Knowledge knowledge, Solver solver) {
        this.knowledge = knowledge;
        this.solver = solver;
    }

    /**
     * Finds plans.
     *
     * @param within the share of the optimum that a plan may cost more, above 0
     * @param most plans, the cheapest counted
     * @param limits of the first plan
     * @param seconds wall time for all of it
     */
    public Result find(Household household, double within, int most, SolveLimits limits, double seconds) {
        TimeBudget time = new TimeBudget(seconds);
        SolvedPlan.Outcome outcome = SolvedPlan.of(household, knowledge, solver, limits);
        if (outcome instanceof SolvedPlan.Outcome.None none) {
            return new Result.NoBase(none.none());
        }
        return new Result.Several(around(((SolvedPlan.Outcome.Solved) outcome).plan(), within, most, time));
    }

    private Found around(SolvedPlan base, double within, int most, TimeBudget time) {
        double cheapest = base.planned().plan().cost().ofTheBatch();
        List<Alternative> plans = new ArrayList<>(List.of(new Alternative(base.planned(), 0, 1)));
        // Refused plans are kept away from too, or they would be found again.
        List<Set<PantryItem>> avoided = new ArrayList<>(List.of(base.foods(base.solution())));
        int refused = 0;
        String reason = "";
        int tries = 2 * most;
        while (plans.size() < most) {
            if (tries-- == 0) {
                reason = "no other plan stayed within the cost once it was weighed in whole steps";
                break;
            }
            if (time.isSpent()) {
                reason = "the time ran out; give more with --time-limit";
                break;
            }
            double share = time.secondsLeft() / (most - plans.size());
            Solution other = farthest(base, avoided, within, share, time);
            if (!other.hasValues()) {
                reason = other.status() == Solution.Status.INFEASIBLE
                        ? "there is no other plan within this cost whose foods differ"
                        : "the time ran out; give more with --time-limit";
                break;
            }
            avoided.add(base.foods(other));
            Planner.Result.Planned planned = base.finished(other, COST_GAP);
            double more = planned.plan().cost().ofTheBatch() / cheapest - 1;
            double nearest = plans.stream()
                    .mapToDouble(each -> distance(each.planned().plan(), planned.plan()))
                    .min()
                    .orElse(1);
            if (planned.verdict().passed() && more <= within && nearest > SAME) {
                plans.add(new Alternative(planned, more, nearest));
            } else {
                refused++;
            }
        }
        return new Found(within, plans, refused, reason);
    }

    /** The share of cooked mass in which two pots differ: 0 for the same shares of the same foods, 1 for none in common. */
    public static double distance(Plan a, Plan b) {
        Map<String, Double> difference = new TreeMap<>();
        a.pot().forEach(food -> difference.merge(food.food(), food.shareOfCookedMass(), Double::sum));
        b.pot().forEach(food -> difference.merge(food.food(), -food.shareOfCookedMass(), Double::sum));
        return difference.values().stream().mapToDouble(Math::abs).sum() / 2;
    }

    private Solution farthest(
            SolvedPlan base, List<Set<PantryItem>> avoided, double within, double seconds, TimeBudget time) {
        Variant<Wish> variant = base.variant();
        LinearModel<Wish> model = variant.minimise(new Expression()).model();
        Expression cost = base.model().linearModel().objective();
        double room = Math.max(within * base.cost() / 4, (within - ROUNDING_SHARE) * base.cost());
        model.atMost("cost within the share", new Expression().add(1, cost), base.cost() + room, null);
        Variable nearest = model.variable("distance to the nearest plan", SAME, 2);
        for (Set<PantryItem> foods : avoided) {
            Distance distance = distance(base, foods);
            model.atLeast(
                    "distance to a plan",
                    new Expression().add(1, distance.terms()).add(-1, nearest),
                    -distance.constant(),
                    null);
        }
        model.objective().add(-1, nearest);
        Solution far = base.solve(model, time.limits(seconds * SEARCH_SHARE_OF_TIME, DISTANCE_GAP));
        return far.hasValues() ? cheapestLike(base, avoided, far, seconds, time) : far;
    }

    /** The cheapest plan with the same foods, nearly as far from the plans avoided. */
    private Solution cheapestLike(
            SolvedPlan base, List<Set<PantryItem>> avoided, Solution far, double seconds, TimeBudget time) {
        Variant<Wish> variant = base.variant();
        base.foodChoices().values().forEach(used -> {
            double value = Math.rint(far.value(used));
            variant.bound(used, value, value);
        });
        // Which additions go into bowls is settled too: it is a small part of the cost and a large part of the work.
        base.model()
                .bowlChoices()
                .forEach(choice -> variant.bound(choice, Math.rint(far.value(choice)), Math.rint(far.value(choice))));
        LinearModel<Wish> model = variant.model();
        double[] at = far.values().stream().mapToDouble(Double::doubleValue).toArray();
        for (Set<PantryItem> foods : avoided) {
            Distance distance = distance(base, foods);
            model.atLeast(
                    "still far",
                    distance.terms(),
                    KEPT_SHARE_OF_DISTANCE
                                    * (distance.constant() + distance.terms().value(at))
                            - distance.constant(),
                    null);
        }
        Solution cheap = base.solve(
                model, time.limits(Math.max(1, seconds * (1 - SEARCH_SHARE_OF_TIME)), COST_GAP), within(base, far));
        return cheap.hasValues() ? cheap : within(base, far);
    }

    /** The same values with their cost for an objective. */
    private static Solution within(SolvedPlan base, Solution far) {
        double[] at = far.values().stream().mapToDouble(Double::doubleValue).toArray();
        int own = base.model().linearModel().variables().size();
        return new Solution(
                far.status(),
                far.values().subList(0, own),
                base.model().linearModel().objective().value(at),
                base.solution().bound(),
                far.seconds());
    }

    private record Distance(Expression terms, double constant) {}

    private static Distance distance(SolvedPlan base, Set<PantryItem> foods) {
        double most = FOODS_COUNT * base.household().shape().mostFoods();
        Expression terms = new Expression();
        double[] constant = {0};
        Map<PantryItem, Expression> cooked = new LinkedHashMap<>(base.model().potCookedGrams());
        base.foodChoices().forEach((item, used) -> {
            boolean had = foods.contains(item);
            terms.add((had ? -1 : 1) / most, used);
            constant[0] += had ? 1 / most : 0;
            Expression grams = cooked.get(item);
            if (!had && grams != null) {
                terms.add(1 / base.model().usualCookedGrams(), grams);
            }
        });
        return new Distance(terms, constant[0]);
    }
}
