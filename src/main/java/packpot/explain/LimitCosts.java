package packpot.explain;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import packpot.explain.CostDrivers.LimitCost;
import packpot.explain.CostDrivers.Margin;
import packpot.explain.CostDrivers.Replanned;
import packpot.household.Wish;
import packpot.ration.Lever;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearSolution;
import packpot.solver.LinearSolver;
import packpot.solver.Parametric;
import packpot.solver.Solution;

/** What the limits of a solved plan cost: at the margin with every choice kept, and planned anew with one loosened. */
final class LimitCosts {
    /** Within this a price counts as exact, and a rate as the same. */
    static final double EXACT = 0.01;

    private static final double NO_PRICE = 1e-9;
    private static final double FIRST_MOVE = 0.01;
    private static final double MOST_STEPS = 10;
    /** A range shorter than this, as a share of a step, is a break and not a range. */
    private static final double LEAST_MOVE = 1e-3;

    private static final double GAP = 2e-4;
    private static final double SECONDS_EACH = 5;

    private final SolvedPlan base;
    private final LinearSolver linear;
    private final TimeBudget time;

    LimitCosts(SolvedPlan base, LinearSolver linear, TimeBudget time) {
        this.base = base;
        this.linear = linear;
        this.time = time;
    }

    /** The limits that hold the plan, with their price at the margin where they have one. */
    List<LimitCost> atTheMargin() {
        List<Row<Wish>> rows = base.model().linearModel().rows();
        LinearModel<Wish> fixed =
                base.variant().withIntegersFixed(base.solution()::value).model();
        LinearSolution prices = linear.solveLinear(fixed, SECONDS_EACH);
        if (!prices.isOptimal()) {
            // The rounding of whole numbers can leave no room by a hair; then there is nothing to say at the margin.
            return List.of();
        }
        IdentityHashMap<Row<Wish>, Double> duals = new IdentityHashMap<>();
        for (int i = 0; i < rows.size(); i++) {
            duals.put(rows.get(i), prices.duals().get(i));
        }
        double[] values = base.solution().values().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        List<LimitCost> costs = new ArrayList<>();
        for (Lever lever : base.model().levers()) {
            if (countsChoices(lever.row())) {
                if (atLimit(lever.row(), values)) {
                    costs.add(cost(lever, null));
                }
            } else if (Math.abs(duals.getOrDefault(lever.row(), 0.0)) > NO_PRICE) {
                margin(lever).ifPresent(margin -> costs.add(cost(lever, margin)));
            }
        }
        return costs;
    }

    private static LimitCost cost(Lever lever, @Nullable Margin margin) {
        return new LimitCost(lever.wish(), lever.figure(), lever.unit(), lever.step(), margin, null);
    }

    /** Whether a row of whole numbers stands at its limit. */
    private static boolean atLimit(Row<Wish> row, double[] values) {
        double value = row.expression().value(values);
        return Math.min(row.upper() - value, value - row.lower()) < 0.5;
    }

    private static boolean countsChoices(Row<Wish> row) {
        boolean[] whole = {true};
        row.expression().forEach((v, c) -> whole[0] &= v.integer());
        return whole[0];
    }

    private Optional<Margin> margin(Lever lever) {
        Parametric<Wish> family = new Parametric<>(
                linear,
                figure -> lever.moved(base.variant().withIntegersFixed(base.solution()::value), figure)
                        .model(),
                EXACT);
        Optional<Parametric.Point> here = family.at(lever.figure());
        // A little way into the loosened side, where the price is that of loosening even if the optimum has a break
        // here.
        Optional<Parametric.Point> beside = family.at(lever.figure() + FIRST_MOVE * lever.step());
        Optional<Parametric.Point> there = family.at(lever.figure() + lever.step());
        if (here.isEmpty() || beside.isEmpty() || there.isEmpty()) {
            return Optional.empty();
        }
        double rate = beside.get().rate();
        if (Math.abs(rate * lever.step()) < NO_PRICE) {
            return Optional.empty();
        }
        double reach = MOST_STEPS * lever.step();
        double loosened = family.end(here.get(), rate, lever.step(), lever.figure() + reach);
        double tightened = family.end(here.get(), rate, -lever.step(), lever.figure() - reach);
        boolean room = Math.abs(loosened - lever.figure()) > LEAST_MOVE * Math.abs(lever.step());
        double move = room && Math.abs(loosened - lever.figure()) < Math.abs(lever.step())
                ? loosened - lever.figure()
                : lever.step();
        Optional<Parametric.Point> tried = family.at(lever.figure() + move);
        double says = -rate * move;
        double gives = here.get().value() - tried.orElse(there.get()).value();
        return Optional.of(new Margin(
                rate,
                Math.min(loosened, tightened),
                Math.max(loosened, tightened),
                lever.figure() + move,
                says,
                gives,
                tried.isPresent() && Math.abs(says - gives) <= EXACT * Math.abs(says),
                here.get().value() - there.get().value()));
    }

    /** The same limit with a new plan for one step of loosening. */
    LimitCost replanned(LimitCost cost) {
        if (time.isSpent()) {
            return cost;
        }
        Lever lever = base.model().levers().stream()
                .filter(each -> each.wish().equals(cost.wish()) && each.unit().equals(cost.unit()))
                .findFirst()
                .orElseThrow();
        // Where additions themselves are limited, keeping them would leave nothing to loosen.
        boolean sameBowls =
                lever.wish().kind() != Wish.Kind.ADDITIONS && lever.wish().kind() != Wish.Kind.INGREDIENTS;
        double figure = lever.figure() + lever.step();
        Solution plan = base.solve(
                lever.moved(sameBowls ? base.sameBowls() : base.variant(), figure)
                        .model(),
                time.limits(SECONDS_EACH, GAP));
        if (!plan.hasValues()) {
            return cost;
        }
        return new LimitCost(
                cost.wish(),
                cost.figure(),
                cost.unit(),
                cost.step(),
                cost.atTheMargin(),
                new Replanned(
                        figure,
                        Math.max(0, base.cost() - plan.objective()),
                        Math.max(0, base.cost() - plan.bound()),
                        sameBowls));
    }
}
