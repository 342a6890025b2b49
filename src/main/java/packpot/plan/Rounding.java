package packpot.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import packpot.food.FoodGroup;
import packpot.food.Supplement;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.units.Show;
import packpot.units.Unit;
import packpot.units.UnitSystem;

/** How finely a kitchen measures. */
final class Rounding {
    private static final double CLOSE_GRAMS = 1e-3;
    /** Times the days of a batch this must still be nothing. */
    private static final double CLOSE_GRAMS_A_DAY = 1e-5;

    private static final double MOST_SPOONS = 6;

    private Rounding() {}

    /** Grams that are weighed into the pot, never more than can be had. */
    static double potGrams(PantryItem item, double grams, Household household) {
        Supplement supplement = item.food().supplement();
        if (supplement != null) {
            return Math.round(grams / supplement.potStepGrams()) * supplement.potStepGrams();
        }
        if (item.wholePacksOnly()) {
            return grams;
        }
        if (Math.abs(grams - Math.rint(grams)) < CLOSE_GRAMS) {
            return Math.rint(grams);
        }
        double step = household.rules().stepGrams(item, household.shape(), grams);
        double rounded = Math.round(grams / step) * step;
        double most = mostToBeHad(item, grams);
        return rounded <= most + CLOSE_GRAMS ? rounded : Math.floor(most + CLOSE_GRAMS);
    }

    /** What the packs hold that these grams need; rounding must not open another. */
    private static double mostToBeHad(PantryItem item, double grams) {
        double atMost = item.atMostGrams() == null ? Double.POSITIVE_INFINITY : item.atMostGrams();
        Double pack = item.packGrams();
        double fromShop = item.outOfStock()
                ? 0
                : pack == null
                        ? Double.POSITIVE_INFINITY
                        : pack * Math.max(0, Math.ceil((grams - item.onHandGrams() - CLOSE_GRAMS) / pack));
        return Math.min(atMost, item.onHandGrams() + fromShop);
    }

    /**
     * Whole grams a day for each dog, none a gram off its share, together no more than there is.
     *
     * @param days on which each is fed
     */
    static List<Integer> portions(List<Double> gramsPerDay, List<Integer> days, double batchGrams) {
        List<Integer> portions = new ArrayList<>();
        gramsPerDay.forEach(grams -> portions.add((int) Math.floor(grams + CLOSE_GRAMS_A_DAY)));
        double left = batchGrams;
        for (int i = 0; i < portions.size(); i++) {
            left += (CLOSE_GRAMS_A_DAY / portions.size() - portions.get(i)) * days.get(i);
        }
        List<Integer> furthestOff = IntStream.range(0, portions.size())
                .boxed()
                .sorted(Comparator.comparingDouble(i -> portions.get(i) - gramsPerDay.get(i)))
                .toList();
        for (int i : furthestOff) {
            if (days.get(i) <= left) {
                portions.set(i, portions.get(i) + 1);
                left -= days.get(i);
            }
        }
        return portions;
    }

    /** A day's grams over its meals, the first ones a gram larger where it does not divide. */
    static List<Integer> meals(int gramsPerDay, int meals) {
        List<Integer> grams = new ArrayList<>();
        for (int meal = 0; meal < meals; meal++) {
            grams.add(gramsPerDay / meals + (meal < gramsPerDay % meals ? 1 : 0));
        }
        return grams;
    }

    /** A dose in words: "1/4 tsp", "2 drops from a pierced soft gel". */
    static String dose(Supplement supplement, double parts) {
        double measures = parts * supplement.smallestPart();
        String count = Show.fraction(measures, (int) Math.round(1 / Math.min(1, supplement.smallestPart())));
        return count + " " + (measures > 1 ? supplement.measurePlural() : supplement.measureName());
    }

    /** A pot amount in spoons, cups or tablets, where that is how it is measured. */
    static String potMeasure(PantryItem item, double grams, UnitSystem units, Knowledge knowledge) {
        Supplement supplement = item.food().supplement();
        if (supplement != null) {
            double measures = grams / supplement.gramsPerMeasure();
            boolean spoons = supplement.measureName().equals("tsp");
            if (spoons && measures > MOST_SPOONS) {
                return "by weight";
            }
            String count = Show.fraction(measures, supplement.smallestPart() < 1 ? 4 : 1);
            return count + " " + (measures > 1 ? supplement.measurePlural() : supplement.measureName());
        }
        if (item.food().group() == FoodGroup.EGG && item.food().state().equals("raw")) {
            OptionalDouble large = knowledge.measures().gramsOf(item.food(), "large");
            return large.isPresent() ? "about " + Math.round(grams / large.getAsDouble()) + " large" : "";
        }
        if (item.food().group() == FoodGroup.OIL || item.food().group() == FoodGroup.SEED) {
            double ml = grams / item.food().kitchen().densityGramsPerMl();
            double tablespoons = ml / Unit.TABLESPOON.inBaseUnit();
            return units == UnitSystem.METRIC || tablespoons >= 8
                    ? Show.scoop(ml, units)
                    : Show.fraction(tablespoons, 4) + " tbsp";
        }
        return units == UnitSystem.US ? Show.weight(grams, units) : "";
    }
}
