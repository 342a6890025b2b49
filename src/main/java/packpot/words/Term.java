package packpot.words;

import java.util.Locale;

/**
 * Something that the models name in English. Other languages name it in the bundle under kind and id; where they do not, it
 * stays English.
 */
public record Term(String kind, String id, String english) {

    public static Term food(String id, String label) {
        return new Term("food", id, label);
    }

    public static Term nutrient(String key, String label) {
        return new Term("nutrient", key, label);
    }

    /** One that has no id but its English words. */
    public static Term ofWords(String kind, String english) {
        return new Term(kind, english.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "_"), english);
    }

    /** Where other languages name it. */
    String key() {
        return kind + "." + id.replace(' ', '_');
    }

    @Override
    public String toString() {
        return english;
    }
}
