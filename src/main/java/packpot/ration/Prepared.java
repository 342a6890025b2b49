package packpot.ration;

import java.util.HashMap;
import java.util.Map;
import packpot.food.Constituent;
import packpot.food.Nutrient;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;

/** What one edible gram of a pantry food brings once it is prepared. */
final class Prepared {
    private final PantryItem item;
    private final double kcalPerGram;
    private final Map<String, Double> towardMinimum = new HashMap<>();
    private final Map<String, Double> towardMaximum = new HashMap<>();

    Prepared(PantryItem item, Household household, Knowledge knowledge) {
        this.item = item;
        this.kcalPerGram = knowledge.foodEnergy().kcalPerGram(item.food().composition(), household.foodEnergy());
        for (Nutrient nutrient : knowledge.nutrients().all()) {
            towardMinimum.put(nutrient.key(), sum(nutrient.towardMinimum()));
            towardMaximum.put(nutrient.key(), sum(nutrient.towardMaximum()));
        }
    }

    private double sum(Map<Constituent, Double> form) {
        double sum = 0;
        for (Map.Entry<Constituent, Double> term : form.entrySet()) {
            sum += term.getValue()
                    * item.food().composition().perGram(term.getKey())
                    * item.preparation().retention(term.getKey());
        }
        return sum;
    }

    PantryItem item() {
        return item;
    }

    double kcalPerGram() {
        return kcalPerGram;
    }

    double cookedPerGram() {
        return item.preparation().yieldCookedOverRaw();
    }

    /** Units of the nutrient per edible gram, counted as a minimum or as a maximum counts it. */
    double nutrientPerGram(Nutrient nutrient, boolean againstMaximum) {
        return (againstMaximum ? towardMaximum : towardMinimum).getOrDefault(nutrient.key(), 0.0);
    }
}
