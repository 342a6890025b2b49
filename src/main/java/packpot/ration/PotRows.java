package packpot.ration;

import packpot.food.Supplement;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.solver.Expression;
import packpot.solver.LinearModel.Variable;
import packpot.units.Show;

/**
 * What goes into the pot.
 *
 * <p>For each food i: x[i] edible grams and u[i], used at all; least[i] u[i] &le; x[i] &le; most[i] u[i]. A supplement
 * goes in by whole steps, x[i] = step[i] n[i]. Pot energy = &Sigma; e[i] x[i]; cooked mass = &Sigma; yield[i] x[i].
 */
final class PotRows {
    private static final double MOST_STEPS = 2000;
    /** A kitchen scale that reads whole grams is a tenth off here, and more below. */
    private static final double LEAST_WEIGHED_GRAMS = 5;

    /** How far a nutrient's maximum is passed at most where it is lifted. */
    private static final double LIFTED = 10;

    private PotRows() {}

    static void add(Build build) {
        Expression kcal = new Expression().add(-1, build.potKcal);
        Expression cooked = new Expression().add(-1, build.cookedGrams);
        for (Prepared food : build.potFoods) {
            Variable grams = grams(build, food);
            build.potGrams.put(food, grams);
            kcal.add(food.kcalPerGram(), grams);
            cooked.add(food.cookedPerGram(), grams);
            wishes(build, food, grams);
        }
        build.model.equal("kcal of the pot", kcal, 0, null);
        build.model.equal("cooked grams", cooked, 0, null);
    }

    private static Variable grams(Build build, Prepared food) {
        PantryItem item = food.item();
        String name = item.food().label();
        double most = mostGrams(build, food);
        double room = build.limitsAsRows ? roomGrams(build, food, most) : most;
        Variable grams = build.model.variable(name + " g", 0, room);
        // What is out of stock or not to be borne is not used, and counts as no food of the pot.
        Variable used = build.model.whole(name + " used", 0, room > RationModel.NOTHING_GRAMS ? 1 : 0);
        build.inPot.put(food, used);
        build.onlyWhenUsed.put(
                food,
                build.model.atMost(
                        name + " only when used", new Expression().add(1, grams).add(-room, used), 0, null));
        Supplement supplement = item.food().supplement();
        if (supplement != null) {
            double step = supplement.potStepGrams();
            double steps = Math.min(MOST_STEPS, Math.floor(most / step));
            double roomSteps = Math.min(MOST_STEPS, Math.floor(room / step));
            Variable count = build.model.whole(name + " steps", 0, roomSteps);
            build.model.equal(name + " by steps", new Expression().add(1, grams).add(-step, count), 0, null);
            double least = Math.min(step < 1 ? step : LEAST_WEIGHED_GRAMS, step * steps);
            build.model.atLeast(
                    name + " can be weighed", new Expression().add(1, grams).add(-least, used), 0, null);
        } else {
            double least = Math.min(leastGrams(build, food), most > RationModel.NOTHING_GRAMS ? most : room);
            build.model.atLeast(
                    name + " a useful amount",
                    new Expression().add(1, grams).add(-least, used),
                    0,
                    build.limitsAsRows ? useful(build, food) : null);
        }
        return grams;
    }

    private static double leastGrams(Build build, Prepared food) {
        var shape = build.household.shape();
        double share = shape.minorGroups().contains(food.item().food().group())
                ? shape.smallestUsefulShareMinor()
                : shape.smallestUsefulShare();
        return share * build.usualCookedGrams() / food.cookedPerGram();
    }

    private static Wish useful(Build build, Prepared food) {
        var shape = build.household.shape();
        boolean minor = shape.minorGroups().contains(food.item().food().group());
        double share = minor ? shape.smallestUsefulShareMinor() : shape.smallestUsefulShare();
        return new Wish(
                Wish.Kind.SHAPE,
                "",
                minor ? "smallest amount of a minor food" : "smallest amount of a food",
                (minor ? "an organ, oil, seed or other minor food" : "a food") + " that is used is at least "
                        + Show.number(100 * share) + " % of the usual batch",
                share * build.usualCookedGrams());
    }

    /** More than can be used of a food even where one of its limits is lifted. */
    private static double roomGrams(Build build, Prepared food, double most) {
        double share = food.item().food().isSupplement()
                ? build.household.shape().additionsMostMassShare() * build.mostCookedGrams()
                : build.roomGrams();
        double byMass = share / food.cookedPerGram();
        return Math.max(Math.max(most, food.item().mustUseGrams()), Math.min(byMass, LIFTED * bearable(build, food)));
    }

    /** A bound that no plan can pass, as tight as is cheaply known: it makes the choice variables bite. */
    private static double mostGrams(Build build, Prepared food) {
        var shape = build.household.shape();
        double share =
                Math.min(shape.oneFoodMost(), food.item().food().kitchen().mostShare());
        if (food.item().food().isSupplement()) {
            share = Math.min(share, shape.additionsMostMassShare());
        }
        double bySharesOfMass = share * build.mostCookedGrams() / food.cookedPerGram();
        double byEnergy =
                food.kcalPerGram() > 0 ? 1.05 * build.batchKcal() / food.kcalPerGram() : Double.POSITIVE_INFINITY;
        double atMost = food.item().atMostGrams() == null
                ? Double.POSITIVE_INFINITY
                : food.item().atMostGrams();
        double inReach = food.item().outOfStock() ? food.item().onHandGrams() : Double.POSITIVE_INFINITY;
        return Math.min(Math.min(bySharesOfMass, byEnergy), Math.min(bearable(build, food), Math.min(atMost, inReach)));
    }

    private static double bearable(Build build, Prepared food) {
        return build.needs.dogs().stream()
                .mapToDouble(dog -> Bearable.grams(build, food, dog, build.batchKcal()))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    private static void wishes(Build build, Prepared food, Variable grams) {
        if (build.limitsAsRows) {
            build.household.avoiders(food.item()).forEach(dog -> Avoiding.add(build, dog, food, grams));
        }
        double mustUse = food.item().mustUseGrams();
        if (mustUse > 0) {
            String label = food.item().food().label();
            var row = build.model.atLeast(
                    "must use " + label,
                    new Expression().add(1, grams),
                    mustUse,
                    new Wish(
                            Wish.Kind.MUST_USE,
                            "",
                            label,
                            "use at least " + Show.grams(mustUse) + " of " + label,
                            mustUse));
            build.side(row, mustUse, "g", -Lever.handy(mustUse), 1);
        }
    }
}
