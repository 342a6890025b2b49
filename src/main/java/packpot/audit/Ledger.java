package packpot.audit;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import packpot.food.Constituent;
import packpot.food.FoodEnergy;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;

/** Sums constituents and energy over amounts of foods, and what of the energy comes with an unknown figure. */
final class Ledger {
    private final Household household;
    private final Knowledge knowledge;
    private final Map<Constituent, Double> amounts = new EnumMap<>(Constituent.class);
    private final Map<PantryItem, Double> kcalByFood = new HashMap<>();
    private double kcal;
    private double dryGrams;

    Ledger(Household household, Knowledge knowledge) {
        this.household = household;
        this.knowledge = knowledge;
    }

    /** Adds edible grams of a food, weighed before cooking. */
    void add(PantryItem item, double grams) {
        for (Constituent constituent : Constituent.values()) {
            double left = item.preparation().retention().getOrDefault(constituent, 1.0);
            amounts.merge(constituent, grams * left * item.food().composition().perGram(constituent), Double::sum);
        }
        double energy = grams * kcalPerGram(item);
        kcal += energy;
        dryGrams += grams * (1 - item.food().composition().perGram(Constituent.WATER_G));
        kcalByFood.merge(item, energy, Double::sum);
    }

    private double kcalPerGram(PantryItem item) {
        FoodEnergy rule = knowledge.foodEnergy();
        FoodEnergy.Method method = household.foodEnergy();
        var food = item.food().composition();
        double protein = food.perGram(Constituent.PROTEIN_G);
        double fat = food.perGram(Constituent.FAT_G);
        double carbohydrate = food.perGram(Constituent.CARBOHYDRATE_G);
        double fibre = food.perGram(Constituent.FIBRE_G);
        double nitrogenFree = Math.max(carbohydrate - fibre, 0);
        if (method == FoodEnergy.Method.NRC_STEPS) {
            double gross = protein * rule.figure(method, "grossProtein")
                    + fat * rule.figure(method, "grossFat")
                    + (nitrogenFree + fibre) * rule.figure(method, "grossCarbohydrate");
            double solids = 1 - food.perGram(Constituent.WATER_G);
            double fibreOfSolids = solids > 0 ? fibre / solids * 100 : 0;
            double digestible = rule.figure(method, "digestibilityPercent")
                    - rule.figure(method, "perFibrePercentOfDryMatter") * fibreOfSolids;
            double kcal = gross * Math.max(digestible, 0) / 100 - protein * rule.figure(method, "lessPerGramProtein");
            return Math.max(kcal, 0);
        }
        return protein * rule.figure(method, "protein")
                + fat * rule.figure(method, "fat")
                + nitrogenFree * rule.figure(method, "digestibleCarbohydrate");
    }

    double kcal() {
        return kcal;
    }

    double dryGrams() {
        return dryGrams;
    }

    /** Sum of weights times constituents. */
    double sum(Map<Constituent, Double> weights) {
        return weights.entrySet().stream()
                .mapToDouble(e -> e.getValue() * amounts.getOrDefault(e.getKey(), 0.0))
                .sum();
    }

    /** kcal of each food that lacks a figure for any of the constituents. */
    Map<PantryItem, Double> kcalOfUnknown(Map<Constituent, Double> weights) {
        Map<PantryItem, Double> unknown = new HashMap<>();
        kcalByFood.forEach((item, energy) -> {
            boolean lacks = weights.keySet().stream()
                    .anyMatch(constituent -> !item.food().composition().knows(constituent));
            if (lacks && energy > 0) {
                unknown.put(item, energy);
            }
        });
        return unknown;
    }
}
