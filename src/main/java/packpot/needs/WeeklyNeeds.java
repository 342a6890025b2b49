package packpot.needs;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import packpot.dog.Dog;
import packpot.dog.DogNotes;
import packpot.dog.EnergyCorrection;
import packpot.household.Household;
import packpot.household.Knowledge;

/**
 * What every dog of a household is and needs on the first day of each of the coming weeks.
 *
 * @param start first day
 * @param weeks how many weeks beyond the first day
 */
public record WeeklyNeeds(LocalDate start, int weeks, List<Line> dogs) {

    /**
     * One dog.
     *
     * @param days the first day and the same day of each week after it
     * @param correction what its weigh-ins do to its energy target; null when they do not tell
     * @param notes what people must be told, each with its day
     */
    public record Line(
            String name,
            String profile,
            List<Day> days,
            @Nullable EnergyCorrection correction,
            List<DogNotes.Note> notes) {
        public Line {
            days = List.copyOf(days);
            notes = List.copyOf(notes);
        }
    }

    /**
     * One dog on one day.
     *
     * @param day days from the first
     * @param need null when the dog is not there
     */
    public record Day(int day, LocalDate date, @Nullable DogNeed need) {}

    public WeeklyNeeds {
        dogs = List.copyOf(dogs);
    }

    /** The needs week by week. */
    public static WeeklyNeeds of(Household household, Knowledge knowledge, int weeks) {
        List<Needs> needs = new ArrayList<>();
        for (int week = 0; week <= weeks; week++) {
            needs.add(Needs.on(7 * week, household, knowledge));
        }
        List<Line> lines = new ArrayList<>();
        for (Dog dog : household.allDogs()) {
            List<Day> days = new ArrayList<>();
            for (int week = 0; week <= weeks; week++) {
                Optional<DogNeed> need = needs.get(week).dogs().stream()
                        .filter(each -> each.dog().name().equals(dog.name()))
                        .findFirst();
                days.add(new Day(7 * week, household.start().plusWeeks(week), need.orElse(null)));
            }
            lines.add(new Line(
                    dog.name(),
                    household.profileOf(dog),
                    days,
                    dog.course().correction(),
                    DogNotes.of(knowledge.overTime(), dog, 7 * weeks, household.units())));
        }
        return new WeeklyNeeds(household.start(), weeks, lines);
    }
}
