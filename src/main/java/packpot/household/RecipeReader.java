package packpot.household;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import packpot.dog.Dog;
import packpot.food.Food;
import packpot.food.FoodEnergy;
import packpot.food.Place;
import packpot.food.Preparation;
import packpot.food.Supplement;
import packpot.units.Dimension;
import packpot.units.Quantity;

/** Reads a recipe, from "recipe" of a scenario or from a file of its own. */
final class RecipeReader {
    private static final int MOST_DAYS = 60;
    private static final String WHERE = "the recipe";

    private final Knowledge knowledge;
    private final FoodFinder foods;
    private final Setting setting;
    private final GuessedPrices guesses;
    private final List<String> remarks = new ArrayList<>();

    /**
     * What a recipe is read against.
     *
     * @param dogs those of the scenario that could be read
     * @param dogNames the names of all dogs that the scenario lists, faulty ones too
     * @param days that the household cooks for
     */
    record Setting(
            List<Dog> dogs,
            List<String> dogNames,
            List<PantryItem> pantry,
            Collection<Food> ownFoods,
            int days,
            String currency,
            FoodEnergy.Method foodEnergy) {}

    RecipeReader(Knowledge knowledge, Setting setting) {
        this.knowledge = knowledge;
        this.setting = setting;
        this.foods = new FoodFinder(knowledge, setting.ownFoods());
        this.guesses = GuessedPrices.load(knowledge);
    }

    Recipe read(Fields fields) {
        String name = fields.text("name");
        Integer days = fields.whole("days", 1, MOST_DAYS);
        if (!fields.has("days")) {
            remarks.add("the recipe's days are not given, taken as the kitchen's " + setting.days());
        }
        List<Dog> dogs = dogs(fields);
        List<Recipe.Part> parts = parts(fields);
        List<Recipe.Addition> additions = additions(fields, dogs, parts);
        fields.end();
        return new Recipe(
                name == null ? "Recipe" : name, days == null ? setting.days() : days, dogs, parts, additions, remarks);
    }

    private List<Dog> dogs(Fields fields) {
        List<String> names = fields.texts("dogs");
        for (String name : names) {
            if (setting.dogNames().stream().noneMatch(name::equalsIgnoreCase)) {
                fields.fault("dogs", unknownDog(name));
            }
        }
        if (names.isEmpty()) {
            if (fields.has("dogs")
                    && fields.raw("dogs").isArray()
                    && fields.raw("dogs").isEmpty()) {
                fields.fault("dogs", "names no dog; leave it out for all dogs of the scenario");
            }
            return setting.dogs();
        }
        return setting.dogs().stream()
                .filter(dog -> names.stream().anyMatch(dog.name()::equalsIgnoreCase))
                .toList();
    }

    private String unknownDog(String name) {
        return "\"" + name + "\" is not a dog of the scenario" + Nearest.advice(name, setting.dogNames(), 1)
                + "; its dogs: " + String.join(", ", setting.dogNames());
    }

    private List<Recipe.Part> parts(Fields recipe) {
        List<Recipe.Part> parts = new ArrayList<>();
        List<Fields> all = recipe.objects("foods");
        if (all.isEmpty() && (!recipe.has("foods") || recipe.raw("foods").isArray())) {
            recipe.fault(
                    "foods",
                    "is empty; expected what goes into the pot, such as"
                            + " [{\"food\": \"ground turkey, 93 % lean\", \"amount\": \"3 lb\"}]");
            return parts;
        }
        Set<String> seen = new HashSet<>();
        for (Fields fields : all) {
            Recipe.Part part = part(fields);
            if (part != null && !seen.add(part.item().food().id())) {
                fields.fault("food", "\"" + part.item().food().label() + "\" is in the recipe twice; join the two");
            }
            if (part != null) {
                parts.add(part);
            }
        }
        double kcal = parts.stream()
                .mapToDouble(part -> part.grams()
                        * knowledge.foodEnergy().kcalPerGram(part.item().food().composition(), setting.foodEnergy()))
                .sum();
        if (parts.size() == all.size() && !(kcal > 1e-6)) {
            recipe.fault(
                    "foods",
                    "the foods bring no energy at all, so nothing can be said per 1000 kcal; expected at least one food"
                            + " with energy");
        }
        return parts;
    }

    private Recipe.@Nullable Part part(Fields fields) {
        Food food = food(fields);
        if (food == null) {
            return null;
        }
        Preparation preparation = preparation(fields, food);
        Weighed weighed = fields.choice("weighed", List.of(Weighed.values()), Weighed::key);
        String written = fields.requiredText("amount", "an amount such as \"3 lb\", \"12 large\" or \"2 cup\"");
        Double grams = written == null || preparation == null
                ? null
                : grams(fields, written, food, preparation, weighed == null ? Weighed.RAW : weighed);
        fields.end();
        if (grams == null || preparation == null || written == null) {
            return null;
        }
        String words = weighed == null || weighed == Weighed.RAW
                ? written
                : written + ", " + weighed.key().replace('-', ' ');
        return new Recipe.Part(item(food, preparation), grams, words);
    }

    private @Nullable Food food(Fields fields) {
        String name = fields.requiredText("food", "the name of a food");
        Food food = name == null ? null : foods.find(fields, "food", name, WHERE);
        Supplement supplement = food == null ? null : food.supplement();
        if (food != null && supplement != null && supplement.place() == Place.NONE) {
            fields.fault(
                    "food", "\"" + food.label() + "\" cannot be measured in a home kitchen; take it out of the recipe");
            food = null;
        }
        if (food == null) {
            fields.names().forEach(fields::raw);
        }
        return food;
    }

    private @Nullable Preparation preparation(Fields fields, Food food) {
        String method = fields.text("cook");
        if (method == null) {
            PantryItem own = pantry(food);
            return own == null ? knowledge.preparations().usual(food) : own.preparation();
        }
        Preparation preparation = knowledge.preparations().find(food, method.toLowerCase(Locale.ROOT));
        if (preparation == null) {
            fields.fault(
                    "cook",
                    "read \"" + method + "\", expected one of "
                            + String.join(", ", knowledge.preparations().methods(food)) + " for " + food.label());
        }
        return preparation;
    }

    private @Nullable Double grams(Fields fields, String written, Food food, Preparation preparation, Weighed weighed) {
        // A cup of cooked rice and a cup of dry rice differ by far, and only the density of the latter is known.
        Double grams = fields.parsed(
                "amount",
                written,
                text -> weighed == Weighed.COOKED
                        ? Quantity.parse(text, Dimension.MASS).inBaseUnits()
                        : FoodAmount.grams(text, food, knowledge.measures()));
        if (grams != null && !(grams > 0)) {
            fields.fault("amount", "read \"" + written + "\"; expected more than nothing");
            return null;
        }
        return grams == null
                ? null
                : (Double)
                        switch (weighed) {
                            case RAW -> grams;
                            case COOKED -> grams / preparation.yieldCookedOverRaw();
                            case AS_BOUGHT -> grams * food.kitchen().edibleShare();
                        };
    }

    private List<Recipe.Addition> additions(Fields recipe, List<Dog> dogs, List<Recipe.Part> parts) {
        List<Recipe.Addition> additions = new ArrayList<>();
        for (Fields fields : recipe.objects("additions")) {
            Food food = food(fields);
            if (food == null) {
                continue;
            }
            if (!food.isSupplement()) {
                fields.fault(
                        "food",
                        "\"" + food.label()
                                + "\" is no supplement, and only those are measured into bowls; put it under"
                                + " \"foods\", or its energy under the dog's \"otherFood\"");
            }
            String dog = fields.text("dog");
            String written = fields.requiredText("amount", "an amount a day such as \"1/4 tsp\" or \"1 capsule\"");
            Double grams = written == null
                    ? null
                    : grams(fields, written, food, knowledge.preparations().usual(food), Weighed.RAW);
            List<Dog> eaters = dogs.stream()
                    .filter(each -> dog == null || dog.equalsIgnoreCase(each.name()))
                    .toList();
            boolean known = dog == null || setting.dogNames().stream().anyMatch(dog::equalsIgnoreCase);
            if (!known) {
                fields.fault("dog", unknownDog(String.valueOf(dog)));
            } else if (eaters.isEmpty() && !dogs.isEmpty()) {
                fields.fault("dog", "\"" + dog + "\" is not among the \"dogs\" that the recipe feeds");
            }
            fields.end();
            if (grams != null && written != null) {
                PantryItem item = parts.stream()
                        .map(Recipe.Part::item)
                        .filter(each -> each.food().id().equals(food.id()))
                        .findFirst()
                        .orElseGet(() -> item(food, knowledge.preparations().usual(food)));
                for (Dog eater : eaters) {
                    if (additions.stream()
                            .anyMatch(other -> other.dog().equals(eater.name())
                                    && other.item().equals(item))) {
                        fields.fault(
                                "food",
                                "\"" + food.label() + "\" is given to " + eater.name() + " twice; join the two");
                    }
                    additions.add(new Recipe.Addition(eater.name(), item, grams, written));
                }
            }
        }
        return additions;
    }

    private @Nullable PantryItem pantry(Food food) {
        return setting.pantry().stream()
                .filter(item -> item.food().id().equals(food.id()))
                .findFirst()
                .orElse(null);
    }

    /** The pantry's own item where there is one that can be bought, else one at a guessed price. */
    private PantryItem item(Food food, Preparation preparation) {
        Place place = food.isSupplement() ? Place.EITHER : Place.POT;
        PantryItem own = pantry(food);
        if (own != null && !own.outOfStock()) {
            return own.withoutWishes().prepared(preparation, place);
        }
        PantryItem guess = guesses.item(food, preparation, place);
        remarks.add(guesses.words(guess, setting.currency()));
        return own == null ? guess : guess.withOnHand(own.onHandGrams());
    }
}
