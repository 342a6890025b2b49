package packpot.food;

/**
 * How a supplement is measured and given.
 *
 * @param form the salt or form, in words
 * @param activeShare what share of it is the nutrient, in words
 * @param measureName what a person owns: "tsp", "tablet of 50 mg zinc", "drop"
 * @param measurePlural the same for several
 * @param smallestPart the smallest part of one measure that can be given: 0.125 of a teaspoon, half a tablet, one drop
 * @param gramsPerMeasure grams of one whole measure
 * @param potStepGrams how finely it is measured into a whole pot, in grams
 * @param dosing every day the same, or a count spread over the days of the batch
 * @param place where it goes unless the scenario says otherwise
 * @param mostGramsPer1000Kcal most of it a day in all, from the nutrient that it is rich in; infinite where there is no
 *     such limit
 * @param mostGramsPer1000KcalGrowing the same for a dog that grows or breeds
 * @param mostDosesPerDay smallest parts that go into one bowl a day
 * @param caution a sentence for people; empty when there is none
 */
public record Supplement(
        String form,
        String activeShare,
        String measureName,
        String measurePlural,
        double smallestPart,
        double gramsPerMeasure,
        double potStepGrams,
        Dosing dosing,
        Place place,
        double mostGramsPer1000Kcal,
        double mostGramsPer1000KcalGrowing,
        int mostDosesPerDay,
        String caution) {

    /** Nobody counts more spoon parts, drops or capsules than this into one bowl. */
    public static final int USUAL_MOST_DOSES = 12;

    /** Grams of the smallest dose. */
    public double smallestDoseGrams() {
        return smallestPart * gramsPerMeasure;
    }
}
