package packpot.ration;

import packpot.household.Recipe;

/** What a plan must keep of a recipe, and what it is to be best at. Foods of the pantry outside the recipe are supplements alone. */
public sealed interface RecipeGoal extends Goal {
    Recipe recipe();

    /**
     * The pot's proportions stay, supplements may be added, and the cost is least.
     *
     * @param moreOil whether the recipe's own oils may be more than their part of it; as little oil as will do comes
     *     before the cost
     */
    record AddOnly(Recipe recipe, boolean moreOil) implements RecipeGoal {
        public AddOnly(Recipe recipe) {
            this(recipe, false);
        }
    }

    /**
     * The amounts lie as near to the recipe's as can be, each new supplement or food counting as a change too, and of
     * equally near ones the cheaper are taken.
     *
     * @param scale that the recipe's amounts are multiplied with before the distance is measured
     * @param newFoods most foods outside the recipe, supplements not counted
     */
    record Nearest(Recipe recipe, double scale, int newFoods) implements RecipeGoal {
        public Nearest(Recipe recipe, double scale) {
            this(recipe, scale, 0);
        }
    }

    /**
     * The same foods, each within a band around its share of the recipe, at least cost.
     *
     * @param band how far a share may lie off the recipe's, as a share of that: 0.25 lets 40 % become 30 to 50 %
     */
    record SameShares(Recipe recipe, double band) implements RecipeGoal {}
}
