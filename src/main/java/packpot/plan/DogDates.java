package packpot.plan;

import java.util.ArrayList;
import java.util.List;
import packpot.dog.Dog;
import packpot.dog.DogNotes;
import packpot.dog.EnergyNeed;
import packpot.dog.LifeStage;
import packpot.dog.WeighIn;
import packpot.household.Household;
import packpot.household.KitchenFigures;
import packpot.household.Knowledge;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.words.Sentence;

/** The days on which dogs are weighed, and on which something about them changes. */
final class DogDates {
    private static final int DAYS_PER_WEEK = 7;

    private final Household household;
    private final Knowledge knowledge;
    /** The next cook day, in days from this one. */
    private final int lastDay;

    DogDates(Household household, Knowledge knowledge) {
        this.household = household;
        this.knowledge = knowledge;
        this.lastDay = household.kitchen().days();
    }

    List<FeedingCalendar.Event> events() {
        List<FeedingCalendar.Event> events = new ArrayList<>();
        Needs needs = Needs.of(household, knowledge);
        for (DogNeed need : needs.dogs()) {
            weigh(need.dog(), need.energy(), events);
        }
        for (Dog dog : household.allDogs()) {
            notes(dog, events);
        }
        return events;
    }

    /** Every weighing until the next cook day, or the first one after it. */
    private void weigh(Dog dog, EnergyNeed energy, List<FeedingCalendar.Event> events) {
        int every = everyDays(energy.stage());
        List<WeighIn> weighIns = dog.course().weighIns();
        int last = weighIns.isEmpty() ? 0 : weighIns.get(weighIns.size() - 1).day();
        int day = Math.max(last + every, 0);
        do {
            if (dog.course().isThere(day)) {
                events.add(weighing(dog, energy.stage(), day, every));
            }
            day += every;
        } while (day <= lastDay);
    }

    private FeedingCalendar.Event weighing(Dog dog, LifeStage stage, int day, int every) {
        boolean weeks = every % DAYS_PER_WEEK == 0;
        Sentence often = weeks ? Sentence.of("todo.everyWeeks", every / DAYS_PER_WEEK) : Sentence.of("todo.everyMonth");
        Sentence title = stage == LifeStage.ADULT
                ? Sentence.of("todo.weigh", dog.name(), often)
                : Sentence.of("todo.weighInStage", dog.name(), stage.term(), often);
        return event(day, FeedingCalendar.Kind.WEIGH, dog.name(), title);
    }

    /** What a weight is for. */
    static Sentence note(KitchenFigures figures) {
        return Sentence.of(
                "know.weighIns",
                whole(figures.number("replanWeightChangePercent")),
                whole(figures.number("vetWeightChangePercent")));
    }

    private int everyDays(LifeStage stage) {
        String key = switch (stage) {
            case GROWTH, GESTATION, LACTATION -> "puppyWeighDays";
            case WEIGHT_LOSS, WEIGHT_GAIN -> "weightLossWeighDays";
            case ADULT -> "adultWeighDays";
        };
        return (int) knowledge.kitchen().number(key);
    }

    /** What holds from the first day on is told with the targets; here stands what changes later. */
    private void notes(Dog dog, List<FeedingCalendar.Event> events) {
        for (DogNotes.Note note : DogNotes.of(knowledge.overTime(), dog, lastDay, household.units())) {
            if (note.day() > 0) {
                events.add(event(note.day(), FeedingCalendar.Kind.DOG, dog.name(), note.of(dog)));
            }
        }
    }

    private FeedingCalendar.Event event(int day, FeedingCalendar.Kind kind, String about, Sentence title) {
        return new FeedingCalendar.Event(household.start().plusDays(day), kind, about, title, List.of(), List.of());
    }

    private static int whole(double figure) {
        return (int) Math.round(figure);
    }
}
