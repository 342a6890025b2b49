package packpot.ration;

import packpot.household.Wish;
import packpot.solver.Expression;
import packpot.solver.LinearModel.Variable;
import packpot.units.Show;

/**
 * A recipe that stays near an old one.
 *
 * <p>For each food i of the pot with the share s[i] of cooked mass M in the old recipe (0 when it was not in it):
 * d[i] &ge; |yield[i] x[i] - s[i] M|. Minimised is &frac12; &Sigma; d[i] over the usual cooked mass: the part of the pot
 * that is exchanged. The cost becomes a row, cost &le; most. A food of the old recipe that the pantry lacks now is gone
 * from every new one, so it changes nothing.
 */
final class NearRows {

    private NearRows() {}

    /** Adds the rows and puts the distance in the place of {@code cost}, which the model makes least so far. */
    static void add(Build build, Near near, Expression cost) {
        build.model.objective().add(-1, cost);
        String words = "cost at most " + Show.money(near.mostCost(), build.household.currency())
                + " to stay near the old recipe";
        build.model.atMost(
                words, cost, near.mostCost(), new Wish(Wish.Kind.BUDGET, "", "extra cost", words, near.mostCost()));
        double perGram = 0.5 / build.usualCookedGrams();
        build.potGrams.forEach((food, grams) -> {
            String name = food.item().food().label() + " exchanged";
            double share =
                    near.sharesOfCookedMass().getOrDefault(food.item().food().id(), 0.0);
            Variable exchanged = build.model.variable(name, 0, build.mostCookedGrams());
            Expression difference =
                    new Expression().add(food.cookedPerGram(), grams).add(-share, build.cookedGrams);
            build.model.atLeast(
                    name + ", more", new Expression().add(1, exchanged).add(-1, difference), 0, null);
            build.model.atLeast(
                    name + ", less", new Expression().add(1, exchanged).add(1, difference), 0, null);
            build.model.objective().add(perGram, exchanged);
        });
    }
}
