package packpot.food;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import packpot.data.ModelFiles;

/** Foods that harm dogs, known by whole words of their names: a chop is not hops. */
public final class UnsafeFoods {

    /** What is done about a food. */
    public enum Rule {
        /** Never in a plan, at any price and in any form. */
        BLOCK,
        /** Only when cooked. */
        COOK,
        /** Allowed, with a sentence for people. */
        CAUTION
    }

    /**
     * A kind of food that harms dogs.
     *
     * @param id by which other languages name it
     * @param food what it is
     * @param why the harm, with the published figure
     * @param advice what to do
     * @param source keys of models/SOURCES.md
     */
    public record UnsafeFood(
            String id,
            String food,
            Rule rule,
            String why,
            String advice,
            String source,
            Pattern words,
            Pattern notWords) {

        /** Whether the name of a food, in any case, speaks of this. */
        boolean matches(String name) {
            // A poison is excused by no other word of the name: "grape tomatoes" excuses that phrase alone.
            if (rule == Rule.BLOCK) {
                return words.matcher(notWords.matcher(name).replaceAll(" | ")).find();
            }
            return words.matcher(name).find() && !notWords.matcher(name).find();
        }
    }

    private final List<UnsafeFood> foods;
    /** What was found in a name: audits and searches for mends ask the same names again and again. */
    private final Map<String, List<UnsafeFood>> known = new ConcurrentHashMap<>();

    private UnsafeFoods(List<UnsafeFood> foods) {
        this.foods = foods;
    }

    /** From models/unsafe_foods.csv. */
    public static UnsafeFoods load() {
        return new UnsafeFoods(ModelFiles.table("unsafe_foods.csv").stream()
                .map(row -> new UnsafeFood(
                        row.required("id"),
                        row.required("food"),
                        Rule.valueOf(row.required("rule").toUpperCase(Locale.ROOT)),
                        row.required("why"),
                        row.text("advice"),
                        row.required("source"),
                        wholeWords(row.list("match_words")),
                        wholeWords(row.list("not_words"))))
                .toList());
    }

    private static Pattern wholeWords(List<String> words) {
        if (words.isEmpty()) {
            return Pattern.compile("(?!)");
        }
        String choice = String.join(
                "|",
                words.stream()
                        .map(word -> Pattern.quote(word).replace(" ", "\\E[^\\p{L}\\p{N}]+\\Q"))
                        .toList());
        return Pattern.compile(
                "(?<![\\p{L}\\p{N}])(?:" + choice + ")(?![\\p{L}\\p{N}])",
                Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    }

    /** Everything that the name of a food speaks of. */
    public List<UnsafeFood> inName(String name) {
        return known.computeIfAbsent(
                name,
                each -> foods.stream().filter(unsafe -> unsafe.matches(each)).toList());
    }

    public List<UnsafeFood> all() {
        return foods;
    }
}
