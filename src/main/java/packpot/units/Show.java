package packpot.units;

import java.util.Currency;
import java.util.Locale;

/** Prints base units for people. */
public final class Show {
    private static final double POUND_GRAMS = Unit.POUND.inBaseUnit();
    private static final double OUNCE_GRAMS = Unit.OUNCE.inBaseUnit();

    private Show() {}

    /** A number with as many decimals as its size asks for, at most four significant digits below 1000. */
    public static String number(double value) {
        double size = Math.abs(value);
        int decimals = size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : size >= 0.1 ? 3 : 4;
        String text = String.format(Locale.ROOT, "%,." + decimals + "f", value);
        return decimals == 0 ? text : text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }

    public static String grams(double grams) {
        if (grams < 1) {
            return String.format(Locale.ROOT, "%.0f mg", grams * 1000);
        }
        return String.format(Locale.ROOT, grams < 10 && grams != Math.rint(grams) ? "%,.1f g" : "%,.0f g", grams);
    }

    /** A weight in the household's own system: "3 lb 4 oz" or "1.48 kg". */
    public static String weight(double grams, UnitSystem system) {
        if (system == UnitSystem.METRIC) {
            return grams < 1000 ? grams(grams) : number(grams / 1000) + " kg";
        }
        if (grams < 10 * OUNCE_GRAMS) {
            return number(Math.round(grams / OUNCE_GRAMS * 10) / 10.0) + " oz";
        }
        long ounces = Math.round(grams / OUNCE_GRAMS);
        long pounds = ounces / 16;
        long rest = ounces % 16;
        return pounds == 0 ? rest + " oz" : rest == 0 ? pounds + " lb" : pounds + " lb " + rest + " oz";
    }

    /** A dog's weight with one decimal. */
    public static String bodyWeight(double kilograms, UnitSystem system) {
        return system == UnitSystem.METRIC
                ? String.format(Locale.ROOT, "%.1f kg", kilograms)
                : String.format(Locale.ROOT, "%.1f lb", kilograms * 1000 / POUND_GRAMS);
    }

    /** A volume in the household's own system: "18.9 l" or "20 qt". */
    public static String volume(double millilitres, UnitSystem system) {
        if (system == UnitSystem.METRIC) {
            return millilitres < 1000
                    ? String.format(Locale.ROOT, "%.0f ml", millilitres)
                    : String.format(Locale.ROOT, "%.1f l", millilitres / 1000);
        }
        double quarts = millilitres / Unit.QUART.inBaseUnit();
        return String.format(Locale.ROOT, quarts < 10 ? "%.1f qt" : "%.0f qt", quarts);
    }

    /** A helping in scoops: cups to the nearest eighth, or millilitres to the nearest 10. */
    public static String scoop(double millilitres, UnitSystem system) {
        if (system == UnitSystem.METRIC) {
            return String.format(Locale.ROOT, "%d ml", Math.round(millilitres / 10) * 10);
        }
        double cups = millilitres / Unit.CUP.inBaseUnit();
        return cups < 0.125
                ? fraction(millilitres / Unit.TABLESPOON.inBaseUnit(), 4) + " tbsp"
                : fraction(cups, 8) + " cup";
    }

    /** A count in parts of the given size: 1.25 in quarters is "1 1/4". */
    public static String fraction(double value, int parts) {
        long units = Math.max(1, Math.round(value * parts));
        long whole = units / parts;
        long rest = units % parts;
        if (rest == 0) {
            return Long.toString(whole);
        }
        long divisor = gcd(rest, parts);
        String part = rest / divisor + "/" + parts / divisor;
        return whole == 0 ? part : whole + " " + part;
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }

    /** Decimals that amounts of a currency have; 2 where it is not known. */
    static int decimals(String currencyCode) {
        try {
            return Math.max(0, Currency.getInstance(currencyCode).getDefaultFractionDigits());
        } catch (IllegalArgumentException notInIso4217) {
            return 2;
        }
    }

    public static String money(double amount, String currencyCode) {
        String sign = amount < 0 ? "-" : "";
        return sign
                + Price.sign(currencyCode)
                + String.format(Locale.ROOT, "%,." + decimals(currencyCode) + "f", Math.abs(amount));
    }
}
