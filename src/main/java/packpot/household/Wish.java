package packpot.household;

/**
 * Something that the household asks of a plan, or that a profile asks for one of its dogs. Every row of the model and
 * every finding of the audit speaks of one.
 *
 * @param who the dog, or empty when it concerns the batch
 * @param what the nutrient, food, or part of the kitchen
 * @param sentence the wish in words with its figure, such as "Moss: calcium at least 1.31 g per 1000 kcal"
 * @param size how much of the row's unit the wish is about, so that misses can be compared
 */
public record Wish(Kind kind, String who, String what, String sentence, double size) {

    /** What kind of thing is wished. */
    public enum Kind {
        ENERGY,
        NUTRIENT_MINIMUM,
        NUTRIENT_MAXIMUM,
        RATIO,
        SHAPE,
        FOOD_LIMIT,
        MUST_USE,
        /** What is in the house of a food that the shop does not have. */
        STOCK,
        /** A food that a dog must not get. */
        AVOID,
        INGREDIENTS,
        ADDITIONS,
        POT,
        BIN,
        BAGS,
        FREEZER,
        BUDGET,
        RECIPE
    }
}
