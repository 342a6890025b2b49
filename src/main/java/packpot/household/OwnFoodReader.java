package packpot.household;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.food.Composition;
import packpot.food.Constituent;
import packpot.food.Dosing;
import packpot.food.Food;
import packpot.food.FoodGroup;
import packpot.food.Keeps;
import packpot.food.Place;
import packpot.food.Supplement;
import packpot.units.Dimension;

/** Reads "ownFoods": foods and supplements from their labels. What the label does not say stays unknown. */
final class OwnFoodReader {

    private static final double MOST_FIGURE = 1e9;

    private OwnFoodReader() {}

    static List<Food> read(Fields scenario) {
        List<Food> foods = new ArrayList<>();
        for (Fields fields : scenario.objects("ownFoods")) {
            Food food = food(fields);
            if (food != null && foods.stream().anyMatch(other -> other.id().equals(food.id()))) {
                fields.fault("name", "two own foods are called \"" + food.label() + "\"; give each a name of its own");
            }
            if (food != null) {
                foods.add(food);
            }
        }
        return foods;
    }

    private static @Nullable Food food(Fields fields) {
        String name = fields.requiredText("name", "what the food is called");
        FoodGroup group = fields.choice("group", List.of(FoodGroup.values()), FoodGroup::key);
        if (!fields.has("group")) {
            fields.fault(
                    "group",
                    "is missing; expected one of "
                            + String.join(
                                    ", ",
                                    Arrays.stream(FoodGroup.values())
                                            .map(FoodGroup::key)
                                            .toList()));
        }
        Double per = fields.quantity("per", Dimension.MASS);
        if (!fields.has("per")) {
            fields.fault(
                    "per", "is missing; expected the weight that the figures are for, such as \"100 g\" or \"1.2 g\"");
        }
        if (per != null && !(per > 0)) {
            fields.fault("per", "read 0 g; expected the weight that the figures are for, such as \"100 g\"");
        }
        Map<Constituent, Double> figures = figures(fields, per == null || per == 0 ? 100 : per);
        String measure = fields.text("measure");
        Integer mostPerDay = fields.whole("mostPerDay", 1, 100);
        fields.end();
        if (name == null || group == null || per == null) {
            return null;
        }
        Supplement supplement = group == FoodGroup.SUPPLEMENT ? supplement(measure, per, mostPerDay) : null;
        return new Food(
                "own:" + name.toLowerCase(Locale.ROOT),
                name,
                name,
                supplement == null ? "cooked" : "supplement",
                group,
                Composition.ofPer100Grams(figures),
                new Food.Kitchen("own foods", Keeps.SHELF, "as-is", 1, 1, 1, ""),
                supplement,
                List.of(),
                "OWNER",
                "label");
    }

    private static Supplement supplement(
            @Nullable String measure, double gramsPerMeasure, @Nullable Integer mostPerDay) {
        String one = measure == null ? "measure" : measure;
        return new Supplement(
                "as on its label",
                "",
                one,
                one.endsWith("s") ? one : one + "s",
                1,
                gramsPerMeasure,
                gramsPerMeasure,
                Dosing.DAILY,
                // A dose a day can be kept to in the bowl alone.
                mostPerDay == null ? Place.EITHER : Place.BOWL,
                Double.POSITIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                mostPerDay == null ? Supplement.USUAL_MOST_DOSES : mostPerDay,
                "");
    }

    private static Map<Constituent, Double> figures(Fields fields, double perGrams) {
        Map<Constituent, Double> figures = new EnumMap<>(Constituent.class);
        Fields holds = fields.object("holds");
        if (holds == null) {
            fields.fault("holds", "is missing; expected figures such as {\"protein_g\": 20, \"zinc_mg\": 3}");
            return figures;
        }
        for (Constituent constituent : Constituent.values()) {
            if (holds.has(constituent.column())) {
                double figure = holds.raw(constituent.column()).asDouble(-1);
                if (!holds.raw(constituent.column()).isNumber() || figure < 0 || figure > MOST_FIGURE) {
                    holds.fault(
                            constituent.column(), "expected a number from zero to a thousand million, without quotes");
                } else {
                    figures.put(constituent, figure / perGrams * 100);
                }
            }
        }
        holds.end();
        double whole = figures.getOrDefault(Constituent.WATER_G, 0.0)
                + figures.getOrDefault(Constituent.PROTEIN_G, 0.0)
                + figures.getOrDefault(Constituent.FAT_G, 0.0)
                + figures.getOrDefault(Constituent.CARBOHYDRATE_G, 0.0)
                + figures.getOrDefault(Constituent.ASH_G, 0.0);
        if (whole > 105) {
            fields.fault(
                    "holds",
                    "water, protein, fat, carbohydrate and ash make up more than the weight they are for;"
                            + " check \"per\" and the figures");
        }
        return figures;
    }
}
