package packpot.units;

/** What a quantity measures, and the words used when it is asked for. */
public enum Dimension {
    MASS("a weight", "\"21 lb\" or \"9.5 kg\""),
    VOLUME("a volume", "\"1.5 cup\", \"20 qt\" or \"5 l\""),
    ENERGY("an energy", "\"650 kcal\""),
    TIME("a length of time", "\"14 days\" or \"5 months\"");

    private final String words;
    private final String example;

    Dimension(String words, String example) {
        this.words = words;
        this.example = example;
    }

    public String words() {
        return words;
    }

    public String example() {
        return example;
    }
}
