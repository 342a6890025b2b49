package packpot.dog;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The growth path that weigh-ins speak for, by least squares on the logarithm of weight. With an expected adult weight
 * the tempo is fitted; without one the adult weight, with the tempo that is published for it.
 *
 * @param adultKg where the path tends to
 * @param leastAdultKg the least adult weight that fits within two standard errors
 * @param mostAdultKg the greatest
 * @param tempoDays tempo b of {@link Growth}
 * @param ownTempo whether the weigh-ins changed the published tempo
 * @param residualShare standard deviation of the weigh-ins about the path, as a share of weight
 * @param weighIns how many
 */
public record GrowthFit(
        double adultKg,
        double leastAdultKg,
        double mostAdultKg,
        double tempoDays,
        boolean ownTempo,
        double residualShare,
        int weighIns) {
    private static final double STEP = 1.01;
    private static final double MOST_ADULT_KG = 150;
    private static final double MOST_TIMES_LATEST = 12;

    /** A path through weigh-ins; none when there are too few of them, over too short a time, or they tell too little. */
    public static Optional<GrowthFit> of(
            List<WeighIn> weighIns, @Nullable Double adultKg, Growth growth, WeightFigures figures) {
        if (!Trend.enough(weighIns, figures)) {
            return Optional.empty();
        }
        return adultKg == null ? adult(weighIns, growth, figures) : tempo(weighIns, adultKg, growth, figures);
    }

    private static Optional<GrowthFit> tempo(
            List<WeighIn> weighIns, double adultKg, Growth growth, WeightFigures figures) {
        if (greatest(weighIns) >= adultKg) {
            return Optional.empty();
        }
        double published = growth.curve(adultKg).tempoDays();
        double most = figures.number("tempo", "mostFactor");
        double best = published;
        double bestSquares = squares(weighIns, adultKg, published);
        double publishedSquares = bestSquares;
        for (double tempo = published / most; tempo <= published * most; tempo *= STEP) {
            double squares = squares(weighIns, adultKg, tempo);
            if (squares < bestSquares) {
                best = tempo;
                bestSquares = squares;
            }
        }
        boolean own = publishedSquares > bestSquares + doubt(bestSquares, weighIns.size(), figures);
        double residual = own ? bestSquares : publishedSquares;
        return Optional.of(new GrowthFit(
                adultKg,
                adultKg,
                adultKg,
                own ? best : published,
                own,
                deviation(residual, weighIns.size()),
                weighIns.size()));
    }

    private static Optional<GrowthFit> adult(List<WeighIn> weighIns, Growth growth, WeightFigures figures) {
        double from = greatest(weighIns) * STEP;
        double to = Math.min(MOST_ADULT_KG, from * MOST_TIMES_LATEST);
        double best = from;
        double bestSquares = Double.POSITIVE_INFINITY;
        for (double adult = from; adult <= to; adult *= STEP) {
            double squares = squares(weighIns, adult, growth.curve(adult).tempoDays());
            if (squares < bestSquares) {
                best = adult;
                bestSquares = squares;
            }
        }
        if (best * STEP > to) {
            return Optional.empty();
        }
        double bound = bestSquares + doubt(bestSquares, weighIns.size(), figures);
        double least = best;
        double most = best;
        for (double adult = from; adult <= to; adult *= STEP) {
            if (squares(weighIns, adult, growth.curve(adult).tempoDays()) <= bound) {
                least = Math.min(least, adult);
                most = Math.max(most, adult);
            }
        }
        return Optional.of(new GrowthFit(
                best,
                least,
                most,
                growth.curve(best).tempoDays(),
                false,
                deviation(bestSquares, weighIns.size()),
                weighIns.size()));
    }

    private static double greatest(List<WeighIn> weighIns) {
        return weighIns.stream().mapToDouble(WeighIn::kg).max().orElseThrow();
    }

    /** Sum of squares about the best path with this adult weight and tempo: ln(A / W) = u exp(-t / b), u fitted. */
    private static double squares(List<WeighIn> weighIns, double adultKg, double tempoDays) {
        int first = weighIns.get(0).day();
        double xy = 0;
        double xx = 0;
        for (WeighIn each : weighIns) {
            double x = Math.exp(-(each.day() - first) / tempoDays);
            xy += x * Math.log(adultKg / each.kg());
            xx += x * x;
        }
        double squares = 0;
        for (WeighIn each : weighIns) {
            double path = xy / xx * Math.exp(-(each.day() - first) / tempoDays);
            double off = Math.log(adultKg / each.kg()) - path;
            squares += off * off;
        }
        return squares;
    }

    private static double doubt(double squares, int count, WeightFigures figures) {
        double errors = figures.number("trend", "standardErrors");
        double scatter = Math.max(deviation(squares, count), figures.number("stable", "share"));
        return errors * errors * scatter * scatter;
    }

    private static double deviation(double squares, int count) {
        return Math.sqrt(squares / Math.max(1, count - 2));
    }
}
