package packpot.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.household.Freezer;
import packpot.household.Kitchen;

/** Bags by hand. The thaw figures are 24 hours at least and 10.6 hours per kg. */
class BagScheduleTest {
    private static final Kitchen THREE_FRIDGE_DAYS =
            Demo.planned("tiny-freezer").household().kitchen().withFreezer(null);

    /** Freezes 48 g per litre and night. */
    private static Freezer freezer(double litres) {
        return new Freezer(litres * 1000, 1, 0, 1);
    }

    private static BagSchedule schedule(Kitchen kitchen, int bags, double gramsPerBag, int frozen, int days) {
        Plan.Batch batch = new Plan.Batch(
                bags * gramsPerBag, bags * gramsPerBag, null, "bag", bags, gramsPerBag, frozen, 3, null, null, 0);
        List<Double> eaten = Collections.nCopies(days, bags * gramsPerBag / days);
        return BagSchedule.of(batch, eaten, kitchen, Demo.knowledge().kitchen());
    }

    @Test
    void aBagADayIsMovedOnTheMorningBefore() {
        BagSchedule schedule = schedule(THREE_FRIDGE_DAYS, 10, 500, 7, 10);
        assertThat(schedule.thawDays()).isEqualTo(1);
        assertThat(schedule.bags().subList(0, 3))
                .containsExactly(
                        new BagSchedule.Bag(1, -1, -1, 0, 0, 0),
                        new BagSchedule.Bag(2, -1, -1, 0, 1, 1),
                        new BagSchedule.Bag(3, -1, -1, 0, 2, 2));
        assertThat(schedule.bags().get(3)).isEqualTo(new BagSchedule.Bag(4, 0, 2, 3, 3, 3));
        assertThat(schedule.bags().get(9)).isEqualTo(new BagSchedule.Bag(10, 0, 8, 9, 9, 9));
        assertThat(schedule.oldestDays()).isEqualTo(2);
        assertThat(schedule.hurried()).isFalse();
    }

    @Test
    void aHeavyBagIsMovedTwoMorningsBefore() {
        BagSchedule schedule = schedule(THREE_FRIDGE_DAYS, 10, 2400, 7, 10);
        assertThat(schedule.thawDays()).isEqualTo(2);
        assertThat(schedule.bags().get(3)).isEqualTo(new BagSchedule.Bag(4, 0, 1, 3, 3, 3));
    }

    @Test
    void aBigBagIsFrozenWhenItWouldBeTooOldInTheFridge() {
        // Five bags for fourteen days: 2.8 days each. The plan leaves two in the fridge; the second would last to day
        // 5.
        BagSchedule schedule = schedule(THREE_FRIDGE_DAYS, 5, 1400, 3, 14);
        assertThat(schedule.bags())
                .containsExactly(
                        new BagSchedule.Bag(1, -1, -1, 0, 0, 2),
                        new BagSchedule.Bag(2, 0, 1, 2, 2, 5),
                        new BagSchedule.Bag(3, 0, 4, 5, 5, 8),
                        new BagSchedule.Bag(4, 0, 7, 8, 8, 11),
                        new BagSchedule.Bag(5, 0, 10, 11, 11, 13));
        assertThat(schedule.oldestDays()).isEqualTo(3);
    }

    @Test
    void aFreezerTakesWhatItCanFreezeInANight() {
        // 32 l freeze 1536 g a night: three bags of 500 g.
        BagSchedule schedule = schedule(THREE_FRIDGE_DAYS.withFreezer(freezer(32)), 10, 500, 7, 10);
        assertThat(schedule.perNight()).isEqualTo(3);
        assertThat(schedule.hurried()).isFalse();
        assertThat(schedule.bags().stream().map(BagSchedule.Bag::frozenDay))
                .containsExactly(-1, -1, -1, 0, 0, 0, 1, 1, 1, 2);
        assertThat(schedule.oldestDays()).isEqualTo(2);
    }

    @Test
    void aFreezerThatIsTooSlowIsHurriedAndThatIsKnown() {
        BagSchedule schedule = schedule(THREE_FRIDGE_DAYS.withFreezer(freezer(11)), 10, 500, 7, 10);
        assertThat(schedule.perNight()).isEqualTo(3);
        assertThat(schedule.hurried()).isTrue();
    }

    @Test
    void whatNobodyEatsStaysInTheFreezer() {
        Plan.Batch batch = new Plan.Batch(5000, 5000, null, "bag", 10, 500, 7, 3, null, null, 0);
        BagSchedule schedule = BagSchedule.of(
                batch,
                Collections.nCopies(10, 400.0),
                THREE_FRIDGE_DAYS,
                Demo.knowledge().kitchen());
        assertThat(schedule.bags().get(7).lastDay()).isEqualTo(9);
        assertThat(schedule.bags().subList(8, 10))
                .containsExactly(new BagSchedule.Bag(9, 0, -1, 0, -1, -1), new BagSchedule.Bag(10, 0, -1, 0, -1, -1));
    }

    @Test
    void bagsAreNamedInRuns() {
        assertThat(Bags.words(List.of(4))).hasToString("bag 4");
        assertThat(Bags.words(List.of(4, 5))).hasToString("bags 4 and 5");
        assertThat(Bags.words(List.of(4, 5, 6, 7, 9, 12, 13))).hasToString("bags 4 to 7, 9, 12 and 13");
    }
}
