package packpot.explain;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import packpot.food.Food;
import packpot.food.Place;
import packpot.food.UnsafeFoods;
import packpot.household.Avoidance;
import packpot.household.GuessedPrices;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.needs.Needs;
import packpot.ration.RationModel;
import packpot.ration.RationPlanner;
import packpot.solver.Expression;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;
import packpot.solver.Solution;
import packpot.solver.Solver;
import packpot.solver.SolverException;

/**
 * Foods of the catalogue with which there would be a plan. Each one that a shop sells and no dog must avoid is tried
 * without whole numbers; the cheapest of those that help go on to be planned.
 */
final class FoodMends {
    /** So much more than one shown, since what helps without whole numbers may not help with them. */
    private static final int MOST_PLANNED = 7;

    private static final double ONE_SCREEN_SECONDS = 1;
    /** Money for missing a wish by the whole of it: more than any batch costs. */
    private static final double DEAR = 10_000;

    private final Household household;
    private final Knowledge knowledge;
    private final Solver solver;
    private final GuessedPrices guesses;
    private final TimeBudget time;

    FoodMends(Household household, Knowledge knowledge, Solver solver, GuessedPrices guesses, TimeBudget time) {
        this.household = household;
        this.knowledge = knowledge;
        this.solver = solver;
        this.guesses = guesses;
        this.time = time;
    }

    private record Screened(Food food, double cost) {}

    /** What is worth planning, and how many foods were tried. */
    record Screening(List<Repair.Attempt> attempts, int tried, int left) {}

    /**
     * Tries the catalogue.
     *
     * @param mayGive keys of wishes that may be loosened beside, when several clashes stand in the way
     */
    Screening screen(Collection<String> mayGive, Predicate<Set<String>> worth) {
        List<Food> foods =
                knowledge.foods().all().stream().filter(this::allowed).toList();
        List<Screened> screened = Parallel.map(foods, food -> new Screened(food, cost(food, mayGive)));
        List<Repair.Attempt> attempts = screened.stream()
                .filter(each -> Double.isFinite(each.cost()))
                .sorted(Comparator.comparingDouble(Screened::cost))
                .limit(MOST_PLANNED)
                .map(each -> attempt(each.food(), mayGive, worth))
                .toList();
        int left = (int) screened.stream()
                .filter(each -> each.cost() == Double.POSITIVE_INFINITY)
                .count();
        return new Screening(attempts, foods.size() - left, left);
    }

    private boolean allowed(Food food) {
        boolean inPantry =
                household.pantry().stream().anyMatch(item -> item.food().id().equals(food.id()));
        var supplement = food.supplement();
        boolean noMeasure = supplement != null && supplement.place() == Place.NONE;
        boolean unsafe = knowledge.unsafeFoods().inName(food.label() + " / " + food.name()).stream()
                .anyMatch(found -> found.rule() == UnsafeFoods.Rule.BLOCK);
        // What is sold ready cooked is another way to buy the raw food, and mostly dearer.
        boolean cooked = food.state().equals("cooked");
        boolean avoided = household.dogs().stream().anyMatch(dog -> Avoidance.avoids(dog, food));
        return !inPantry && !noMeasure && !unsafe && !cooked && !avoided;
    }

    private PantryItem offer(Food food) {
        var supplement = food.supplement();
        return guesses.item(
                food, knowledge.preparations().usual(food), supplement == null ? Place.POT : supplement.place());
    }

    private Household with(Food food) {
        List<PantryItem> pantry = new ArrayList<>(household.pantry());
        pantry.add(offer(food));
        return household.withPantry(pantry);
    }

    private Repair.Attempt attempt(Food food, Collection<String> mayGive, Predicate<Set<String>> worth) {
        return new Repair.Attempt(
                Mend.Kind.ADD_FOOD,
                with(food),
                List.of("add " + food.label()),
                List.of("its price is guessed as " + guesses.price(offer(food), household.currency())),
                mayGive,
                worth);
    }

    /** Cost without whole numbers; not a number when there is no plan even then, infinite when it was not tried. */
    private double cost(Food food, Collection<String> mayGive) {
        if (time.isSpent()) {
            return Double.POSITIVE_INFINITY;
        }
        Household changed = with(food);
        Needs needs = Needs.of(changed, knowledge);
        var shares = RationPlanner.sharesByNeed(needs);
        LinearModel<Wish> model = (mayGive.isEmpty()
                        ? RationModel.of(changed, knowledge, needs, shares)
                        : RationModel.withLimitsAsRows(changed, knowledge, needs, shares))
                .linearModel();
        return relaxedCost(model, solver, mayGive, household, time);
    }

    /** The least cost of a model without whole numbers; not a number when there is none. */
    static double relaxedCost(
            LinearModel<Wish> model, Solver solver, Collection<String> mayGive, Household household, TimeBudget time) {
        LinearModel<Wish> relaxed = new LinearModel<>();
        for (Variable v : model.variables()) {
            relaxed.variable(v.name(), v.lower(), v.upper());
        }
        relaxed.objective().add(1, model.objective());
        model.rows().stream()
                .filter(row -> row.tag() == null)
                .forEach(row -> relaxed.row(row.name(), row.expression(), row.lower(), row.upper(), null));
        for (Demand demand : Demand.of(model)) {
            if (mayGive.contains(demand.key()) && Loosening.possible(demand, household)) {
                Variable slack = relaxed.variable(
                        "miss of " + demand.key(),
                        0,
                        demand.kind() == Wish.Kind.NUTRIENT_MINIMUM
                                ? household.rules().margin()
                                : Double.POSITIVE_INFINITY);
                relaxed.objective().add(DEAR, slack);
                demand.rows().forEach(row -> {
                    double size = demand.wish().size();
                    if (!Double.isInfinite(row.lower())) {
                        relaxed.atLeast(
                                row.name(),
                                new Expression().add(1, row.expression()).add(size, slack),
                                row.lower(),
                                row.tag());
                    }
                    if (!Double.isInfinite(row.upper())) {
                        relaxed.atMost(
                                row.name(),
                                new Expression().add(1, row.expression()).add(-size, slack),
                                row.upper(),
                                row.tag());
                    }
                });
            } else {
                demand.rows()
                        .forEach(row -> relaxed.row(row.name(), row.expression(), row.lower(), row.upper(), row.tag()));
            }
        }
        try {
            Solution solution = solver.solve(relaxed, time.limits(ONE_SCREEN_SECONDS, 0));
            return solution.hasValues() ? solution.objective() : Double.NaN;
        } catch (SolverException e) {
            // Only a screen: what a stumbling solver leaves out is not called impossible.
            return Double.NaN;
        }
    }
}
