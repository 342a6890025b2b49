package packpot.household;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import packpot.food.Food;

/** Which foods of a scenario's pantry somebody means. */
final class PantryWords {
    private static final String EVERY = "all ";

    private final List<ObjectNode> entries = new ArrayList<>();
    private final Knowledge knowledge;

    PantryWords(ObjectNode tree, Knowledge knowledge) {
        this.knowledge = knowledge;
        for (JsonNode node : tree.path("pantry")) {
            if (node instanceof ObjectNode entry && entry.path("food").isTextual()) {
                entries.add(entry);
            }
        }
    }

    /** The name of a pantry entry as the file has it. */
    static String name(ObjectNode entry) {
        return entry.path("food").asText().strip();
    }

    static boolean speaksOfAll(String subject) {
        return subject.toLowerCase(Locale.ROOT).startsWith(EVERY);
    }

    List<String> names() {
        return entries.stream().map(PantryWords::name).toList();
    }

    /** Whether a pantry entry is called just so. */
    boolean isExact(String subject) {
        return entries.stream().anyMatch(entry -> called(entry, subject));
    }

    /** The entry of that name; else all whose names hold every one of the words, or whose group is so called. */
    List<ObjectNode> meantBy(String subject) {
        String words = speaksOfAll(subject) ? subject.substring(EVERY.length()).strip() : subject;
        List<ObjectNode> exact =
                entries.stream().filter(entry -> called(entry, subject)).toList();
        return exact.isEmpty()
                ? entries.stream().filter(entry -> speaksOf(entry, words)).toList()
                : exact;
    }

    private boolean called(ObjectNode entry, String subject) {
        Food food = knowledge.foods().find(name(entry));
        return name(entry).equalsIgnoreCase(subject)
                || (food != null && food.equals(knowledge.foods().find(subject)));
    }

    private boolean speaksOf(ObjectNode entry, String words) {
        Food food = knowledge.foods().find(name(entry));
        if (food != null && Avoidance.names(words, food)) {
            return true;
        }
        String name = name(entry).toLowerCase(Locale.ROOT);
        List<String> parts = Arrays.asList(name.split("[^\\p{L}\\p{N}]+", -1));
        return Arrays.stream(words.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+", -1))
                .filter(word -> !word.isEmpty())
                .allMatch(word -> parts.contains(word) || parts.contains(word + "s"));
    }
}
