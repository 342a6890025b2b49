package packpot.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.audit.CalendarCheck;
import packpot.dog.Course;
import packpot.dog.Dog;
import packpot.dog.Transition;
import packpot.dog.WeighIn;
import packpot.household.Household;
import packpot.plan.FeedingCalendar.Event;
import packpot.plan.FeedingCalendar.Kind;

/** Dogs that leave, come from another food or are weighed, in the calendar of a plan of the two dogs Clover and Rusk. */
class CalendarBuilderTest {
    private static final Demo.Planned TINY = Demo.planned("tiny-freezer");
    private static final int CLOVER_GRAMS = TINY.plan().dogs().get(0).potGramsPerDay();
    private static final int RUSK_GRAMS = TINY.plan().dogs().get(1).potGramsPerDay();

    private static Household tiny(Course course) {
        List<Dog> dogs = TINY.household().dogs();
        return TINY.household().withDogs(List.of(dogs.get(0).withCourse(course), dogs.get(1)));
    }

    /** The same with room for every bag. */
    private static Household with(Course course) {
        return tiny(course).withKitchen(TINY.household().kitchen().withFreezer(null));
    }

    private static FeedingCalendar calendar(Household household) {
        FeedingCalendar calendar = CalendarBuilder.of(TINY.plan(), household, Demo.knowledge());
        assertThat(CalendarCheck.check(TINY.plan(), household, Demo.knowledge(), calendar))
                .isEmpty();
        return calendar;
    }

    private static List<Event> events(FeedingCalendar calendar, Kind kind, String about) {
        return calendar.events().stream()
                .filter(event -> event.kind() == kind && event.about().equals(about))
                .toList();
    }

    private static Course comesFrom(String food, int days) {
        return new Course(
                List.of(),
                null,
                null,
                null,
                null,
                null,
                new Transition(food, Demo.knowledge().kitchen().newFoodShares(days)),
                null);
    }

    @Test
    void aDogThatLeavesIsFedNoMoreAndItsFoodIsLeft() {
        FeedingCalendar calendar = calendar(with(new Course(List.of(), null, null, null, 5, null)));
        assertThat(calendar.ledger().get(4).eatenGrams()).isEqualTo(CLOVER_GRAMS + RUSK_GRAMS);
        assertThat(calendar.ledger().get(5).eatenGrams()).isEqualTo(RUSK_GRAMS);
        assertThat(calendar.leftGrams())
                .isCloseTo(9 * CLOVER_GRAMS + TINY.plan().batch().spareGrams(), within(1e-6));
        assertThat(events(calendar, Kind.DOG, "Clover"))
                .singleElement()
                .satisfies(event -> assertThat(event.date()).isEqualTo(LocalDate.of(2026, 6, 25)));
        assertThat(events(calendar, Kind.LAST_DAY, "").get(0).details().get(0).toString())
                .contains("left in the freezer");
        assertThat(events(calendar, Kind.WEIGH, "Clover")).isEmpty();
    }

    @Test
    void aDogFromAnotherFoodGoesOverInQuarters() {
        FeedingCalendar calendar = calendar(with(comesFrom("dry food", 10)));
        List<Event> steps = events(calendar, Kind.CHANGE_OF_FOOD, "Clover");
        assertThat(steps.stream().map(event -> event.date().toString()))
                .containsExactly("2026-06-20", "2026-06-23", "2026-06-26", "2026-06-29");
        long quarter = Math.round(CLOVER_GRAMS / 4.0);
        assertThat(steps.get(0).title().toString())
                .contains(quarter + " g of the batch a day", "25 % of its full portion", "75 % of its usual dry food");
        assertThat(steps.get(3).title().toString()).contains("fed the batch alone from today, " + CLOVER_GRAMS + " g");
        assertThat(calendar.ledger().get(0).eatenGrams()).isEqualTo(RUSK_GRAMS + quarter);
        assertThat(calendar.ledger().get(9).eatenGrams()).isEqualTo(RUSK_GRAMS + CLOVER_GRAMS);
        assertThat(calendar.leftGrams()).isCloseTo(4.5 * CLOVER_GRAMS, within(20.0));
        assertThat(calendar.notes())
                .anyMatch(note -> note.toString().contains("less of this batch than it is planned for"));
        assertThat(events(calendar, Kind.BOWL, "").stream()
                        .filter(event -> event.date().isBefore(LocalDate.of(2026, 6, 29)))
                        .map(Event::title))
                .noneMatch(title -> title.toString().contains("Clover"));
    }

    @Test
    void aFullFreezerHasNoRoomForWhatIsNotEaten() {
        Household household = tiny(comesFrom("dry food", 10));
        FeedingCalendar calendar = CalendarBuilder.of(TINY.plan(), household, Demo.knowledge());
        assertThat(CalendarCheck.check(TINY.plan(), household, Demo.knowledge(), calendar))
                .singleElement()
                .asString()
                .contains("14 bags take 10188 ml of the freezer", "cook for fewer days");
    }

    @Test
    void aChangeThatOutlastsTheBatchIsTold() {
        FeedingCalendar calendar = calendar(with(comesFrom("dry food", 28)));
        assertThat(calendar.notes())
                .anyMatch(note -> note.toString().contains("not fed the batch alone before 2026-07-17"));
    }

    @Test
    void aDogIsWeighedAsLongAfterTheLastTimeAsItsKindIs() {
        Course weighed = new Course(List.of(new WeighIn(-20, 14.0)), null, null, null, null, null);
        assertThat(events(calendar(with(weighed)), Kind.WEIGH, "Clover").stream()
                        .map(Event::date))
                .containsExactly(LocalDate.of(2026, 6, 30));
        Demo.Planned puppy = Demo.planned("growing-puppy");
        FeedingCalendar calendar = CalendarBuilder.of(puppy.plan(), puppy.household(), Demo.knowledge());
        assertThat(events(calendar, Kind.WEIGH, "Thistle").stream().map(Event::date))
                .containsExactly(LocalDate.of(2026, 4, 18));
    }

    @Test
    void shoppingIsOnTheDayThatIsWished() {
        assertThat(events(calendar(TINY.household()), Kind.SHOP, ""))
                .singleElement()
                .satisfies(event -> assertThat(event.date()).isEqualTo(LocalDate.of(2026, 6, 19)));
        Household early = Demo.read(Demo.text(Demo.file("tiny-freezer"))
                .replace("\"fridgeDays\": 3", "\"fridgeDays\": 3, \"shopDaysBefore\": 3"));
        FeedingCalendar calendar = calendar(early);
        assertThat(events(calendar, Kind.SHOP, "").get(0).date()).isEqualTo(LocalDate.of(2026, 6, 17));
        assertThat(calendar.notes()).anyMatch(note -> note.toString().contains("shopping is 3 days before cooking"));
    }
}
