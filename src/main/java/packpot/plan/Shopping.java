package packpot.plan;

import org.jspecify.annotations.Nullable;
import packpot.household.PantryItem;

/** What to buy for what is used. */
final class Shopping {
    private static final double CLOSE_GRAMS = 1e-3;
    private static final double LOOSE_STEP_GRAMS = 10;

    private Shopping() {}

    static Plan.Purchase purchase(PantryItem item, double usedGrams) {
        double fromHand = Math.min(item.onHandGrams(), usedGrams);
        double need = Math.max(0, usedGrams - fromHand);
        Double pack = item.packGrams();
        Double packAsBought = item.packAsBoughtGrams();
        if (pack == null || packAsBought == null) {
            double asBought = need <= CLOSE_GRAMS
                    ? 0
                    : Math.ceil(need / item.food().kitchen().edibleShare() / LOOSE_STEP_GRAMS) * LOOSE_STEP_GRAMS;
            double edible = asBought * item.food().kitchen().edibleShare();
            return line(
                    item, null, asBought, usedGrams, fromHand, Math.max(0, edible - need), edible * item.packPrice());
        }
        int packs = (int) Math.ceil((need - CLOSE_GRAMS) / pack);
        return line(
                item,
                packs,
                packs * packAsBought,
                usedGrams,
                fromHand,
                Math.max(0, packs * pack - need),
                packs * item.packPrice());
    }

    private static Plan.Purchase line(
            PantryItem item,
            @Nullable Integer packs,
            double asBought,
            double used,
            double fromHand,
            double leftOver,
            double pays) {
        return new Plan.Purchase(
                item.food().id(),
                item.food().label(),
                item.food().kitchen().section(),
                packs,
                item.packName(),
                asBought,
                used,
                fromHand,
                leftOver,
                pays);
    }
}
