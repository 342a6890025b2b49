package packpot.sheets;

import java.util.Locale;
import packpot.units.UnitSystem;

/** Paper that sheets are printed on. Sizes: ISO 216, and ANSI/ASME Y14.1 size A. */
public enum Paper {
    A4(210, 297),
    LETTER(215.9, 279.4);

    private final double widthMm;
    private final double heightMm;

    Paper(double widthMm, double heightMm) {
        this.widthMm = widthMm;
        this.heightMm = heightMm;
    }

    /** What a household of this system of units has in its printer. */
    public static Paper usual(UnitSystem units) {
        return units == UnitSystem.METRIC ? A4 : LETTER;
    }

    public double widthMm() {
        return widthMm;
    }

    public double heightMm() {
        return heightMm;
    }

    /** The name in options and in CSS. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
