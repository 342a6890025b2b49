package packpot.words;

import com.fasterxml.jackson.annotation.JsonValue;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * A sentence, or a part of one, that is said in any language of the bundle: {@link Texts#say(Sentence)}. As a string, and in
 * JSON, it is the English one.
 *
 * @param key of the bundle
 * @param values for {0}, {1} and so on: what the owner typed (String), counts (Integer), dates (LocalDate, {@link Weekday}),
 *     {@link Amount}, {@link Term}, other sentences, and lists of these, which are said with commas, or as {@link And}
 */
public record Sentence(String key, List<Object> values) {

    /** A date that is said with its day of the week and without its year. */
    public record Weekday(LocalDate date) {}

    /** Values that are said such as "Moss, Pip and Wren". */
    public record And(List<?> items) {
        public And {
            items = List.copyOf(items);
        }
    }

    public Sentence {
        values = List.copyOf(values);
        values.forEach(value -> check(key, value));
    }

    public static Sentence of(String key, Object... values) {
        return new Sentence(key, List.of(values));
    }

    /** A fraction has as many decimals as its writer says, so it comes as an amount. */
    private static void check(String key, Object value) {
        if (value instanceof List<?> list) {
            list.forEach(each -> check(key, each));
        } else if (value instanceof And and) {
            and.items().forEach(each -> check(key, each));
        } else if (!(value instanceof String
                || value instanceof Integer
                || value instanceof LocalDate
                || value instanceof Weekday
                || value instanceof Amount
                || value instanceof Term
                || value instanceof Sentence)) {
            throw new IllegalArgumentException(key + " cannot say a " + value.getClass());
        }
    }

    /** Items that may hold commas themselves, between semicolons. */
    public static Object apart(List<?> items) {
        List<Object> rest = new ArrayList<>(items);
        if (rest.isEmpty()) {
            return "";
        }
        Object said = rest.remove(0);
        for (Object item : rest) {
            said = of("list.apart", said, item);
        }
        return said;
    }

    @Override
    @JsonValue
    public String toString() {
        return Texts.ENGLISH.say(this);
    }
}
