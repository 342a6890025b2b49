package packpot.household;

import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import packpot.food.Food;
import packpot.food.Measures;
import packpot.units.Dimension;
import packpot.units.Quantity;
import packpot.units.UnitException;

/** An amount of a food, by weight, by volume, or counted in the food's own measures. */
final class FoodAmount {
    private static final Pattern COUNT =
            Pattern.compile("\\s*(\\d+\\s+\\d+/\\d+|\\d+/\\d+|\\d*\\.?\\d+)\\s+(\\p{L}.*)");

    private static final double MOST_GRAMS = 1e6;
    private static final double LEAST_GRAMS = 1e-3;

    private FoodAmount() {}

    /** Grams of "2 lb", "16 fl oz", "12 large" or "2 1/2 tablets of 50 mg zinc" of a food. */
    static double grams(String text, Food food, Measures measures) throws UnitException {
        double grams = read(text, food, measures);
        if (grams > MOST_GRAMS || (grams > 0 && grams < LEAST_GRAMS)) {
            throw new UnitException("read \"" + text + "\"; expected nothing, or from 1 mg to 1000 kg");
        }
        return grams;
    }

    private static double read(String text, Food food, Measures measures) throws UnitException {
        try {
            // A weight is a weight, even where a measure's name holds its unit, as "portion of 0.1 g" does.
            return Quantity.parse(text, Dimension.MASS).inBaseUnits();
        } catch (UnitException notMass) {
            Matcher count = COUNT.matcher(text);
            OptionalDouble counted = count.matches() ? measures.gramsOf(food, count.group(2)) : OptionalDouble.empty();
            if (counted.isPresent()) {
                return Quantity.number(count.group(1)) * counted.getAsDouble();
            }
            try {
                return Quantity.parse(text, Dimension.VOLUME).inBaseUnits()
                        * food.kitchen().densityGramsPerMl();
            } catch (UnitException notVolume) {
                throw new UnitException(notMass.getMessage() + ", a volume"
                        + (measures.of(food).isEmpty()
                                ? ""
                                : ", or a count of: " + String.join(", ", measures.of(food))));
            }
        }
    }
}
