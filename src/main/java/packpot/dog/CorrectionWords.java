package packpot.dog;

import java.util.Locale;
import packpot.units.Show;
import packpot.units.Unit;
import packpot.units.UnitSystem;

/** A trend of weigh-ins, and what it does to an energy target, in words. */
public final class CorrectionWords {
    private static final double POUND_KG = Unit.POUND.inBaseUnit() / 1000;

    private CorrectionWords() {}

    /** For example "was weighed 5 times in 28 days and gained 0.08 kg a week (standard error 0.03)". */
    public static String trend(Trend trend, UnitSystem units) {
        boolean metric = units == UnitSystem.METRIC;
        double unit = metric ? 1 : 1 / POUND_KG;
        return String.format(
                Locale.ROOT,
                "was weighed %d times in %d days and %s %.2f %s a week (standard error %.2f)",
                trend.weighIns(),
                trend.days(),
                trend.kgPerWeek() < 0 ? "lost" : "gained",
                Math.abs(trend.kgPerWeek()) * unit,
                metric ? "kg" : "lb",
                trend.standardErrorKgPerWeek() * unit);
    }

    /** The whole reckoning in one sentence. */
    public static String of(EnergyCorrection correction, UnitSystem units) {
        return trend(correction.trend(), units)
                + String.format(
                        Locale.ROOT,
                        "; on the %,.0f kcal a day that it ate, it should get %,.0f, give or take %,.0f: ",
                        correction.fedKcalPerDay(),
                        correction.foundKcalPerDay(),
                        correction.uncertaintyKcalPerDay())
                + (correction.factor() == 1
                        ? "that bears the equation out, and nothing is changed"
                        : "its energy target is taken times "
                                + Show.number(Math.round(correction.factor() * 1000) / 1000.0)
                                + ", a tenth being the most that is changed at once");
    }
}
