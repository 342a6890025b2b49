package packpot.horizon;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.household.Freezer;
import packpot.household.Kitchen;
import packpot.plan.Plan;

/** Bags for all dogs, or for each; reckoned by hand from the portions of the tiny-freezer demo. */
class BagPlanTest {
    private static final Plan PLAN = Demo.planned(Demo.file("tiny-freezer")).plan();

    private static Kitchen kitchen(double bagMl, int fridgeDays, Freezer freezer) {
        return new Kitchen(14, 2, null, 0.8, 4, null, "bag", bagMl, null, freezer, fridgeDays, 1.0, 1);
    }

    /** Clover eats 537 g a day and Rusk 302 g, for 14 days. */
    @Test
    void eachDogHasBagsForItsFridgeDays() {
        int clover = PLAN.dogs().get(0).potGramsPerDay();
        int rusk = PLAN.dogs().get(1).potGramsPerDay();
        // A bag of three days of Clover's holds five of Rusk's, of which it gets three; 14 days take 5 bags of each.
        assertThat(BagPlan.of(kitchen(3.0 * clover, 3, null), PLAN).perDog()).isEqualTo(5 + 5);
        assertThat(rusk).isLessThan(clover);
        // One that holds just a day of Clover's holds one of Rusk's too.
        assertThat(BagPlan.of(kitchen(clover, 3, null), PLAN).perDog()).isEqualTo(14 + 14);
        // One that holds less than a day of Clover's: two a day for it.
        assertThat(BagPlan.of(kitchen(clover - 1.0, 3, null), PLAN).perDog()).isEqualTo(28 + 14);
        assertThat(BagPlan.of(kitchen(clover, 3, null), PLAN).shared())
                .isEqualTo(PLAN.batch().bags());
    }

    @Test
    void bagsOfTheFirstDaysNeedNoFreezer() {
        // 10 bags, of which 3 of 14 days' are in the fridge: 8 in the freezer.
        assertThat(new BagPlan(5, 10, 8).perDogFits(14, 3)).isTrue();
        assertThat(new BagPlan(5, 10, 7).perDogFits(14, 3)).isFalse();
        // Bags of a litre: 14 of a day for Clover and 5 of three days for Rusk, the whole batch in 19 of them.
        Freezer freezer = new Freezer(20_000, 0.5, 4_000, 0.5);
        int holds = BagPlan.of(kitchen(1_000, 3, freezer), PLAN).freezerHolds();
        double litresPerBag = PLAN.batch().millilitres() / 1000 / 19;
        assertThat(holds * litresPerBag).isLessThanOrEqualTo(3);
        assertThat((holds + 1) * litresPerBag).isGreaterThan(3);
    }
}
