package packpot.words;

/**
 * Figures with their units, a pack or a measure, as plans print them: "2.5 lb", "21 %", "1 3/4 tsp". Other languages say them
 * by {@link Texts#amount}.
 */
public record Amount(String english) {
    @Override
    public String toString() {
        return english;
    }
}
