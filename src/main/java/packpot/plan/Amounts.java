package packpot.plan;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import packpot.household.PantryItem;
import packpot.needs.DogNeed;

/**
 * Amounts that were found for a household, before the kitchen rounds them.
 *
 * @param shares each dog's share of the pot
 * @param potGrams edible grams of each food into the pot
 * @param doses whole doses of each addition to each dog's bowls: a day for daily ones, over the batch for spread ones
 * @param cost money, with left-over parts at their worth
 * @param bound no plan under the same wishes can cost less
 * @param proved whether the cost is proved to lie within the gap that was asked for
 * @param solveSeconds wall time spent in the solver
 */
public record Amounts(
        Map<DogNeed, Double> shares,
        Map<PantryItem, Double> potGrams,
        Map<DogNeed, Map<PantryItem, Integer>> doses,
        double cost,
        double bound,
        boolean proved,
        double solveSeconds) {

    /** The same amounts, where more is known of what no plan costs less than. */
    public Amounts boundedBy(double otherBound, double gap) {
        boolean within = cost - otherBound <= gap * Math.abs(cost);
        return new Amounts(shares, potGrams, doses, cost, otherBound, within, solveSeconds);
    }

    /** The same amounts of the same foods for the same dogs, as another household or another day has them. */
    public Amounts of(List<PantryItem> pantry, List<DogNeed> needs) {
        Map<String, PantryItem> items = new HashMap<>();
        pantry.forEach(item -> items.put(item.food().id(), item));
        Map<String, DogNeed> dogs = new HashMap<>();
        needs.forEach(need -> dogs.put(need.dog().name(), need));
        Map<DogNeed, Map<PantryItem, Integer>> otherDoses = new LinkedHashMap<>();
        doses.forEach((dog, given) -> otherDoses.put(named(dogs, dog.dog().name()), renamed(given, items)));
        Map<DogNeed, Double> otherShares = new LinkedHashMap<>();
        shares.forEach((dog, share) -> otherShares.put(named(dogs, dog.dog().name()), share));
        return new Amounts(otherShares, renamed(potGrams, items), otherDoses, cost, bound, proved, solveSeconds);
    }

    private static <V> Map<PantryItem, V> renamed(Map<PantryItem, V> amounts, Map<String, PantryItem> items) {
        Map<PantryItem, V> renamed = new LinkedHashMap<>();
        amounts.forEach((item, value) -> renamed.put(named(items, item.food().id()), value));
        return renamed;
    }

    private static <V> V named(Map<String, V> all, String name) {
        V found = all.get(name);
        if (found == null) {
            throw new IllegalArgumentException(name + " is not there");
        }
        return found;
    }
}
