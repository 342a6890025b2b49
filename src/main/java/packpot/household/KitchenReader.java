package packpot.household;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import packpot.units.Dimension;
import packpot.units.Show;
import packpot.units.UnitSystem;
import packpot.words.Amount;

/** Reads "kitchen". */
final class KitchenReader {
    private static final List<String> BAGS = List.of("pint", "quart", "half-gallon", "gallon");
    private static final int MOST_DAYS = 60;
    private static final int MOST_SHOP_DAYS = 14;

    private final KitchenFigures figures;
    private final JsonNode usual;
    private final Notes notes;
    private final UnitSystem units;

    KitchenReader(KitchenFigures figures, JsonNode usual, Notes notes, UnitSystem units) {
        this.figures = figures;
        this.usual = usual;
        this.notes = notes;
        this.units = units;
    }

    Kitchen read(@Nullable Fields fields) {
        Fields kitchen = fields == null ? Fields.none("kitchen") : fields;
        int days = orUsual(kitchen.whole("days", 1, MOST_DAYS), "days", "taken.days");
        int meals = orUsual(kitchen.whole("mealsPerDay", 1, 6), "mealsPerDay", "taken.meals");
        Double pot = volume(kitchen, "pot");
        Integer loads = kitchen.whole("mostPotLoads", 1, 20);
        Double bin = volume(kitchen, "bin");
        Bag bag = bag(kitchen);
        Integer mostBags = kitchen.whole("mostBags", 1, 1000);
        Freezer freezer = freezer(kitchen.object("freezer"), bag);
        Integer fridge = kitchen.whole("fridgeDays", 0, (int) figures.number("fridgeDaysMax"));
        if (fridge == null) {
            fridge = (int) figures.number("fridgeDaysDefault");
            notes.filled("taken.fridge", fridge);
        }
        Integer shop = kitchen.whole("shopDaysBefore", 0, MOST_SHOP_DAYS);
        kitchen.end();
        return new Kitchen(
                days,
                meals,
                pot,
                figures.number("potFillShare"),
                loads == null ? usual.path("mostPotLoads").intValue() : loads,
                bin,
                bag.name(),
                bag.usableMl(),
                mostBags,
                freezer,
                Math.min(fridge, days),
                figures.number("cookedMixDensityKilogramsPerLitre"),
                shop == null ? (int) figures.number("shopDaysBefore") : shop);
    }

    private int orUsual(@Nullable Integer given, String key, String sentence) {
        if (given != null) {
            return given;
        }
        int figure = usual.path(key).intValue();
        notes.filled(sentence, figure);
        return figure;
    }

    private static @Nullable Double volume(Fields fields, String name) {
        Double ml = fields.quantity(name, Dimension.VOLUME);
        if (ml != null && !(ml > 0)) {
            fields.fault(name, "read 0; expected a volume above zero");
            return null;
        }
        return ml;
    }

    private record Bag(String name, double usableMl) {}

    private Bag bag(Fields kitchen) {
        double usable = figures.number("bagUsableShare");
        if (!kitchen.has("bag")) {
            double ml = figures.number("bagQuartNominalMillilitres") * usable;
            notes.filled("taken.bag", new Amount(Show.volume(ml, units)));
            return new Bag("quart", ml);
        }
        String text = kitchen.text("bag");
        if (text == null) {
            return new Bag("quart", 1);
        }
        String name = text.toLowerCase(Locale.ROOT).replace(' ', '-');
        if (BAGS.contains(name)) {
            String key = switch (name) {
                case "pint" -> "bagPintNominalMillilitres";
                case "half-gallon" -> "bagHalfGallonNominalMillilitres";
                case "gallon" -> "bagGallonNominalMillilitres";
                default -> "bagQuartNominalMillilitres";
            };
            return new Bag(name, figures.number(key) * usable);
        }
        Double ml = volume(kitchen, "bag");
        return new Bag(text, (ml == null ? 1 : ml) * usable);
    }

    private @Nullable Freezer freezer(@Nullable Fields fields, Bag bag) {
        if (fields == null) {
            notes.filled("taken.noFreezer");
            return null;
        }
        Double rated = volume(fields, "volume");
        if (!fields.has("volume")) {
            fields.fault("volume", "is missing; expected a volume such as \"5 cu ft\" or \"140 l\"");
        }
        String kind = fields.choice("kind", List.of("chest", "upright", "top"), k -> k);
        double usable = kind == null
                ? figures.number("freezerUsableShareUpright")
                : figures.number(
                        switch (kind) {
                            case "chest" -> "freezerUsableShareChest";
                            case "top" -> "freezerUsableShareTopFreezer";
                            default -> "freezerUsableShareUpright";
                        });
        if (kind == null) {
            notes.filled("taken.freezerKind");
        }
        Double packing = fields.share("packing", 1);
        double taken = 0;
        for (Fields held : fields.objects("holds")) {
            taken += held(held, bag, packing == null ? figures.number("freezerPackingShare") : packing);
        }
        fields.end();
        if (rated != null && taken > rated * usable) {
            fields.fault(
                    "holds",
                    "what is in the freezer already takes " + Show.volume(taken, units) + ", more than the "
                            + Show.volume(rated * usable, units) + " that it can be filled with");
        }
        return rated == null
                ? null
                : new Freezer(rated, usable, taken, packing == null ? figures.number("freezerPackingShare") : packing);
    }

    /** Volume that something in the freezer takes; a bag takes its food's volume and the air around it. */
    private static double held(Fields held, Bag bag, double packing) {
        held.text("what");
        Double ml = volume(held, "volume");
        Integer bags = held.whole("bags", 0, 1000);
        if (!held.has("volume") && !held.has("bags")) {
            held.fault("volume", "is missing; expected \"volume\": \"10 l\" or \"bags\": 4");
        }
        held.end();
        return (ml == null ? 0 : ml) + (bags == null ? 0 : bags * bag.usableMl() / packing);
    }
}
