package packpot.solver;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;

/**
 * Solves linear models of two variables as one does on paper: the optimum lies where two limits meet, and each of them has a
 * price with the sign that its side allows. Shares nothing with the solvers of the program, and needs no library.
 */
final class Corners implements LinearSolver {
    private static final double CLOSE = 1e-9;

    /**
     * A limit of a row or a variable: a x + b y is at least, or at most, so much.
     *
     * @param at index of the row; of the variable after them
     */
    private record Limit(int at, double a, double b, double side, boolean least) {
        boolean holds(double x, double y) {
            double slack = CLOSE * (1 + Math.abs(side));
            double value = a * x + b * y;
            return least ? value >= side - slack : value <= side + slack;
        }

        boolean allows(double price) {
            return least ? price >= -CLOSE : price <= CLOSE;
        }
    }

    @Override
    public <T> LinearSolution solveLinear(LinearModel<T> model, double seconds) {
        List<Limit> limits = limits(model);
        Variable x = model.variables().get(0);
        Variable y = model.variables().get(1);
        double costX = model.objective().coefficient(x);
        double costY = model.objective().coefficient(y);
        for (Limit one : limits) {
            for (Limit two : limits) {
                double det = one.a * two.b - one.b * two.a;
                if (one.at >= two.at || Math.abs(det) < CLOSE) {
                    continue;
                }
                double atX = (one.side * two.b - two.side * one.b) / det;
                double atY = (one.a * two.side - two.a * one.side) / det;
                double priceOne = (costX * two.b - costY * two.a) / det;
                double priceTwo = (costY * one.a - costX * one.b) / det;
                if (limits.stream().allMatch(limit -> limit.holds(atX, atY))
                        && one.allows(priceOne)
                        && two.allows(priceTwo)) {
                    Double[] prices = new Double[model.rows().size() + 2];
                    Arrays.fill(prices, 0.0);
                    prices[one.at] = priceOne;
                    prices[two.at] = priceTwo;
                    List<Double> all = List.of(prices);
                    int rows = model.rows().size();
                    return new LinearSolution(
                            Solution.Status.OPTIMAL,
                            List.of(atX, atY),
                            costX * atX + costY * atY,
                            all.subList(0, rows),
                            all.subList(rows, rows + 2),
                            List.of(),
                            List.of());
                }
            }
        }
        return LinearSolution.without(Solution.Status.INFEASIBLE);
    }

    private static <T> List<Limit> limits(LinearModel<T> model) {
        List<Limit> limits = new ArrayList<>();
        List<Row<T>> rows = model.rows();
        for (int i = 0; i < rows.size(); i++) {
            Row<T> row = rows.get(i);
            double a = row.expression().coefficient(model.variables().get(0));
            double b = row.expression().coefficient(model.variables().get(1));
            add(limits, i, a, b, row.lower(), row.upper());
        }
        for (Variable v : model.variables()) {
            add(limits, rows.size() + v.index(), 1 - v.index(), v.index(), v.lower(), v.upper());
        }
        return limits;
    }

    private static void add(List<Limit> limits, int at, double a, double b, double lower, double upper) {
        if (!Double.isInfinite(lower)) {
            limits.add(new Limit(at, a, b, lower, true));
        }
        if (!Double.isInfinite(upper)) {
            limits.add(new Limit(at, a, b, upper, false));
        }
    }
}
