package packpot.dog;

import java.util.Locale;
import packpot.units.Show;
import packpot.units.Unit;
import packpot.units.UnitSystem;
import packpot.words.Amount;
import packpot.words.Sentence;

/** A trend of weigh-ins, and what it does to an energy target, in words. */
public final class CorrectionWords {
    private static final double POUND_KG = Unit.POUND.inBaseUnit() / 1000;

    private CorrectionWords() {}

    /** For example "was weighed 5 times in 28 days and gained 0.08 kg a week (standard error 0.03)". */
    public static Sentence trend(Trend trend, UnitSystem units) {
        boolean metric = units == UnitSystem.METRIC;
        double unit = metric ? 1 : 1 / POUND_KG;
        return Sentence.of(
                trend.kgPerWeek() < 0 ? "trend.lost" : "trend.gained",
                trend.weighIns(),
                trend.days(),
                amount("%.2f " + (metric ? "kg" : "lb"), Math.abs(trend.kgPerWeek()) * unit),
                amount("%.2f", trend.standardErrorKgPerWeek() * unit));
    }

    /** The whole reckoning in one sentence. */
    public static Sentence of(EnergyCorrection correction, UnitSystem units) {
        return Sentence.of(
                "trend.energy",
                trend(correction.trend(), units),
                amount("%,.0f", correction.fedKcalPerDay()),
                amount("%,.0f", correction.foundKcalPerDay()),
                amount("%,.0f", correction.uncertaintyKcalPerDay()),
                correction.factor() == 1
                        ? Sentence.of("trend.unchanged")
                        : Sentence.of(
                                "trend.changed",
                                new Amount(Show.number(Math.round(correction.factor() * 1000) / 1000.0))));
    }

    private static Amount amount(String form, double figure) {
        return new Amount(String.format(Locale.ROOT, form, figure));
    }
}
