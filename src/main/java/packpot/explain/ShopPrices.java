package packpot.explain;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.data.ModelFiles;
import packpot.data.Row;
import packpot.food.Food;
import packpot.food.FoodGroup;
import packpot.food.Place;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.units.Show;

/**
 * Guessed prices for foods that a household has not priced: the guess of models/packs.csv, or else the middle price by
 * weight of the foods of the same group that have one; a supplement is guessed as a hundred of its measures at the
 * middle price of a pack of supplement.
 */
final class ShopPrices {

    private record Guess(String pack, double grams, double edibleGrams, double price) {}

    private final Knowledge knowledge;
    private final double supplementPack;
    private final Map<String, Guess> guesses = new HashMap<>();
    private static final int MEASURES = 100;

    private final Map<FoodGroup, Double> perGramByGroup = new EnumMap<>(FoodGroup.class);

    ShopPrices(Knowledge knowledge) {
        this.knowledge = knowledge;
        Map<FoodGroup, List<Double>> perGram = new EnumMap<>(FoodGroup.class);
        for (Row row : ModelFiles.table("packs.csv")) {
            var price = row.optionalNumber("guess_price_usd");
            Food food = knowledge.foods().find(row.required("food"));
            if (price.isPresent() && food != null) {
                double grams = row.number("grams");
                double edible = row.optionalNumber("edible_grams").orElse(grams);
                guesses.putIfAbsent(food.id(), new Guess(row.required("pack"), grams, edible, price.getAsDouble()));
                perGram.computeIfAbsent(food.group(), key -> new ArrayList<>()).add(price.getAsDouble() / edible);
            }
        }
        List<Double> jars = guesses.entrySet().stream()
                .filter(entry -> {
                    Food food = knowledge.foods().find(entry.getKey());
                    return food != null && food.isSupplement();
                })
                .map(entry -> entry.getValue().price())
                .sorted()
                .toList();
        supplementPack = jars.isEmpty() ? 10 : jars.get(jars.size() / 2);
        perGram.forEach((group, prices) -> {
            prices.sort(null);
            perGramByGroup.put(group, prices.get(prices.size() / 2));
        });
    }

    /**
     * A food to buy at a guessed price.
     *
     * @param note the guess in words
     */
    record Offer(PantryItem item, String note) {}

    /** A food as a shop would sell it; the figures are the guesses' own, in whatever currency the household has. */
    Offer offer(Food food, String currency) {
        var supplement = food.supplement();
        Place place = supplement == null ? Place.POT : supplement.place();
        Guess guess = guesses.get(food.id());
        if (guess != null) {
            return new Offer(
                    item(food, place, guess.edibleGrams(), guess.grams(), guess.pack(), guess.price()),
                    food.label() + " at a guessed price of " + Show.money(guess.price(), currency) + " for "
                            + guess.pack());
        }
        if (supplement != null) {
            double grams = MEASURES * supplement.gramsPerMeasure();
            String pack = MEASURES + " x 1 " + supplement.measureName();
            return new Offer(
                    item(food, place, grams, grams, pack, supplementPack),
                    food.label() + " at a guessed price of " + Show.money(supplementPack, currency) + " for " + pack
                            + ", the middle of supplements");
        }
        double perGram = perGramByGroup.getOrDefault(food.group(), 0.01);
        return new Offer(
                item(food, place, null, null, "loose", perGram),
                food.label() + " at a guessed price of " + Show.money(perGram * 1000, currency)
                        + " per kg, the middle of its group");
    }

    private PantryItem item(
            Food food, Place place, @Nullable Double edible, @Nullable Double asBought, String pack, double price) {
        return new PantryItem(
                food,
                knowledge.preparations().usual(food),
                edible,
                asBought,
                pack,
                price,
                0,
                0,
                null,
                false,
                false,
                place);
    }
}
