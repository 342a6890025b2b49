package packpot.dog;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import packpot.words.Amount;
import packpot.words.Sentence;

/**
 * What a dog's weigh-ins and what it ate do to the energy target of its equation.
 *
 * <p>What it ate and what it gained or lost tell what it burns, and with the rate that is wished for they tell what it
 * should get: {@code fed + (wished - trend) x 7920 / 7} kcal a day, rates in kg a week (energy of body fat: HAND2010). Its
 * uncertainty is that of the trend (two standard errors), of the energy of a kg and of what was fed, added as squares.
 * A difference from the equation that is smaller than this uncertainty changes nothing; a larger one changes the target
 * by a tenth at most.
 *
 * @param stage the life stage that it was found in; in another it says nothing
 * @param factor on the target of the equation; 1 when nothing is changed
 * @param foundKcalPerDay what the weigh-ins speak for
 * @param uncertaintyKcalPerDay of that
 * @param fedKcalPerDay what the dog ate
 * @param wishedKgPerWeek change of weight that is wished for
 * @param source keys of models/SOURCES.md
 */
public record EnergyCorrection(
        LifeStage stage,
        double factor,
        double foundKcalPerDay,
        double uncertaintyKcalPerDay,
        double fedKcalPerDay,
        double wishedKgPerWeek,
        Trend trend,
        String source) {

    /**
     * The correction for a dog; none without a trend, without what it was fed, while its body builds another or grows,
     * and where a veterinarian has set the figure.
     *
     * @param need by the equation alone
     */
    public static Optional<EnergyCorrection> of(Dog dog, EnergyNeed need, WeightFigures figures) {
        Double fed = dog.course().fedKcalPerDay();
        Optional<Trend> trend = Trend.of(dog.course().weighIns(), figures);
        if (fed == null || trend.isEmpty() || need.stage().builds() || dog.vetKcalPerDay() != null) {
            return Optional.empty();
        }
        double wished = wishedKgPerWeek(dog, need.stage(), figures);
        double perRate = figures.number("energyOfChange", "kcalPerKg") / 7;
        double change = wished - trend.get().kgPerWeek();
        double found = fed + change * perRate;
        double uncertainty = Math.sqrt(
                square(figures.number("trend", "standardErrors") * trend.get().standardErrorKgPerWeek() * perRate)
                        + square(figures.number("energyOfChange", "uncertainShare") * change * perRate)
                        + square(figures.number("fed", "uncertainShare") * fed));
        double most = figures.number("correction", "mostShare");
        boolean told = Math.abs(found - need.kcalPerDay()) > uncertainty;
        double factor = told ? Math.max(1 - most, Math.min(1 + most, found / need.kcalPerDay())) : 1;
        return Optional.of(new EnergyCorrection(
                need.stage(), factor, found, uncertainty, fed, wished, trend.get(), figures.source("energyOfChange")));
    }

    private static double wishedKgPerWeek(Dog dog, LifeStage stage, WeightFigures figures) {
        if (stage == LifeStage.ADULT) {
            return 0;
        }
        boolean loss = stage == LifeStage.WEIGHT_LOSS;
        @Nullable Double share = dog.course().weeklyShare();
        double rate = share == null ? figures.usualSharePerWeek(loss) : share;
        return (loss ? -rate : rate) * dog.weightKg();
    }

    private static double square(double value) {
        return value * value;
    }

    /** The need with the correction in it. */
    EnergyNeed applied(EnergyNeed need) {
        if (need.stage() != stage || factor == 1) {
            return need;
        }
        return new EnergyNeed(
                need.stage(),
                need.kcalPerDay() * factor,
                Sentence.of(
                        "energy.byWeighIns", need.equation(), new Amount(String.format(Locale.ROOT, "%.2f", factor))),
                need.found().equals("memory") ? "memory" : "computed",
                need.source() + " " + source);
    }
}
