package packpot.dog;

import org.jspecify.annotations.Nullable;

/** A bitch in whelp or nursing. */
public sealed interface Reproduction {

    /**
     * In whelp.
     *
     * @param week week of gestation, 1 to 9
     * @param expectedPuppies size of the litter, when an examination has told it
     */
    record Gestation(int week, @Nullable Integer expectedPuppies) implements Reproduction {

        /** In whelp with a litter whose size is not known. */
        public Gestation(int week) {
            this(week, null);
        }
    }

    /**
     * Nursing.
     *
     * @param week week after whelping, 1 to 4
     * @param puppies puppies that she nurses
     */
    record Lactation(int week, int puppies) implements Reproduction {}
}
