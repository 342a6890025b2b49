package packpot.sheets;

import packpot.units.Show;
import packpot.units.UnitSystem;
import packpot.words.Texts;

/** Figures with their units, as a household reads them: in its language, its measures and its money. */
public record Wording(Texts texts, UnitSystem units, String currency) {
    private static final String NO_BREAK = "\u00a0";

    public String grams(double grams) {
        return texts.amount(Show.grams(grams)).replace(" ", NO_BREAK);
    }

    /** Pounds and ounces, or kilograms. */
    public String weight(double grams) {
        return texts.amount(Show.weight(grams, units));
    }

    public String bodyWeight(double kilograms) {
        return texts.amount(Show.bodyWeight(kilograms, units));
    }

    public String volume(double millilitres) {
        return texts.amount(Show.volume(millilitres, units));
    }

    public String scoop(double millilitres) {
        return texts.amount(Show.scoop(millilitres, units));
    }

    public String money(double amount) {
        return texts.money(amount, currency);
    }

    /** Whole kcal. */
    public String kcal(double kcal) {
        return texts.say("kcal", texts.number(kcal, 0));
    }

    public String celsius(double celsius) {
        String degrees = Math.round(celsius) + NO_BREAK + "°C";
        return units == UnitSystem.METRIC
                ? degrees
                : Math.round(celsius * 9 / 5 + 32) + NO_BREAK + "°F (" + degrees + ")";
    }
}
