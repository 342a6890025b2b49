package packpot.household;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import packpot.food.Food;
import packpot.food.Measures;
import packpot.food.Place;
import packpot.food.Preparation;
import packpot.food.Supplement;
import packpot.units.Price;
import packpot.units.Quantity;
import packpot.words.Amount;
import packpot.words.Term;

/** Reads "pantry": what the household has or can buy. */
final class PantryReader {
    private final Knowledge knowledge;
    private final String currency;
    private final FoodFinder foods;
    private final Notes notes;

    PantryReader(Knowledge knowledge, String currency, Collection<Food> ownFoods, Notes notes) {
        this.knowledge = knowledge;
        this.currency = currency;
        this.notes = notes;
        this.foods = new FoodFinder(knowledge, ownFoods);
    }

    List<PantryItem> read(Fields scenario) {
        List<PantryItem> items = new ArrayList<>();
        List<Fields> all = scenario.objects("pantry");
        if (all.isEmpty() && (!scenario.has("pantry") || scenario.raw("pantry").isArray())) {
            scenario.fault(
                    "pantry",
                    "is empty; expected a list of foods, such as"
                            + " [{\"food\": \"ground turkey, 93 % lean\", \"price\": \"$5.00/lb\"}]");
        }
        Set<String> seen = new HashSet<>();
        for (Fields fields : all) {
            PantryItem item = item(fields);
            if (item != null && !seen.add(item.food().id())) {
                fields.fault("food", "\"" + item.food().label() + "\" is in the pantry twice; join the two");
            }
            if (item != null) {
                items.add(item);
            }
        }
        return items;
    }

    private @Nullable PantryItem item(Fields fields) {
        String name = fields.requiredText("food", "the name of a food");
        Food food = name == null ? null : foods.find(fields, "food", name, "the pantry");
        if (food == null) {
            fields.names().forEach(fields::raw);
            return null;
        }
        Preparation preparation = preparation(fields, food);
        Buying buying = buying(fields, food);
        Double onHand = amount(fields, "onHand", food);
        double onHandGrams = onHand == null ? 0 : onHand;
        double mustUse = mustUse(fields, food, onHandGrams);
        Double atMost = amount(fields, "atMost", food);
        if (atMost != null && mustUse > atMost) {
            fields.fault("atMost", "is less than \"mustUse\"; make one of the two larger or smaller");
        }
        boolean outOfStock = fields.flag("outOfStock", false);
        if (buying != null && (outOfStock || !buying.canBeBought()) && mustUse > onHandGrams) {
            fields.fault(
                    "mustUse", "is more than what is \"onHand\", and no more can be bought; give a smaller amount");
        }
        boolean wholePacks = fields.flag("wholePacks", false);
        Place place = place(fields, food);
        fields.end();
        if (buying == null || preparation == null || place == null) {
            return null;
        }
        return new PantryItem(
                food,
                preparation,
                buying.packGrams(),
                buying.packAsBoughtGrams(),
                buying.name(),
                buying.price(),
                onHandGrams,
                mustUse,
                atMost,
                wholePacks && buying.packGrams() != null,
                outOfStock || !buying.canBeBought(),
                place);
    }

    private @Nullable Preparation preparation(Fields fields, Food food) {
        String method = fields.text("cook");
        if (method == null) {
            return knowledge.preparations().usual(food);
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

    /** How a food is bought: in packs, or loose by weight. */
    private record Buying(
            @Nullable Double packGrams,
            @Nullable Double packAsBoughtGrams,
            String name,
            double price,
            boolean canBeBought) {}

    private @Nullable Buying buying(Fields fields, Food food) {
        String priceText = fields.text("price");
        String packText = fields.text("pack");
        double edible = food.kitchen().edibleShare();
        if (priceText == null) {
            if (fields.has("price")) {
                return null;
            }
            if (packText != null) {
                fields.fault("pack", "has no price beside it; give \"price\", such as \"$4.49\"");
                return null;
            }
            if (!fields.has("onHand")) {
                fields.fault(
                        "price",
                        "is missing; expected \"price\": \"$4.49/lb\", or \"onHand\" for what is in the house");
                return null;
            }
            return new Buying(null, null, "", 0, false);
        }
        Price price = fields.parsed("price", priceText, text -> Price.parse(text, currency));
        if (price == null) {
            return null;
        }
        Quantity per = price.per();
        if (per != null) {
            double perGrams = per.dimension() == packpot.units.Dimension.MASS
                    ? per.inBaseUnits()
                    : per.inBaseUnits() * food.kitchen().densityGramsPerMl();
            if (!(perGrams >= 0.001)) {
                fields.fault("price", "is given for nothing; expected a price such as \"$4.49/lb\"");
                return null;
            }
            double perEdibleGram = price.amount() / perGrams / edible;
            if (packText == null) {
                return new Buying(null, null, "loose", perEdibleGram, true);
            }
            Double pack = amount(fields, "pack", food);
            return pack == null ? null : new Buying(pack * edible, pack, packText, perEdibleGram * pack * edible, true);
        }
        if (packText != null) {
            Double pack = amount(fields, "pack", food);
            return pack == null ? null : new Buying(pack * edible, pack, packText, price.amount(), true);
        }
        Measures.Pack usual = knowledge.measures().usualPack(food);
        if (usual == null) {
            fields.fault(
                    "pack",
                    "is missing, and no usual pack of " + food.label()
                            + " is known; expected \"pack\": \"2 lb\", or a price by weight such as \"$4.49/lb\"");
            return null;
        }
        notes.filled("taken.pack", Term.food(food.id(), food.label()), new Amount(usual.name()));
        return new Buying(usual.edibleGrams(), usual.gramsAsBought(), usual.name(), price.amount(), true);
    }

    private @Nullable Double amount(Fields fields, String name, Food food) {
        String text = fields.text(name);
        Double grams = text == null
                ? null
                : fields.parsed(name, text, read -> FoodAmount.grams(read, food, knowledge.measures()));
        if (grams != null && !(grams > 0) && name.equals("pack")) {
            fields.fault(name, "read \"" + text + "\"; expected more than nothing");
            return null;
        }
        return grams;
    }

    private double mustUse(Fields fields, Food food, double onHandGrams) {
        if (fields.has("mustUse") && fields.raw("mustUse").isBoolean()) {
            boolean all = fields.flag("mustUse", false);
            if (all && onHandGrams == 0) {
                fields.fault("mustUse", "is true, but nothing is \"onHand\"; give the amount, such as \"2 lb\"");
            }
            return all ? onHandGrams : 0;
        }
        Double grams = amount(fields, "mustUse", food);
        return grams == null ? 0 : grams;
    }

    private @Nullable Place place(Fields fields, Food food) {
        Supplement supplement = food.supplement();
        Place usual = supplement == null ? Place.POT : supplement.place();
        if (usual == Place.NONE) {
            fields.fault(
                    "food", "\"" + food.label() + "\" cannot be measured in a home kitchen; take it out of the pantry");
            return null;
        }
        Place place = fields.choice(
                "where",
                List.of(Place.POT, Place.BOWL, Place.EITHER),
                p -> p.name().toLowerCase(Locale.ROOT));
        if (place != null && place.bowl() && supplement == null) {
            fields.fault(
                    "where", "\"" + food.label() + "\" goes into the pot; only supplements are measured into bowls");
            return null;
        }
        return place == null ? usual : place;
    }
}
