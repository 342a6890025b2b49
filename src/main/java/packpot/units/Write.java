package packpot.units;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Writes base units as people type them into a scenario, to be read back by {@link Quantity} and {@link Price}. What is
 * read back lies on the side that the rounding asks for, but for the last digits of a computer's numbers.
 */
public final class Write {
    /** As a share of a figure, what comes of reckoning in binary numbers and means nothing. */
    private static final double NOISE = 1e-12;

    private static final int GRAM_DECIMALS = 3;
    /** A thousandth of a quart or litre is less than what the audit tells apart. */
    private static final int VOLUME_DECIMALS = 3;

    private static final int PERCENT_DECIMALS = 2;

    private Write() {}

    /** "455 g". */
    public static String grams(double grams, RoundingMode rounding) {
        return number(grams, 0, GRAM_DECIMALS, rounding) + " " + Unit.GRAM.symbol();
    }

    /** A volume, given in ml, in one unit: "12.5 qt". */
    public static String volume(double millilitres, Unit unit, RoundingMode rounding) {
        return number(millilitres / unit.inBaseUnit(), 0, VOLUME_DECIMALS, rounding) + " " + unit.symbol();
    }

    /** A share in percent: 0.055 is "5.5 %". */
    public static String share(double share, RoundingMode rounding) {
        return number(100 * share, 0, PERCENT_DECIMALS, rounding) + " %";
    }

    /** Money in the decimals of its currency: "$62.50" or "62.50 CHF". */
    public static String money(double amount, String currencyCode, RoundingMode rounding) {
        int decimals = Show.decimals(currencyCode);
        return money(number(amount, decimals, decimals, rounding), currencyCode);
    }

    /** Money in up to so many decimals, for prices finer than a coin: "$0.0125". */
    public static String price(double amount, int mostDecimals, String currencyCode, RoundingMode rounding) {
        int decimals = Show.decimals(currencyCode);
        return money(number(amount, decimals, Math.max(decimals, mostDecimals), rounding), currencyCode);
    }

    private static String money(String number, String currencyCode) {
        String sign = Price.sign(currencyCode);
        return sign.length() == 1 ? sign + number : number + " " + currencyCode;
    }

    private static String number(double value, int leastDecimals, int mostDecimals, RoundingMode rounding) {
        BigDecimal exact = BigDecimal.valueOf(value);
        BigDecimal nearest = exact.setScale(mostDecimals, RoundingMode.HALF_EVEN);
        boolean same = Math.abs(nearest.doubleValue() - value) <= NOISE * Math.abs(value);
        BigDecimal written = (same ? nearest : exact.setScale(mostDecimals, rounding)).stripTrailingZeros();
        return written.setScale(Math.max(leastDecimals, written.scale()), RoundingMode.UNNECESSARY)
                .toPlainString();
    }
}
