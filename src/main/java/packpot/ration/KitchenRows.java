package packpot.ration;

import packpot.household.Freezer;
import packpot.household.Kitchen;
import packpot.household.Wish;
import packpot.solver.Expression;
import packpot.units.Show;
import packpot.units.Unit;
import packpot.units.UnitSystem;

/**
 * Pot, tub, bags and freezer, all as limits on cooked mass M through the density of the mixed batch.
 *
 * <p>M / density &le; pot &times; fill &times; loads; &le; tub; &le; bags &times; food per bag. Of the share that is
 * frozen, whole bags fit the free freezer: M frozen / density &le; &lfloor;free / bag&rfloor; bag.
 */
final class KitchenRows {

    private KitchenRows() {}

    static void add(Build build) {
        Kitchen kitchen = build.household.kitchen();
        UnitSystem units = build.household.units();
        Double pot = kitchen.potMl();
        if (pot != null) {
            limit(
                    build,
                    Wish.Kind.POT,
                    "pot",
                    pot * kitchen.potFillShare() * kitchen.mostPotLoads(),
                    1,
                    "a pot of " + Show.volume(pot, units) + ", filled at most " + kitchen.mostPotLoads() + " times",
                    volume(pot, units),
                    volumeUnit(units));
        }
        Double bin = kitchen.binMl();
        if (bin != null) {
            limit(
                    build,
                    Wish.Kind.BIN,
                    "bin",
                    bin,
                    1,
                    "a mixing bin of " + Show.volume(bin, units),
                    volume(bin, units),
                    volumeUnit(units));
        }
        Integer bags = kitchen.mostBags();
        if (bags != null) {
            limit(
                    build,
                    Wish.Kind.BAGS,
                    "bags",
                    bags * kitchen.bagUsableMl(),
                    1,
                    "at most " + bags + " bags (" + kitchen.bagName() + ")",
                    bags,
                    "");
        }
        Freezer freezer = kitchen.freezer();
        if (freezer != null && kitchen.frozenShare() > 0) {
            double wholeBags = Math.floor(freezer.freeForFoodMl() / kitchen.bagUsableMl());
            limit(
                    build,
                    Wish.Kind.FREEZER,
                    "freezer",
                    wholeBags * kitchen.bagUsableMl(),
                    kitchen.frozenShare(),
                    "room for " + (long) wholeBags + " bags in the freezer",
                    wholeBags,
                    "");
        }
    }

    private static double volume(double ml, UnitSystem units) {
        return ml / (units == UnitSystem.METRIC ? 1000 : Unit.QUART.inBaseUnit());
    }

    private static String volumeUnit(UnitSystem units) {
        return units == UnitSystem.METRIC ? "l" : "qt";
    }

    /**
     * One limit on volume.
     *
     * @param ml that it allows
     * @param share of the batch that it is about
     * @param figure the limit in its own unit
     * @param unit empty for things that are counted
     */
    private static void limit(
            Build build,
            Wish.Kind kind,
            String what,
            double ml,
            double share,
            String words,
            double figure,
            String unit) {
        double grams = ml * build.household.kitchen().mixDensityGramsPerMl();
        var row = build.model.atMost(
                what,
                new Expression().add(share, build.cookedGrams),
                grams * (1 - build.rules().roundingReserve()),
                new Wish(kind, "", what, words, Math.max(1, grams)));
        if (figure > 0) {
            build.side(row, figure, unit, 1, row.upper() / figure);
        }
    }
}
