package packpot.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import packpot.household.Household;
import packpot.household.KitchenFigures;
import packpot.household.Knowledge;
import packpot.units.Show;
import packpot.words.Amount;
import packpot.words.Sentence;
import packpot.words.Term;

/** Makes the calendar of one batch. Pure: the same plan and household give the same calendar. */
public final class CalendarBuilder {

    private final Plan plan;
    private final Household household;
    private final Knowledge knowledge;
    private final ChangesOfFood changes;
    private final List<Double> eaten;
    private final BagSchedule schedule;
    private final List<FeedingCalendar.Event> events = new ArrayList<>();

    private CalendarBuilder(Plan plan, Household household, Knowledge knowledge) {
        this.plan = plan;
        this.household = household;
        this.knowledge = knowledge;
        this.changes = new ChangesOfFood(plan, household, knowledge.kitchen());
        this.eaten = Eaten.perDay(plan, household);
        this.schedule = BagSchedule.of(plan.batch(), eaten, household.kitchen(), knowledge.kitchen());
    }

    /**
     * The calendar of a plan that passed its audit.
     *
     * @throws IllegalArgumentException when the plan feeds a dog that the household does not have
     */
    public static FeedingCalendar of(Plan plan, Household household, Knowledge knowledge) {
        return new CalendarBuilder(plan, household, knowledge).calendar();
    }

    private FeedingCalendar calendar() {
        events.addAll(ShoppingDay.events(plan, household));
        cook();
        freeze();
        thaw();
        bowls();
        events.addAll(changes.events());
        end();
        events.addAll(new DogDates(household, knowledge).events());
        events.sort(Comparator.comparing(FeedingCalendar.Event::date).thenComparing(FeedingCalendar.Event::kind));
        return new FeedingCalendar(
                plan.household(),
                plan.start(),
                plan.days(),
                plan.batch().bags(),
                plan.batch().gramsPerBag(),
                events,
                CalendarLedger.of(plan, schedule, eaten),
                leftGrams(),
                notes());
    }

    private void cook() {
        Plan.Batch batch = plan.batch();
        List<Sentence> details = new ArrayList<>();
        if (batch.bags() > 1) {
            details.add(Sentence.of("todo.number", batch.bags()));
        }
        List<Integer> fridge = numbers(bag -> bag.frozenDay() == BagSchedule.NEVER);
        if (!fridge.isEmpty()) {
            details.add(Sentence.of("todo.stay", Bags.first(fridge), fridge.size()));
        }
        details.add(Sentence.of("todo.firstBowls"));
        add(
                0,
                FeedingCalendar.Kind.COOK,
                Sentence.of(
                        "todo.cook",
                        new Amount(Show.weight(batch.cookedGrams(), household.units())),
                        batch.bags(),
                        new Amount(batch.bag()),
                        new Amount(Show.grams(batch.gramsPerBag()))),
                details,
                numbers(bag -> true));
    }

    private void freeze() {
        int nights = schedule.bags().stream()
                .mapToInt(BagSchedule.Bag::frozenDay)
                .max()
                .orElse(BagSchedule.NEVER);
        for (int day = 0; day <= nights; day++) {
            int night = day;
            List<Integer> bags = numbers(bag -> bag.frozenDay() == night);
            if (!bags.isEmpty()) {
                List<Integer> waiting = numbers(bag -> bag.frozenDay() > night);
                add(
                        day,
                        FeedingCalendar.Kind.FREEZE,
                        Sentence.of(day == 0 ? "todo.freeze" : "todo.freezeNow", Bags.words(bags), bags.size()),
                        waiting.isEmpty() ? List.of() : List.of(Sentence.of("todo.wait", Bags.first(waiting))),
                        bags);
            }
        }
    }

    private void thaw() {
        for (int day = 0; day < plan.days(); day++) {
            int morning = day;
            List<BagSchedule.Bag> moved = schedule.bags().stream()
                    .filter(bag -> bag.thawDay() == morning)
                    .toList();
            if (!moved.isEmpty()) {
                List<Integer> bags = moved.stream().map(BagSchedule.Bag::number).toList();
                add(
                        day,
                        FeedingCalendar.Kind.THAW,
                        Sentence.of("todo.thaw", Bags.words(bags), schedule.thawDays()),
                        List.of(),
                        bags);
            }
        }
    }

    /** Additions that are not given every day, by day. */
    private void bowls() {
        for (int day = 0; day < plan.days(); day++) {
            Map<Sentence, List<String>> doses = new LinkedHashMap<>();
            for (Plan.DogPlan dog : plan.dogs()) {
                for (Plan.Addition addition : dog.additions()) {
                    if (addition.onDays().size() < dog.daysFed()
                            && addition.onDays().contains(day + 1)
                            && changes.isFedAlone(dog, day)) {
                        Sentence dose = Sentence.of(
                                "todo.dose", Term.food(addition.food(), addition.label()), new Amount(addition.dose()));
                        doses.computeIfAbsent(dose, key -> new ArrayList<>()).add(dog.name());
                    }
                }
            }
            int today = day;
            doses.forEach((dose, dogs) -> add(
                    today,
                    FeedingCalendar.Kind.BOWL,
                    Sentence.of("todo.bowl", new Sentence.And(dogs), dose),
                    List.of(),
                    List.of()));
        }
    }

    private void end() {
        double left = leftGrams();
        List<Integer> unopened = numbers(bag -> bag.firstDay() == BagSchedule.NEVER);
        List<Sentence> details = new ArrayList<>();
        if (!unopened.isEmpty()) {
            details.add(Sentence.of("todo.unopened", Bags.first(unopened), unopened.size()));
        }
        double loose = left - unopened.size() * plan.batch().gramsPerBag();
        if (loose >= 1) {
            details.add(Sentence.of("todo.opened", new Amount(Show.grams(loose))));
        }
        add(plan.days() - 1, FeedingCalendar.Kind.LAST_DAY, Sentence.of("todo.last"), details, List.of());
        add(
                plan.days(),
                FeedingCalendar.Kind.NEXT_COOK,
                Sentence.of("todo.next"),
                List.of(Sentence.of(
                        "todo.shopNext",
                        new Sentence.Weekday(household
                                .start()
                                .plusDays(
                                        plan.days() - (long) household.kitchen().shopDaysBefore())))),
                List.of());
    }

    private double leftGrams() {
        return plan.batch().cookedGrams()
                - eaten.stream().mapToDouble(Double::doubleValue).sum();
    }

    private List<Sentence> notes() {
        KitchenFigures figures = knowledge.kitchen();
        List<Sentence> notes = new ArrayList<>();
        int wished = Math.max(1, household.kitchen().fridgeDays());
        if (schedule.oldestDays() > wished) {
            notes.add(Sentence.of("know.old", schedule.oldestDays(), wished));
        }
        if (schedule.hurried()) {
            notes.add(Sentence.of("know.hurried", schedule.perNight()));
        }
        if (schedule.bags().stream().anyMatch(bag -> bag.thawDay() != BagSchedule.NEVER)) {
            notes.add(Sentence.of(
                    "know.thawing",
                    (int) Math.round(figures.number("thawFridgeHoursMin")),
                    new Amount(Show.number(figures.number("thawFridgeHoursPerKilogram"))),
                    schedule.thawDays(),
                    (int) figures.number("daysAfterFridgeThawDefault")));
        }
        notes.addAll(ShoppingDay.notes(household));
        notes.addAll(changes.notes());
        notes.add(DogDates.note(figures));
        return notes;
    }

    private void add(int day, FeedingCalendar.Kind kind, Sentence title, List<Sentence> details, List<Integer> bags) {
        LocalDate date = plan.start().plusDays(day);
        events.add(new FeedingCalendar.Event(date, kind, "", title, details, bags));
    }

    private List<Integer> numbers(Predicate<BagSchedule.Bag> which) {
        return schedule.bags().stream()
                .filter(which)
                .map(BagSchedule.Bag::number)
                .toList();
    }
}
