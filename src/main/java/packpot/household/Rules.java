package packpot.household;

/**
 * What a plan is held to beside the profile.
 *
 * @param margin above every minimum, because foods vary and cooks weigh coarsely
 * @param energyBand how far the model may leave a dog's energy target, as a share
 * @param roundingReserve kept free on every limit so that kitchen-rounded amounts still hold it
 * @param sodiumMostGramsPer1000Kcal a ceiling lower than the safe upper limit, so that salt is no source of iodine
 * @param leftoverWorthShare what a left-over part of a pack is worth when it keeps, as a share of its price
 * @param foodRoundingGrams how finely foods are weighed into the pot
 * @param oilRoundingGrams how finely foods that play a small part are
 */
public record Rules(
        double margin,
        double energyBand,
        double roundingReserve,
        double sodiumMostGramsPer1000Kcal,
        double leftoverWorthShare,
        double foodRoundingGrams,
        double oilRoundingGrams) {

    /** Below this a coarse step would be more than the reserve that the limits keep for rounding. */
    private static final double COARSE_FROM_GRAMS = 1000;

    /** The same rules with another margin, as a share. */
    public Rules withMargin(double other) {
        return with(other, energyBand, roundingReserve, foodRoundingGrams, oilRoundingGrams);
    }

    /** The same rules with another energy band, as a share. */
    public Rules withEnergyBand(double other) {
        return with(margin, other, roundingReserve, foodRoundingGrams, oilRoundingGrams);
    }

    /** The same rules with another reserve on every limit, as a share. */
    public Rules withRoundingReserve(double other) {
        return with(margin, energyBand, other, foodRoundingGrams, oilRoundingGrams);
    }

    /** The same rules, all foods weighed as finely, in grams. */
    public Rules withRounding(double grams) {
        return with(margin, energyBand, roundingReserve, grams, grams);
    }

    private Rules with(double otherMargin, double otherBand, double otherReserve, double foodGrams, double oilGrams) {
        return new Rules(
                otherMargin,
                otherBand,
                otherReserve,
                sodiumMostGramsPer1000Kcal,
                leftoverWorthShare,
                foodGrams,
                oilGrams);
    }

    /** Money that a gram of a bought pack is still worth once the batch is cooked. */
    public double leftWorthPerGram(PantryItem item) {
        if (item.food().isSupplement()) {
            return item.pricePerGram();
        }
        // What is sold by weight is bought as needed; the few grams of rounding are no stock.
        return item.isLoose() || !item.keeps() ? 0 : item.pricePerGram() * leftoverWorthShare;
    }

    /** How finely this much of a food is weighed into the pot, in grams. */
    public double stepGrams(PantryItem item, Shape shape, double grams) {
        boolean fine = grams < COARSE_FROM_GRAMS
                || shape.minorGroups().contains(item.food().group());
        return fine ? oilRoundingGrams : foodRoundingGrams;
    }
}
