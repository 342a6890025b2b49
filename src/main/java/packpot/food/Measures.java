package packpot.food;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import packpot.data.ModelFiles;
import packpot.data.Row;

/** Household measures of single foods ("1 large" egg) and the packs that shops sell. */
public final class Measures {

    /**
     * A pack as shops sell it.
     *
     * @param name such as "3 lb family pack"
     * @param gramsAsBought label weight
     * @param edibleGrams what of it can be eaten
     */
    public record Pack(String name, double gramsAsBought, double edibleGrams) {}

    private final Map<String, Map<String, Double>> gramsByMeasure;
    private final Map<String, Pack> packs;

    private Measures(Map<String, Map<String, Double>> gramsByMeasure, Map<String, Pack> packs) {
        this.gramsByMeasure = gramsByMeasure;
        this.packs = packs;
    }

    /** From models/measures.csv and models/packs.csv. */
    public static Measures load() {
        Map<String, Map<String, Double>> measures = new HashMap<>();
        for (Row row : ModelFiles.table("measures.csv")) {
            measures.computeIfAbsent(row.required("food"), key -> new HashMap<>())
                    .put(singular(row.required("measure")), row.number("grams"));
        }
        Map<String, Pack> packs = new HashMap<>();
        for (Row row : ModelFiles.table("packs.csv")) {
            double grams = row.number("grams");
            Pack pack = new Pack(
                    row.required("pack"),
                    grams,
                    row.optionalNumber("edible_grams").orElse(grams));
            packs.putIfAbsent(row.required("food"), pack);
        }
        return new Measures(measures, packs);
    }

    /** The pack that a shop most often sells; null when none is known. */
    public @Nullable Pack usualPack(Food food) {
        return packs.get(food.id());
    }

    /** Grams of one measure such as "large", "clove" or "tablet"; empty when the food has no such measure. */
    public OptionalDouble gramsOf(Food food, String measure) {
        String wanted = singular(measure);
        Supplement supplement = food.supplement();
        if (supplement != null
                && (isPartOf(wanted, supplement.measureName()) || isPartOf(wanted, supplement.measurePlural()))) {
            return OptionalDouble.of(supplement.gramsPerMeasure());
        }
        Double grams = gramsByMeasure.getOrDefault(food.id(), Map.of()).get(wanted);
        return grams == null ? OptionalDouble.empty() : OptionalDouble.of(grams);
    }

    /** The measures that a food can be counted in. */
    public List<String> of(Food food) {
        List<String> names =
                new ArrayList<>(gramsByMeasure.getOrDefault(food.id(), Map.of()).keySet());
        Supplement supplement = food.supplement();
        if (supplement != null) {
            names.add(supplement.measureName());
        }
        names.sort(null);
        return names;
    }

    /** Whether words stand in a measure's name: "tablet" in "b-complex tablet" and in "tablet of 50 mg zinc". */
    private static boolean isPartOf(String wanted, String measure) {
        return (" " + singular(measure) + " ").contains(" " + wanted + " ")
                || singular(measure).startsWith(wanted);
    }

    private static String singular(String measure) {
        String plain = measure.strip().toLowerCase(Locale.ROOT);
        return plain.endsWith("s") ? plain.substring(0, plain.length() - 1) : plain;
    }
}
