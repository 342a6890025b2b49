package packpot.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Demo;
import packpot.Records;
import packpot.dog.Course;
import packpot.dog.Transition;
import packpot.household.Freezer;
import packpot.household.Household;
import packpot.plan.CalendarBuilder;
import packpot.plan.FeedingCalendar;
import packpot.plan.FeedingCalendar.Event;
import packpot.plan.FeedingCalendar.Kind;
import packpot.plan.Plan;
import packpot.words.Sentence;

/** Calendars that can be followed pass, and every kind of error in one is found. */
class CalendarCheckTest {
    private static final Demo.Planned TINY = Demo.planned("tiny-freezer");
    private static final FeedingCalendar GOOD = CalendarBuilder.of(TINY.plan(), TINY.household(), Demo.knowledge());

    static Stream<Demo.Planned> demos() {
        return Demo.all();
    }

    private static List<String> check(FeedingCalendar calendar) {
        return check(TINY.plan(), TINY.household(), calendar);
    }

    private static List<String> check(Plan plan, Household household, FeedingCalendar calendar) {
        return CalendarCheck.check(plan, household, Demo.knowledge(), calendar).stream()
                .map(Finding::toString)
                .toList();
    }

    private static FeedingCalendar with(List<Event> events, List<FeedingCalendar.Day> ledger, double leftGrams) {
        return new FeedingCalendar(
                GOOD.household(),
                GOOD.start(),
                GOOD.days(),
                GOOD.bags(),
                GOOD.gramsPerBag(),
                events,
                ledger,
                leftGrams,
                GOOD.notes());
    }

    private static Event event(LocalDate date, Kind kind, List<Integer> bags) {
        return new Event(date, kind, "", Sentence.of("todo.last"), List.of(), bags);
    }

    /** The good calendar, every event of a kind changed; null takes it out. */
    private static FeedingCalendar changed(Kind kind, UnaryOperator<Event> change) {
        List<Event> events = new ArrayList<>();
        for (Event event : GOOD.events()) {
            Event other = event.kind() == kind ? change.apply(event) : event;
            if (other != null) {
                events.add(other);
            }
        }
        return with(events, GOOD.ledger(), GOOD.leftGrams());
    }

    private static UnaryOperator<Event> shifted(int days) {
        return event -> event(event.date().plusDays(days), event.kind(), event.bags());
    }

    @Tag("demos")
    @ParameterizedTest
    @MethodSource("demos")
    void everyDemoCanBeFollowed(Demo.Planned demo) {
        FeedingCalendar calendar = CalendarBuilder.of(demo.plan(), demo.household(), Demo.knowledge());
        assertThat(check(demo.plan(), demo.household(), calendar)).isEmpty();
    }

    @Test
    void aBagMovedADayLateLeavesDogsHungry() {
        assertThat(check(changed(Kind.THAW, shifted(1)))).anyMatch(each -> each.matches(".* g are to be fed, only .*"));
    }

    @Test
    void bagsThatAreNeverThawedLeaveDogsHungry() {
        assertThat(check(changed(Kind.THAW, event -> null)))
                .anyMatch(each -> each.matches(".* g are to be fed, only 0.0 g are ready"));
    }

    @Test
    void bagsThatAreNeverFrozenGrowTooOld() {
        List<Event> events = GOOD.events().stream()
                .filter(event -> event.kind() != Kind.FREEZE && event.kind() != Kind.THAW)
                .toList();
        assertThat(check(with(events, GOOD.ledger(), GOOD.leftGrams())))
                .anyMatch(each -> each.contains("has been in the fridge for 5 days, at most 4 are safe"));
    }

    @Test
    void bagsThatAreThawedTooEarlyGrowTooOld() {
        LocalDate early = GOOD.start().plusDays(3);
        assertThat(check(changed(
                        Kind.THAW,
                        event ->
                                event(event.date().isAfter(early) ? early : event.date(), event.kind(), event.bags()))))
                .anyMatch(each -> each.contains("at most 4 are safe"));
    }

    @Test
    void aBagIsNotThawedBeforeItWasFrozen() {
        assertThat(check(changed(Kind.FREEZE, shifted(6))))
                .anyMatch(each -> each.contains("is to be moved to thaw, but"));
    }

    @Test
    void anOpenedBagIsNotFrozen() {
        List<Event> events = new ArrayList<>(GOOD.events());
        events.add(event(GOOD.start(), Kind.FREEZE, List.of(2)));
        events.add(event(GOOD.start().plusDays(1), Kind.FREEZE, List.of(3)));
        assertThat(check(with(events, GOOD.ledger(), GOOD.leftGrams())))
                .anyMatch(each -> each.contains("is frozen though it was opened"));
    }

    @Test
    void aBagOverItsFreezerLifeIsFound() {
        Plan p = TINY.plan();
        Plan longer = new Plan(
                p.household(),
                p.start(),
                100,
                p.mealsPerDay(),
                p.currency(),
                p.foodEnergyRule(),
                p.marginShare(),
                p.dogs(),
                p.shopping(),
                p.pot(),
                p.batch(),
                p.cost(),
                p.proof(),
                p.atTheirLimit(),
                p.defaults(),
                p.cautions());
        assertThat(check(longer, TINY.household(), changed(Kind.THAW, shifted(85))))
                .anyMatch(each -> each.matches(".*bag 17 was 9\\d days in the freezer.*"));
    }

    @Test
    void aFreezerThatIsTooSmallIsFound() {
        Household small =
                TINY.household().withKitchen(TINY.household().kitchen().withFreezer(new Freezer(8_000, 1, 0, 1)));
        assertThat(check(TINY.plan(), small, GOOD))
                .anyMatch(each -> each.contains("ml of the freezer, 8000 ml are free for food"));
    }

    /** Bags of 750 ml; of the freezer 65 % are usable, 3 l taken, and bags pack with 60 %. One ml is let pass. */
    @Test
    void aFreezerHoldsWhatItsRoomAndItsPackingAllow() {
        FeedingCalendar.Day fullest = GOOD.ledger().stream()
                .max(Comparator.comparingInt(FeedingCalendar.Day::freezerBags))
                .orElseThrow();
        double ml = fullest.freezerBags() * TINY.plan().batch().cookedGrams() / 0.95 / 17;
        assertThat(check(TINY.plan(), withFreeMl(ml - 0.99), GOOD)).isEmpty();
        assertThat(check(TINY.plan(), withFreeMl(ml - 1.1), GOOD))
                .contains("%s: %d bags take %.0f ml of the freezer, %.0f ml are free for food; cook for fewer days"
                        .formatted(fullest.date(), fullest.freezerBags(), ml, ml - 1.1));
    }

    private static Household withFreeMl(double free) {
        return TINY.household()
                .withKitchen(TINY.household()
                        .kitchen()
                        .withFreezer(new Freezer((free / 0.6 + 3000) / 0.65, 0.65, 3000, 0.6)));
    }

    private static List<String> eaten(int dog, Integer comes, Integer leaves, Transition change) {
        Course course = new Course(List.of(), null, null, comes, leaves, null, change, null);
        Household household = Records.with(TINY.household(), "dogs[" + dog + "].course", course);
        return check(TINY.plan(), household, GOOD).stream()
                .filter(told -> told.contains(": eaten "))
                .map(told -> told.replaceAll("g, in the fridge.*", "g"))
                .toList();
    }

    /** The two eat 537 and 302 g; the ledger says that both are there on all 14 days. */
    @Test
    void onlyTheDogsThatAreThereAreFed() {
        assertThat(eaten(1, null, 5, null)).hasSize(9).startsWith("2026-06-25: eaten 537.0 g");
        assertThat(eaten(1, null, 13, null)).containsExactly("2026-07-03: eaten 537.0 g");
        assertThat(eaten(1, null, 14, null)).isEmpty();
        assertThat(eaten(1, 1, null, null)).startsWith("2026-06-20: eaten 537.0 g");
        assertThat(eaten(0, 0, null, null)).isEmpty();
        assertThat(eaten(0, 2, 3, null).get(0)).isEqualTo("2026-06-20: eaten 302.0 g");
        assertThat(eaten(0, 2, 3, null)).noneMatch(told -> told.startsWith("2026-06-22: eaten 302"));
    }

    @Test
    void aDogThatGoesOverFromAnotherFoodGetsItsShare() {
        assertThat(eaten(0, null, null, new Transition("dry food", List.of(0.25, 0.5))))
                .startsWith("2026-06-20: eaten 436.0 g", "2026-06-21: eaten 570.0 g")
                .noneMatch(told -> told.matches("2026-06-22: eaten (?!839).*"));
    }

    @Test
    void everyBagIsFilledOnceAndIsThere() {
        assertThat(check(changed(
                        Kind.COOK,
                        event -> event(event.date(), Kind.COOK, event.bags().subList(1, 17)))))
                .contains("bag 1: is never filled")
                .anyMatch(each -> each.startsWith("food left: "));
        List<Integer> twice = new ArrayList<>(List.of(1, 99));
        assertThat(check(changed(Kind.COOK, event -> {
                    twice.addAll(event.bags());
                    return event(event.date(), Kind.COOK, twice);
                })))
                .contains(
                        "bag 1: is to be filled, but it is not where that can be done",
                        "bag 99: is filled, but there are 17 bags");
    }

    @Test
    void datesOfTheBatchAreHeld() {
        assertThat(check(changed(Kind.NEXT_COOK, shifted(1)))).anyMatch(each -> each.startsWith("NEXT_COOK: "));
        assertThat(check(changed(Kind.LAST_DAY, shifted(-1)))).anyMatch(each -> each.startsWith("LAST_DAY: "));
        assertThat(check(changed(Kind.COOK, shifted(1)))).anyMatch(each -> each.startsWith("COOK: "));
        assertThat(check(changed(Kind.FREEZE, shifted(-9))))
                .anyMatch(each -> each.contains("on a day that this batch does not feed"));
    }

    @Test
    void aLedgerThatIsWrongIsFound() {
        assertThat(check(with(GOOD.events(), GOOD.ledger(), GOOD.leftGrams() + 1)))
                .anyMatch(each -> each.startsWith("food left: "));
        assertThat(check(with(GOOD.events(), GOOD.ledger().subList(0, 13), GOOD.leftGrams())))
                .containsExactly("2026-07-03: has no line in the ledger");
        FeedingCalendar.Day day = GOOD.ledger().get(4);
        List<FeedingCalendar.Day> wrong = List.of(
                new FeedingCalendar.Day(day.date().plusDays(1), day.eatenGrams(), day.fridgeGrams(), 1, 9, 1),
                new FeedingCalendar.Day(day.date(), day.eatenGrams() + 1, day.fridgeGrams(), 1, 9, 1),
                new FeedingCalendar.Day(day.date(), day.eatenGrams(), day.fridgeGrams() + 1, 1, 9, 1),
                new FeedingCalendar.Day(day.date(), day.eatenGrams(), day.fridgeGrams(), 2, 9, 1),
                new FeedingCalendar.Day(day.date(), day.eatenGrams(), day.fridgeGrams(), 1, 8, 1),
                new FeedingCalendar.Day(day.date(), day.eatenGrams(), day.fridgeGrams(), 1, 9, 2));
        for (FeedingCalendar.Day line : wrong) {
            List<FeedingCalendar.Day> ledger = new ArrayList<>(GOOD.ledger());
            ledger.set(4, line);
            assertThat(check(with(GOOD.events(), ledger, GOOD.leftGrams())))
                    .singleElement()
                    .asString()
                    .startsWith(day.date().toString());
        }
    }

    @Test
    void aDogWithoutAPortionIsFound() {
        Household three = TINY.household()
                .withDogs(Stream.concat(
                                TINY.household().dogs().stream(),
                                Demo.read(Demo.text(Demo.file("three-adults"))).dogs().stream()
                                        .limit(1))
                        .toList());
        assertThat(check(TINY.plan(), three, GOOD)).contains("2026-06-20: Bramble is there and has 0 portions");
    }
}
