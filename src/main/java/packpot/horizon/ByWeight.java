package packpot.horizon;

import java.util.ArrayList;
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
 * One batch with every food that keeps at its price by weight, as if its packs could be cut: what it pays for is then what
 * it uses, whichever batch opened the pack. Over all cook days such packs cost at least that, less what is in the house
 * on the first day; so the least costs of batches by weight, added up, are what no choice of batches can cost less than.
 * Perishable food stays in packs, since none of it reaches the next batch.
 */
final class ByWeight {
    private final Household household;
    private final Knowledge knowledge;
    private final RationPlanner planner;
    private final Map<Key, Best> known = new ConcurrentHashMap<>();

    ByWeight(Household household, Knowledge knowledge, Solver solver) {
        this.household = household;
        this.knowledge = knowledge;
        this.planner = new RationPlanner(knowledge, solver);
    }

    /**
     * The best batch.
     *
     * @param amounts null when there is none, or none was found in time
     * @param bound none costs less; infinite when there is none
     */
    record Best(@Nullable Amounts amounts, double bound) {}

    /** What is the same for two batches that have the same best one. */
    private record Key(List<Object> dogs, int days, List<PantryItem> pantry) {
        static Key of(Household pooled, Needs needs) {
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
            return new Key(dogs, days, pooled.pantry());
        }
    }

    /**
     * The best batch for a household as it is then.
     *
     * @param then with what is in the house then
     * @param limits of the search; what was solved before is not solved again
     */
    Best of(Household then, SolveLimits limits) {
        Needs needs = Needs.of(then, knowledge);
        Household pooled = pooled(then);
        Best best = known.computeIfAbsent(Key.of(pooled, needs), key -> solve(pooled, needs, limits));
        Amounts amounts = best.amounts();
        return amounts == null ? best : new Best(amounts.of(then.pantry(), needs.dogs()), best.bound());
    }

    private Best solve(Household pooled, Needs needs, SolveLimits limits) {
        RationPlanner.Outcome outcome = planner.plan(pooled, needs, limits);
        if (outcome instanceof RationPlanner.Outcome.Found found) {
            return new Best(found.amounts(), Math.max(0, found.amounts().bound()));
        }
        boolean impossible = ((RationPlanner.Outcome.None) outcome).provedImpossible();
        return new Best(null, impossible ? Double.POSITIVE_INFINITY : 0);
    }

    private static Household pooled(Household then) {
        return then.withBudget(null)
                .withPantry(then.pantry().stream()
                        .map(item -> Stock.keeps(item) && !item.outOfStock() ? item.byWeight() : item)
                        .toList());
    }

    /** What the food in the house on the first day can save over all batches, at most. */
    double atMostSaved() {
        double saved = 0;
        // A supplement that costs nothing counts in a model as much as the cheapest food, so that it is not wasted.
        double nominal = household.pantry().stream()
                .filter(item -> !item.food().isSupplement() && item.pricePerGram() > 0)
                .mapToDouble(PantryItem::pricePerGram)
                .min()
                .orElse(0);
        for (PantryItem item : household.pantry()) {
            if (!item.outOfStock() && Stock.keeps(item)) {
                saved += item.onHandGrams() * item.pricePerGram();
            } else if (item.food().isSupplement()) {
                saved += item.onHandGrams() * nominal;
            }
        }
        return saved;
    }
}
