package packpot.cli;

import java.util.Locale;
import java.util.OptionalDouble;

/** A share as people type it: "5%", "5 %" or "5". */
final class Percent {

    private Percent() {}

    /** The share, such as 0.05; empty when the text is no number. */
    static OptionalDouble share(String text) {
        String given = text.strip().toLowerCase(Locale.ROOT);
        String figure =
                given.endsWith("%") ? given.substring(0, given.length() - 1).strip() : given;
        try {
            return OptionalDouble.of(Double.parseDouble(figure) / 100);
        } catch (NumberFormatException e) {
            return OptionalDouble.empty();
        }
    }
}
