package packpot.household;

import java.time.DayOfWeek;
import java.util.List;
import java.util.Set;

/**
 * When is cooked over several weeks. Days are counted from the household's first day, which is 0.
 *
 * @param days that the household is fed
 * @param cookDays first of them is the first that is fed from a new batch; empty when they are to be chosen
 * @param cookOn weekdays on which cook days may be chosen
 * @param choice what makes a choice of cook days the best one
 * @param pricePerSession money that a cook day is worth to the cook, beside the food
 * @param frozen meals that are in the freezer already, in the order in which they are eaten
 * @param variety how batches are to differ
 */
public record Horizon(
        int days,
        List<Integer> cookDays,
        Set<DayOfWeek> cookOn,
        Choice choice,
        double pricePerSession,
        List<FrozenMeals> frozen,
        Variety variety) {

    /** The longest time that is planned for. */
    public static final int MOST_WEEKS = 26;

    public Horizon {
        cookDays = List.copyOf(cookDays);
        cookOn = Set.copyOf(cookOn);
        frozen = List.copyOf(frozen);
    }

    /** How cook days are found. */
    public enum Choice {
        /** They are given. */
        FIXED,
        /** As few as can be, and of these the cheapest. */
        FEWEST,
        /** The cheapest, with the price of each cook day. */
        CHEAPEST
    }

    /**
     * Bagged meals of an earlier batch.
     *
     * @param what in words
     * @param madeDay day on which it was cooked, 0 or below
     * @param days that they feed the household
     * @param bags that they are in
     */
    public record FrozenMeals(String what, int madeDay, int days, int bags) {}

    /**
     * How batches are to differ.
     *
     * @param proteinChanges whether no main protein comes twice in a row
     * @param vegetables least number of different vegetables and fruit over all batches; 0 for no such wish
     * @param leastVegetableShare of the batch's usual mass, what of a vegetable is worth using
     * @param mostExtraShare most that this may cost, as a share of what is cheapest
     */
    public record Variety(boolean proteinChanges, int vegetables, double leastVegetableShare, double mostExtraShare) {
        /** No such wish. */
        public static final Variety NONE = new Variety(false, 0, 0, 0);

        public boolean isWished() {
            return proteinChanges || vegetables > 0;
        }
    }

    /** The first day that is fed from a new batch. */
    public int firstCookDay() {
        return frozen.stream().mapToInt(FrozenMeals::days).sum();
    }
}
