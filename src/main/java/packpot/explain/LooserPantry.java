package packpot.explain;

import java.util.Optional;
import java.util.function.UnaryOperator;
import packpot.explain.Loosening.Change;
import packpot.household.GuessedPrices;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.units.Show;

/** What a household has, must use and may use of single foods made weaker. */
final class LooserPantry {
    /** The end of what a wish for whole packs is about. */
    static final String WHOLE_PACKS = " by whole packs";

    private static final double GRAM_STEP = 5;

    private final GuessedPrices guesses;

    LooserPantry(GuessedPrices guesses) {
        this.guesses = guesses;
    }

    static Optional<PantryItem> item(Household household, String label) {
        return household.pantry().stream()
                .filter(item -> item.food().label().equals(label))
                .findFirst();
    }

    /** A limit of grams or whole packs. */
    Change foodLimit(Household household, Demand demand, double figure) {
        String what = demand.wish().what();
        if (what.endsWith(WHOLE_PACKS)) {
            String label = what.substring(0, what.length() - WHOLE_PACKS.length());
            return new Change(
                    change(household, label, PantryItem::withOpenPacks), "leave a part of a pack of " + label, "");
        }
        double grams = Loosening.up(figure, GRAM_STEP);
        return new Change(
                change(household, what, item -> item.withAtMost(grams)),
                "up to " + Show.grams(grams) + " of " + what + ", not "
                        + item(household, what)
                                .map(PantryItem::atMostGrams)
                                .map(Show::grams)
                                .orElse("so little"),
                "");
    }

    Change mustUse(Household household, Demand demand, double figure) {
        String label = demand.wish().what();
        double grams = Loosening.down(figure, GRAM_STEP);
        return new Change(
                change(household, label, item -> item.withMustUse(grams)),
                (grams > 0 ? "use " + Show.grams(grams) + " of " + label : "use no " + label) + ", not "
                        + item(household, label)
                                .map(item -> Show.grams(item.mustUseGrams()))
                                .orElse("as much"),
                "");
    }

    /** What cannot be bought is bought after all: at the household's price, or at a guess where it has none. */
    Change stock(Household household, Demand demand, double needed) {
        String label = demand.wish().what();
        String[] note = {""};
        Household changed = change(household, label, item -> {
            if (item.pricePerGram() > 0) {
                return item.inStock();
            }
            PantryItem offer = guesses.item(item.food(), item.preparation(), item.place());
            note[0] = "its price is guessed as " + guesses.price(offer, household.currency());
            return offer.withOnHand(item.onHandGrams())
                    .withMustUse(item.mustUseGrams())
                    .withAtMost(item.atMostGrams());
        });
        double more =
                item(household, label).map(item -> needed - item.onHandGrams()).orElse(needed);
        return new Change(
                changed, "get more " + label + ", at least " + Show.grams(Loosening.up(more, GRAM_STEP)), note[0]);
    }

    private static Household change(Household household, String label, UnaryOperator<PantryItem> change) {
        return household.withPantry(household.pantry().stream()
                .map(item -> item.food().label().equals(label) ? change.apply(item) : item)
                .toList());
    }
}
