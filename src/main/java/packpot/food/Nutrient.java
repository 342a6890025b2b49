package packpot.food;

import java.util.Map;

/**
 * A nutrient as the profiles speak of it: a sum of measured constituents, which may differ by what it is held
 * against. Vitamin A counts plant carotenoids toward the minimum but retinol alone toward the maximum.
 *
 * @param key name in models/profiles.csv, such as "vitamin-a"
 * @param label for people
 * @param unit g, mg, ug or IU
 * @param towardMinimum units of the nutrient per unit of each constituent, against a minimum
 * @param towardMaximum the same against a maximum
 */
public record Nutrient(
        String key,
        String label,
        String unit,
        Map<Constituent, Double> towardMinimum,
        Map<Constituent, Double> towardMaximum) {
    public Nutrient {
        towardMinimum = Map.copyOf(towardMinimum);
        towardMaximum = Map.copyOf(towardMaximum);
    }
}
