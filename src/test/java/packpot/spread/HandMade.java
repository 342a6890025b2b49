package packpot.spread;

import java.util.Arrays;
import java.util.List;
import packpot.audit.NutrientLine;

/** Plans of a few terms, to reckon by hand. */
final class HandMade {

    private HandMade() {}

    static Figures figures(double... values) {
        return Figures.of(values.length, i -> values[i]);
    }

    /** A food of which a gram holds a unit of each constituent that it has. */
    static Intakes.Source food(double potGrams, double weighing, Figures perGram, Figures spread) {
        return new Intakes.Source(potGrams, weighing, perGram, spread);
    }

    static Intakes.Demand atLeast(double least, double... weights) {
        return new Intakes.Demand(line("zinc", "mg", least), figures(weights), least);
    }

    /** The first constituent over the second. */
    static Intakes.Demand ratio(double least) {
        return new Intakes.Demand(line("ca-p-ratio", "", least), figures(1, -least), 0);
    }

    private static NutrientLine line(String key, String unit, double minimum) {
        return new NutrientLine(key, key, unit, minimum, 0, 0, null, 0, 0, List.of(), false);
    }

    /** A dog that eats so much of the pot a day. */
    static Intakes.Eater dog(String name, double potShare, double portion, Intakes.Demand... demands) {
        return new Intakes.Eater(name, potShare, portion, List.of(), List.of(demands));
    }

    static Intakes plan(List<Intakes.Source> foods, Intakes.Eater... dogs) {
        return new Intakes(
                foods, Arrays.asList(dogs), dogs[0].demands().get(0).weights().copy().length);
    }
}
