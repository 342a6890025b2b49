package packpot.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import packpot.food.Nutrient;
import packpot.food.Nutrients;
import packpot.household.Nearest;
import packpot.spread.Spread;
import packpot.units.Show;
import picocli.CommandLine.Option;

/** How far figures and amounts are off, where a person knows better than models/spread.csv. */
final class SpreadOptions {
    private static final String ALL = "all";
    private static final String EXPECTED = " is a percentage from 0 to 100, such as 20%; read \"";

    @Option(
            names = "--spread",
            paramLabel = "NUTRIENT=PERCENT",
            description = "how far a nutrient of foods varies (standard deviation), such as zinc=20%%; \"all\" is every"
                    + " nutrient; may be given several times; default: models/spread.csv")
    private List<String> foods = List.of();

    @Option(
            names = "--supplement-spread",
            paramLabel = "PERCENT",
            description =
                    "how far the content of supplements varies from their labels; default: 10%%, pure compounds 1%%")
    private @Nullable String supplements;

    @Option(
            names = "--weighing-error",
            paramLabel = "PERCENT",
            description = "how far weighed amounts are off; default: 2%%")
    private @Nullable String weighing;

    @Option(
            names = "--scale-step",
            paramLabel = "GRAMS",
            description = "steps in which the scale shows grams; 0 for none; default: 1")
    private @Nullable Double stepGrams;

    @Option(
            names = "--measuring-error",
            paramLabel = "PERCENT",
            description = "how far one spoon, drop or tablet is off; default: spoons and drops 10%%, others 5%%")
    private @Nullable String measuring;

    /** A wrong option, in a sentence. */
    static final class WrongOptionException extends Exception {
        private static final long serialVersionUID = 1L;

        WrongOptionException(String message) {
            super(message);
        }
    }

    /** The published spread with what was stated. */
    Spread read(Nutrients nutrients) throws WrongOptionException {
        Spread spread = Spread.load();
        for (String given : foods) {
            spread = foods(spread, given, nutrients);
        }
        if (supplements != null) {
            spread = spread.withSupplements(share("--supplement-spread", supplements));
        }
        Double step = stepGrams;
        if (step != null && !(step >= 0 && step <= 100)) {
            throw new WrongOptionException("--scale-step is from 0 to 100 grams; read " + Show.number(step));
        }
        spread = spread.withScale(
                weighing == null ? spread.scale() : share("--weighing-error", weighing),
                step == null ? spread.scaleStepGrams() : step);
        return measuring == null ? spread : spread.withMeasures(share("--measuring-error", measuring));
    }

    /** What was stated, as it was typed. */
    List<String> stated() {
        List<String> stated = new ArrayList<>();
        foods.forEach(each -> stated.add("--spread " + each));
        note(stated, "--supplement-spread", supplements);
        note(stated, "--weighing-error", weighing);
        note(stated, "--scale-step", stepGrams);
        note(stated, "--measuring-error", measuring);
        return stated;
    }

    private static void note(List<String> stated, String option, @Nullable Object given) {
        if (given != null) {
            stated.add(option + " " + given);
        }
    }

    private static Spread foods(Spread spread, String given, Nutrients nutrients) throws WrongOptionException {
        int sign = given.indexOf('=');
        if (sign < 1) {
            throw new WrongOptionException(
                    "--spread is a nutrient and a percentage, such as zinc=20%; read \"" + given + "\"");
        }
        String name = given.substring(0, sign).strip();
        double share = share("--spread " + name, given.substring(sign + 1));
        if (name.equalsIgnoreCase(ALL)) {
            return spread.withFoods(share);
        }
        List<String> names = new ArrayList<>(List.of(ALL));
        for (Nutrient nutrient : nutrients.all()) {
            if (name.equalsIgnoreCase(nutrient.key()) || name.equalsIgnoreCase(nutrient.label())) {
                return spread.withNutrient(nutrient, share);
            }
            names.add(nutrient.key());
        }
        throw new WrongOptionException(
                "--spread: no nutrient is called \"" + name + "\"" + Nearest.advice(name, names, 3));
    }

    private static double share(String option, String given) throws WrongOptionException {
        OptionalDouble share = Percent.share(given);
        if (share.isPresent() && share.getAsDouble() >= 0 && share.getAsDouble() <= 1) {
            return share.getAsDouble();
        }
        throw new WrongOptionException(option + EXPECTED + given.strip() + "\"");
    }
}
