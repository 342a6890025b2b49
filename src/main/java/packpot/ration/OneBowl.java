package packpot.ration;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.solver.Expression;
import packpot.solver.LinearModel.Variable;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/** The doses of one dog whose portion of a pot is known: a model of a few whole numbers. */
final class OneBowl {
    private static final SolveLimits LIMITS = new SolveLimits(1, 0.001);

    private OneBowl() {}

    /**
     * The cheapest doses by weight, as if packs could be cut.
     *
     * @param pot edible grams in the whole pot
     * @param share of the pot that the dog gets
     * @param additions that may be given, as models call the choice of each
     * @return empty where no doses make its bowl complete
     */
    static Optional<Map<PantryItem, Integer>> doses(
            Household household,
            Knowledge knowledge,
            Solver solver,
            Map<PantryItem, Double> pot,
            DogNeed dog,
            double share,
            Set<String> additions) {
        Household some = household.withPantry(household.pantry().stream()
                .filter(item -> pot.containsKey(item) || item.place().bowl())
                .toList());
        Build build = new Build(some, knowledge, new Needs(List.of(dog)), Map.of(dog, 1.0));
        portion(build, pot, share);
        BowlRows.add(build);
        DogRows.add(build);
        Map<Integer, Double> fixed = new HashMap<>();
        build.given.forEach(choice -> fixed.put(choice.index(), additions.contains(choice.name()) ? 1.0 : 0.0));
        Map<Prepared, Variable> counts = build.dosesOf(dog);
        // What costs nothing counts as much as the cheapest food, so that it is not given for nothing.
        double nominal = household.cheapestFoodPerGram();
        counts.forEach((addition, count) -> build.model
                .objective()
                .add(Math.max(nominal, addition.item().pricePerGram()) * build.doseGrams(addition, dog), count));
        Solution solution = solver.solve(build.model.withFixed(fixed), LIMITS);
        if (!solution.hasValues()) {
            return Optional.empty();
        }
        Map<PantryItem, Integer> given = new LinkedHashMap<>();
        counts.forEach((addition, count) -> {
            int doses = (int) Math.round(solution.value(count));
            if (doses > 0) {
                given.put(addition.item(), doses);
            }
        });
        return Optional.of(given);
    }

    /** The dog's part of the pot, in place of the rows that choose one. */
    private static void portion(Build build, Map<PantryItem, Double> pot, double share) {
        Expression kcal = new Expression().add(-1, build.potKcal);
        Expression cooked = new Expression().add(-1, build.cookedGrams);
        for (Prepared food : build.potFoods) {
            Double grams = pot.get(food.item());
            if (grams == null) {
                continue;
            }
            String name = food.item().food().label();
            Variable own = build.model.variable(name + " g", share * grams, share * grams);
            build.potGrams.put(food, own);
            build.inPot.put(food, build.model.whole(name + " used", 1, 1));
            kcal.add(food.kcalPerGram(), own);
            cooked.add(food.cookedPerGram(), own);
        }
        build.model.equal("kcal of the pot", kcal, 0, null);
        build.model.equal("cooked grams", cooked, 0, null);
    }
}
