package packpot.food;

import java.util.Map;

/**
 * What cooking does to a food.
 *
 * @param method the word for it, such as "simmered"
 * @param label the same for people
 * @param yieldCookedOverRaw grams of cooked food per gram of edible raw food
 * @param retention share of each constituent that is left; what the map lacks has no published figure and counts whole
 * @param source keys of models/SOURCES.md for yield and retention
 */
public record Preparation(
        String method, String label, double yieldCookedOverRaw, Map<Constituent, Double> retention, String source) {
    public Preparation {
        retention = Map.copyOf(retention);
    }

    public double retention(Constituent constituent) {
        return retention.getOrDefault(constituent, 1.0);
    }
}
