package packpot.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import packpot.explain.CostDrivers.Ending;
import packpot.explain.CostDrivers.Turn;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.solver.LinearModel.Variable;
import packpot.solver.Solution;
import packpot.solver.Variant;

/**
 * Finds the prices at which the foods of the cheapest plan change, with whole packs and choices open.
 *
 * <p>A plan's cost is a straight line in the price of one food, and the cheapest plan is the lowest of these lines. So
 * the price at which the plan in hand meets the line of another plan is solved anew: when nothing cheaper is found, the
 * plan changes there; otherwise the cheaper plan's line gives the next price to try. It takes fewer solves than halving
 * and ends exactly at the turn, to the gap of the solves. Plans that were found for one food serve the search for others.
 */
final class PriceTurns {
    private static final double GAP = 1e-4;
    private static final double SECONDS_EACH = 5;
    private static final int MOST_SOLVES = 8;
    private static final double NEXT_TO_NOTHING = 1e-9;
    private static final double SMALLEST_COST = 1e-9;

    private final SolvedPlan base;
    private final TimeBudget time;
    private final List<Solution> pool = new CopyOnWriteArrayList<>();

    PriceTurns(SolvedPlan base, TimeBudget time) {
        this.base = base;
        this.time = time;
    }

    /** How far the price can fall before the pot changes its foods. */
    Turn down(PantryItem item) {
        return turn(item, false, samePot());
    }

    /** How far the price can rise before the pot changes its foods. */
    Turn up(PantryItem item) {
        return turn(item, true, samePot());
    }

    /** How far the price of a food that is left out must fall before it comes in. */
    Turn entry(PantryItem item) {
        return turn(item, false, plan -> !base.foods(plan).contains(item));
    }

    private Predicate<Solution> samePot() {
        Set<PantryItem> now = base.foods(base.solution());
        return plan -> base.foods(plan).equals(now);
    }

    /** The cost of a plan as a line in how many times its price a food costs. */
    private record Line(double now, double slope) {
        double at(double factor) {
            return now + (factor - 1) * slope;
        }

        /** Where another line passes below this one on the way up or down; null when it does not. */
        @Nullable
        Double meets(Line other, boolean up) {
            double closing = up ? slope - other.slope : other.slope - slope;
            if (closing <= NEXT_TO_NOTHING) {
                return null;
            }
            double away = Math.max(0, other.now - now) / closing;
            double factor = up ? 1 + away : 1 - away;
            return factor < 0 ? null : factor;
        }
    }

    private Line line(Solution plan, PantryItem item) {
        double[] values =
                plan.values().stream().mapToDouble(Double::doubleValue).toArray();
        return new Line(
                base.model().linearModel().objective().value(values),
                base.model().costOf(item).value(values));
    }

    private Turn turn(PantryItem item, boolean up, Predicate<Solution> same) {
        Solution inside = base.solution();
        double reached = 1;
        Solution outside = nearest(item, up, same, inside);
        boolean lookedFar = false;
        for (int solves = 0; solves < MOST_SOLVES && !time.isSpent(); solves++) {
            Line in = line(inside, item);
            Double meeting = outside == null ? null : in.meets(line(outside, item), up);
            if (outside == null || meeting == null) {
                if (lookedFar) {
                    return never(item);
                }
                lookedFar = true;
                Solution far = up ? without(item) : solve(item, 0, inside);
                if (!far.hasValues()) {
                    return far.status() == Solution.Status.INFEASIBLE ? never(item) : open(item, reached);
                }
                if (same.test(far)) {
                    // Only a proved optimum shows that nothing else is cheaper there.
                    return far.status() == Solution.Status.OPTIMAL ? never(item) : open(item, reached);
                }
                outside = far;
                continue;
            }
            Line out = line(outside, item);
            Solution there = solve(item, meeting, inside);
            if (there.status() != Solution.Status.OPTIMAL) {
                return open(item, reached);
            }
            double slack = 2 * GAP * Math.max(SMALLEST_COST, Math.abs(out.at(meeting)));
            boolean onward = up ? meeting > reached : meeting < reached;
            if (!onward || line(there, item).at(meeting) >= Math.min(in.at(meeting), out.at(meeting)) - slack) {
                double unproved = Math.max(0, in.at(meeting) - there.bound());
                return found(item, meeting, unproved / Math.abs(in.slope() - out.slope()), outside);
            }
            if (same.test(there)) {
                inside = there;
                reached = meeting;
            } else {
                outside = there;
            }
        }
        return open(item, reached);
    }

    /** The plan in the pool whose line is met first. */
    private @Nullable Solution nearest(PantryItem item, boolean up, Predicate<Solution> same, Solution from) {
        Line line = line(from, item);
        Solution best = null;
        double nearest = Double.POSITIVE_INFINITY;
        for (Solution plan : pool) {
            if (!same.test(plan)) {
                Double meeting = line.meets(line(plan, item), up);
                if (meeting != null && Math.abs(meeting - 1) < nearest) {
                    nearest = Math.abs(meeting - 1);
                    best = plan;
                }
            }
        }
        return best;
    }

    private Solution solve(PantryItem item, double factor, Solution start) {
        return pooled(base.model().atPrice(base.sameBowls(), item, factor), start);
    }

    private Solution without(PantryItem item) {
        Variable used = Objects.requireNonNull(base.foodChoices().get(item));
        return pooled(base.sameBowls().bound(used, 0, 0), base.solution());
    }

    private Solution pooled(Variant<Wish> variant, Solution start) {
        Solution plan = base.solve(variant.model(), time.limits(SECONDS_EACH, GAP), start);
        if (plan.hasValues()) {
            pool.add(plan);
        }
        return plan;
    }

    private Turn found(PantryItem item, double factor, double precision, Solution then) {
        Set<PantryItem> now = base.foods(base.solution());
        List<PantryItem> comesIn = new ArrayList<>(base.foods(then));
        comesIn.removeAll(now);
        List<PantryItem> goesOut = new ArrayList<>(now);
        goesOut.removeAll(base.foods(then));
        double price = price(item);
        return new Turn(
                Ending.FOUND,
                factor * price,
                precision * price,
                SolvedPlan.labels(comesIn),
                SolvedPlan.labels(goesOut));
    }

    private static Turn never(PantryItem item) {
        return new Turn(Ending.NEVER, price(item), 0, List.of(), List.of());
    }

    private static Turn open(PantryItem item, double factor) {
        return new Turn(Ending.OUT_OF_TIME, factor * price(item), 0, List.of(), List.of());
    }

    /** For a pack, or for a gram as it is sold, bone and peel included. */
    static double price(PantryItem item) {
        return item.isLoose() ? item.packPrice() * item.food().kitchen().edibleShare() : item.packPrice();
    }
}
