package packpot.household;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import packpot.data.ModelDataException;
import packpot.data.ModelFiles;
import packpot.data.Row;
import packpot.food.Food;
import packpot.food.FoodGroup;
import packpot.food.Measures;
import packpot.food.Place;
import packpot.food.Preparation;
import packpot.units.Show;

/**
 * What foods may cost that the household gives no price for. The figures are invented US ones and are taken as they stand
 * in any currency, so whoever uses one says so.
 */
public final class GuessedPrices {
    private final Measures measures;
    private final Map<String, Double> packPrices = new HashMap<>();
    private final Map<FoodGroup, Double> perGram = new HashMap<>();

    private GuessedPrices(Measures measures) {
        this.measures = measures;
        for (Row row : ModelFiles.table("packs.csv")) {
            // The first pack of a food is the usual one; a later one's price belongs to another weight.
            packPrices.putIfAbsent(
                    row.required("food"), row.optionalNumber("guess_price_usd").orElse(Double.NaN));
        }
        for (Row row : ModelFiles.table("guessed_prices.csv")) {
            perGram.put(FoodGroup.ofKey(row.required("group")), row.number("usd_per_kg") / 1000);
        }
    }

    /** From models/packs.csv, and for foods that have no pack there from models/guessed_prices.csv. */
    public static GuessedPrices load(Knowledge knowledge) {
        return new GuessedPrices(knowledge.measures());
    }

    /** A food of the catalogue as the household could buy it. */
    public PantryItem item(Food food, Preparation preparation, Place place) {
        Measures.Pack pack = measures.usualPack(food);
        double price = packPrices.getOrDefault(food.id(), Double.NaN);
        if (pack == null || Double.isNaN(price)) {
            return new PantryItem(
                    food, preparation, null, null, "loose", groupPrice(food), 0, 0, null, false, false, place);
        }
        return new PantryItem(
                food,
                preparation,
                pack.edibleGrams(),
                pack.gramsAsBought(),
                pack.name(),
                price,
                0,
                0,
                null,
                false,
                false,
                place);
    }

    private double groupPrice(Food food) {
        Double price = perGram.get(food.group());
        if (price == null) {
            throw new ModelDataException(
                    "models/guessed_prices.csv has no row for " + food.group().key());
        }
        return price;
    }

    /** The guess in a sentence. */
    public String words(PantryItem item, String currency) {
        return item.food().label() + ": no price is given, guessed as " + price(item, currency);
    }

    /** The guess alone. */
    public String price(PantryItem item, String currency) {
        Double pack = item.packGrams();
        if (pack != null && item.packPrice() == 0) {
            return "nothing (" + item.packName() + ")";
        }
        return pack == null
                ? Show.money(item.packPrice() * 1000, currency) + " a kg, the usual of its group ("
                        + item.food().group().key().toLowerCase(Locale.ROOT) + ")"
                : Show.money(item.packPrice(), currency) + " for " + item.packName();
    }
}
