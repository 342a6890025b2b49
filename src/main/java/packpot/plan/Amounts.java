package packpot.plan;

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
        double solveSeconds) {}
