package packpot.explain;

import org.jspecify.annotations.Nullable;
import packpot.explain.Loosening.Change;
import packpot.household.Freezer;
import packpot.household.Household;
import packpot.household.Kitchen;
import packpot.units.Show;

/** Limits of pot, bin, bags and freezer made weaker. */
final class LooserKitchen {
    private static final double BIN_STEP_ML = 100;

    private LooserKitchen() {}

    static Change bin(Household household, double figure) {
        double bin = Loosening.up(figure, BIN_STEP_ML);
        Double old = household.kitchen().binMl();
        return new Change(
                household.withKitchen(household.kitchen().withBinMl(bin)),
                "a mixing bin of " + Show.volume(bin, household.units())
                        + (old == null ? "" : ", not " + Show.volume(old, household.units())),
                "");
    }

    static Change bags(Household household, double figure) {
        int bags = (int) Loosening.up(figure, 1);
        return new Change(
                household.withKitchen(household.kitchen().withMostBags(bags)),
                "at most " + bags + " bags, not " + household.kitchen().mostBags(),
                "");
    }

    static @Nullable Change pot(Household household, double figure) {
        Kitchen kitchen = household.kitchen();
        Double pot = kitchen.potMl();
        if (pot == null) {
            return null;
        }
        int loads = (int) Loosening.up(kitchen.mostPotLoads() * figure / pot, 1);
        return new Change(
                household.withKitchen(kitchen.withMostPotLoads(loads)),
                "fill the pot " + loads + " times, not " + kitchen.mostPotLoads(),
                "");
    }

    static @Nullable Change freezer(Household household, Measure.@Nullable Asked asked, double bags) {
        Kitchen kitchen = household.kitchen();
        Freezer freezer = kitchen.freezer();
        if (freezer == null) {
            return null;
        }
        double room = Loosening.up(bags, 1) * kitchen.bagUsableMl();
        double more = room / freezer.packingShare()
                - Math.max(0, freezer.ratedMl() * freezer.usableShare() - freezer.takenMl())
                + 1;
        Freezer other = freezer.takenMl() >= more
                ? new Freezer(
                        freezer.ratedMl(), freezer.usableShare(), freezer.takenMl() - more, freezer.packingShare())
                : new Freezer(
                        freezer.ratedMl() + more / freezer.usableShare(),
                        freezer.usableShare(),
                        freezer.takenMl(),
                        freezer.packingShare());
        return new Change(
                household.withKitchen(kitchen.withFreezer(other)),
                "free another " + Show.volume(more, household.units()) + " in the freezer, room for "
                        + Math.round(Loosening.up(bags, 1)) + " bags"
                        + (asked == null ? "" : ", not " + Math.round(asked.figure())),
                "");
    }
}
