package packpot.solver;

import java.util.Optional;

/**
 * How the optimum of a linear model moves with one figure of it. In a side or a cost the optimum is a line with breaks;
 * where a coefficient moves it is a curve, which is taken for a line as long as its rate stays within the tolerance.
 *
 * @param <T> the tag of rows
 */
public final class Parametric<T> {
    private static final double SECONDS = 10;
    private static final int MOST_STEPS = 40;
    private static final double STEP_GROWTH = 3;
    private static final double SAME_FIGURE = 1e-4;

    /** The model at a value of the figure; costs, sides or coefficients are linear in it. */
    public interface Family<T> {
        LinearModel<T> at(double figure);
    }

    /**
     * The optimum at one value of the figure.
     *
     * @param rate by how much it begins to rise when the figure rises by one
     */
    public record Point(double figure, double value, double rate, LinearSolution solution) {
        private double tangent(double other) {
            return value + rate * (other - figure);
        }
    }

    private final LinearSolver solver;
    private final Family<T> family;
    private final double tolerance;

    /**
     * A way to look at one figure.
     *
     * @param tolerance by how much a rate may move and still count as the same, as a share
     */
    public Parametric(LinearSolver solver, Family<T> family, double tolerance) {
        this.solver = solver;
        this.family = family;
        this.tolerance = tolerance;
    }

    /** The optimum at a value of the figure; nothing where there is none. */
    public Optional<Point> at(double figure) {
        LinearModel<T> model = family.at(figure);
        LinearSolution solution = solver.solveLinear(model, SECONDS);
        if (!solution.isOptimal()) {
            return Optional.empty();
        }
        // Exact for any step, since the model is linear in the figure while values and prices stand.
        double step = Math.max(1e-3, Math.abs(figure) * 1e-3);
        double rate = (solution.firstOrder(family.at(figure + step)) - solution.firstOrder(model)) / step;
        return Optional.of(new Point(figure, solution.objective(), rate, solution));
    }

    /**
     * How far the figure can go before the rate changes.
     *
     * @param from where the rate was taken
     * @param rate that is to hold
     * @param step first step to try; its sign is the direction
     * @param most how far to look
     * @return the last figure at which the optimum still lies on the line; {@code most} when it holds as far
     */
    public double end(Point from, double rate, double step, double most) {
        Point start = new Point(from.figure(), from.value(), rate, from.solution());
        double inside = start.figure();
        double reach = step;
        for (int i = 0; i < MOST_STEPS; i++) {
            double next = start.figure() + reach;
            boolean last = reach > 0 ? next >= most : next <= most;
            next = last ? most : next;
            Optional<Point> there = at(next);
            if (there.isEmpty() || !onLine(start, there.get())) {
                return between(start, inside, next, there);
            }
            if (last) {
                return most;
            }
            inside = next;
            reach *= STEP_GROWTH;
        }
        return inside;
    }

    /** Where between two figures the line is left: the tangents' meeting point where it is the break, else by halving. */
    private double between(Point start, double firstInside, double firstOutside, Optional<Point> there) {
        double inside = firstInside;
        double outside = firstOutside;
        Optional<Point> beyond = there;
        double size = Math.max(Math.abs(outside - start.figure()), 1e-9);
        for (int i = 0; i < MOST_STEPS && Math.abs(outside - inside) > SAME_FIGURE * size; i++) {
            double next = (inside + outside) / 2;
            if (beyond.isPresent() && beyond.get().rate() != start.rate()) {
                Point out = beyond.get();
                double meet = start.figure()
                        + (out.value() - out.rate() * (out.figure() - start.figure()) - start.value())
                                / (start.rate() - out.rate());
                if (strictlyBetween(meet, inside, outside)) {
                    next = meet;
                }
            }
            Optional<Point> point = at(next);
            if (point.isPresent() && onLine(start, point.get())) {
                if (beyond.isPresent()
                        && Math.abs(beyond.get().tangent(next) - point.get().value())
                                <= tolerance * Math.abs(start.rate() * (next - start.figure()))) {
                    return next;
                }
                inside = next;
            } else {
                outside = next;
                beyond = point;
            }
        }
        return inside;
    }

    private static boolean strictlyBetween(double value, double a, double b) {
        double slack = 1e-9 * Math.abs(a - b);
        return value > Math.min(a, b) + slack && value < Math.max(a, b) - slack;
    }

    private boolean onLine(Point start, Point point) {
        double moved = Math.abs(start.rate() * (point.figure() - start.figure()));
        double tiny = 1e-9 * Math.max(1, Math.abs(start.value()));
        return Math.abs(point.value() - start.tangent(point.figure())) <= Math.max(tiny, tolerance * moved);
    }
}
