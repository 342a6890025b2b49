package packpot.units;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A price in the household's currency.
 *
 * @param amount money
 * @param per what the amount buys, in g or ml; null when it buys one pack
 */
public record Price(double amount, @Nullable Quantity per) {

    private static final Map<String, String> SYMBOLS = Map.of("$", "USD", "€", "EUR", "£", "GBP", "¥", "JPY");
    private static final double MOST = 1e9;
    private static final Pattern TEXT =
            Pattern.compile("\\s*([$€£¥]?)\\s*(\\d*\\.?\\d+)\\s*([A-Za-z]{3})?\\s*(?:(?:/|per\\s)\\s*(.+))?");

    /** Reads "$4.49", "4.49", "4.49 EUR", "$4.49/lb" or "$1.20 per 100 g". */
    public static Price parse(String text, String currencyCode) throws UnitException {
        Matcher matcher = TEXT.matcher(text);
        if (!matcher.matches()) {
            throw new UnitException(
                    "read \"" + text
                            + "\", expected a price such as \"$4.49\" for a pack or \"$4.49/lb\", with a point and without commas");
        }
        String symbol = matcher.group(1);
        String code = matcher.group(3);
        String named = code != null ? code.toUpperCase(Locale.ROOT) : SYMBOLS.get(symbol);
        // A dollar sign stands for any dollar; a named code must be the household's own.
        boolean anyDollar = "$".equals(symbol) && currencyCode.endsWith("D");
        if (named != null && !named.equals(currencyCode) && !anyDollar) {
            throw new UnitException("read \"" + text + "\" in " + named + ", but the household's currency is "
                    + currencyCode + "; write all prices in one currency, or change \"currency\"");
        }
        double amount = Double.parseDouble(matcher.group(2));
        if (amount > MOST) {
            throw new UnitException("read \"" + text + "\"; expected a price of at most a thousand million");
        }
        String per = matcher.group(4);
        return new Price(amount, per == null ? null : per(per.strip()));
    }

    private static Quantity per(String text) throws UnitException {
        String counted = Character.isDigit(text.charAt(0)) ? text : "1 " + text;
        for (Dimension dimension : new Dimension[] {Dimension.MASS, Dimension.VOLUME}) {
            try {
                return Quantity.parse(counted, dimension);
            } catch (UnitException other) {
                // The message below tells what both would take.
            }
        }
        throw new UnitException(
                "read \"" + text + "\" as what a price is for; expected a weight or a volume, such as \"$4.49/lb\","
                        + " \"$1.20 per 100 g\" or \"$2/l\"");
    }

    /** The sign that stands before an amount of this currency, or the code itself. */
    public static String sign(String currencyCode) {
        return SYMBOLS.entrySet().stream()
                .filter(entry -> entry.getValue().equals(currencyCode))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse(currencyCode.endsWith("D") ? "$" : currencyCode + " ");
    }
}
