package packpot.food;

import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import packpot.data.ModelDataException;
import packpot.data.ModelFiles;
import packpot.data.Row;

/** The nutrients and ratios that profiles speak of, in the order of printing. */
public final class Nutrients {

    /** A ratio of two nutrients by mass. */
    public record Ratio(String key, String label, Nutrient numerator, Nutrient denominator) {}

    private final Map<String, Nutrient> nutrients;
    private final Map<String, Ratio> ratios;

    private Nutrients(Map<String, Nutrient> nutrients, Map<String, Ratio> ratios) {
        this.nutrients = nutrients;
        this.ratios = ratios;
    }

    /** From models/nutrients.csv and models/ratios.csv. */
    public static Nutrients load() {
        Map<String, Nutrient> nutrients = new LinkedHashMap<>();
        for (Row row : ModelFiles.table("nutrients.csv")) {
            Nutrient nutrient = new Nutrient(
                    row.required("nutrient"),
                    row.required("label"),
                    row.required("unit"),
                    sum(row, "toward_minimum"),
                    sum(row, "toward_maximum"));
            nutrients.put(nutrient.key(), nutrient);
        }
        Nutrients known = new Nutrients(nutrients, new LinkedHashMap<>());
        for (Row row : ModelFiles.table("ratios.csv")) {
            Ratio ratio = new Ratio(
                    row.required("ratio"),
                    row.required("label"),
                    known.get(row.required("numerator")),
                    known.get(row.required("denominator")));
            known.ratios.put(ratio.key(), ratio);
        }
        return known;
    }

    private static Map<Constituent, Double> sum(Row row, String column) {
        Map<Constituent, Double> sum = new EnumMap<>(Constituent.class);
        for (String term : row.list(column)) {
            int star = term.indexOf('*');
            String name = star < 0 ? term : term.substring(0, star);
            Constituent constituent = Constituent.ofColumn(name);
            if (constituent == null) {
                throw new ModelDataException("models/nutrients.csv: no constituent is called " + name);
            }
            sum.put(constituent, star < 0 ? 1.0 : Double.parseDouble(term.substring(star + 1)));
        }
        return sum;
    }

    public Collection<Nutrient> all() {
        return nutrients.values();
    }

    public Nutrient get(String key) {
        Nutrient nutrient = nutrients.get(key);
        if (nutrient == null) {
            throw new ModelDataException("models/nutrients.csv has no nutrient " + key);
        }
        return nutrient;
    }

    public Collection<Ratio> ratios() {
        return ratios.values();
    }

    public boolean isRatio(String key) {
        return ratios.containsKey(key);
    }

    public Ratio ratio(String key) {
        Ratio ratio = ratios.get(key);
        if (ratio == null) {
            throw new ModelDataException("models/ratios.csv has no ratio " + key);
        }
        return ratio;
    }
}
