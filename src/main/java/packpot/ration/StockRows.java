package packpot.ration;

import org.jspecify.annotations.Nullable;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.solver.Expression;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;
import packpot.units.Show;

/**
 * Where the food comes from, and what it costs.
 *
 * <p>Grams used = from hand + from packs; from hand &le; on hand, free of charge; from packs &le; pack p[i], or = when
 * whole packs are used up. Cost = &Sigma; price p[i] - worth (pack p[i] - from packs), where worth is what a left-over
 * part is still good for: nothing when it spoils, a share of its price when it keeps, its whole price for supplements.
 */
final class StockRows {

    private StockRows() {}

    static void add(Build build) {
        Expression cash = new Expression();
        for (PantryItem item : build.household.pantry()) {
            Expression used = new Expression();
            Prepared key = used(build, item, used);
            if (key == null || used.isEmpty()) {
                continue;
            }
            String name = item.food().label();
            if (item.onHandGrams() > 0 || (build.limitsAsRows && item.outOfStock())) {
                Variable fromHand = build.limitsAsRows && item.outOfStock()
                        ? onHandAlone(build, item)
                        : build.model.variable(name + " from hand", 0, item.onHandGrams());
                used.add(-1, fromHand);
                if (item.food().isSupplement()) {
                    // A supplement that costs nothing counts as much as a food, so that it is not given for nothing.
                    build.model.objective().add(build.household.cheapestFoodPerGram(), fromHand);
                }
            }
            if (!item.outOfStock()) {
                used.add(-1, bought(build, key));
            }
            build.model.equal(name + " used", used, 0, null);
            cash.add(1, paid(build, item));
            Double atMost = item.atMostGrams();
            if (atMost != null) {
                Expression total = new Expression();
                used(build, item, total);
                String words = "at most " + Show.grams(atMost) + " of " + name;
                var row = build.model.atMost(
                        words, total, atMost, new Wish(Wish.Kind.FOOD_LIMIT, "", name, words, Math.max(1, atMost)));
                atMostLever(build, item, row, atMost);
            }
        }
        Double budget = build.household.budget();
        if (budget != null) {
            String words = "spend at most " + Show.money(budget, build.household.currency());
            var row = build.model.atMost(words, cash, budget, new Wish(Wish.Kind.BUDGET, "", "budget", words, budget));
            build.budget = row;
            build.side(row, budget, build.household.currency(), Lever.handy(budget), 1);
        }
    }

    /** What is in the house of a food that cannot be bought, as a row with its wish. */
    private static Variable onHandAlone(Build build, PantryItem item) {
        String name = item.food().label();
        Variable hand = build.model.variable(name + " from hand", 0, Double.POSITIVE_INFINITY);
        String words = item.onHandGrams() > 0
                ? "no more " + name + " than the " + Show.grams(item.onHandGrams()) + " in the house"
                : "no " + name + " to be had";
        build.model.atMost(
                words,
                new Expression().add(1, hand),
                item.onHandGrams(),
                new Wish(Wish.Kind.STOCK, "", name, words, Math.max(1, item.onHandGrams())));
        return hand;
    }

    /** Adds what pot and bowls take of a food; gives its prepared form, or null when nothing can take it. */
    private static @Nullable Prepared used(Build build, PantryItem item, Expression used) {
        Prepared[] found = {null};
        build.potGrams.forEach((food, grams) -> {
            if (food.item().equals(item)) {
                used.add(1, grams);
                found[0] = food;
            }
        });
        build.doses.forEach((dog, doses) -> doses.forEach((addition, count) -> {
            if (addition.item().equals(item)) {
                used.add(build.doseGrams(addition, dog), count);
                found[0] = addition;
            }
        }));
        return found[0];
    }

    private static Variable bought(Build build, Prepared food) {
        PantryItem item = food.item();
        String name = item.food().label();
        double most = 1.01 * build.roomGrams() / food.cookedPerGram();
        Variable grams = build.model.variable(name + " from packs", 0, most);
        build.boughtGrams.put(food, grams);
        double worth = build.rules().leftWorthPerGram(item);
        Double packGrams = item.packGrams();
        // Without a budget the packs of what keeps its whole worth cost nothing by themselves and need no variable.
        boolean byWeight = packGrams == null
                || (worth >= item.pricePerGram() && build.household.budget() == null && !item.wholePacksOnly());
        if (packGrams == null || byWeight) {
            Expression cost = new Expression().add(item.pricePerGram(), grams);
            charge(build, item, cost, cost);
            return grams;
        }
        Variable packs = build.model.whole(name + " packs", 0, Math.ceil(most / packGrams));
        build.packs.put(food, packs);
        Variable inPot = build.inPot.get(food);
        if (inPot != null && item.onHandGrams() == 0 && !item.food().isSupplement()) {
            // Follows from the rest, but tells the solver early what a first gram costs.
            build.model.atMost(
                    name + " opens a pack", new Expression().add(1, inPot).add(-1, packs), 0, null);
        }
        Expression left = new Expression().add(packGrams, packs).add(-1, grams);
        if (item.wholePacksOnly()) {
            String words = "whole packs of " + name;
            build.model.equal(
                    name + " whole packs",
                    left,
                    0,
                    build.limitsAsRows
                            ? new Wish(Wish.Kind.FOOD_LIMIT, "", name + " by whole packs", words, packGrams)
                            : null);
        } else {
            build.model.atLeast(name + " out of packs", left, 0, null);
        }
        Expression pays = new Expression().add(item.packPrice(), packs);
        charge(build, item, new Expression().add(1, pays).add(-worth, left), pays);
        return grams;
    }

    private static void charge(Build build, PantryItem item, Expression cost, Expression pays) {
        build.model.objective().add(1, cost);
        build.costs.put(item, cost);
        build.paid.put(item, pays);
    }

    private static Expression paid(Build build, PantryItem item) {
        return build.paid.getOrDefault(item, new Expression());
    }

    /** The same figure bounds the grams in the pot, so that goes up with it. */
    private static void atMostLever(Build build, PantryItem item, Row<Wish> row, double atMost) {
        build.lever(row, atMost, "g", Lever.handy(atMost), (variant, change) -> {
            variant.shift(row, change, change);
            build.potGrams.forEach((food, grams) -> {
                Row<Wish> onlyWhenUsed = build.onlyWhenUsed.get(food);
                Variable used = build.inPot.get(food);
                if (food.item().equals(item) && onlyWhenUsed != null && used != null) {
                    variant.bound(grams, 0, Math.max(0, grams.upper() + change));
                    variant.add(onlyWhenUsed, -change, new Expression().add(1, used));
                }
            });
        });
    }
}
