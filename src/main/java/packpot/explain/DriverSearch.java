package packpot.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import packpot.explain.CostDrivers.EntryPrice;
import packpot.explain.CostDrivers.LimitCost;
import packpot.explain.CostDrivers.PriceRange;
import packpot.explain.CostDrivers.Priced;
import packpot.explain.CostDrivers.Result;
import packpot.explain.CostDrivers.Turn;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.solver.LinearSolver;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/** Finds what drives the cost of a household's plan, on all cores. */
public final class DriverSearch {
    /** Money a week below which a limit is counted and not listed. */
    private static final double WORTH_TELLING_A_WEEK = 0.01;

    private final Knowledge knowledge;
    private final Solver solver;
    private final LinearSolver linear;

    public DriverSearch(Knowledge knowledge, Solver solver, LinearSolver linear) {
        this.knowledge = knowledge;
        this.solver = solver;
        this.linear = linear;
    }

    /**
     * Plans the household and looks around its plan.
     *
     * @param limits of the first plan
     * @param seconds wall time for all of it; what does not fit into it is marked in the result
     */
    public Result find(Household household, SolveLimits limits, double seconds) {
        TimeBudget time = new TimeBudget(seconds);
        SolvedPlan.Outcome outcome = SolvedPlan.of(household, knowledge, solver, limits);
        if (outcome instanceof SolvedPlan.Outcome.None none) {
            return new Result.NoBase(none.none());
        }
        return new Result.Driven(around(((SolvedPlan.Outcome.Solved) outcome).plan(), time));
    }

    private CostDrivers around(SolvedPlan base, TimeBudget time) {
        LimitCosts costs = new LimitCosts(base, linear, time);
        PriceTurns turns = new PriceTurns(base, time);
        Set<PantryItem> inPot = base.foods(base.solution());
        List<PantryItem> bought = inPot.stream()
                .filter(item -> !base.model().costOf(item).isEmpty())
                .toList();
        List<PantryItem> leftOut = base.foodChoices().keySet().stream()
                .filter(item ->
                        !inPot.contains(item) && !base.model().costOf(item).isEmpty())
                .toList();
        // What tells most comes first: what comes last may not fit into the time.
        List<LimitCost> limits = new ArrayList<>(Parallel.map(costs.atTheMargin(), costs::replanned, count -> {}));
        List<Turn> entries = Parallel.map(leftOut, turns::entry, count -> {});
        List<Turn> ups = Parallel.map(bought, turns::up, count -> {});
        List<Turn> downs = Parallel.map(bought, turns::down, count -> {});

        double worthTelling = WORTH_TELLING_A_WEEK * base.household().kitchen().days() / 7;
        int before = limits.size();
        limits.removeIf(limit -> limit.saves() < worthTelling);
        limits.sort(Comparator.comparingDouble(LimitCost::saves).reversed());
        List<PriceRange> ranges = new ArrayList<>();
        for (int i = 0; i < bought.size(); i++) {
            ranges.add(new PriceRange(priced(bought.get(i)), downs.get(i), ups.get(i)));
        }
        List<EntryPrice> entryPrices = new ArrayList<>();
        for (int i = 0; i < leftOut.size(); i++) {
            entryPrices.add(new EntryPrice(priced(leftOut.get(i)), entries.get(i)));
        }
        return new CostDrivers(base.planned(), limits, before - limits.size(), ranges, entryPrices);
    }

    private static Priced priced(PantryItem item) {
        return new Priced(
                item.food().id(), item.food().label(), item.isLoose() ? null : item.packName(), PriceTurns.price(item));
    }
}
