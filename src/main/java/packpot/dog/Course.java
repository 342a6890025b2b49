package packpot.dog;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a dog beyond the first day of a plan. Days are counted from that day, which is 0.
 *
 * @param weighIns oldest first, none after the first day
 * @param fedKcalPerDay what it really ate a day between the weigh-ins, treats included
 * @param weeklyShare share of its weight that it is to lose or gain a week; null for the usual one
 * @param comesDay first day that it is there; null when it is there already
 * @param leavesDay first day that it is no longer there; null when it stays
 * @param correction what its weigh-ins do to its energy target
 * @param transition how it goes over from another food; null when it eats from the batch at once
 * @param averageKcalPerDay energy on average over the days of a batch, treats and other food included; null where the
 *     energy of one day is meant
 */
public record Course(
        List<WeighIn> weighIns,
        @Nullable Double fedKcalPerDay,
        @Nullable Double weeklyShare,
        @Nullable Integer comesDay,
        @Nullable Integer leavesDay,
        @Nullable EnergyCorrection correction,
        @Nullable Transition transition,
        @Nullable Double averageKcalPerDay) {

    /** Nothing is known. */
    public static final Course NONE = new Course(List.of(), null, null, null, null, null);

    public Course {
        weighIns = List.copyOf(weighIns);
    }

    /** A dog that eats from the batch at once. */
    public Course(
            List<WeighIn> weighIns,
            @Nullable Double fedKcalPerDay,
            @Nullable Double weeklyShare,
            @Nullable Integer comesDay,
            @Nullable Integer leavesDay,
            @Nullable EnergyCorrection correction) {
        this(weighIns, fedKcalPerDay, weeklyShare, comesDay, leavesDay, correction, null, null);
    }

    /** Share of the batch in what the dog is fed on a day that it is there. */
    public double newShareOn(int day) {
        return transition == null ? 1 : transition.shareOn(day);
    }

    /** Whether the dog is in the household on a day. */
    public boolean isThere(int day) {
        return (comesDay == null || day >= comesDay) && (leavesDay == null || day < leavesDay);
    }

    /** The same for a dog that is there on every day. */
    public Course staying() {
        return new Course(weighIns, fedKcalPerDay, weeklyShare, null, null, correction, transition, averageKcalPerDay);
    }

    /** The same course, its days counted from another first day. */
    public Course from(int day) {
        return new Course(
                weighIns.stream()
                        .map(each -> new WeighIn(each.day() - day, each.kg()))
                        .toList(),
                fedKcalPerDay,
                weeklyShare,
                comesDay == null || comesDay <= day ? null : (Integer) (comesDay - day),
                leavesDay == null ? null : (Integer) (leavesDay - day),
                correction,
                transition == null ? null : transition.from(day).orElse(null),
                averageKcalPerDay);
    }

    /** The same with the energy that the dog needs on average over the days of a batch; null for that of one day. */
    public Course withAverage(@Nullable Double kcalPerDay) {
        return new Course(
                weighIns, fedKcalPerDay, weeklyShare, comesDay, leavesDay, correction, transition, kcalPerDay);
    }

    /** The same with what the weigh-ins do to the energy target. */
    public Course withCorrection(@Nullable EnergyCorrection other) {
        return new Course(
                weighIns, fedKcalPerDay, weeklyShare, comesDay, leavesDay, other, transition, averageKcalPerDay);
    }
}
