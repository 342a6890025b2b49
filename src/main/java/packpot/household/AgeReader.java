package packpot.household;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import packpot.units.Dimension;

/** Reads "age" or "born" of a dog. */
final class AgeReader {
    private static final double MOST_YEARS = 30;
    private static final double YOUNGEST_DAYS = 28;

    private AgeReader() {}

    /**
     * The age in days on the first day of the plan; null, with a fault, when it cannot be read.
     *
     * @param comesDay first day that the dog is there; null when it is there already
     */
    static @Nullable Double days(Fields fields, LocalDate start, @Nullable Integer comesDay) {
        LocalDate born = fields.date("born");
        Double age = fields.quantity("age", Dimension.TIME);
        if (!fields.has("born") && !fields.has("age")) {
            fields.fault("age", "is missing; expected \"age\": \"4 years\" or \"born\": \"2022-05-01\"");
            return null;
        }
        if (fields.has("born") && fields.has("age")) {
            fields.fault("age", "is given beside \"born\"; give one of the two");
            return null;
        }
        if (born != null && born.isAfter(start)) {
            fields.fault("born", "read " + born + ", which is after the plan's first day, " + start);
            return null;
        }
        Double days = born == null ? age : (Double) (double) ChronoUnit.DAYS.between(born, start);
        if (days != null && days > MOST_YEARS * 365.25) {
            fields.fault(
                    born == null ? "age" : "born",
                    String.format(
                            Locale.ROOT,
                            "is %.0f years, which no dog reaches; expected at most %.0f",
                            days / 365.25,
                            MOST_YEARS));
            return null;
        }
        if (days != null && days + (comesDay == null ? 0 : comesDay) < YOUNGEST_DAYS) {
            fields.fault(
                    born == null ? "age" : "born",
                    String.format(
                            Locale.ROOT,
                            "is %.0f days; a puppy under four weeks lives on its mother's milk, and none is planned for it here",
                            days));
            return null;
        }
        return days;
    }
}
