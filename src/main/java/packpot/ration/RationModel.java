package packpot.ration;

import java.util.LinkedHashMap;
import java.util.Map;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.plan.Amounts;
import packpot.solver.LinearModel;
import packpot.solver.Solution;

/** The whole model of one household and one cook day, and the way back from a solution to amounts. */
public final class RationModel {
    private static final double NOTHING_GRAMS = 1e-3;

    private final Build build;

    private RationModel(Build build) {
        this.build = build;
    }

    /**
     * Builds the model.
     *
     * @param shares of the pot, summing to 1
     */
    public static RationModel of(Household household, Knowledge knowledge, Needs needs, Map<DogNeed, Double> shares) {
        Build build = new Build(household, knowledge, needs, shares);
        PotRows.add(build);
        BowlRows.add(build);
        DogRows.add(build);
        ShapeRows.add(build);
        StockRows.add(build);
        KitchenRows.add(build);
        return new RationModel(build);
    }

    public LinearModel<Wish> linearModel() {
        return build.model;
    }

    /** The amounts of a solution. */
    Amounts amounts(Solution solution, double seconds) {
        Map<PantryItem, Double> pot = new LinkedHashMap<>();
        build.potGrams.forEach((food, variable) -> {
            double grams = solution.value(variable);
            if (grams > NOTHING_GRAMS) {
                pot.put(food.item(), grams);
            }
        });
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
                solution.objective(),
                solution.bound(),
                solution.status() == Solution.Status.OPTIMAL,
                seconds);
    }

    /** kcal that a dog's additions bring over the batch. */
    double additionKcal(DogNeed dog, Solution solution) {
        double[] sum = {0};
        build.dosesOf(dog)
                .forEach((addition, variable) ->
                        sum[0] += solution.value(variable) * build.doseGrams(addition) * addition.kcalPerGram());
        return sum[0];
    }
}
