package packpot.household;

import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.apache.commons.text.similarity.JaroWinklerSimilarity;

/** The names that a misspelt one may have meant. */
public final class Nearest {
    private static final JaroWinklerSimilarity SIMILARITY = new JaroWinklerSimilarity();
    private static final double ALIKE = 0.72;

    private Nearest() {}

    /** Up to {@code most} of the candidates, nearest first; none that is not alike at all. */
    public static List<String> of(String name, Collection<String> candidates, int most) {
        return candidates.stream()
                .distinct()
                .filter(candidate -> likeness(name, candidate) >= ALIKE)
                .sorted(Comparator.comparingDouble((String candidate) -> -likeness(name, candidate))
                        .thenComparing(Comparator.naturalOrder()))
                .limit(most)
                .toList();
    }

    /** A sentence of advice, or nothing when no candidate is near. */
    public static String advice(String name, Collection<String> candidates, int most) {
        List<String> near = of(name, candidates, most);
        return near.isEmpty()
                ? ""
                : "; near it: "
                        + String.join(
                                ", ", near.stream().map(n -> "\"" + n + "\"").toList());
    }

    private static double likeness(String name, String candidate) {
        String a = name.toLowerCase(Locale.ROOT);
        String b = candidate.toLowerCase(Locale.ROOT);
        Set<String> shared = words(a);
        int asked = shared.size();
        shared.retainAll(words(b));
        // Food names are many words in any order, so common words count beside the spelling.
        return SIMILARITY.apply(a, b) + (asked == 0 ? 0 : 0.5 * shared.size() / asked);
    }

    private static Set<String> words(String text) {
        return new HashSet<>(Arrays.asList(text.split("[^\\p{L}\\p{N}]+")));
    }
}
