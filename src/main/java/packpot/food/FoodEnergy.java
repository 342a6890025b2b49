package packpot.food;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Locale;
import packpot.data.ModelDataException;
import packpot.data.ModelFiles;

/** Metabolizable energy of food from its protein, fat, carbohydrate and fibre, by a published rule. */
public final class FoodEnergy {

    /** The published rules. */
    public enum Method {
        ATWATER,
        MODIFIED_ATWATER,
        NRC_STEPS;

        public String key() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    private final JsonNode rules;

    private FoodEnergy(JsonNode rules) {
        this.rules = rules;
    }

    /** From models/food_energy.json. */
    public static FoodEnergy load() {
        return new FoodEnergy(ModelFiles.json("food_energy.json"));
    }

    /** kcal per gram of food. */
    public double kcalPerGram(Composition food, Method method) {
        double protein = food.perGram(Constituent.PROTEIN_G);
        double fat = food.perGram(Constituent.FAT_G);
        double fibre = food.perGram(Constituent.FIBRE_G);
        double digestible = Math.max(0, food.perGram(Constituent.CARBOHYDRATE_G) - fibre);
        if (method != Method.NRC_STEPS) {
            return figure(method, "protein") * protein
                    + figure(method, "fat") * fat
                    + figure(method, "digestibleCarbohydrate") * digestible;
        }
        double dryMatter = 1 - food.perGram(Constituent.WATER_G);
        double gross = figure(method, "grossProtein") * protein
                + figure(method, "grossFat") * fat
                + figure(method, "grossCarbohydrate") * (digestible + fibre);
        double fibrePercent = dryMatter <= 0 ? 0 : 100 * fibre / dryMatter;
        double digestibility =
                (figure(method, "digestibilityPercent") - figure(method, "perFibrePercentOfDryMatter") * fibrePercent)
                        / 100;
        return Math.max(0, gross * Math.max(0, digestibility) - figure(method, "lessPerGramProtein") * protein);
    }

    /** The rule in words. */
    public String words(Method method) {
        return rules.path(method.key()).path("words").asText();
    }

    /** A coefficient of a rule, by its name in the data file. */
    public double figure(Method method, String name) {
        JsonNode figure = rules.path(method.key()).path(name);
        if (!figure.isNumber()) {
            throw new ModelDataException("models/food_energy.json has no figure " + name + " for " + method.key());
        }
        return figure.doubleValue();
    }
}
