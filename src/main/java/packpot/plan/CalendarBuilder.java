package packpot.plan;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Predicate;
import packpot.household.Household;
import packpot.household.KitchenFigures;
import packpot.household.Knowledge;
import packpot.units.Show;

/** Makes the calendar of one batch. Pure: the same plan and household give the same calendar. */
public final class CalendarBuilder {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM", Locale.ENGLISH);

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
        List<String> details = new ArrayList<>();
        if (batch.bags() > 1) {
            details.add("Number the bags from 1 to " + batch.bags() + " and use them in that order.");
        }
        List<Integer> fridge = numbers(bag -> bag.frozenDay() == BagSchedule.NEVER);
        if (!fridge.isEmpty()) {
            details.add(capital(Bags.words(fridge)) + (fridge.size() == 1 ? " stays" : " stay")
                    + " in the fridge and never freeze" + (fridge.size() == 1 ? "s." : "."));
        }
        details.add("The first bowls of this batch are today's.");
        add(
                0,
                FeedingCalendar.Kind.COOK,
                "Cook: " + Show.weight(batch.cookedGrams(), household.units()) + " of food into "
                        + count(batch.bags(), "bag") + " (" + batch.bag() + "), " + Show.grams(batch.gramsPerBag())
                        + " in each.",
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
                        (day == 0 ? "Once cool, " : "Now ") + Bags.words(bags) + (bags.size() == 1 ? " goes" : " go")
                                + " into the freezer.",
                        waiting.isEmpty()
                                ? List.of()
                                : List.of(capital(Bags.words(waiting)) + " wait in the fridge for another night: the"
                                        + " freezer cannot freeze all at once."),
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
                        "In the morning, move " + Bags.words(bags) + " from the freezer to the fridge, to be ready in "
                                + (schedule.thawDays() == 1 ? "a day" : schedule.thawDays() + " days") + ".",
                        List.of(),
                        bags);
            }
        }
    }

    /** Additions that are not given every day, by day. */
    private void bowls() {
        for (int day = 0; day < plan.days(); day++) {
            Map<String, List<String>> doses = new LinkedHashMap<>();
            for (Plan.DogPlan dog : plan.dogs()) {
                for (Plan.Addition addition : dog.additions()) {
                    if (addition.onDays().size() < dog.daysFed()
                            && addition.onDays().contains(day + 1)
                            && changes.isFedAlone(dog, day)) {
                        doses.computeIfAbsent(addition.label() + ", " + addition.dose(), key -> new ArrayList<>())
                                .add(dog.name());
                    }
                }
            }
            int today = day;
            doses.forEach((dose, dogs) -> add(
                    today,
                    FeedingCalendar.Kind.BOWL,
                    "In today's bowl of " + Bags.list(dogs) + ": " + dose + ".",
                    List.of(),
                    List.of()));
        }
    }

    private void end() {
        double left = leftGrams();
        List<Integer> unopened = numbers(bag -> bag.firstDay() == BagSchedule.NEVER);
        List<String> details = new ArrayList<>();
        if (!unopened.isEmpty()) {
            details.add(capital(Bags.words(unopened)) + (unopened.size() == 1 ? " is" : " are")
                    + " left in the freezer: feed " + (unopened.size() == 1 ? "it" : "them")
                    + " first from the next cook day on, and plan that batch for fewer days.");
        }
        double loose = left - unopened.size() * plan.batch().gramsPerBag();
        if (loose >= 1) {
            details.add(Show.grams(loose) + " are left of the opened bag.");
        }
        add(plan.days() - 1, FeedingCalendar.Kind.LAST_DAY, "The last bowls of this batch.", details, List.of());
        add(
                plan.days(),
                FeedingCalendar.Kind.NEXT_COOK,
                "Cook the next batch; today's bowls are its first.",
                List.of("Shop for it on "
                        + DAY.format(household
                                .start()
                                .plusDays(
                                        plan.days() - (long) household.kitchen().shopDaysBefore()))
                        + "."),
                List.of());
    }

    private double leftGrams() {
        return plan.batch().cookedGrams()
                - eaten.stream().mapToDouble(Double::doubleValue).sum();
    }

    private List<String> notes() {
        KitchenFigures figures = knowledge.kitchen();
        List<String> notes = new ArrayList<>();
        int wished = Math.max(1, household.kitchen().fridgeDays());
        if (schedule.oldestDays() > wished) {
            notes.add("some food is " + schedule.oldestDays() + " days old when it is eaten, and " + wished
                    + " are wished: use smaller bags, so that each is emptied sooner");
        }
        if (schedule.hurried()) {
            notes.add(count(schedule.perNight(), "bag") + " a night are more than the freezer freezes well; spread them"
                    + " over its coldest shelves, cook in two sessions, or use a second freezer");
        }
        if (schedule.bags().stream().anyMatch(bag -> bag.thawDay() != BagSchedule.NEVER)) {
            notes.add("thawing in the fridge takes " + Math.round(figures.number("thawFridgeHoursMin"))
                    + " hours for any small bag (S-THAWMIN) and "
                    + Show.number(figures.number("thawFridgeHoursPerKilogram"))
                    + " hours per kg (S-THAW), so " + count(schedule.thawDays(), "day")
                    + " for these bags; once thawed they"
                    + " keep " + count((int) figures.number("daysAfterFridgeThawDefault"), "day")
                    + " in the fridge (recalled, not read in print)");
        }
        notes.addAll(ShoppingDay.notes(household));
        notes.addAll(changes.notes());
        notes.add(DogDates.note(figures));
        return notes;
    }

    private void add(int day, FeedingCalendar.Kind kind, String title, List<String> details, List<Integer> bags) {
        LocalDate date = plan.start().plusDays(day);
        events.add(new FeedingCalendar.Event(date, kind, "", title, details, bags));
    }

    private List<Integer> numbers(Predicate<BagSchedule.Bag> which) {
        return schedule.bags().stream()
                .filter(which)
                .map(BagSchedule.Bag::number)
                .toList();
    }

    private static String count(int number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }

    private static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
