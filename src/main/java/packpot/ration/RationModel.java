package packpot.ration;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.plan.Amounts;
import packpot.solver.Expression;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;
import packpot.solver.Solution;
import packpot.solver.Variant;

/** The whole model of one household and one cook day, and the way back from a solution to amounts. */
public final class RationModel {
    static final double NOTHING_GRAMS = 1e-3;
    private static final double NOTHING_MONEY = 1e-6;
    /** Part of the pot: distances are shown in whole percent. */
    private static final double NOTHING_EXCHANGED = 0.005;

    private final Build build;
    /** Money for the batch, left-over parts at their worth. */
    private final Expression cost;

    private final @Nullable Goal goal;

    private RationModel(Build build, Expression cost, @Nullable Goal goal) {
        this.build = build;
        this.cost = cost;
        this.goal = goal;
    }

    /**
     * Builds the model.
     *
     * @param shares of the pot, summing to 1
     */
    public static RationModel of(Household household, Knowledge knowledge, Needs needs, Map<DogNeed, Double> shares) {
        return of(household, knowledge, needs, shares, null);
    }

    /**
     * Builds the model of a pot that keeps to a recipe, or near to one.
     *
     * @param shares of the pot, summing to 1
     * @param goal what is kept of a recipe; null for a pot that is cheapest and nothing else
     */
    public static RationModel of(
            Household household, Knowledge knowledge, Needs needs, Map<DogNeed, Double> shares, @Nullable Goal goal) {
        return of(new Build(household, knowledge, needs, shares, false), goal);
    }

    /**
     * The same model for explanations: whatever a person would name as a limit is a row with its wish, and can be lifted
     * by lifting the row. It has the same solutions and solves more slowly.
     */
    public static RationModel withLimitsAsRows(
            Household household, Knowledge knowledge, Needs needs, Map<DogNeed, Double> shares) {
        return withLimitsAsRows(household, knowledge, needs, shares, null);
    }

    /** The same for a pot that keeps to a goal; null for a pot that is cheapest and nothing else. */
    public static RationModel withLimitsAsRows(
            Household household, Knowledge knowledge, Needs needs, Map<DogNeed, Double> shares, @Nullable Goal goal) {
        return of(new Build(household, knowledge, needs, shares, true), goal);
    }

    /**
     * The model for shares of the pot that are not known yet: the energy of all dogs together keeps to its target, and that of
     * each dog only within what additions to its bowl may bring. What a dog's additions bring above others' is reckoned as
     * if its part of the pot stayed as it is, which differs from the truth by a few percent of a few percent.
     */
    static RationModel withSharesOpen(Household household, Knowledge knowledge, Needs needs, @Nullable Goal goal) {
        double band = household.rules().energyBand();
        Household wide = household.withRules(household
                .rules()
                .withEnergyBand(Math.max(band, household.shape().additionsMostEnergyShare())));
        RationModel open = of(new Build(wide, knowledge, needs, RationPlanner.sharesByNeed(needs), false), goal);
        Expression all = new Expression();
        open.build.dogKcal.values().forEach(kcal -> all.add(1, kcal));
        double target = needs.kcalPerBatch();
        open.build.model.row("energy of all dogs", all, target * (1 - band), target * (1 + band), null);
        return open;
    }

    /** Whether additions could bring one of several dogs so much energy that other shares of the pot would be fair. */
    boolean additionsMoveShares() {
        return build.needs.dogs().size() > 1
                && build.needs.dogs().stream()
                        .anyMatch(dog -> mostAdditionKcal(dog) > Rounds.SETTLED * dog.kcalPerBatch());
    }

    private double mostAdditionKcal(DogNeed dog) {
        return build.dosesOf(dog).entrySet().stream()
                .mapToDouble(each -> each.getKey().kcalPerGram()
                        * build.doseGrams(each.getKey(), dog)
                        * each.getValue().upper())
                .sum();
    }

    private static RationModel of(Build build, @Nullable Goal goal) {
        PotRows.add(build);
        BowlRows.add(build);
        DogRows.add(build);
        ShapeRows.add(build);
        StockRows.add(build);
        KitchenRows.add(build);
        Expression cost = new Expression().add(1, build.model.objective());
        if (goal instanceof RecipeGoal recipe) {
            RecipeRows.add(build, recipe, cost);
        } else if (goal instanceof Near near) {
            NearRows.add(build, near, cost);
        }
        return new RationModel(build, cost, goal);
    }

    public LinearModel<Wish> linearModel() {
        return build.model;
    }

    /** A difference of the objective that nobody notices, in its own unit: money, or a part of the pot. */
    double nothing() {
        return goal instanceof Near && !costIsLeast() ? NOTHING_EXCHANGED : NOTHING_MONEY;
    }

    /** Every limit that can be moved. */
    public List<Lever> levers() {
        return List.copyOf(build.levers);
    }

    /** For each food that may go into the pot, whether it does. */
    public Map<PantryItem, Variable> potChoices() {
        Map<PantryItem, Variable> choices = new LinkedHashMap<>();
        build.inPot.forEach((food, used) -> choices.put(food.item(), used));
        return choices;
    }

    /** Grams that one edible gram of each pot food weighs once cooked, times the grams that go into the pot. */
    public Map<PantryItem, Expression> potCookedGrams() {
        Map<PantryItem, Expression> grams = new LinkedHashMap<>();
        build.potGrams.forEach(
                (food, variable) -> grams.put(food.item(), new Expression().add(food.cookedPerGram(), variable)));
        return grams;
    }

    /** Which supplements go into bowls at all, by kind of dog. */
    public List<Variable> bowlChoices() {
        return List.copyOf(build.given);
    }

    /** Cooked mass that a batch of this energy usually has, in grams. */
    public double usualCookedGrams() {
        return build.usualCookedGrams();
    }

    /** What a food adds to the cost of the batch; empty when nothing of it can be bought. */
    public Expression costOf(PantryItem item) {
        return new Expression().add(1, build.costs.getOrDefault(item, new Expression()));
    }

    /** Changes the price of a food in a variant of this model to so many times what it is. */
    public Variant<Wish> atPrice(Variant<Wish> variant, PantryItem item, double factor) {
        variant.charge(factor - 1, costOf(item));
        Row<Wish> budget = build.budget;
        if (budget != null) {
            variant.add(budget, factor - 1, build.paid.getOrDefault(item, new Expression()));
        }
        return variant;
    }

    /**
     * The amounts of a solution.
     *
     * @param bound no plan costs less
     * @param gap within which it counts as proved
     * @param seconds wall time that was spent on it
     */
    Amounts amounts(Solution solution, double bound, double gap, double seconds) {
        Map<PantryItem, Double> pot = pot(solution);
        Map<DogNeed, Map<PantryItem, Integer>> doses = new LinkedHashMap<>();
        build.doses.forEach((dog, counts) -> {
            Map<PantryItem, Integer> given = new LinkedHashMap<>();
            counts.forEach((addition, variable) -> {
                int count = (int) Math.round(solution.value(variable));
                if (count > 0) {
                    given.put(addition.item(), count);
                }
            });
            doses.put(dog, given);
        });
        return new Amounts(
                build.shares,
                pot,
                doses,
                costIsLeast() ? solution.objective() : cost(solution),
                costBound(bound),
                solution.objective() - bound <= gap * Math.abs(solution.objective()) + nothing(),
                seconds);
    }

    /**
     * The model once more with every choice as it was found (which foods, how many packs, which additions), and foods
     * weighed in whole steps: what a kitchen scale can do.
     *
     * @param stepGrams of foods that are neither used up by whole packs nor wished in a given amount
     */
    LinearModel<Wish> measured(Solution found, double stepGrams) {
        Map<Integer, Double> fixed = new HashMap<>();
        build.inPot.values().forEach(v -> fixed.put(v.index(), found.value(v)));
        build.packs.values().forEach(v -> fixed.put(v.index(), found.value(v)));
        build.given.forEach(v -> fixed.put(v.index(), found.value(v)));
        LinearModel<Wish> model = build.model.withFixed(fixed);
        build.potGrams.forEach((food, grams) -> {
            PantryItem item = food.item();
            boolean free = !item.food().isSupplement() && item.mustUseGrams() == 0 && !item.wholePacksOnly();
            if (free && found.value(grams) > NOTHING_GRAMS) {
                double step =
                        Math.min(stepGrams, build.rules().stepGrams(item, build.household.shape(), found.value(grams)));
                LinearModel.Variable own = model.variables().get(grams.index());
                LinearModel.Variable count =
                        model.whole(item.food().label() + " weighed", 0, Math.ceil(own.upper() / step));
                model.equal(
                        item.food().label() + " weighed",
                        new Expression().add(1, own).add(-step, count),
                        0,
                        null);
            }
        });
        return model;
    }

    private boolean costIsLeast() {
        boolean oilFirst = goal instanceof RecipeGoal.AddOnly add && add.moreOil();
        boolean nearFirst = goal instanceof Near near && near.mostDistance() == null;
        return !(goal instanceof RecipeGoal.Nearest || nearFirst || oilFirst);
    }

    /** What no plan costs less than, given the bound of what the model makes least. */
    private double costBound(double bound) {
        if (goal instanceof Near near) {
            return near.noPlanBelow();
        }
        // Where something else is least, nothing is known of cheaper plans but that none is free of charge.
        return costIsLeast() ? bound : 0;
    }

    private double cost(Solution solution) {
        return cost.value(
                solution.values().stream().mapToDouble(Double::doubleValue).toArray());
    }

    /**
     * The model with a pot and doses that are given, so that packs alone are open.
     *
     * @param doses of each dog, or of dogs that are one here together; additions by item
     */
    LinearModel<Wish> with(Solution pot, Map<DogNeed, Map<PantryItem, Integer>> doses) {
        Map<Integer, Double> fixed = new HashMap<>();
        build.potGrams.values().forEach(v -> fixed.put(v.index(), pot.value(v)));
        build.inPot.values().forEach(v -> fixed.put(v.index(), pot.value(v)));
        build.given.forEach(v -> fixed.put(v.index(), pot.value(v)));
        build.doses.forEach((dog, counts) -> counts.forEach((addition, count) -> fixed.put(
                count.index(), (double) doses.getOrDefault(dog, Map.of()).getOrDefault(addition.item(), 0))));
        return build.model.withFixed(fixed);
    }

    /** Edible grams in the pot. */
    Map<PantryItem, Double> pot(Solution solution) {
        Map<PantryItem, Double> pot = new LinkedHashMap<>();
        build.potGrams.forEach((food, variable) -> {
            double grams = solution.value(variable);
            if (grams > NOTHING_GRAMS) {
                pot.put(food.item(), grams);
            }
        });
        return pot;
    }

    /** kcal that a dog's additions bring over the batch. */
    double additionKcal(DogNeed dog, Solution solution) {
        double[] sum = {0};
        build.dosesOf(dog)
                .forEach((addition, variable) ->
                        sum[0] += solution.value(variable) * build.doseGrams(addition, dog) * addition.kcalPerGram());
        return sum[0];
    }
}
