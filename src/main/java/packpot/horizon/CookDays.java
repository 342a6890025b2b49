package packpot.horizon;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import packpot.household.Horizon;
import packpot.household.Household;

/**
 * Chooses cook days: the shortest path over the days on which one can cook, where the way from one to the next costs what
 * the batch between them costs, and a cook day. Each way has a quick lower bound at first; those on the shortest path are
 * reckoned out, until a path of such ways alone is the shortest. No other path can then cost less.
 */
final class CookDays {
    /** So much money is more than any batches cost: fewer cook days come first. */
    private static final double FEWEST = 1e7;

    private final List<Integer> days;
    private final int end;
    private final int mostDays;
    private final double perSession;
    private final Map<Interval, Double> costs = new HashMap<>();
    private final Set<Interval> exact = new HashSet<>();

    private CookDays(Household household, Horizon horizon, int mostDays) {
        this.mostDays = mostDays;
        this.days = allowed(household, horizon);
        this.end = horizon.days();
        this.perSession = horizon.choice() == Horizon.Choice.FEWEST ? FEWEST : horizon.pricePerSession();
    }

    /** Days on which can be cooked, in order. Without food there is no choice of the first one. */
    static List<Integer> allowed(Household household, Horizon horizon) {
        List<Integer> allowed = new ArrayList<>(List.of(horizon.firstCookDay()));
        LocalDate start = household.start();
        for (int day = horizon.firstCookDay() + 1; day < horizon.days(); day++) {
            if (horizon.cookOn().contains(start.plusDays(day).getDayOfWeek())) {
                allowed.add(day);
            }
        }
        return allowed;
    }

    /**
     * The cook days, or none when no choice of them feeds every day.
     *
     * @param mostDays that food keeps in the freezer
     * @param atLeast what a batch costs at least, infinite when there is none; quick
     * @param batch what a batch costs; no less than the former
     */
    static List<Integer> choose(
            Household household,
            Horizon horizon,
            int mostDays,
            ToDoubleFunction<Interval> atLeast,
            ToDoubleFunction<Interval> batch) {
        CookDays choice = new CookDays(household, horizon, mostDays);
        choice.bounds(atLeast);
        while (true) {
            List<Interval> path = choice.shortest();
            List<Interval> open = path.stream()
                    .filter(interval -> !choice.exact.contains(interval))
                    .toList();
            if (open.isEmpty()) {
                return path.stream().map(Interval::day).toList();
            }
            choice.costs.putAll(onAllCores(open, batch));
            choice.exact.addAll(open);
        }
    }

    private void bounds(ToDoubleFunction<Interval> atLeast) {
        for (int step = 1; step <= days.size(); step++) {
            List<Interval> some = new ArrayList<>();
            for (int from = 0; from + step <= days.size(); from++) {
                Interval interval = interval(from, step);
                if (interval.days() <= mostDays && !isTooLong(from, step)) {
                    some.add(interval);
                }
            }
            costs.putAll(onAllCores(some, atLeast));
        }
    }

    private Interval interval(int from, int step) {
        int next = from + step < days.size() ? days.get(from + step) : end;
        return new Interval(days.get(from), next - days.get(from));
    }

    /**
     * Where there is a batch for some days and none for more, it is taken for too large, and still more days are not tried. That
     * there is none for few days says nothing, since doses and least amounts are too coarse for a small batch.
     */
    private boolean isTooLong(int from, int step) {
        boolean foundOne = false;
        for (int fewer = 1; fewer < step; fewer++) {
            boolean none = Double.isInfinite(costs.getOrDefault(interval(from, fewer), Double.POSITIVE_INFINITY));
            if (foundOne && none) {
                return true;
            }
            foundOne |= !none;
        }
        return false;
    }

    private static Map<Interval, Double> onAllCores(List<Interval> some, ToDoubleFunction<Interval> cost) {
        return some.parallelStream().collect(Collectors.toConcurrentMap(interval -> interval, cost::applyAsDouble));
    }

    private List<Interval> shortest() {
        int count = days.size();
        double[] cost = new double[count + 1];
        int[] before = new int[count + 1];
        Arrays.fill(cost, Double.POSITIVE_INFINITY);
        cost[0] = 0;
        for (int to = 1; to <= count; to++) {
            for (int from = 0; from < to; from++) {
                Double own = costs.get(interval(from, to - from));
                double sum = own == null ? Double.POSITIVE_INFINITY : cost[from] + own + perSession;
                if (sum < cost[to]) {
                    cost[to] = sum;
                    before[to] = from;
                }
            }
        }
        List<Interval> path = new ArrayList<>();
        for (int to = count; to > 0 && Double.isFinite(cost[count]); to = before[to]) {
            path.add(interval(before[to], to - before[to]));
        }
        Collections.reverse(path);
        return path;
    }
}
