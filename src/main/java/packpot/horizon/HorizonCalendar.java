package packpot.horizon;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import packpot.audit.CalendarCheck;
import packpot.audit.Finding;
import packpot.dog.Dog;
import packpot.dog.DogNotes;
import packpot.household.Horizon;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.plan.CalendarBuilder;
import packpot.plan.FeedingCalendar;
import packpot.words.Sentence;

/** The calendars of all batches as one; bags are numbered anew with each batch. */
public final class HorizonCalendar {

    private HorizonCalendar() {}

    /**
     * A calendar, and what is wrong with it.
     *
     * @param findings of the calendar of each batch, followed bag by bag
     */
    public record Checked(FeedingCalendar calendar, List<Finding> findings) {
        public Checked {
            findings = List.copyOf(findings);
        }
    }

    /** The calendar of batches that passed their audit. */
    public static Checked of(HorizonPlan plan, Knowledge knowledge) {
        List<FeedingCalendar.Event> events = new ArrayList<>(frozen(plan));
        List<FeedingCalendar.Day> ledger = new ArrayList<>();
        Set<Sentence> notes = new LinkedHashSet<>();
        List<Finding> findings = new ArrayList<>();
        int bags = 0;
        double grams = 0;
        double left = 0;
        for (HorizonPlan.Session session : plan.sessions()) {
            FeedingCalendar batch = CalendarBuilder.of(session.plan(), session.household(), knowledge);
            findings.addAll(CalendarCheck.check(session.plan(), session.household(), knowledge, batch));
            batch.events().stream()
                    .filter(event -> event.kind() != FeedingCalendar.Kind.DOG)
                    .filter(event -> event.kind() != FeedingCalendar.Kind.NEXT_COOK
                            || session.interval().end() == plan.horizon().days())
                    .forEach(events::add);
            ledger.addAll(batch.ledger());
            notes.addAll(batch.notes());
            bags += batch.bags();
            grams += batch.bags() * batch.gramsPerBag();
            left += batch.leftGrams();
        }
        if (!plan.horizon().frozen().isEmpty()) {
            notes.add(Sentence.of("know.frozenMeals"));
        }
        events.addAll(dogs(plan.household(), plan.horizon(), knowledge));
        events.sort(Comparator.comparing(FeedingCalendar.Event::date).thenComparing(FeedingCalendar.Event::kind));
        return new Checked(
                new FeedingCalendar(
                        plan.household().name(),
                        plan.household().start(),
                        plan.horizon().days(),
                        bags,
                        grams / bags,
                        once(events),
                        ledger,
                        left,
                        List.copyOf(notes)),
                findings);
    }

    /** A weighing on a cook day stands in the calendars of two batches. */
    private static List<FeedingCalendar.Event> once(List<FeedingCalendar.Event> events) {
        Set<FeedingCalendar.Event> seen = new HashSet<>();
        return events.stream()
                .filter(event -> event.kind() != FeedingCalendar.Kind.WEIGH || seen.add(event))
                .toList();
    }

    private static List<FeedingCalendar.Event> dogs(Household household, Horizon horizon, Knowledge knowledge) {
        List<FeedingCalendar.Event> events = new ArrayList<>();
        for (Dog dog : household.allDogs()) {
            for (DogNotes.Note note : DogNotes.of(knowledge.overTime(), dog, horizon.days() - 1, household.units())) {
                if (note.day() > 0) {
                    events.add(event(
                            household.start().plusDays(note.day()),
                            FeedingCalendar.Kind.DOG,
                            dog.name(),
                            note.of(dog)));
                }
            }
        }
        return events;
    }

    /** Meals that are in the freezer already, bag by bag, each thawed on the day before it is needed. */
    private static List<FeedingCalendar.Event> frozen(HorizonPlan plan) {
        List<FeedingCalendar.Event> events = new ArrayList<>();
        LocalDate day = plan.household().start();
        for (Horizon.FrozenMeals meals : plan.horizon().frozen()) {
            LocalDate made = plan.household().start().plusDays(meals.madeDay());
            for (int bag = 0; bag < meals.bags(); bag++) {
                LocalDate needed = day.plusDays((long) bag * meals.days() / meals.bags());
                events.add(event(
                        needed.minusDays(1),
                        FeedingCalendar.Kind.THAW,
                        "",
                        Sentence.of("todo.thawMeals", meals.what(), made, needed)));
            }
            day = day.plusDays(meals.days());
        }
        return events;
    }

    private static FeedingCalendar.Event event(
            LocalDate date, FeedingCalendar.Kind kind, String about, Sentence title) {
        return new FeedingCalendar.Event(date, kind, about, title, List.of(), List.of());
    }
}
