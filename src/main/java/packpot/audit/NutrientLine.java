package packpot.audit;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One nutrient or ratio of one dog, as reckoned again from the printed amounts.
 *
 * @param key name in models/nutrients.csv or ratios.csv
 * @param unit per 1000 kcal; empty for a ratio
 * @param minimum per 1000 kcal after raising, dependent minimums included; null where the profile has none
 * @param got per 1000 kcal, as it counts toward the minimum
 * @param gotAgainstMaximum per 1000 kcal, as it counts toward the maximum; differs for vitamin A alone
 * @param maximum the lowest that holds for the dog; null where there is none
 * @param gotPerDay the same as {@code got}, a day
 * @param unknownEnergyShare share of the dog's energy that comes from foods whose figure is missing
 * @param unknownFoods their labels
 * @param fromMemory whether a limit rests on a figure that was not seen in print
 */
public record NutrientLine(
        String key,
        String label,
        String unit,
        @Nullable Double minimum,
        double got,
        double gotAgainstMaximum,
        @Nullable Double maximum,
        double gotPerDay,
        double unknownEnergyShare,
        List<String> unknownFoods,
        boolean fromMemory) {
    /** How near to a limit, as a share of it, still counts as on it. */
    static final double CLOSE = 1e-6;

    public NutrientLine {
        unknownFoods = List.copyOf(unknownFoods);
    }

    /** Whether foods that make up much of the energy have no figure. */
    public boolean thin() {
        return unknownEnergyShare > 0.25;
    }

    /** Whether less than the minimum is there. */
    public boolean tooLittle() {
        Double least = minimum;
        return least != null && !(got >= least * (1 - CLOSE));
    }

    /** Whether more than the maximum is there. */
    public boolean tooMuch() {
        Double most = maximum;
        return most != null && !(gotAgainstMaximum <= most * (1 + CLOSE));
    }
}
