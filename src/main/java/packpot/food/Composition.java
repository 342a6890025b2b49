package packpot.food;

import java.util.EnumMap;
import java.util.Map;

/** What one gram of a food holds, each constituent in its own unit. What was not measured stays unknown. */
public final class Composition {
    private final Map<Constituent, Double> perGram;

    private Composition(Map<Constituent, Double> perGram) {
        this.perGram = perGram;
    }

    /** From figures per 100 g; a constituent that the map lacks is unknown. */
    public static Composition ofPer100Grams(Map<Constituent, Double> figures) {
        Map<Constituent, Double> perGram = new EnumMap<>(Constituent.class);
        figures.forEach((constituent, figure) -> perGram.put(constituent, figure / 100));
        return new Composition(perGram);
    }

    public boolean knows(Constituent constituent) {
        return perGram.containsKey(constituent);
    }

    /** Units of the constituent per gram of food; zero when it is unknown, so ask {@link #knows} first where it matters. */
    public double perGram(Constituent constituent) {
        return perGram.getOrDefault(constituent, 0.0);
    }
}
