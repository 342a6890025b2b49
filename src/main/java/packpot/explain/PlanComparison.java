package packpot.explain;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An old and a new plan side by side. Grams are edible and for the whole batch unless the name says otherwise; money is in
 * the household's currency. A figure is null where a plan does not have the thing at all.
 *
 * @param distance between the recipes: half the sum, over all that goes into either pot, of the difference of its shares
 *     of cooked mass; 0 for the same recipe, 1 where they have nothing in common
 * @param shopping what to put back and what to pick up; what does not change is left out
 * @param nutrients that moved by more than the stated share, dog by dog
 */
public record PlanComparison(
        Figures before,
        Figures after,
        double distance,
        List<FoodLine> pot,
        List<ShoppingLine> shopping,
        List<PortionLine> portions,
        List<AdditionLine> additions,
        List<NutrientMove> nutrients) {

    public PlanComparison {
        pot = List.copyOf(pot);
        shopping = List.copyOf(shopping);
        portions = List.copyOf(portions);
        additions = List.copyOf(additions);
        nutrients = List.copyOf(nutrients);
    }

    /**
     * A plan in a few figures.
     *
     * @param gapShare how far the cost may be above the least that is possible, as a share of it
     */
    public record Figures(
            int days,
            double atTheTill,
            double ofTheBatch,
            double perDay,
            double cookedGrams,
            int bags,
            int bagsFrozen,
            @Nullable Double freezerMl,
            boolean provedOptimal,
            double gapShare) {}

    /** One food of either pot. */
    public record FoodLine(
            String food,
            String label,
            @Nullable Double gramsBefore,
            @Nullable Double gramsAfter,
            double shareBefore,
            double shareAfter) {}

    /**
     * A difference of the shopping.
     *
     * @param packs more to buy than before; negative for packs to put back; null for a food sold by weight
     * @param gramsAsBought the same in label weight
     * @param pays more money; negative for what is saved
     */
    public record ShoppingLine(
            String food,
            String label,
            String pack,
            @Nullable Integer packs,
            double gramsAsBought,
            double pays) {}

    /** One dog's cooked food; null when it is not fed by that plan. */
    public record PortionLine(
            String dog,
            @Nullable Integer gramsPerDayBefore,
            @Nullable Integer gramsPerDayAfter,
            @Nullable Double kcalPerDayBefore,
            @Nullable Double kcalPerDayAfter) {}

    /** What goes on top of one dog's bowl; null where a plan does not give it. */
    public record AdditionLine(
            String dog,
            String food,
            String label,
            @Nullable String doseBefore,
            @Nullable String doseAfter,
            double gramsPerDayBefore,
            double gramsPerDayAfter) {}

    /**
     * A nutrient of a dog that moved.
     *
     * @param before per 1000 kcal, as it counts toward the minimum
     * @param after likewise
     * @param byShare of the former figure; null where that was nothing
     */
    public record NutrientMove(
            String dog,
            String nutrient,
            String label,
            String unit,
            double before,
            double after,
            @Nullable Double byShare,
            @Nullable Double minimum,
            @Nullable Double maximum) {}

    /**
     * Compares two audited plans.
     *
     * @param shoppingUndone whether what the old plan buys can be put back; otherwise only what is to be picked up counts
     * @param movedShare from where on a nutrient has moved, 0.2 for a fifth
     */
    public static PlanComparison of(
            Planner.Result.Planned before, Planner.Result.Planned after, boolean shoppingUndone, double movedShare) {
        return PlanComparer.compare(before, after, shoppingUndone, movedShare);
    }
}
