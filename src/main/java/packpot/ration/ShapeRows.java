package packpot.ration;

import packpot.household.Shape;
import packpot.household.Wish;
import packpot.solver.Expression;
import packpot.solver.LinearModel.Row;
import packpot.units.Show;

/**
 * How the pot looks.
 *
 * <p>For a band B of foods with shares lo and hi of cooked mass M: lo M &le; &Sigma;<sub>i in B</sub> yield[i] x[i]
 * &le; hi M. For one food: yield[i] x[i] &le; most[i] M. Foods used lie between the fewest and the most, and supplements
 * stirred in are few.
 */
final class ShapeRows {

    private ShapeRows() {}

    static void add(Build build) {
        build.household.shape().bands().forEach(band -> band(build, band));
        build.potFoods.forEach(food -> oneFood(build, food));
        counts(build);
        if (build.limitsAsRows) {
            thinnest(build);
        }
    }

    /** In the usual model a bound of the cooked mass. */
    private static void thinnest(Build build) {
        String words = "a batch holds at least " + Show.number(build.batchKcal() / build.mostCookedGrams())
                + " kcal per gram of cooked food";
        build.model.atMost(
                words,
                new Expression().add(1, build.cookedGrams),
                build.mostCookedGrams(),
                wish(Wish.Kind.SHAPE, "energy density", words, build.mostCookedGrams()));
    }

    private static void band(Build build, Shape.Band band) {
        Expression mass = new Expression();
        build.potGrams.forEach((food, grams) -> {
            if (band.groups().contains(food.item().food().group())) {
                mass.add(food.cookedPerGram(), grams);
            }
        });
        double reserve = build.rules().roundingReserve();
        if (band.least() > 0) {
            String words = band.label() + " at least " + percent(band.least()) + " of cooked mass";
            var row = build.model.atLeast(
                    words,
                    new Expression().add(1, mass).add(-band.least() * (1 + reserve), build.cookedGrams),
                    0,
                    wish(Wish.Kind.SHAPE, band.label(), words, band.least() * build.usualCookedGrams()));
            share(build, row, band.least(), -(1 + reserve));
        }
        if (band.most() < 1 && !mass.isEmpty()) {
            String words = band.label() + " at most " + percent(band.most()) + " of cooked mass";
            var row = build.model.atMost(
                    words,
                    new Expression().add(1, mass).add(-band.most() * (1 - reserve), build.cookedGrams),
                    0,
                    wish(Wish.Kind.SHAPE, band.label(), words, band.most() * build.usualCookedGrams()));
            share(build, row, band.most(), -(1 - reserve));
        }
    }

    private static void oneFood(Build build, Prepared food) {
        var grams = build.potGrams.get(food);
        if (grams == null || food.item().food().isSupplement()) {
            return;
        }
        double most = Math.min(
                build.household.shape().oneFoodMost(),
                food.item().food().kitchen().mostShare());
        String label = food.item().food().label();
        String words = label + " at most " + percent(most) + " of cooked mass";
        var row = build.model.atMost(
                words,
                new Expression()
                        .add(food.cookedPerGram(), grams)
                        .add(-most * (1 - build.rules().roundingReserve()), build.cookedGrams),
                0,
                wish(Wish.Kind.FOOD_LIMIT, label, words, most * build.usualCookedGrams()));
        share(build, row, most, -(1 - build.rules().roundingReserve()));
    }

    /** A limit as a share of cooked mass is moved by whole percents. */
    private static void share(Build build, Row<Wish> row, double share, double coefficient) {
        build.slope(
                row,
                100 * share,
                "% of cooked mass",
                Double.isInfinite(row.upper()) ? -1 : 1,
                new Expression().add(coefficient / 100, build.cookedGrams));
    }

    private static void counts(Build build) {
        Shape shape = build.household.shape();
        Expression foods = new Expression();
        Expression supplements = new Expression();
        build.inPot.forEach((food, used) -> (food.item().food().isSupplement() ? supplements : foods).add(1, used));
        String most = "at most " + shape.mostFoods() + " foods in the pot";
        build.side(
                build.model.atMost(most, foods, shape.mostFoods(), wish(Wish.Kind.INGREDIENTS, "foods", most, 1)),
                shape.mostFoods(),
                "",
                1,
                1);
        String fewest = "at least " + shape.fewestFoods() + " foods in the pot";
        build.side(
                build.model.atLeast(
                        fewest, foods, shape.fewestFoods(), wish(Wish.Kind.INGREDIENTS, "foods", fewest, 1)),
                shape.fewestFoods(),
                "",
                -1,
                1);
        String stirredIn = "at most " + shape.mostStirredIn() + " supplements stirred into the batch";
        var stirred = build.model.atMost(
                stirredIn,
                supplements,
                shape.mostStirredIn(),
                wish(Wish.Kind.INGREDIENTS, "supplements", stirredIn, 1));
        build.side(stirred, shape.mostStirredIn(), "", 1, 1);
    }

    private static Wish wish(Wish.Kind kind, String what, String words, double size) {
        return new Wish(kind, "", what, words, size);
    }

    private static String percent(double share) {
        return Show.number(share * 100) + " %";
    }
}
