package packpot.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.audit.TinyPlan.HOUSEHOLD;
import static packpot.audit.TinyPlan.PLAN;
import static packpot.audit.TinyPlan.household;
import static packpot.audit.TinyPlan.plan;

import java.util.List;
import org.junit.jupiter.api.Test;
import packpot.Records;
import packpot.household.Household;
import packpot.household.Kitchen;
import packpot.plan.Plan;

/** Pot, tub, bags and freezer to the brim pass, and a drop more is found. */
class LimitsOfTheKitchenTest {
    private static final double ML = PLAN.batch().millilitres();
    private static final Kitchen KITCHEN = HOUSEHOLD.kitchen();

    private static List<String> about(String where, Plan plan, Household household) {
        return TinyPlan.findings(plan, household).stream()
                .filter(finding -> finding.startsWith(where + ": "))
                .toList();
    }

    private static List<String> about(String where, String place, Object part) {
        return about(where, PLAN, household("kitchen." + place, part));
    }

    @Test
    void thePotHoldsItsLoadsAndNoLoadIsTooMany() {
        double full = ML / 2 / KITCHEN.potFillShare();
        assertThat(PLAN.batch().potLoads()).isEqualTo(2);
        assertThat(about("pot", "potMl", full)).isEmpty();
        assertThat(about("pot", "potMl", full * (1 - 1e-5)))
                .containsExactly("pot: 12371 ml do not fit the stated loads of 6185 ml");
        assertThat(about("pot", "potMl", 2 * full * (1 - 1e-9))).isEmpty();
        assertThat(about("pot", "potMl", 2 * full * (1 + 1e-9))).hasSize(1);
        assertThat(about("pot", "mostPotLoads", 2)).isEmpty();
        assertThat(about("pot", "mostPotLoads", 1)).hasSize(1);
        assertThat(about("pot", "potMl", null)).isEmpty();
        assertThat(about("pot", plan("batch.potLoads", null), HOUSEHOLD)).hasSize(1);
    }

    @Test
    void theTubHoldsTheBatch() {
        assertThat(about("bin", "binMl", ML)).isEmpty();
        assertThat(about("bin", "binMl", ML * (1 - 1e-5)))
                .containsExactly("bin: 12371 ml do not fit a bin of 12371 ml");
    }

    @Test
    void bagsHoldTheBatchAndNoneIsTooMany() {
        assertThat(PLAN.batch().bags()).isEqualTo(17);
        assertThat(about("bags", "bagUsableMl", ML / 17)).isEmpty();
        assertThat(about("bags", "bagUsableMl", ML / 17 * (1 - 1e-5)))
                .containsExactly("bags: 12371 ml do not make 17 bags of 728 ml");
        assertThat(about("bags", "bagUsableMl", ML / 16 * (1 - 1e-9))).isEmpty();
        assertThat(about("bags", "bagUsableMl", ML / 16 * (1 + 1e-9))).hasSize(1);
        assertThat(about("bags", "mostBags", 17)).isEmpty();
        assertThat(about("bags", "mostBags", 16)).containsExactly("bags: 17 bags, at most 16 are wished");
        assertThat(about("bags", "mostBags", null)).isEmpty();
    }

    /** Five bags for 14 days: without the fifth each would last 3.5 days, longer than 3 in the fridge. */
    @Test
    void aBagThatKeepsFoodFromGrowingOldIsNeeded() {
        Plan five = plan("batch.bags", 5);
        Household large = household("kitchen.bagUsableMl", ML);
        assertThat(about("bags", five, large)).isEmpty();
        assertThat(about("bags", five, Records.with(large, "kitchen.fridgeDays", 4)))
                .hasSize(1);
        assertThat(about("bags", five, Records.with(large, "kitchen.days", 12))).hasSize(1);
        Plan fourteen = plan("batch.bags", 14);
        assertThat(about("bags", fourteen, Records.with(large, "kitchen.fridgeDays", 0)))
                .isEmpty();
        assertThat(about("bags", plan("batch.bags", 15), Records.with(large, "kitchen.fridgeDays", 0)))
                .hasSize(1);
    }

    @Test
    void bagsOfTheFridgeFeedItsDaysAndNoneIsTooMany() {
        Plan aDayEach = plan("batch.bags", 14);
        String told = "freezer: %d bags in the fridge do not feed the first 3 days";
        assertThat(about("freezer", Records.with(aDayEach, "batch.bagsFrozen", 11), HOUSEHOLD))
                .doesNotContain(told.formatted(3));
        assertThat(about("freezer", Records.with(aDayEach, "batch.bagsFrozen", 12), HOUSEHOLD))
                .contains(told.formatted(2));
        assertThat(about("freezer", Records.with(aDayEach, "batch.bagsFrozen", 10), HOUSEHOLD))
                .contains(told.formatted(4));
        assertThat(about("freezer", plan("batch.fridgeDays", 4), HOUSEHOLD)).contains(told.formatted(4));
        Plan two = Records.with(plan("batch.bags", 2), "batch.bagsFrozen", 0);
        assertThat(about("freezer", two, household("kitchen.days", 2))).doesNotContain(told.formatted(2));
        Plan three = Records.with(plan("batch.bags", 3), "batch.bagsFrozen", 0);
        assertThat(about("freezer", three, household("kitchen.days", 3))).doesNotContain(told.formatted(3));
    }

    @Test
    void theFreezerHoldsWhatIsFrozen() {
        // 13 of 17 bags with what is in them, 12.371 l in all, packed with 60 %, take 15.77 l; 65 % are usable and 3 l
        // taken.
        double takenMl = 13 * ML / 17 / 0.6;
        assertThat(takenMl).isCloseTo(15_767, within(1.0));
        double rated = (takenMl + 3000) / 0.65;
        Plan stated = plan("batch.freezerFreeMl", takenMl);
        assertThat(about("freezer", stated, household("kitchen.freezer.ratedMl", rated)))
                .isEmpty();
        assertThat(about("freezer", stated, household("kitchen.freezer.ratedMl", rated - 0.1)))
                .containsExactly("freezer: 13 bags take 15767 ml, free are 15767 ml");
        assertThat(about("freezer", plan("batch.freezerMl", null), HOUSEHOLD)).hasSize(1);
        assertThat(about("freezer", plan("batch.freezerFreeMl", null), HOUSEHOLD))
                .hasSize(1);
        assertThat(about("freezer", "freezer", null)).isEmpty();
    }

    @Test
    void portionsAreNoMoreThanTheBatch() {
        // 6.37 g are spare; half a gram a day for 14 days would be 7 g.
        assertThat(about("portions", plan("dogs[1].potGramsPerDay", 302), HOUSEHOLD))
                .isEmpty();
        assertThat(about("portions", plan("dogs[1].potGramsPerDay", 303), HOUSEHOLD))
                .containsExactly("portions: take 11760 g, the batch has 11752 g");
    }

    @Test
    void thePlanIsForTheDaysAndMealsThatAreWished() {
        String told = "days: the plan is for 14 days, wished are %d";
        assertThat(about("days", "days", 13)).containsExactly(told.formatted(13));
        assertThat(about("days", "mealsPerDay", 3)).containsExactly(told.formatted(14));
    }
}
