package packpot.horizon;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.plan.Amounts;
import packpot.ration.RationPlanner;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/**
 * The best batch where packs of food that keeps are shared with other batches, in one of two ways. Perishable food stays
 * in packs in both, since none of it reaches the next batch.
 *
 * <p>By weight, as if packs could be cut: a batch pays for what it uses, whichever batch opened the pack. Over all cook
 * days packs cost at least that, less what is in the house on the first day; so the least costs of batches by weight,
 * added up, are what no choice of batches can cost less than.
 *
 * <p>By part: a batch has its part of every pack and of what is in the house. What all batches buy then comes out in whole
 * packs where they are alike, and nothing is opened for good that all of them together would not use up.
 */
final class SharedPacks {
    private final Household household;
    private final Knowledge knowledge;
    private final RationPlanner planner;
    /** The latest ration, from which the search for the next one begins. */
    private final Map<Way, RationPlanner.Outcome.Found> latest = new ConcurrentHashMap<>();

    private final Map<Key, Best> found = new ConcurrentHashMap<>();
    private final Map<Key, Double> relaxed = new ConcurrentHashMap<>();

    SharedPacks(Household household, Knowledge knowledge, Solver solver) {
        this.household = household;
        this.knowledge = knowledge;
        this.planner = new RationPlanner(knowledge, solver);
    }

    /**
     * The best batch.
     *
     * @param amounts null when there is none, or none was found in time
     * @param ration from which a search for one like it can begin
     * @param bound none costs less; infinite when there is none
     */
    record Best(@Nullable Amounts amounts, RationPlanner.Outcome.@Nullable Found ration, double bound) {
        /** Infinite when there is none. */
        double cost() {
            return amounts == null ? Double.POSITIVE_INFINITY : amounts.cost();
        }
    }

    private enum Way {
        BY_WEIGHT,
        BY_PART
    }

    /** What is the same for two batches that have the same best one. */
    private record Key(Way way, List<Object> dogs, int days, List<PantryItem> pantry) {
        static Key of(Way way, Household pooled, Needs needs) {
            int days = pooled.kitchen().days();
            List<Object> dogs = new ArrayList<>();
            for (DogNeed need : needs.dogs()) {
                List<Boolean> there = new ArrayList<>();
                for (int day = 0; day < days; day++) {
                    there.add(need.dog().course().isThere(day));
                }
                dogs.add(List.of(
                        need.dog().name(),
                        need.kcalPerDay(),
                        need.energy().stage(),
                        need.profile().title(),
                        need.requirements(),
                        there));
            }
            return new Key(way, dogs, days, pooled.pantry());
        }
    }

    /**
     * The best batch by weight.
     *
     * @param then the household as it is then, with what is in the house then
     * @param limits of the search; what was solved before is not solved again
     */
    Best byWeight(Household then, SolveLimits limits) {
        return best(Way.BY_WEIGHT, then, pooledByWeight(then), limits);
    }

    /**
     * The best batch by part.
     *
     * @param part of all food that is this batch's
     */
    Best byPart(Household then, double part, SolveLimits limits) {
        Map<String, PantryItem> first = new HashMap<>();
        household.pantry().forEach(item -> first.put(item.food().id(), item));
        return best(
                Way.BY_PART,
                then,
                then.withPantry(then.pantry().stream()
                        .map(item -> {
                            PantryItem own = first.getOrDefault(item.food().id(), item);
                            return item.keeps() ? item.partOf(part).withOnHand(part * own.onHandGrams()) : item;
                        })
                        .toList()),
                limits);
    }

    private Best best(Way way, Household then, Household shared, SolveLimits limits) {
        Needs needs = Needs.of(then, knowledge);
        Household pooled = shared.withBudget(null);
        Key key = Key.of(way, pooled, needs);
        Best known = found.get(key);
        if (known == null) {
            known = solve(way, pooled, needs, limits);
            // What was not found in the time that was given may be found in more.
            if (known.amounts() != null || Double.isInfinite(known.bound())) {
                found.put(key, known);
            }
        }
        Amounts amounts = known.amounts();
        return amounts == null
                ? known
                : new Best(amounts.of(then.pantry(), needs.dogs()), known.ration(), known.bound());
    }

    private Best solve(Way way, Household pooled, Needs needs, SolveLimits limits) {
        RationPlanner.Outcome.Found before = latest.get(way);
        RationPlanner.Outcome outcome =
                before == null ? planner.plan(pooled, needs, limits) : planner.planFrom(before, pooled, needs, limits);
        if (outcome instanceof RationPlanner.Outcome.Found ration) {
            latest.put(way, ration);
            return new Best(
                    ration.amounts(), ration, Math.max(0, ration.amounts().bound()));
        }
        boolean impossible = ((RationPlanner.Outcome.None) outcome).provedImpossible();
        return new Best(null, null, impossible ? Double.POSITIVE_INFINITY : 0);
    }

    /** The ration that was found last by weight, from which other searches can begin. */
    RationPlanner.Outcome.@Nullable Found latestByWeight() {
        return latest.get(Way.BY_WEIGHT);
    }

    /** No batch by weight costs less, whole numbers taken for fractions; infinite when there is none. Quick. */
    double relaxedByWeight(Household then, SolveLimits limits) {
        Needs needs = Needs.of(then, knowledge);
        Household pooled = pooledByWeight(then);
        return relaxed.computeIfAbsent(
                Key.of(Way.BY_WEIGHT, pooled, needs), key -> Math.max(0, planner.costsAtLeast(pooled, needs, limits)));
    }

    private static Household pooledByWeight(Household then) {
        return then.withBudget(null)
                .withPantry(then.pantry().stream()
                        .map(item -> item.keeps() && !item.outOfStock() ? item.byWeight() : item)
                        .toList());
    }

    /** How many batches differ in what the dogs need; those that do not are solved once. */
    int different(Household first, List<Interval> intervals) {
        return (int) intervals.stream()
                .map(interval -> Then.of(first, knowledge, interval))
                .map(then -> Key.of(Way.BY_WEIGHT, then, Needs.of(then, knowledge)))
                .distinct()
                .count();
    }

    /** What the food in the house on the first day can save over all batches, at most. */
    double atMostSaved() {
        double saved = 0;
        // A supplement that costs nothing counts in a model as much as the cheapest food, so that it is not wasted.
        double nominal = household.cheapestFoodPerGram();
        for (PantryItem item : household.pantry()) {
            if (!item.outOfStock() && item.keeps()) {
                saved += item.onHandGrams() * item.pricePerGram();
            } else if (item.food().isSupplement()) {
                saved += item.onHandGrams() * nominal;
            }
        }
        return saved;
    }
}
