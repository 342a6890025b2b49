package packpot.audit;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import packpot.dog.Dog;
import packpot.dog.Transition;
import packpot.household.Freezer;
import packpot.household.Household;
import packpot.household.KitchenFigures;
import packpot.household.Knowledge;
import packpot.plan.FeedingCalendar;
import packpot.plan.FeedingCalendar.Kind;
import packpot.plan.Plan;

/**
 * Follows a calendar as a cook would, bag by bag and day by day, from its events, the plan and the household alone: every
 * dog that is there is fed each day from bags that are thawed and not too old, the freezer holds what is in it, and no
 * food appears or is lost. Ages are held to the published limit, whatever the household wished.
 */
public final class CalendarCheck {
    private static final double CLOSE_GRAMS = 0.01;
    private static final double DAYS_PER_MONTH = 365.25 / 12;

    private final Plan plan;
    private final Household household;
    private final KitchenFigures figures;
    private final FeedingCalendar calendar;
    private final List<Finding> findings = new ArrayList<>();
    private final BagStore store;

    private CalendarCheck(Plan plan, Household household, Knowledge knowledge, FeedingCalendar calendar) {
        this.plan = plan;
        this.household = household;
        this.figures = knowledge.kitchen();
        this.calendar = calendar;
        this.store = new BagStore(
                plan.batch().bags(), plan.batch().cookedGrams() / plan.batch().bags(), findings);
    }

    /** Everything that is wrong with a calendar; nothing when it can be followed. */
    public static List<Finding> check(Plan plan, Household household, Knowledge knowledge, FeedingCalendar calendar) {
        return new CalendarCheck(plan, household, knowledge, calendar).check();
    }

    private List<Finding> check() {
        once(Kind.COOK, plan.start());
        once(Kind.LAST_DAY, plan.start().plusDays(plan.days() - 1L));
        once(Kind.NEXT_COOK, plan.start().plusDays(plan.days()));
        for (FeedingCalendar.Event event : calendar.events()) {
            long day = ChronoUnit.DAYS.between(plan.start(), event.date());
            if (!event.bags().isEmpty() && (day < 0 || day >= plan.days())) {
                find(event.date(), "bags are handled on a day that this batch does not feed");
            }
        }
        double eaten = 0;
        for (int day = 0; day < plan.days(); day++) {
            eaten += day(day);
        }
        double left = plan.batch().cookedGrams() - eaten;
        if (Math.abs(store.grams() - left) > CLOSE_GRAMS || Math.abs(calendar.leftGrams() - left) > CLOSE_GRAMS) {
            findings.add(new Finding(
                    "food left",
                    String.format(
                            Locale.ROOT,
                            "%.1f g were cooked and %.1f g eaten, in the bags are %.1f g and the calendar says %.1f g",
                            plan.batch().cookedGrams(),
                            eaten,
                            store.grams(),
                            calendar.leftGrams())));
        }
        return List.copyOf(findings);
    }

    private void once(Kind kind, LocalDate date) {
        List<LocalDate> dates = calendar.events().stream()
                .filter(event -> event.kind() == kind)
                .map(FeedingCalendar.Event::date)
                .toList();
        if (!dates.equals(List.of(date))) {
            findings.add(new Finding(kind.name(), "is on " + dates + ", expected on " + date));
        }
    }

    /** Follows one day; gives the grams that were eaten. */
    private double day(int day) {
        LocalDate date = plan.start().plusDays(day);
        if (day == 0) {
            store.fill(bags(Kind.COOK, date));
        }
        double hours = Math.max(
                figures.number("thawFridgeHoursMin"),
                plan.batch().cookedGrams() / plan.batch().bags() / 1000 * figures.number("thawFridgeHoursPerKilogram"));
        for (int bag : bags(Kind.THAW, date)) {
            double frozen = store.toFridge(bag, day, hours / 24);
            if (frozen > figures.number("freezerMonthsDefault") * DAYS_PER_MONTH) {
                find(date, String.format(Locale.ROOT, "bag %d was %.0f days in the freezer", bag, frozen));
            }
        }
        double wanted = wanted(day, date);
        double fed = store.feed(wanted, day, (int) figures.number("fridgeDaysMax"), date);
        if (fed < wanted - CLOSE_GRAMS) {
            find(date, String.format(Locale.ROOT, "%.1f g are to be fed, only %.1f g are ready", wanted, fed));
        }
        bags(Kind.FREEZE, date).forEach(bag -> store.toFreezer(bag, day));
        freezer(date);
        ledger(day, date, fed);
        return fed;
    }

    /** Grams of the pot for the dogs that are there. */
    private double wanted(int day, LocalDate date) {
        double grams = 0;
        for (Dog dog : household.dogs()) {
            Integer comes = dog.course().comesDay();
            Integer leaves = dog.course().leavesDay();
            if ((leaves != null && day >= leaves) || (comes != null && day < comes)) {
                continue;
            }
            List<Plan.DogPlan> portions = plan.dogs().stream()
                    .filter(portion -> portion.name().equals(dog.name()))
                    .toList();
            if (portions.size() != 1) {
                find(date, dog.name() + " is there and has " + portions.size() + " portions");
            }
            for (Plan.DogPlan portion : portions) {
                Transition change = dog.course().transition();
                double share = 1;
                if (change != null && day < change.newShares().size()) {
                    share = change.newShares().get(day);
                }
                grams += Math.rint(portion.potGramsPerDay() * share);
            }
        }
        return grams;
    }

    private void freezer(LocalDate date) {
        Freezer freezer = household.kitchen().freezer();
        if (freezer != null) {
            double free = (freezer.ratedMl() * freezer.usableShare() - freezer.takenMl()) * freezer.packingShare();
            double mlPerBag = plan.batch().cookedGrams()
                    / household.kitchen().mixDensityGramsPerMl()
                    / plan.batch().bags();
            double taken = store.frozen() * mlPerBag;
            if (taken > free + 1) {
                find(
                        date,
                        String.format(
                                Locale.ROOT,
                                "%d bags take %.0f ml of the freezer, %.0f ml are free for food; cook for fewer days",
                                store.frozen(),
                                taken,
                                free));
            }
        }
    }

    private void ledger(int day, LocalDate date, double fed) {
        if (calendar.ledger().size() <= day) {
            find(date, "has no line in the ledger");
            return;
        }
        FeedingCalendar.Day line = calendar.ledger().get(day);
        double fridge = store.fridgeGrams(day);
        if (!line.date().equals(date)
                || Math.abs(line.eatenGrams() - fed) > CLOSE_GRAMS
                || Math.abs(line.fridgeGrams() - fridge) > CLOSE_GRAMS
                || line.freezerBags() != store.frozen()
                || line.thawingBags() != store.thawing(day)
                || line.oldestDays() != store.oldestFed()) {
            find(
                    date,
                    String.format(
                            Locale.ROOT,
                            "eaten %.1f g, in the fridge %.1f g, %d bags thawing, %d in the freezer, oldest %d days; the"
                                    + " ledger says %s",
                            fed,
                            fridge,
                            store.thawing(day),
                            store.frozen(),
                            store.oldestFed(),
                            line));
        }
    }

    private List<Integer> bags(Kind kind, LocalDate date) {
        return calendar.events().stream()
                .filter(event -> event.kind() == kind && event.date().equals(date))
                .flatMap(event -> event.bags().stream())
                .toList();
    }

    private void find(LocalDate date, String message) {
        findings.add(new Finding(date.toString(), message));
    }
}
