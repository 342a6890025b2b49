package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.Tiny.coefficient;
import static packpot.ration.Tiny.row;

import org.junit.jupiter.api.Test;
import packpot.household.Freezer;
import packpot.household.Kitchen;
import packpot.household.Wish;

class KitchenRowsTest {
    private final Build build = Tiny.build(Tiny.household());
    private final Kitchen kitchen = build.household.kitchen();
    private final double gramsPerMl =
            kitchen.mixDensityGramsPerMl() * (1 - build.rules().roundingReserve());

    @Test
    void thePotIsFilledOnlySoFarAndSoOften() {
        assertThat(kitchen.potFillShare()).isBetween(0.5, 1.0);
        assertThat(row(build, "pot").upper()).isCloseTo(10_000 * kitchen.potFillShare() * 2 * gramsPerMl, within(1e-6));
        assertThat(coefficient(build, "pot", "cooked grams")).isEqualTo(1);
        assertThat(row(build, "pot").tag().kind()).isEqualTo(Wish.Kind.POT);
    }

    @Test
    void theWholeBatchFitsTheBin() {
        assertThat(row(build, "bin").upper()).isCloseTo(15_000 * gramsPerMl, within(1e-6));
    }

    @Test
    void theBatchFitsTheBags() {
        assertThat(kitchen.bagUsableMl()).isLessThan(1000);
        assertThat(row(build, "bags").upper()).isCloseTo(12 * kitchen.bagUsableMl() * gramsPerMl, within(1e-6));
        assertThat(coefficient(build, "bags", "cooked grams")).isEqualTo(1);
    }

    @Test
    void wholeBagsOfTheFrozenShareFitTheFreezer() {
        double free = kitchen.freezer().freeForFoodMl();
        double bags = Math.floor(free / kitchen.bagUsableMl());
        assertThat(coefficient(build, "freezer", "cooked grams")).isCloseTo(6 / 10.0, within(1e-12));
        assertThat(row(build, "freezer").upper()).isCloseTo(bags * kitchen.bagUsableMl() * gramsPerMl, within(1e-6));
    }

    @Test
    void aFullFreezerTakesNothingAndNothingIsFrozenThatTheFridgeKeeps() {
        Freezer full = new Freezer(40_000, 0.9, 36_000, 0.8);
        Build build = Tiny.build(Tiny.household().withKitchen(kitchen.withFreezer(full)));
        assertThat(row(build, "freezer").upper()).isZero();
        assertThat(build.levers).noneMatch(lever -> lever.wish().kind() == Wish.Kind.FREEZER);
        assertThat(kitchen.fridgeDays()).isEqualTo(4);
        Build soon = Tiny.build(Tiny.household().withKitchen(kitchen.withDays(4)));
        assertThat(Tiny.hasRow(soon, "freezer")).isFalse();
    }

    @Test
    void whatTheScenarioDoesNotNameSetsNoLimit() {
        Build plain = Tiny.build(Tiny.household(Tiny.DOGS, Tiny.PANTRY, "{\"days\": 10}", ""));
        assertThat(plain.model.rows())
                .noneMatch(row -> row.name().equals("pot")
                        || row.name().equals("bin")
                        || row.name().equals("bags")
                        || row.name().equals("freezer"));
    }
}
