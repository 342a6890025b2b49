package packpot.dog;

import java.util.List;
import java.util.Optional;

/**
 * The straight line through a dog's weigh-ins of the last weeks, by least squares.
 *
 * @param kgPerWeek slope
 * @param standardErrorKgPerWeek of the slope; single weighings are taken to scatter by 1 % of weight at least, so that a
 *     few points that happen to lie on a line do not look certain
 * @param meanKg mean weight
 * @param weighIns how many
 * @param days from the first of them to the last
 */
public record Trend(double kgPerWeek, double standardErrorKgPerWeek, double meanKg, int weighIns, int days) {

    /** Whether there are weigh-ins enough for a trend, over a time that is long enough. */
    static boolean enough(List<WeighIn> weighIns, WeightFigures figures) {
        return weighIns.size() >= figures.number("trend", "leastWeighIns")
                && weighIns.get(weighIns.size() - 1).day() - weighIns.get(0).day()
                        >= figures.number("trend", "leastDays");
    }

    /** The trend of the last weeks; none when the weigh-ins are too few, too near to each other, or too old. */
    public static Optional<Trend> of(List<WeighIn> all, WeightFigures figures) {
        List<WeighIn> weighIns = all.stream()
                .filter(each -> each.day() >= -figures.number("trend", "windowDays"))
                .toList();
        if (!enough(weighIns, figures)
                || weighIns.get(weighIns.size() - 1).day() < -figures.number("trend", "latestDays")) {
            return Optional.empty();
        }
        int count = weighIns.size();
        double meanDay = weighIns.stream().mapToDouble(WeighIn::day).average().orElseThrow();
        double meanKg = weighIns.stream().mapToDouble(WeighIn::kg).average().orElseThrow();
        double xx = 0;
        double xy = 0;
        for (WeighIn each : weighIns) {
            xx += (each.day() - meanDay) * (each.day() - meanDay);
            xy += (each.day() - meanDay) * (each.kg() - meanKg);
        }
        double perDay = xy / xx;
        double squares = 0;
        for (WeighIn each : weighIns) {
            double off = each.kg() - meanKg - perDay * (each.day() - meanDay);
            squares += off * off;
        }
        double scatter =
                Math.max(Math.sqrt(squares / Math.max(1, count - 2)), figures.number("stable", "share") * meanKg);
        return Optional.of(new Trend(
                7 * perDay,
                7 * scatter / Math.sqrt(xx),
                meanKg,
                count,
                weighIns.get(count - 1).day() - weighIns.get(0).day()));
    }
}
