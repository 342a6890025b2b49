package packpot.horizon;

import java.util.ArrayList;
import java.util.List;

/**
 * The days that one batch feeds.
 *
 * @param day cook day and first day fed, in days from the first of the household, which is 0
 * @param days that are fed
 */
public record Interval(int day, int days) {

    public Interval {
        if (day < 0 || days < 1) {
            throw new IllegalArgumentException("a batch on day " + day + " for " + days + " days");
        }
    }

    /** The first day that it no longer feeds. */
    public int end() {
        return day + days;
    }

    /**
     * The intervals between cook days.
     *
     * @param cookDays in order
     * @param end the first day that is not planned any more
     */
    static List<Interval> between(List<Integer> cookDays, int end) {
        List<Interval> all = new ArrayList<>();
        for (int i = 0; i < cookDays.size(); i++) {
            int next = i + 1 < cookDays.size() ? cookDays.get(i + 1) : end;
            all.add(new Interval(cookDays.get(i), next - cookDays.get(i)));
        }
        return all;
    }
}
