package packpot.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
import org.jspecify.annotations.Nullable;
import packpot.dog.Dog;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/**
 * Dogs parted over several pots of one cook day. Every way to part them is weighed by a bound ({@link PotBounds}), quickly at
 * first, closely when its turn comes. Ways are planned in the order of their bounds, until the next bound is no lower than the
 * best way's cost. {@link PotPlans} has the plans. What must be used goes into the first pot whose dogs may have it.
 */
public final class Pots {
    /** With more dogs there are more ways to part them than can be weighed. */
    public static final int MOST_DOGS = 7;

    /** No pot takes more of the time than this part. */
    private static final double SHARE_OF_TIME = 0.25;

    private final Household household;
    private final PotPlans plans;
    private final TimeBudget time;
    private final double seconds;
    private final double gap;
    private final PotBounds bounds;

    /**
     * Dogs of one household.
     *
     * @param limits of the whole search
     */
    public Pots(Household household, Knowledge knowledge, Solver solver, SolveLimits limits) {
        this.household = household;
        this.bounds = new PotBounds(household, knowledge, solver);
        this.time = new TimeBudget(limits.seconds());
        this.seconds = limits.seconds();
        this.gap = limits.relativeGap();
        this.plans = new PotPlans(household, knowledge, new Planner(knowledge, solver), this::limitsOfOne, time);
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

    /** A way to part the dogs before it is planned; its bound is close once whole numbers are in it. */
    private record Parting(List<List<Dog>> groups, PotBounds.Bound from, boolean isClose) {
        double bound() {
            return from.cost();
        }
    }

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
                .map(groups -> new Parting(groups, bounds.quick(groups, time.limits(seconds, gap)), false))
                .filter(parting -> Double.isFinite(parting.bound()))
                .toList();
    }

    private SolveLimits limitsOfOne() {
        return time.limits(SHARE_OF_TIME * seconds, gap);
    }

    private record Best(@Nullable Way way, double noneBelow, boolean complete) {}

    /**
     * The best way with just so many pots.
     *
     * @param rival with fewer pots, that it is to beat; one way is planned all the same, so that its cost is seen
     */
    private Best best(List<Parting> partings, int pots, @Nullable Way rival) {
        PriorityQueue<Parting> open = new PriorityQueue<>(Comparator.comparingDouble(Parting::bound));
        partings.stream().filter(parting -> parting.groups().size() == pots).forEach(open::add);
        Way best = null;
        double noneBelow = Double.POSITIVE_INFINITY;
        while (!open.isEmpty()) {
            Parting parting = open.remove();
            boolean outdone = best != null
                    && (parting.bound() >= best.cost() || (rival != null && parting.bound() >= rival.cost()));
            boolean late = time.isSpent() && (best != null || rival != null);
            if (outdone || late) {
                return new Best(best, Math.min(noneBelow, parting.bound()), outdone);
            }
            if (!parting.isClose()) {
                PotBounds.Bound close = bounds.close(parting.groups(), parting.from(), limitsOfOne());
                if (Double.isFinite(close.cost())) {
                    open.add(new Parting(parting.groups(), close, true));
                }
                continue;
            }
            Way way = plans.plan(parting.groups(), group -> bounds.ration(group, parting.from()));
            noneBelow = Math.min(noneBelow, noneBelow(parting, way));
            if (way != null && (best == null || way.cost() < best.cost())) {
                best = way;
            }
        }
        return new Best(best, noneBelow, true);
    }

    /** One pot shares its packs with no other, so that what was proved of its plan holds for the way. */
    private static double noneBelow(Parting parting, @Nullable Way way) {
        return way == null || way.pots().size() > 1
                ? parting.bound()
                : Math.max(parting.bound(), way.pots().get(0).plan().proof().noPlanBelow());
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
}
