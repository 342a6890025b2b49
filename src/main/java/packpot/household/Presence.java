package packpot.household;

import java.time.LocalDate;
import java.util.List;
import packpot.dog.Course;
import packpot.dog.Dog;
import packpot.units.Show;
import packpot.units.UnitSystem;
import packpot.words.Amount;

/** Dogs that are not in the household all the time, as far as one batch is concerned. */
final class Presence {

    private Presence() {}

    /** Dogs that are there on a plan's first day, or those that come later. */
    static List<Dog> dogs(List<Dog> all, boolean there) {
        return all.stream().filter(dog -> dog.course().isThere(0) == there).toList();
    }

    /** A plan needs a dog on its first day. */
    static void needsOne(Fields scenario, List<Dog> all, LocalDate start) {
        boolean everyDogWasRead = scenario.raw("dogs").size() == all.size();
        if (!all.isEmpty() && everyDogWasRead && dogs(all, true).isEmpty()) {
            int first = all.stream()
                    .map(Dog::course)
                    .map(Course::comesDay)
                    .mapToInt(day -> day == null ? 0 : day)
                    .min()
                    .orElse(0);
            scenario.fault(
                    "dogs",
                    "none of them is there on the plan's first day, " + start + "; expected one, or \"start\": \""
                            + start.plusDays(first) + "\", when the first comes");
        }
    }

    /** On every day of several weeks there must be somebody to feed. */
    static void everyDay(Fields scenario, List<Dog> all, LocalDate start, int days) {
        for (int day = 1; day < days && !all.isEmpty(); day++) {
            int today = day;
            if (all.stream().noneMatch(dog -> dog.course().isThere(today))) {
                scenario.fault(
                        "dogs",
                        "none of them is there on " + start.plusDays(day) + ", which is within the " + days / 7
                                + " weeks that are planned; plan for fewer weeks, or correct \"comes\" and \"leaves\"");
                return;
            }
        }
    }

    /** What one batch does not know of dogs that come and leave. */
    static void cautions(List<Dog> all, LocalDate start, int days, UnitSystem units, Notes notes) {
        for (Dog dog : all) {
            Integer comes = dog.course().comesDay();
            Integer leaves = dog.course().leavesDay();
            if (comes != null && comes > 0) {
                notes.caution(
                        "caution.comes",
                        dog.name(),
                        new Amount(Show.bodyWeight(dog.weightKg(), units)),
                        start.plusDays(comes));
            } else if (leaves != null && leaves < days) {
                notes.caution("caution.leaves", dog.name(), start.plusDays(leaves), leaves, days);
            }
        }
    }
}
