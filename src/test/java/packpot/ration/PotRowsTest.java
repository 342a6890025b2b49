package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.Tiny.coefficient;
import static packpot.ration.Tiny.row;
import static packpot.ration.Tiny.variable;

import org.junit.jupiter.api.Test;
import packpot.food.Constituent;
import packpot.household.Wish;

class PotRowsTest {
    private static final String TURKEY = "ground turkey, 93 % lean";
    private static final String RICE = "white rice, enriched, dry";
    private static final String SALT = "salt, iodised, 45 ug per g";

    private final Build build = Tiny.build(Tiny.household());

    @Test
    void aFoodIsInThePotOnlyWhenItIsUsed() {
        double most = variable(build, TURKEY + " g").upper();
        String row = TURKEY + " only when used";
        assertThat(coefficient(build, row, TURKEY + " g")).isEqualTo(1);
        assertThat(coefficient(build, row, TURKEY + " used")).isEqualTo(-most);
        assertThat(row(build, row).upper()).isZero();
        assertThat(variable(build, TURKEY + " used").integer()).isTrue();
        assertThat(variable(build, TURKEY + " used").upper()).isEqualTo(1);
    }

    @Test
    void aFoodThatIsUsedComesInAUsefulAmount() {
        double yield = Tiny.item(build, RICE).preparation().yieldCookedOverRaw();
        double least = build.household.shape().smallestUsefulShare() * build.usualCookedGrams() / yield;
        assertThat(yield).isGreaterThan(2);
        assertThat(coefficient(build, RICE + " a useful amount", RICE + " used"))
                .isCloseTo(-least, within(1e-9));
        assertThat(row(build, RICE + " a useful amount").lower()).isZero();
    }

    @Test
    void aFoodThatPlaysASmallPartMayBeLess() {
        double usual = -coefficient(build, TURKEY + " a useful amount", TURKEY + " used");
        double minor = -coefficient(build, "canola oil a useful amount", "canola oil used");
        assertThat(minor).isLessThan(usual / 2);
    }

    @Test
    void aSupplementGoesInByWholeSteps() {
        double step = Tiny.item(build, SALT).food().supplement().potStepGrams();
        assertThat(variable(build, SALT + " steps").integer()).isTrue();
        assertThat(coefficient(build, SALT + " by steps", SALT + " g")).isEqualTo(1);
        assertThat(coefficient(build, SALT + " by steps", SALT + " steps")).isEqualTo(-step);
        assertThat(row(build, SALT + " by steps").lower()).isZero();
        assertThat(row(build, SALT + " by steps").upper()).isZero();
    }

    @Test
    void theEnergyOfThePotIsTheSumOverItsFoods() {
        double kcal = 4 * rawPerGram(TURKEY, Constituent.PROTEIN_G)
                + 9 * rawPerGram(TURKEY, Constituent.FAT_G)
                + 4
                        * Math.max(
                                0,
                                rawPerGram(TURKEY, Constituent.CARBOHYDRATE_G)
                                        - rawPerGram(TURKEY, Constituent.FIBRE_G));
        assertThat(kcal).isBetween(1.2, 1.8);
        assertThat(coefficient(build, "kcal of the pot", TURKEY + " g")).isCloseTo(kcal, within(1e-9));
        assertThat(coefficient(build, "kcal of the pot", "kcal of the pot")).isEqualTo(-1);
    }

    @Test
    void theCookedMassIsTheSumOfTheYields() {
        assertThat(coefficient(build, "cooked grams", RICE + " g"))
                .isEqualTo(Tiny.item(build, RICE).preparation().yieldCookedOverRaw());
        assertThat(coefficient(build, "cooked grams", "cooked grams")).isEqualTo(-1);
    }

    @Test
    void whatMustBeUsedIsUsed() {
        assertThat(row(build, "must use " + TURKEY).lower()).isEqualTo(300);
        assertThat(row(build, "must use " + TURKEY).expression().coefficient(variable(build, TURKEY + " g")))
                .isEqualTo(1);
        assertThat(row(build, "must use " + TURKEY).tag().kind()).isEqualTo(Wish.Kind.MUST_USE);
        assertThat(Tiny.hasRow(build, "must use " + RICE)).isFalse();
    }

    @Test
    void aCapOnAFoodBoundsItsAmount() {
        assertThat(variable(build, "chicken liver g").upper()).isLessThanOrEqualTo(400);
    }

    @Test
    void whatCannotBeBoughtIsBoundedByWhatIsOnHand() {
        assertThat(variable(build, "eggshell powder g").upper()).isLessThanOrEqualTo(50);
    }

    @Test
    void whatADogMustNotGetIsNotInThePot() {
        assertThat(build.potGrams.keySet())
                .noneMatch(food -> food.item().food().label().contains("beef"));
        assertThat(build.potGrams.keySet())
                .noneMatch(food -> food.item().food().label().contains("kelp"));
    }

    private double rawPerGram(String label, Constituent constituent) {
        return Tiny.item(build, label).food().composition().perGram(constituent);
    }
}
