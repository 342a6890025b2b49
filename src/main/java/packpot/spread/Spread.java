package packpot.spread;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import packpot.data.ModelDataException;
import packpot.data.ModelFiles;
import packpot.data.Row;
import packpot.food.Constituent;
import packpot.food.Food;
import packpot.food.Nutrient;
import packpot.food.Supplement;

/**
 * How far figures and amounts are off: standard deviations, as shares of the mean.
 *
 * @param figures of what a food table measures, from one purchase of a food to the next
 * @param recalled those of the figures that were not seen in print
 * @param label of what a supplement is labelled with
 * @param pure of a pure compound that is weighed or spooned
 * @param scale of what is weighed in the kitchen
 * @param scaleStepGrams what the scale shows; within a step all weights are as likely
 * @param measures of one tablet, drop or spoon, by a word of the measure's name, the first that fits
 */
public record Spread(
        Map<Constituent, Double> figures,
        Set<Constituent> recalled,
        double label,
        double pure,
        double scale,
        double scaleStepGrams,
        Map<String, Double> measures) {
    private static final String FILE = "spread.csv";
    private static final String PURE_SOURCE = "CHEM";
    /** Standard deviation of a rounding error, as a share of the step. */
    private static final double OF_STEP = 1 / Math.sqrt(12);

    public Spread {
        figures = Map.copyOf(figures);
        recalled = Set.copyOf(recalled);
        // The order counts, which Map.copyOf does not keep.
        measures = new LinkedHashMap<>(measures);
    }

    /** From models/spread.csv. */
    public static Spread load() {
        Map<Constituent, Double> figures = new EnumMap<>(Constituent.class);
        Set<Constituent> recalled = EnumSet.noneOf(Constituent.class);
        Map<String, Double> supplements = new LinkedHashMap<>();
        Map<String, Double> measures = new LinkedHashMap<>();
        for (Row row : ModelFiles.table(FILE)) {
            String key = row.required("key");
            double value = row.number("value") / (row.required("unit").equals("percent") ? 100 : 1);
            switch (row.required("what")) {
                case "figure" -> {
                    figures.put(constituent(key), value);
                    if (row.required("found").equals("memory")) {
                        recalled.add(constituent(key));
                    }
                }
                case "supplement" -> supplements.put(key, value);
                case "measure" -> measures.put(key, value);
                default -> throw new ModelDataException("models/" + FILE + ": unknown \"what\" in the row of " + key);
            }
        }
        double scale = taken(measures, "scale");
        double step = taken(measures, "scale-step");
        double label = taken(supplements, "label");
        return new Spread(figures, recalled, label, taken(supplements, "pure"), scale, step, measures);
    }

    private static Constituent constituent(String column) {
        Constituent constituent = Constituent.ofColumn(column);
        if (constituent == null) {
            throw new ModelDataException("models/" + FILE + ": no constituent is called " + column);
        }
        return constituent;
    }

    private static double taken(Map<String, Double> values, String key) {
        Double value = values.remove(key);
        if (value == null) {
            throw new ModelDataException("models/" + FILE + " has no row of " + key);
        }
        return value;
    }

    /** The same, but for all that foods bring. */
    public Spread withFoods(double share) {
        Map<Constituent, Double> other = new EnumMap<>(figures);
        other.replaceAll((constituent, old) -> share);
        return new Spread(other, Set.of(), label, pure, scale, scaleStepGrams, measures);
    }

    /** The same, but for what foods bring of a nutrient. */
    public Spread withNutrient(Nutrient nutrient, double share) {
        Map<Constituent, Double> other = new EnumMap<>(figures);
        Set<Constituent> stillRecalled = new HashSet<>(recalled);
        for (Constituent constituent : nutrient.towardMinimum().keySet()) {
            other.put(constituent, share);
            stillRecalled.remove(constituent);
        }
        return new Spread(other, stillRecalled, label, pure, scale, scaleStepGrams, measures);
    }

    /** The same, but for what supplements bring. */
    public Spread withSupplements(double share) {
        return new Spread(figures, recalled, share, share, scale, scaleStepGrams, measures);
    }

    /** The same with another scale. */
    public Spread withScale(double share, double stepGrams) {
        return new Spread(figures, recalled, label, pure, share, stepGrams, measures);
    }

    /** The same, but for one tablet, drop or spoon of any kind. */
    public Spread withMeasures(double share) {
        Map<String, Double> other = new LinkedHashMap<>(measures);
        other.replaceAll((measure, old) -> share);
        return new Spread(figures, recalled, label, pure, scale, scaleStepGrams, other);
    }

    /** Of what a gram of a food brings. */
    double ofFigure(Food food, Constituent constituent) {
        Supplement supplement = food.supplement();
        if (supplement == null) {
            Double share = figures.get(constituent);
            if (share == null) {
                throw new ModelDataException("models/" + FILE + " has no figure of " + constituent.column());
            }
            return share;
        }
        boolean spooned = supplement.measureName().equals("tsp");
        return food.source().equals(PURE_SOURCE) && spooned ? pure : label;
    }

    /** Of grams that are weighed once. */
    double ofWeighing(double grams) {
        return Math.hypot(scale, scaleStepGrams * OF_STEP / grams);
    }

    /** Of grams that go into the pot: weighed, or counted out where that is finer. */
    double intoPot(Food food, double grams) {
        double weighed = ofWeighing(grams);
        Supplement supplement = food.supplement();
        return supplement == null ? weighed : Math.min(weighed, measured(supplement, grams));
    }

    /** Of one dose on a bowl. */
    double ofDose(Food food, double grams) {
        Supplement supplement = food.supplement();
        return supplement == null ? ofWeighing(grams) : measured(supplement, grams);
    }

    /** Several measures even each other out. */
    private double measured(Supplement supplement, double grams) {
        double one = measures.entrySet().stream()
                .filter(entry -> (" " + supplement.measureName() + " ").contains(" " + entry.getKey() + " "))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElseThrow(() -> new ModelDataException(
                        "models/" + FILE + " has no measure that fits \"" + supplement.measureName() + "\""));
        return one / Math.sqrt(Math.max(1, grams / supplement.gramsPerMeasure()));
    }
}
