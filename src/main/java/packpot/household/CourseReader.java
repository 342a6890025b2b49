package packpot.household;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import packpot.dog.WeightFigures;
import packpot.units.Show;

/** Reads when a dog comes and leaves, and how fast its weight is to change. */
final class CourseReader {
    private final LocalDate start;
    private final WeightFigures figures;

    CourseReader(LocalDate start, WeightFigures figures) {
        this.start = start;
        this.figures = figures;
    }

    /**
     * When a dog is there, in days from the first day of the plan.
     *
     * @param comesDay null when it is there on the first day
     * @param leavesDay null when it stays
     */
    record Stay(@Nullable Integer comesDay, @Nullable Integer leavesDay) {}

    Stay stay(Fields dog) {
        LocalDate comes = dog.date("comes");
        LocalDate leaves = dog.date("leaves");
        if (comes != null && leaves != null && !leaves.isAfter(comes)) {
            dog.fault(
                    "leaves",
                    "read " + leaves + ", but it comes on " + comes
                            + "; expected a day after that, the first without it");
            return new Stay(null, null);
        }
        if (leaves != null && !leaves.isAfter(start)) {
            dog.fault(
                    "leaves",
                    "read " + leaves + ", so on the plan's first day, " + start
                            + ", it is gone and there is nothing to feed; take the dog out, or correct the date");
            return new Stay(null, null);
        }
        return new Stay(
                comes != null && comes.isAfter(start) ? (Integer) days(comes) : null,
                leaves != null ? (Integer) days(leaves) : null);
    }

    private int days(LocalDate date) {
        return (int) ChronoUnit.DAYS.between(start, date);
    }

    /**
     * The rate of a weight plan, as a share a week.
     *
     * @param kg weight today; null when it could not be read
     * @param goalKg null when none is given
     * @param led what else leads the dog's weight, such as "growing"; null for nothing
     */
    @Nullable
    Double weeklyShare(Fields dog, @Nullable Double kg, @Nullable Double goalKg, @Nullable String led) {
        Double share = dog.share("weeklyChange", 1);
        if (share == null) {
            return null;
        }
        if (!dog.has("goalWeight")) {
            dog.fault("weeklyChange", "is given without \"goalWeight\"; give the weight that it should come to");
        } else if (led != null) {
            dog.fault("weeklyChange", "is given for a dog that is " + led + ", whose weight follows that; take it out");
        } else if (kg != null && goalKg != null) {
            boolean loss = goalKg < kg;
            double least = figures.leastSharePerWeek(loss);
            double most = figures.mostSharePerWeek(loss);
            if (share < least || share > most) {
                dog.fault(
                        "weeklyChange",
                        String.format(
                                Locale.ROOT,
                                "read %s a week; a safe %s is from %s to %s of its weight a week",
                                percent(share),
                                loss ? "loss" : "gain",
                                percent(least),
                                percent(most)));
            }
        }
        return share;
    }

    private static String percent(double share) {
        return Show.number(share * 100) + " %";
    }
}
