package packpot.ration;

import java.util.Map;
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
 *
 * <p>Of bought food that spoils, w[i] &ge; what is to be used of it less what is used, and its weight times w[i] is added.
 *
 * <p>Where a distance D is given, cost stays what is made least, and &frac12; &Sigma; d[i] + &frac12; &Sigma; s[missing] M
 * &le; D M: of recipes that are equally near, the cheapest.
 */
final class NearRows {

    private NearRows() {}

    /** Adds the rows and puts the distance in the place of {@code cost}, which the model makes least so far. */
    static void add(Build build, Near near, Expression cost) {
        Expression exchangedGrams = new Expression();
        String words = "cost at most " + Show.money(near.mostCost(), build.household.currency())
                + " to stay near the old recipe";
        build.model.atMost(
                words, cost, near.mostCost(), new Wish(Wish.Kind.BUDGET, "", "extra cost", words, near.mostCost()));
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
            exchangedGrams.add(0.5, exchanged);
        });
        Double most = near.mostDistance();
        if (most != null) {
            double missing = near.sharesOfCookedMass().entrySet().stream()
                    .filter(entry -> build.potGrams.keySet().stream()
                            .noneMatch(food -> food.item().food().id().equals(entry.getKey())))
                    .mapToDouble(Map.Entry::getValue)
                    .sum();
            build.model.atMost(
                    "as near as was found", exchangedGrams.add(missing / 2 - most, build.cookedGrams), 0, null);
            return;
        }
        build.model.objective().add(-1, cost);
        build.model.objective().add(1 / build.usualCookedGrams(), exchangedGrams);
        spoils(build, near);
    }

    private static void spoils(Build build, Near near) {
        build.potGrams.forEach((food, grams) -> {
            Near.Spoils spoils = near.spoils().get(food.item().food().id());
            if (spoils != null && spoils.useGrams() > 0) {
                String name = food.item().food().label() + " spoils";
                Variable wasted = build.model.variable(name, 0, spoils.useGrams());
                build.model.atLeast(name, new Expression().add(1, wasted).add(1, grams), spoils.useGrams(), null);
                build.model.objective().add(spoils.weightPerGram(), wasted);
            }
        });
    }
}
