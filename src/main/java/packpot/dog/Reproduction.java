package packpot.dog;

/** A bitch in whelp or nursing. */
public sealed interface Reproduction {

    /**
     * In whelp.
     *
     * @param week week of gestation, 1 to 9
     */
    record Gestation(int week) implements Reproduction {}

    /**
     * Nursing.
     *
     * @param week week after whelping, 1 to 4
     * @param puppies puppies that she nurses
     */
    record Lactation(int week, int puppies) implements Reproduction {}
}
