package packpot.food;

import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.data.ModelDataException;
import packpot.data.ModelFiles;
import packpot.data.Row;

/** The foods that the program knows, found by id, label, full name or alias. */
public final class FoodCatalogue {
    private final Map<String, Food> byId;
    private final Map<String, Food> byName;

    private FoodCatalogue(Map<String, Food> byId) {
        this.byId = byId;
        this.byName = new HashMap<>();
        for (Food food : byId.values()) {
            byName.put(food.id(), food);
            byName.putIfAbsent(plain(food.label()), food);
            byName.putIfAbsent(plain(food.name()), food);
            food.aliases().forEach(alias -> byName.putIfAbsent(plain(alias), food));
        }
    }

    /** From models/foods.csv, food_kitchen.csv and supplements.csv. */
    public static FoodCatalogue load() {
        Map<String, Row> kitchens = byFood("food_kitchen.csv", "id");
        Map<String, Row> supplements = byFood("supplements.csv", "food");
        Map<String, Food> foods = new LinkedHashMap<>();
        for (Row row : ModelFiles.table("foods.csv")) {
            String id = row.required("id");
            Row kitchen = kitchens.get(id);
            if (kitchen == null) {
                throw new ModelDataException("models/food_kitchen.csv has no row for " + id);
            }
            foods.put(id, food(row, kitchen, supplements.get(id)));
        }
        return new FoodCatalogue(foods);
    }

    private static Map<String, Row> byFood(String table, String key) {
        Map<String, Row> rows = new HashMap<>();
        for (Row row : ModelFiles.table(table)) {
            rows.put(row.required(key), row);
        }
        return rows;
    }

    private static Food food(Row row, Row kitchen, @Nullable Row supplement) {
        return new Food(
                row.required("id"),
                row.required("label"),
                row.required("name"),
                row.required("state"),
                FoodGroup.ofKey(kitchen.required("group")),
                composition(row),
                kitchen(kitchen),
                supplement == null ? null : supplement(supplement),
                kitchen.list("aliases"),
                row.required("source"),
                row.required("found"));
    }

    private static Composition composition(Row row) {
        Map<Constituent, Double> figures = new EnumMap<>(Constituent.class);
        for (Constituent constituent : Constituent.values()) {
            row.optionalNumber(constituent.column()).ifPresent(figure -> figures.put(constituent, figure));
        }
        return Composition.ofPer100Grams(figures);
    }

    private static Food.Kitchen kitchen(Row row) {
        return new Food.Kitchen(
                row.required("section"),
                Keeps.ofKey(row.required("keeps")),
                row.required("cook_family"),
                row.number("edible_share"),
                row.number("density_g_per_ml"),
                row.optionalNumber("max_share").orElse(1),
                row.text("max_share_reason"));
    }

    private static Supplement supplement(Row row) {
        return new Supplement(
                row.required("form"),
                row.text("active_share"),
                row.required("measure_name"),
                row.required("measure_plural"),
                row.number("smallest_part"),
                row.number("grams_per_measure"),
                row.number("pot_step_grams"),
                Dosing.valueOf(row.required("dosing").toUpperCase(Locale.ROOT)),
                Place.valueOf(row.required("where").toUpperCase(Locale.ROOT)),
                row.optionalNumber("most_per_1000_kcal_day").orElse(Double.POSITIVE_INFINITY),
                row.optionalNumber("most_growing")
                        .orElse(row.optionalNumber("most_per_1000_kcal_day").orElse(Double.POSITIVE_INFINITY)),
                Supplement.USUAL_MOST_DOSES,
                row.text("caution"));
    }

    public Collection<Food> all() {
        return byId.values();
    }

    /** The food of that id, label, full name or alias, in any case; null when there is none. */
    public @Nullable Food find(String name) {
        return byName.get(plain(name));
    }

    /** Foods whose id, label, name or alias holds every one of the words, best known label first. */
    public List<Food> search(List<String> words) {
        List<String> wanted = words.stream().map(FoodCatalogue::plain).toList();
        return byId.values().stream()
                .filter(food -> wanted.stream().allMatch(searchText(food)::contains))
                .sorted(Comparator.comparing((Food food) -> food.label().length())
                        .thenComparing(Food::label))
                .toList();
    }

    private static String searchText(Food food) {
        return plain(food.id() + " " + food.label() + " " + food.name() + " " + String.join(" ", food.aliases()) + " "
                + food.group().key());
    }

    private static String plain(String name) {
        return name.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
    }
}
