package packpot.household;

import org.jspecify.annotations.Nullable;
import packpot.dog.Transition;

/** Reads from what food a dog comes, and in how many days it goes over to the batch. */
final class TransitionReader {
    private static final int LEAST_DAYS = 4;
    private static final int MOST_DAYS = 28;

    private TransitionReader() {}

    static @Nullable Transition read(Fields dog, KitchenFigures figures) {
        String from = dog.text("comesFrom");
        Integer days = dog.whole("transitionDays", LEAST_DAYS, MOST_DAYS);
        if (dog.has("transitionDays") && !dog.has("comesFrom")) {
            dog.fault(
                    "transitionDays",
                    "is given without \"comesFrom\"; give the food that it eats now, such as \"comesFrom\": \"dry"
                            + " food\", or take it out");
        }
        return from == null
                ? null
                : new Transition(
                        from,
                        figures.newFoodShares(days == null ? (int) figures.number("transitionDaysDefault") : days));
    }
}
