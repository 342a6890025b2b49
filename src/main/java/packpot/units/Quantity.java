package packpot.units;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** An amount of one dimension in its base unit: g, ml, kcal or day. */
public record Quantity(double inBaseUnits, Dimension dimension) {

    private static final Pattern PART = Pattern.compile(
            "\\s*(\\d+\\s+\\d+/\\d+|\\d+/\\d+|\\d*\\.?\\d+(?:[eE][+-]?\\d+)?)\\s*([a-zA-Z][a-zA-Z0-9]*(?:\\s+(?:oz|ft|ounces?|foot|feet))?)\\.?");
    private static final Map<String, Unit> BY_SPELLING = bySpelling();

    private static Map<String, Unit> bySpelling() {
        Map<String, Unit> units = new HashMap<>();
        for (Unit unit : Unit.values()) {
            for (String spelling : unit.spellings()) {
                units.put(spelling.toLowerCase(Locale.ROOT), unit);
            }
        }
        return units;
    }

    /** Reads text such as "21 lb", "9.5kg", "1 1/2 cups" or "3 lb 4 oz". */
    public static Quantity parse(String text, Dimension expected) throws UnitException {
        String trimmed = text.strip();
        Matcher matcher = PART.matcher(trimmed);
        List<Quantity> parts = new ArrayList<>();
        int end = 0;
        while (matcher.find() && matcher.start() == end) {
            parts.add(part(matcher.group(1), matcher.group(2), text, expected));
            end = matcher.end();
        }
        if (parts.isEmpty() || !trimmed.substring(end).isBlank()) {
            throw new UnitException("read " + quote(text) + ", expected " + expected.words()
                    + " with its unit, such as " + expected.example());
        }
        double sum = parts.stream().mapToDouble(Quantity::inBaseUnits).sum();
        return new Quantity(sum, expected);
    }

    private static Quantity part(String number, String unitText, String whole, Dimension expected)
            throws UnitException {
        Unit unit = BY_SPELLING.get(unitText.replaceAll("\\s+", " ").toLowerCase(Locale.ROOT));
        if (unit == null) {
            throw new UnitException("read " + quote(whole) + ": " + quote(unitText)
                    + " is not a unit known here; expected " + expected.words() + " in one of: " + symbols(expected));
        }
        if (unit.dimension() != expected) {
            throw new UnitException("read " + quote(whole) + ", which is "
                    + unit.dimension().words() + "; expected " + expected.words() + ", such as " + expected.example());
        }
        double amount = number(number) * unit.inBaseUnit();
        if (!Double.isFinite(amount)) {
            throw new UnitException("read " + quote(whole) + ": " + quote(number) + " is not a number");
        }
        return new Quantity(amount, expected);
    }

    /** A bare number as people write it: "2", "0.5", "1/4" or "2 1/2". */
    public static double number(String text) {
        String[] words = text.strip().split("\\s+", -1);
        double sum = 0;
        for (String word : words) {
            int slash = word.indexOf('/');
            sum += slash < 0
                    ? Double.parseDouble(word)
                    : Double.parseDouble(word.substring(0, slash)) / Double.parseDouble(word.substring(slash + 1));
        }
        return sum;
    }

    private static String symbols(Dimension dimension) {
        List<String> symbols = new ArrayList<>();
        for (Unit unit : Unit.values()) {
            if (unit.dimension() == dimension) {
                symbols.add(unit.symbol());
            }
        }
        return String.join(", ", symbols);
    }

    private static String quote(String text) {
        return "\"" + text + "\"";
    }
}
