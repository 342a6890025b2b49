package packpot.dog;

import java.util.ArrayList;
import java.util.List;
import packpot.data.ModelFiles;
import packpot.data.Row;

/**
 * How puppies grow: the Gompertz curve, {@code W = A exp(-exp(-(t - c) / b))}, with adult weight A, age t, tempo b and
 * age of fastest growth c (models/growth_curves.csv; the form after HELMINK2000 and HAWTHORNE2004).
 *
 * <p>A puppy is seldom on the curve of its size. From today's weight on it is led by the same equation written for the
 * weight alone, {@code dW/dt = W ln(A / W) / b}: whatever its weight today, it grows from there, never shrinks, never
 * passes A, and one that is behind catches up late.
 */
public final class Growth {

    /**
     * The curve for one adult weight.
     *
     * @param tempoDays b: in so many days the logarithm of what is missing falls to 1/e of it
     * @param inflectionDays c: age of the fastest growth, at 37 % of adult weight
     */
    public record Curve(double tempoDays, double inflectionDays) {

        /** Share of adult weight that the curve gives for an age. */
        public double share(double ageDays) {
            return Math.exp(-Math.exp(-(ageDays - inflectionDays) / tempoDays));
        }
    }

    private record Node(double logAdultKg, Curve curve) {}

    private final List<Node> nodes;

    private Growth(List<Node> nodes) {
        this.nodes = List.copyOf(nodes);
    }

    public static Growth load() {
        List<Node> nodes = new ArrayList<>();
        for (Row row : ModelFiles.table("growth_curves.csv")) {
            nodes.add(new Node(
                    Math.log(row.number("adult_kg")),
                    new Curve(row.number("tempo_days"), row.number("inflection_days"))));
        }
        return new Growth(nodes);
    }

    /** The curve for an adult weight; between two sizes of the table in a straight line over the logarithm of weight. */
    public Curve curve(double adultKg) {
        double at = Math.log(adultKg);
        Node below = nodes.get(0);
        for (Node above : nodes) {
            if (above.logAdultKg > at) {
                return between(below, above, at);
            }
            below = above;
        }
        return below.curve;
    }

    private static Curve between(Node below, Node above, double at) {
        double width = above.logAdultKg - below.logAdultKg;
        double part = width > 0 ? Math.max(0, (at - below.logAdultKg) / width) : 0;
        return new Curve(
                below.curve.tempoDays + part * (above.curve.tempoDays - below.curve.tempoDays),
                below.curve.inflectionDays + part * (above.curve.inflectionDays - below.curve.inflectionDays));
    }

    /**
     * Weight in kg some days after a dog had a weight: {@code A exp(-ln(A / W) exp(-days / b))}.
     *
     * @param days not below zero
     */
    public static double weightAfter(double kg, double adultKg, double tempoDays, double days) {
        return kg >= adultKg ? kg : adultKg * Math.exp(-Math.log(adultKg / kg) * Math.exp(-days / tempoDays));
    }
}
