package packpot.ration;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import packpot.Demo;
import packpot.dog.Activity;
import packpot.dog.Dog;
import packpot.dog.EnergyNeed;
import packpot.dog.LifeStage;
import packpot.food.Composition;
import packpot.food.Constituent;
import packpot.food.Dosing;
import packpot.food.Food;
import packpot.food.FoodGroup;
import packpot.food.Keeps;
import packpot.food.Place;
import packpot.food.Preparation;
import packpot.food.Supplement;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.household.Rules;
import packpot.household.Shape;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.needs.Requirement;
import packpot.profile.Limit;
import packpot.profile.ProfileStage;
import packpot.words.Sentence;

/**
 * Foods in round figures and dogs that are held to few limits, so that the cheapest ration follows by hand. Nothing is kept
 * in reserve, cooking changes no weight, and a batch is for ten days.
 */
final class ByHand {
    static final int DAYS = 10;

    /** 1 kcal and 0.25 g of protein a gram, $4 a kg. */
    static final PantryItem MEAT = loose(food("meat", FoodGroup.MEAT, Map.of(Constituent.PROTEIN_G, 25.0)), 0.004);
    /** 1 kcal and no protein a gram, $1 a kg. */
    static final PantryItem RICE =
            loose(food("rice", FoodGroup.GRAIN, Map.of(Constituent.CARBOHYDRATE_G, 25.0)), 0.001);
    /** 0.4 g of calcium a gram and no energy, in spoons of 1 g, $10 a kg; a spoon a day, or more, into a bowl. */
    static final PantryItem CHALK =
            loose(supplement("chalk", Map.of(Constituent.CALCIUM_MG, 40_000.0), Dosing.DAILY, Place.BOWL, 12), 0.01);

    /** 5 kcal and 0.1 g of calcium a gram, by spoons of 1 g into the bowl, $20 a kg. */
    static final PantryItem PASTE = loose(
            supplement(
                    "paste",
                    Map.of(Constituent.CARBOHYDRATE_G, 125.0, Constituent.CALCIUM_MG, 10_000.0),
                    Dosing.DAILY,
                    Place.BOWL,
                    12),
            0.02);

    private ByHand() {}

    static Food food(String id, FoodGroup group, Map<Constituent, Double> per100Grams) {
        return food(id, group, per100Grams, null);
    }

    /** A supplement that is given by whole grams. */
    static Food supplement(
            String id, Map<Constituent, Double> per100Grams, Dosing dosing, Place place, int mostDosesPerDay) {
        Supplement measures = new Supplement(
                id,
                "",
                "spoon",
                "spoons",
                1,
                1,
                1,
                dosing,
                place,
                Double.POSITIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                mostDosesPerDay,
                "");
        return food(id, FoodGroup.SUPPLEMENT, per100Grams, measures);
    }

    private static Food food(
            String id, FoodGroup group, Map<Constituent, Double> per100Grams, @Nullable Supplement supplement) {
        return new Food(
                id,
                id,
                id,
                supplement == null ? "raw" : "supplement",
                group,
                Composition.ofPer100Grams(per100Grams),
                new Food.Kitchen("shop", Keeps.PERISHABLE, "none", 1, 1, 1, ""),
                supplement,
                List.of(),
                "TRADE",
                "label");
    }

    /** Sold by weight. */
    static PantryItem loose(Food food, double pricePerGram) {
        Supplement supplement = food.supplement();
        return new PantryItem(
                food,
                new Preparation("raw", "raw", 1, Map.of(), "TRADE"),
                null,
                null,
                "",
                pricePerGram,
                0,
                0,
                null,
                false,
                false,
                supplement == null ? Place.POT : supplement.place());
    }

    /** The same food in packs alone. */
    static PantryItem packs(PantryItem item, double grams, double price) {
        return new PantryItem(
                item.food(),
                item.preparation(),
                grams,
                grams,
                "pack",
                price,
                item.onHandGrams(),
                item.mustUseGrams(),
                item.atMostGrams(),
                item.wholePacksOnly(),
                item.outOfStock(),
                item.place());
    }

    /** The same food, which the shop does not have. */
    static PantryItem gone(PantryItem item, double onHandGrams) {
        return new PantryItem(
                item.food(),
                item.preparation(),
                item.packGrams(),
                item.packAsBoughtGrams(),
                item.packName(),
                item.packPrice(),
                onHandGrams,
                item.mustUseGrams(),
                item.atMostGrams(),
                item.wholePacksOnly(),
                true,
                item.place());
    }

    static Dog dog(String name, String... avoids) {
        return new Dog(
                name,
                20,
                1500,
                null,
                Dog.Sex.UNKNOWN,
                true,
                Activity.MODERATE,
                null,
                null,
                null,
                null,
                0,
                List.of(avoids),
                null);
    }

    /** What one adult needs on each day of the batch. */
    static DogNeed need(Dog dog, double kcalPerDay, Requirement... requirements) {
        return new DogNeed(
                1,
                dog,
                new EnergyNeed(LifeStage.ADULT, kcalPerDay, Sentence.of("energy.vet"), "owner", "OWNER"),
                kcalPerDay,
                0,
                DAYS,
                new ProfileStage("own", "adult", "By hand", null, List.of()),
                1,
                List.of(requirements));
    }

    static DogNeed need(String name, double kcalPerDay, Requirement... requirements) {
        return need(dog(name), kcalPerDay, requirements);
    }

    /** In the nutrient's unit per 1000 kcal. */
    static Requirement least(String nutrient, double per1000Kcal) {
        return requirement(Limit.Kind.MINIMUM, nutrient, per1000Kcal);
    }

    /** In the nutrient's unit per 1000 kcal. */
    static Requirement most(String nutrient, double per1000Kcal) {
        return requirement(Limit.Kind.MAXIMUM, nutrient, per1000Kcal);
    }

    private static Requirement requirement(Limit.Kind kind, String nutrient, double per1000Kcal) {
        return new Requirement(
                new Limit(nutrient, kind, per1000Kcal, null, 0, "memory", "TRADE", ""), per1000Kcal, false);
    }

    /** A household of these dogs and foods, whose recipe may have any shape. */
    static Household household(Needs needs, PantryItem... pantry) {
        Household some = Demo.read("""
                {"packpot": 1, "units": "metric", "dogs": [{"name": "Ash", "weight": "20 kg", "age": "4 years"}],
                 "pantry": [{"food": "carrots", "price": "$2.00/kg"}], "kitchen": {"days": 10}}""");
        return some.withDogs(
                        new ArrayList<>(needs.dogs().stream().map(DogNeed::dog).toList()))
                .withPantry(List.of(pantry))
                .withShape(ANY_SHAPE)
                .withRules(new Rules(0, 0, 0, 100, 0.5, 5, 1));
    }

    static final Shape ANY_SHAPE = new Shape(List.of(), 1, 0, 10, 6, 3, 6, 0.1, 0.1, 0, 0, Set.of(FoodGroup.OIL), 1);

    /** The usual model of these dogs and foods. */
    static Build build(Household household, Needs needs) {
        return Tiny.whole(new Build(household, Demo.knowledge(), needs, RationPlanner.sharesByNeed(needs)));
    }

    /** The model in which limits are rows. */
    static Build rows(Household household, Needs needs) {
        return Tiny.whole(new Build(household, Demo.knowledge(), needs, RationPlanner.sharesByNeed(needs), true));
    }

    /** The same food, of which so much is left once cooked. */
    static PantryItem yielding(PantryItem item, double cookedPerGram) {
        return item.prepared(new Preparation("cooked", "cooked", cookedPerGram, Map.of(), "TRADE"), item.place());
    }

    static Needs needs(DogNeed... dogs) {
        return new Needs(List.of(dogs));
    }
}
