package packpot.food;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.data.ModelDataException;
import packpot.data.ModelFiles;
import packpot.data.Row;

/** What cooking does to each kind of food, by method. */
public final class Preparations {
    private static final Map<String, Constituent> RETENTION_COLUMNS = Map.ofEntries(
            Map.entry("calcium", Constituent.CALCIUM_MG),
            Map.entry("iron", Constituent.IRON_MG),
            Map.entry("magnesium", Constituent.MAGNESIUM_MG),
            Map.entry("phosphorus", Constituent.PHOSPHORUS_MG),
            Map.entry("potassium", Constituent.POTASSIUM_MG),
            Map.entry("sodium", Constituent.SODIUM_MG),
            Map.entry("zinc", Constituent.ZINC_MG),
            Map.entry("thiamin", Constituent.THIAMIN_MG),
            Map.entry("riboflavin", Constituent.RIBOFLAVIN_MG),
            Map.entry("niacin", Constituent.NIACIN_MG),
            Map.entry("vitamin_b6", Constituent.VITAMIN_B6_MG),
            Map.entry("folate", Constituent.FOLATE_UG),
            Map.entry("vitamin_b12", Constituent.VITAMIN_B12_UG),
            Map.entry("vitamin_a", Constituent.VITAMIN_A_RAE_UG));

    private final Map<String, Map<String, Preparation>> byFamily;
    private final Map<String, String> defaultMethods;
    private final Map<String, Row> yields;

    private Preparations(
            Map<String, Map<String, Preparation>> byFamily,
            Map<String, String> defaultMethods,
            Map<String, Row> yields) {
        this.byFamily = byFamily;
        this.defaultMethods = defaultMethods;
        this.yields = yields;
    }

    /** From models/preparations.csv (by kind of food) and models/yields.csv (single foods). */
    public static Preparations load() {
        Map<String, Map<String, Preparation>> byFamily = new HashMap<>();
        Map<String, String> defaults = new HashMap<>();
        for (Row row : ModelFiles.table("preparations.csv")) {
            String family = row.required("family");
            Preparation preparation = preparation(row);
            byFamily.computeIfAbsent(family, key -> new LinkedHashMap<>()).put(preparation.method(), preparation);
            if (row.text("default").equals("yes")) {
                defaults.put(family, preparation.method());
            }
        }
        Map<String, Row> yields = new HashMap<>();
        for (Row row : ModelFiles.table("yields.csv")) {
            yields.put(row.required("food") + " " + row.required("method"), row);
        }
        return new Preparations(byFamily, defaults, yields);
    }

    private static Preparation preparation(Row row) {
        Map<Constituent, Double> retention = new EnumMap<>(Constituent.class);
        RETENTION_COLUMNS.forEach((column, constituent) ->
                row.optionalNumber(column).ifPresent(share -> retention.put(constituent, share)));
        // Retinol is what a maximum of vitamin A is held against; the table gives one factor for the vitamin.
        Double vitaminA = retention.get(Constituent.VITAMIN_A_RAE_UG);
        if (vitaminA != null) {
            retention.put(Constituent.RETINOL_UG, vitaminA);
        }
        return new Preparation(
                row.required("method"),
                row.required("label"),
                row.number("yield_cooked_over_raw"),
                retention,
                row.text("yield_source") + " " + row.text("retention_source"));
    }

    /** The methods that a food can be cooked by. */
    public List<String> methods(Food food) {
        return List.copyOf(family(food).keySet());
    }

    /** How a food is prepared in the pot when nothing else is said. */
    public Preparation usual(Food food) {
        String method = defaultMethods.get(food.kitchen().cookFamily());
        Preparation preparation = method == null ? null : find(food, method);
        if (preparation == null) {
            throw new ModelDataException("models/preparations.csv has no usual method for "
                    + food.kitchen().cookFamily());
        }
        return preparation;
    }

    /** The preparation of a food by the named method; null when the food cannot be cooked that way. */
    public @Nullable Preparation find(Food food, String method) {
        Preparation preparation = family(food).get(method);
        Row own = yields.get(food.id() + " " + method);
        if (preparation == null || own == null) {
            return preparation;
        }
        return new Preparation(
                method,
                preparation.label(),
                own.number("yield_cooked_over_raw"),
                preparation.retention(),
                own.required("source") + " " + preparation.source());
    }

    private Map<String, Preparation> family(Food food) {
        return byFamily.getOrDefault(food.kitchen().cookFamily(), Map.of());
    }
}
