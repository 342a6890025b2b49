package packpot.explain;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import packpot.household.GuessedPrices;
import packpot.household.Household;
import packpot.household.Rules;
import packpot.household.Wish;
import packpot.units.Show;

/**
 * Wishes made weaker. Published limits of nutrients, limits that protect a dog and foods that it must not get are never
 * loosened; of a nutrient's minimum only the margin above it can go.
 */
final class Loosening {
    private static final double MONEY_STEP = 0.5;
    private static final double CLOSE = 1e-6;

    /**
     * A household with one wish made weaker.
     *
     * @param sentence what was changed
     * @param note what a person should know beside; empty when there is nothing
     */
    record Change(Household household, String sentence, String note) {}

    private final LooserPantry pantry;

    Loosening(GuessedPrices guesses) {
        this.pantry = new LooserPantry(guesses);
    }

    /** Whether a household can give way in this wish at all. */
    static boolean possible(Demand demand, Household household) {
        Wish wish = demand.wish();
        return switch (demand.kind()) {
            case ENERGY, NUTRIENT_MAXIMUM, RATIO, AVOID, RECIPE -> false;
            case NUTRIENT_MINIMUM -> household.rules().margin() > 0;
            case SHAPE -> !wish.what().equals("energy density");
            case ADDITIONS -> wish.what().equals("additions");
            case FOOD_LIMIT -> wish.who().isEmpty() && (isOwn(demand, household) || isOneFoodMost(demand, household));
            case MUST_USE, INGREDIENTS, POT, BIN, BAGS, FREEZER, BUDGET, STOCK -> true;
        };
    }

    /** A limit of grams or whole packs that the scenario gives. */
    static boolean isOwn(Demand demand, Household household) {
        return demand.wish().what().endsWith(LooserPantry.WHOLE_PACKS)
                || LooserPantry.item(household, demand.wish().what())
                        .map(item -> item.atMostGrams() != null
                                && demand.wish().sentence().startsWith("at most "))
                        .orElse(false);
    }

    private static boolean isOneFoodMost(Demand demand, Household household) {
        return LooserPantry.item(household, demand.wish().what())
                .map(item ->
                        item.food().kitchen().mostShare() > household.shape().oneFoodMost())
                .orElse(false);
    }

    /**
     * Makes a wish as weak as it must be.
     *
     * @param reached what the nearest solution reaches of the wish, in the unit of {@code asked}
     * @param miss the same as a share of the wish
     * @param wider a little more than needed, as a share, for what the kitchen rounds
     */
    Optional<Change> loosen(
            Household household,
            Demand demand,
            Measure.@Nullable Asked asked,
            double reached,
            double miss,
            double wider) {
        double figure = reached * (Measure.isAtLeast(demand) ? 1 - wider : 1 + wider);
        int count = (int) Math.round(reached);
        return Optional.ofNullable(
                switch (demand.kind()) {
                    case ENERGY, NUTRIENT_MAXIMUM, RATIO, AVOID, RECIPE -> null;
                    case NUTRIENT_MINIMUM -> margin(household, miss, wider);
                    case SHAPE -> LooserRecipe.shape(household, demand, figure, miss, wider);
                    case FOOD_LIMIT ->
                        isOwn(demand, household)
                                ? pantry.foodLimit(household, demand, figure)
                                : LooserRecipe.oneFoodMost(household, figure);
                    case MUST_USE -> pantry.mustUse(household, demand, figure);
                    case STOCK -> pantry.stock(household, demand, reached);
                    case INGREDIENTS -> LooserRecipe.ingredients(household, demand, count);
                    case ADDITIONS -> LooserRecipe.additions(household, demand, count);
                    case POT -> LooserKitchen.pot(household, figure);
                    case BIN -> LooserKitchen.bin(household, figure);
                    case BAGS -> LooserKitchen.bags(household, figure);
                    case FREEZER -> LooserKitchen.freezer(household, asked, figure);
                    case BUDGET -> budget(household, figure);
                });
    }

    /** A figure in whole steps, not below it. */
    static double up(double figure, double step) {
        return Math.ceil(figure / step - CLOSE) * step;
    }

    /** A figure in whole steps, not above it. */
    static double down(double figure, double step) {
        return Math.max(0, Math.floor(figure / step + CLOSE) * step);
    }

    private static Change budget(Household household, double figure) {
        double budget = up(figure, MONEY_STEP);
        Double old = household.budget();
        return new Change(
                household.withBudget(budget),
                "spend up to " + Show.money(budget, household.currency())
                        + (old == null ? "" : ", " + Show.money(budget - old, household.currency()) + " more"),
                "");
    }

    private static @Nullable Change margin(Household household, double miss, double wider) {
        Rules rules = household.rules();
        double margin = down(rules.margin() - miss / (1 + rules.roundingReserve()) - wider / 10, 0.001);
        if (margin >= rules.margin()) {
            return null;
        }
        return new Change(
                household.withRules(rules.withMargin(margin)),
                margin > 0
                        ? "keep a margin of " + Show.number(100 * margin) + " % above the minimums, not "
                                + Show.number(100 * rules.margin()) + " %"
                        : "give up the margin of " + Show.number(100 * rules.margin()) + " % above the minimums",
                "less is kept in hand for foods that vary and scales that are coarse");
    }
}
