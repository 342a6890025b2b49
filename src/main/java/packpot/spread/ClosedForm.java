package packpot.spread;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * What a dog gets against one minimum, by the formula for a sum of independent normals:
 *
 * <pre>  sum over foods f of (p[f] + a[f])^2 Var S[f] + (p[f] w[f] E S[f])^2 + sum over doses (g d E S[f])^2  + (P sum p[f] E S[f])^2</pre>
 *
 * where S is what a gram brings toward the minimum, p and a the grams a day from pot and bowl, and w, d, P the spreads of
 * weighing, dosing and portioning. What two errors do together is left out: a hundredth of a hundredth.
 *
 * @param mean as a share of the minimum
 * @param spread standard deviation, as a share of the minimum
 */
record ClosedForm(double mean, double spread) {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    static ClosedForm of(Intakes intakes, Intakes.Eater eater, Intakes.Demand demand) {
        double mean = 0;
        double fromPot = 0;
        double variance = 0;
        for (int f = 0; f < intakes.sources().size(); f++) {
            Intakes.Source source = intakes.sources().get(f);
            double brings = 0;
            double off = 0;
            for (int i = 0; i < intakes.constituents(); i++) {
                double figure = demand.weights().at(i) * source.perGram().at(i);
                brings += figure;
                off += square(figure * source.spread().at(i));
            }
            double potGrams = eater.potShare() * source.potGrams();
            double grams = potGrams;
            for (Intakes.Dose dose : eater.doses()) {
                if (dose.source() == f) {
                    grams += dose.gramsPerDay();
                    variance += square(dose.gramsPerDay() * dose.spread() * brings);
                }
            }
            mean += grams * brings;
            fromPot += potGrams * brings;
            variance += square(grams) * off + square(potGrams * source.potSpread() * brings);
        }
        variance += square(eater.portionSpread() * fromPot);
        double minimum = demand.least() > 0 ? demand.least() : denominator(intakes, eater, demand);
        return new ClosedForm((mean - demand.least()) / minimum + 1, Math.sqrt(variance) / minimum);
    }

    /** Of a ratio: its denominator times its minimum, which the numerator is to reach. */
    private static double denominator(Intakes intakes, Intakes.Eater eater, Intakes.Demand demand) {
        Figures means = intakes.means(eater);
        double below = 0;
        for (int i = 0; i < intakes.constituents(); i++) {
            below -= Math.min(0, demand.weights().at(i)) * means.at(i);
        }
        return below;
    }

    /** How likely it is that the minimum is reached. */
    double likelihood() {
        return spread == 0 ? (mean >= 1 - Draws.CLOSE ? 1 : 0) : NORMAL.cumulativeProbability((mean - 1) / spread);
    }

    /**
     * Margin above the minimum, as a share, at which it is reached with a likelihood of a half or more if more of the same brings it:
     * the spread grows with the mean. Infinite where no amount is enough.
     */
    double marginFor(double likelihood) {
        double standardScore = NORMAL.inverseCumulativeProbability(likelihood);
        double left = 1 - standardScore * spread / mean;
        return left > 0 ? 1 / left - 1 : Double.POSITIVE_INFINITY;
    }

    private static double square(double value) {
        return value * value;
    }
}
