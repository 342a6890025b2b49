package packpot.household;

import org.jspecify.annotations.Nullable;

/**
 * Where and for how long is cooked.
 *
 * @param days days that the batch feeds
 * @param potMl volume of the pot; null when it sets no limit
 * @param potFillShare how full a pot can be stirred
 * @param mostPotLoads how many times the pot may be filled on one cook day
 * @param binMl volume of the tub in which the whole batch is mixed; null when it sets no limit
 * @param bagName "quart", or what the scenario calls it
 * @param bagUsableMl food that one bag holds
 * @param mostBags bags to be had for this session; null when it sets no limit
 * @param freezer null when it sets no limit
 * @param fridgeDays first days of food, kept in the fridge and never frozen
 * @param mixDensityGramsPerMl of the mixed, cooked batch
 * @param shopDaysBefore days from shopping to cooking
 */
public record Kitchen(
        int days,
        int mealsPerDay,
        @Nullable Double potMl,
        double potFillShare,
        int mostPotLoads,
        @Nullable Double binMl,
        String bagName,
        double bagUsableMl,
        @Nullable Integer mostBags,
        @Nullable Freezer freezer,
        int fridgeDays,
        double mixDensityGramsPerMl,
        int shopDaysBefore) {

    /** Share of the batch that is frozen at first. */
    public double frozenShare() {
        return (double) Math.max(0, days - fridgeDays) / days;
    }

    /** The same kitchen, cooking for another number of days. */
    public Kitchen withDays(int other) {
        return with(other, mostPotLoads, binMl, mostBags, freezer);
    }

    /** The same kitchen, in which the pot may be filled so many times. */
    public Kitchen withMostPotLoads(int other) {
        return with(days, other, binMl, mostBags, freezer);
    }

    /** The same kitchen with another tub, in ml; null for one that sets no limit. */
    public Kitchen withBinMl(@Nullable Double other) {
        return with(days, mostPotLoads, other, mostBags, freezer);
    }

    /** The same kitchen with so many bags; null for no limit. */
    public Kitchen withMostBags(@Nullable Integer other) {
        return with(days, mostPotLoads, binMl, other, freezer);
    }

    /** The same kitchen with another freezer; null for one that sets no limit. */
    public Kitchen withFreezer(@Nullable Freezer other) {
        return with(days, mostPotLoads, binMl, mostBags, other);
    }

    private Kitchen with(
            int otherDays,
            int otherLoads,
            @Nullable Double otherBinMl,
            @Nullable Integer otherBags,
            @Nullable Freezer otherFreezer) {
        return new Kitchen(
                otherDays,
                mealsPerDay,
                potMl,
                potFillShare,
                otherLoads,
                otherBinMl,
                bagName,
                bagUsableMl,
                otherBags,
                otherFreezer,
                fridgeDays,
                mixDensityGramsPerMl,
                shopDaysBefore);
    }
}
