package packpot.household;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import packpot.units.Dimension;
import packpot.units.Quantity;
import packpot.units.UnitException;

/**
 * One object of the scenario file, read field by field. A field that is missing or wrong adds a fault and reads as
 * null, so that reading goes on and all faults are told at once.
 */
final class Fields {
    static final int MOST_CHARACTERS = 80;
    private static final Pattern PERCENT = Pattern.compile("\\s*(\\d*\\.?\\d+)\\s*%\\s*");

    private final JsonNode object;
    private final String path;
    private final List<Fault> faults;
    private final Set<String> asked = new LinkedHashSet<>();

    Fields(JsonNode object, String path, List<Fault> faults) {
        this.object = object;
        this.path = path;
        this.faults = faults;
        if (!object.isObject()) {
            faults.add(new Fault(path, "read " + shown(object) + ", expected an object in braces"));
        }
    }

    /** An object of which the file says nothing. */
    static Fields none(String path) {
        return new Fields(JsonNodeFactory.instance.objectNode(), path, new ArrayList<>());
    }

    boolean has(String name) {
        asked.add(name);
        return !get(name).isMissingNode() && !get(name).isNull();
    }

    private JsonNode get(String name) {
        asked.add(name);
        return object.path(name);
    }

    String pathOf(String name) {
        return path.isEmpty() ? name : path + "." + name;
    }

    void fault(String name, String message) {
        if (!object.isObject()) {
            // That it is no object was told; what it lacks follows from that.
            return;
        }
        faults.add(new Fault(pathOf(name), message));
    }

    private void unexpected(String name, String expected) {
        fault(name, "read " + shown(get(name)) + ", expected " + expected);
    }

    private static String shown(JsonNode node) {
        String text = node.toString();
        return text.length() > 60 ? text.substring(0, 57) + "..." : text;
    }

    @Nullable
    String text(String name) {
        if (!has(name)) {
            return null;
        }
        JsonNode node = get(name);
        if (!node.isTextual() || node.textValue().isBlank()) {
            unexpected(name, "a text in quotes");
            return null;
        }
        if (node.textValue().codePoints().anyMatch(Fields::steers)) {
            unexpected(name, "a text on one line, without control characters");
            return null;
        }
        if (node.textValue().length() > MOST_CHARACTERS) {
            unexpected(name, "at most " + MOST_CHARACTERS + " characters");
            return null;
        }
        return node.textValue().strip();
    }

    /** Control characters, and marks that turn the direction of writing; joiners within words and emoji may stay. */
    private static boolean steers(int c) {
        int type = Character.getType(c);
        boolean joiner = c == 0x200C || c == 0x200D;
        return Character.isISOControl(c)
                || (type == Character.FORMAT && !joiner)
                || type == Character.LINE_SEPARATOR
                || type == Character.PARAGRAPH_SEPARATOR;
    }

    @Nullable
    String requiredText(String name, String whatFor) {
        if (!has(name)) {
            fault(name, "is missing; expected " + whatFor);
            return null;
        }
        return text(name);
    }

    boolean flag(String name, boolean usual) {
        if (!has(name)) {
            return usual;
        }
        if (!get(name).isBoolean()) {
            unexpected(name, "true or false, without quotes");
            return usual;
        }
        return get(name).booleanValue();
    }

    @Nullable
    Integer whole(String name, int least, int most) {
        if (!has(name)) {
            return null;
        }
        JsonNode node = get(name);
        if (!node.isIntegralNumber() || !node.canConvertToInt() || node.intValue() < least || node.intValue() > most) {
            unexpected(name, "a whole number from " + least + " to " + most);
            return null;
        }
        return node.intValue();
    }

    /** A share written as "5 %"; 0.05. */
    @Nullable
    Double share(String name, double most) {
        if (!has(name)) {
            return null;
        }
        Matcher matcher = PERCENT.matcher(get(name).isTextual() ? get(name).textValue() : "");
        if (!matcher.matches() || Double.parseDouble(matcher.group(1)) > most * 100) {
            unexpected(name, "a share from \"0 %\" to \"" + Math.round(most * 100) + " %\"");
            return null;
        }
        return Double.parseDouble(matcher.group(1)) / 100;
    }

    /** An amount in g, ml, kcal or days. */
    @Nullable
    Double quantity(String name, Dimension dimension) {
        if (!has(name)) {
            return null;
        }
        JsonNode node = get(name);
        if (!node.isTextual()) {
            unexpected(name, dimension.words() + " in quotes with its unit, such as " + dimension.example());
            return null;
        }
        return parsed(
                name, node.textValue(), text -> Quantity.parse(text, dimension).inBaseUnits());
    }

    /** A text read by a parser whose message is told as it is. */
    <T> @Nullable T parsed(String name, String text, Parser<T> parser) {
        try {
            return parser.parse(text);
        } catch (UnitException e) {
            fault(name, e.getMessage() == null ? "cannot be read" : e.getMessage());
            return null;
        }
    }

    /** Reads a text, or says in its exception why it cannot. */
    @FunctionalInterface
    interface Parser<T> {
        T parse(String text) throws UnitException;
    }

    @Nullable
    LocalDate date(String name) {
        String text = text(name);
        if (text == null) {
            return null;
        }
        try {
            return LocalDate.parse(text);
        } catch (DateTimeParseException e) {
            unexpected(name, "a date such as \"2026-03-07\" (year-month-day)");
            return null;
        }
    }

    /** One text of a list, as a date. */
    @Nullable
    LocalDate dateOf(String name, String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeParseException e) {
            fault(name, "read \"" + text + "\", expected a date such as \"2026-03-07\" (year-month-day)");
            return null;
        }
    }

    /** One of a set of words, in any case. */
    <T> @Nullable T choice(String name, List<T> choices, Function<T, String> key) {
        String text = text(name);
        if (text == null) {
            return null;
        }
        for (T choice : choices) {
            if (key.apply(choice).equals(text.toLowerCase(Locale.ROOT))) {
                return choice;
            }
        }
        List<String> keys = choices.stream().map(key).toList();
        unexpected(name, "one of " + String.join(", ", keys) + Nearest.advice(text, keys, 1));
        return null;
    }

    @Nullable
    Fields object(String name) {
        return has(name) ? new Fields(get(name), pathOf(name), faults) : null;
    }

    /** The objects of a list; none when the field is missing. */
    List<Fields> objects(String name) {
        List<Fields> objects = new ArrayList<>();
        List<JsonNode> nodes = nodes(name);
        for (int i = 0; i < nodes.size(); i++) {
            objects.add(new Fields(nodes.get(i), pathOf(name) + "[" + i + "]", faults));
        }
        return objects;
    }

    List<String> texts(String name) {
        List<String> texts = new ArrayList<>();
        for (JsonNode node : nodes(name)) {
            if (node.isTextual() && !node.textValue().isBlank()) {
                texts.add(node.textValue().strip());
            } else {
                unexpected(name, "a list of texts in quotes");
            }
        }
        return texts;
    }

    private List<JsonNode> nodes(String name) {
        List<JsonNode> nodes = new ArrayList<>();
        if (has(name)) {
            if (get(name).isArray()) {
                get(name).forEach(nodes::add);
            } else {
                unexpected(name, "a list in square brackets");
            }
        }
        return nodes;
    }

    /** The names of the fields that the file has. */
    List<String> names() {
        List<String> names = new ArrayList<>();
        object.fieldNames().forEachRemaining(names::add);
        return names;
    }

    /** A field as it stands, for values that may have several kinds. */
    JsonNode raw(String name) {
        return get(name);
    }

    /** Ends the reading: a field that nobody asked for is misspelt, or does not exist. */
    void end() {
        for (String name : names()) {
            if (!asked.contains(name) && !name.equals("note")) {
                faults.add(new Fault(
                        pathOf(name),
                        "is not a field known here" + Nearest.advice(name, asked, 1) + "; known: "
                                + String.join(", ", asked)));
            }
        }
    }
}
