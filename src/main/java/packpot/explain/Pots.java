package packpot.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import packpot.dog.Dog;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.needs.Needs;
import packpot.plan.Plan;
import packpot.ration.RationModel;
import packpot.ration.RationPlanner;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/**
 * Dogs parted over several pots of one cook day. Every way to part them is weighed by a bound: each pot by itself with all
 * food at its price by weight, since pots share packs, and fractions for whole numbers. Ways are planned in the order of
 * their bounds, until the next bound is no lower than the best way's cost. Pots are planned one after the other, the
 * largest first; what one leaves of bags, freezer, stock and opened packs is the next one's. What must be used goes into the
 * first pot whose dogs may have it.
 */
public final class Pots {
    /** With more dogs there are more ways to part them than can be weighed. */
    public static final int MOST_DOGS = 7;

    /** No pot takes more of the time than this part. */
    private static final double SHARE_OF_TIME = 0.25;

    private final Household household;
    private final Knowledge knowledge;
    private final Solver solver;
    private final Planner planner;
    private final TimeBudget time;
    private final double seconds;
    private final double gap;
    private final Map<List<Dog>, Double> bounds = new ConcurrentHashMap<>();

    /**
     * Dogs of one household.
     *
     * @param limits of the whole search
     */
    public Pots(Household household, Knowledge knowledge, Solver solver, SolveLimits limits) {
        this.household = household;
        this.knowledge = knowledge;
        this.solver = solver;
        this.planner = new Planner(knowledge, solver);
        this.time = new TimeBudget(limits.seconds());
        this.seconds = limits.seconds();
        this.gap = limits.relativeGap();
    }

    /**
     * A way to part the dogs.
     *
     * @param pots each with what the pots before it left
     * @param atTheTill money for all pots
     * @param cost the same less what left-over parts are worth
     */
    public record Way(List<Planner.Result.Planned> pots, double atTheTill, double cost) {
        public Way {
            pots = List.copyOf(pots);
        }
    }

    /**
     * The best way with so many pots, and with at most so many.
     *
     * @param exactly the best that was planned with just so many pots; null when none was found
     * @param best with at most so many; null when none was found
     * @param noneBelow no way to part the dogs over so many pots costs less
     * @param complete false when the time ended before every way was planned that could be cheaper
     */
    public record UpTo(
            int pots, @Nullable Way exactly, @Nullable Way best, double noneBelow, boolean complete) {}

    private record Parting(List<List<Dog>> groups, double bound) {}

    /** The best ways with at most one, two, and so on pots. */
    public List<UpTo> find(int most) {
        List<Parting> partings = weighed(most);
        List<UpTo> found = new ArrayList<>();
        Way best = null;
        double noneBelow = Double.POSITIVE_INFINITY;
        boolean complete = true;
        for (int count = 1; count <= Math.min(most, household.dogs().size()); count++) {
            Best exactly = best(partings, count, best);
            noneBelow = Math.min(noneBelow, exactly.noneBelow());
            complete &= exactly.complete();
            Way way = exactly.way();
            best = way != null && (best == null || way.cost() < best.cost()) ? way : best;
            found.add(
                    new UpTo(count, way, best, best == null ? noneBelow : Math.min(noneBelow, best.cost()), complete));
        }
        return found;
    }

    /** The best way with just so many pots that was found in the time. */
    Optional<Way> exactly(int pots) {
        return Optional.ofNullable(best(weighed(pots), pots, null).way());
    }

    private List<Parting> weighed(int most) {
        return partings(household.dogs(), most).parallelStream()
                .map(groups -> new Parting(groups, bound(groups)))
                .filter(parting -> Double.isFinite(parting.bound()))
                .sorted(Comparator.comparingDouble(Parting::bound))
                .toList();
    }

    private record Best(@Nullable Way way, double noneBelow, boolean complete) {}

    /**
     * The best way with just so many pots.
     *
     * @param rival with fewer pots, that it is to beat; one way is planned all the same, so that its cost is seen
     */
    private Best best(List<Parting> partings, int pots, @Nullable Way rival) {
        Way best = null;
        double noneBelow = Double.POSITIVE_INFINITY;
        for (Parting parting : partings) {
            if (parting.groups().size() != pots) {
                continue;
            }
            noneBelow = Math.min(noneBelow, parting.bound());
            boolean outdone = best != null
                    && (parting.bound() >= best.cost() || (rival != null && parting.bound() >= rival.cost()));
            if (outdone) {
                break;
            }
            if (time.isSpent() && (best != null || rival != null)) {
                return new Best(best, noneBelow, false);
            }
            Way way = planned(parting.groups());
            if (way != null && (best == null || way.cost() < best.cost())) {
                best = way;
            }
        }
        return new Best(best, noneBelow, true);
    }

    /** Every way to part the dogs into at most so many groups, each once. */
    static <T> List<List<List<T>>> partings(List<T> all, int most) {
        List<List<List<T>>> ways = new ArrayList<>();
        ways.add(List.of());
        for (T one : all) {
            List<List<List<T>>> next = new ArrayList<>();
            for (List<List<T>> way : ways) {
                for (int at = 0; at < way.size(); at++) {
                    List<List<T>> joined = new ArrayList<>(way);
                    List<T> group = new ArrayList<>(way.get(at));
                    group.add(one);
                    joined.set(at, group);
                    next.add(joined);
                }
                if (way.size() < most) {
                    List<List<T>> apart = new ArrayList<>(way);
                    apart.add(List.of(one));
                    next.add(apart);
                }
            }
            ways = next;
        }
        return ways;
    }

    private double bound(List<List<Dog>> groups) {
        double sum = 0;
        for (List<Dog> group : groups) {
            sum += bounds.computeIfAbsent(group, this::boundOf);
        }
        double saved = household.pantry().stream()
                .filter(item -> !item.outOfStock())
                .mapToDouble(item -> item.onHandGrams() * item.pricePerGram())
                .sum();
        return Math.max(0, sum - saved);
    }

    private double boundOf(List<Dog> group) {
        // What all pots must use together need not all go into one of them.
        Household some = household
                .withDogs(group)
                .withBudget(null)
                .withPantry(household.pantry().stream()
                        .map(item -> item.outOfStock()
                                ? item.withMustUse(0)
                                : item.byWeight().withMustUse(0))
                        .toList());
        Needs needs = Needs.of(some, knowledge);
        Solution relaxed = solver.solve(
                RationModel.of(some, knowledge, needs, RationPlanner.sharesByNeed(needs))
                        .linearModel()
                        .relaxed(),
                time.limits(seconds, gap));
        return switch (relaxed.status()) {
            case OPTIMAL -> relaxed.bound() - freeSupplements(some);
            case INFEASIBLE -> Double.POSITIVE_INFINITY;
            case FEASIBLE, UNBOUNDED, UNKNOWN -> 0;
        };
    }

    /** A supplement that costs nothing counts in a model as much as the cheapest food. */
    private static double freeSupplements(Household some) {
        return some.cheapestFoodPerGram()
                * some.pantry().stream()
                        .filter(item -> item.food().isSupplement())
                        .mapToDouble(PantryItem::onHandGrams)
                        .sum();
    }

    private double kcal(List<Dog> group) {
        return Needs.of(household.withDogs(group), knowledge).kcalPerBatch();
    }

    /** The pots one after the other; null when one of them has no plan that passes its audit. */
    private @Nullable Way planned(List<List<Dog>> groups) {
        List<List<Dog>> largestFirst = groups.stream()
                .sorted(Comparator.comparingDouble(group -> -kcal(group)))
                .toList();
        List<Planner.Result.Planned> pots = new ArrayList<>();
        Household rest = household;
        for (List<Dog> group : largestFirst) {
            Household own = rest.withDogs(group);
            if (!(planner.plan(own, time.limits(SHARE_OF_TIME * seconds, gap))
                            instanceof Planner.Result.Planned planned)
                    || !planned.verdict().passed()) {
                return null;
            }
            pots.add(planned);
            rest = after(rest, planned.plan());
        }
        return priced(pots);
    }

    /** What is left for the next pot of the day, opened packs included. */
    private static Household after(Household before, Plan plan) {
        Map<String, Double> opened = new HashMap<>();
        plan.shopping().forEach(line -> opened.put(line.food(), line.leftOverGrams()));
        Household rest = Rest.sameDay(before, plan);
        return rest.withPantry(rest.pantry().stream()
                .map(item -> item.withOnHand(
                        item.onHandGrams() + opened.getOrDefault(item.food().id(), 0.0)))
                .toList());
    }

    private Way priced(List<Planner.Result.Planned> pots) {
        double till = 0;
        Map<String, Double> used = new HashMap<>();
        Map<String, Double> bought = new HashMap<>();
        for (Planner.Result.Planned pot : pots) {
            for (Plan.Purchase line : pot.plan().shopping()) {
                till += line.pays();
                used.merge(line.food(), line.usedGrams(), Double::sum);
                bought.merge(line.food(), line.usedGrams() - line.fromHandGrams() + line.leftOverGrams(), Double::sum);
            }
        }
        double worth = 0;
        for (PantryItem item : household.pantry()) {
            double paidFor = bought.getOrDefault(item.food().id(), 0.0);
            double left =
                    item.onHandGrams() + paidFor - used.getOrDefault(item.food().id(), 0.0);
            worth += Math.min(left, paidFor) * household.rules().leftWorthPerGram(item);
        }
        return new Way(pots, till, till - worth);
    }
}
