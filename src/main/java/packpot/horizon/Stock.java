package packpot.horizon;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.plan.Plan;

/**
 * What is in the house before a shopping day.
 *
 * @param grams edible grams on hand, by the food's id
 * @param boughtGrams of these, what comes out of packs that an earlier batch paid for
 * @param isFirst whether nothing has been cooked yet, so that what spoils is still good, and is still to be used up
 */
record Stock(Map<String, Double> grams, Map<String, Double> boughtGrams, boolean isFirst) {
    Stock {
        grams = Map.copyOf(grams);
        boughtGrams = Map.copyOf(boughtGrams);
    }

    static Stock of(Household household) {
        Map<String, Double> grams = new HashMap<>();
        household.pantry().forEach(item -> grams.put(item.food().id(), item.onHandGrams()));
        return new Stock(grams, Map.of(), true);
    }

    /** The household with this stock in its pantry. */
    Household in(Household household) {
        return household.withPantry(household.pantry().stream()
                .map(item -> {
                    PantryItem then =
                            item.withOnHand(grams.getOrDefault(item.food().id(), 0.0));
                    return isFirst ? then : then.withMustUse(0);
                })
                .toList());
    }

    /** What a batch leaves: what was on hand is used first, and what spoils does not wait for the next one. */
    Stock after(Household household, Plan plan) {
        Map<String, Plan.Purchase> lines = new LinkedHashMap<>();
        plan.shopping().forEach(line -> lines.put(line.food(), line));
        Map<String, Double> left = new HashMap<>();
        Map<String, Double> bought = new HashMap<>();
        for (PantryItem item : household.pantry()) {
            if (!item.keeps()) {
                continue;
            }
            String food = item.food().id();
            Plan.Purchase line = lines.get(food);
            double fromHand = line == null ? 0 : line.fromHandGrams();
            double opened = line == null ? 0 : line.leftOverGrams();
            double before = grams.getOrDefault(food, 0.0);
            left.put(food, before - fromHand + opened);
            // What was there on the first day is eaten before what was paid for since.
            double own = before - boughtGrams.getOrDefault(food, 0.0);
            double paid = boughtGrams.getOrDefault(food, 0.0) - Math.max(0, fromHand - own);
            bought.put(food, Math.max(0, paid) + opened);
        }
        return new Stock(left, bought, false);
    }

    /** The same for a later batch, as if nothing had been used that keeps. */
    Stock onlyWhatKeeps(Household household) {
        Map<String, Double> keeping = new HashMap<>();
        household.pantry().stream()
                .filter(PantryItem::keeps)
                .forEach(item -> keeping.put(
                        item.food().id(), grams.getOrDefault(item.food().id(), 0.0)));
        return new Stock(keeping, Map.of(), false);
    }

    /** Money that bought and unused food is still worth. */
    double worth(Household household) {
        double worth = 0;
        for (PantryItem item : household.pantry()) {
            worth += boughtGrams.getOrDefault(item.food().id(), 0.0)
                    * household.rules().leftWorthPerGram(item);
        }
        return worth;
    }
}
