package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.Tiny.coefficient;
import static packpot.ration.Tiny.row;

import org.junit.jupiter.api.Test;
import packpot.household.Wish;

class ShapeRowsTest {
    private static final String TURKEY = "ground turkey, 93 % lean";
    private static final String RICE = "white rice, enriched, dry";

    private final Build build = Tiny.build(Tiny.household());
    private final double reserve = build.rules().roundingReserve();

    @Test
    void aBandIsAShareOfCookedMassOverItsGroups() {
        String least = "meat, fish and egg at least 35 % of cooked mass";
        double yield = Tiny.item(build, TURKEY).preparation().yieldCookedOverRaw();
        assertThat(coefficient(build, least, TURKEY + " g")).isEqualTo(yield);
        assertThat(coefficient(build, least, RICE + " g")).isZero();
        assertThat(coefficient(build, least, "cooked grams")).isCloseTo(-0.35 * (1 + reserve), within(1e-12));
        assertThat(row(build, least).lower()).isZero();
        assertThat(row(build, least).tag().kind()).isEqualTo(Wish.Kind.SHAPE);
        assertThat(row(build, least).tag().size()).isCloseTo(0.35 * usualGrams(), within(1e-9));
    }

    @Test
    void theUpperEndOfABandKeepsAReserveToo() {
        String most = "meat, fish and egg at most 65 % of cooked mass";
        assertThat(coefficient(build, most, "cooked grams")).isCloseTo(-0.65 * (1 - reserve), within(1e-12));
        assertThat(row(build, most).upper()).isZero();
        assertThat(row(build, most).tag().size()).isCloseTo(0.65 * usualGrams(), within(1e-9));
    }

    /** Of ten days; a gram of the usual pot has 1.3 kcal. */
    private double usualGrams() {
        return 10 * build.needs.kcalPerDay() / 1.3;
    }

    @Test
    void aBandOfTheScenarioTakesThePlaceOfTheUsualOne() {
        Build own = Tiny.build(Tiny.household(
                Tiny.DOGS,
                Tiny.PANTRY,
                Tiny.KITCHEN,
                ", \"shape\": {\"shares\": {\"meat\": {\"least\": \"45 %\", \"most\": \"60 %\"}}}"));
        assertThat(Tiny.hasRow(own, "meat, fish and egg at least 45 % of cooked mass"))
                .isTrue();
        assertThat(Tiny.hasRow(own, "meat, fish and egg at least 35 % of cooked mass"))
                .isFalse();
    }

    @Test
    void aBandWithoutALimitHasNoRow() {
        // Organ meat may be missing; nothing bounds seeds below, nor vegetables of a scenario that allows all of the
        // pot.
        assertThat(build.model.rows()).noneMatch(row -> row.name().startsWith("organ meat at least"));
        Build own = Tiny.build(Tiny.household(
                Tiny.DOGS,
                Tiny.PANTRY,
                Tiny.KITCHEN,
                ", \"shape\": {\"shares\": {\"vegetable\": {\"least\": \"5 %\", \"most\": \"100 %\"}}}"));
        assertThat(own.model.rows()).noneMatch(row -> row.name().startsWith("vegetables and fruit at most"));
    }

    @Test
    void aBandWithoutFoodsHasNoUpperRow() {
        assertThat(build.model.rows()).noneMatch(row -> row.name().startsWith("shellfish at most"));
    }

    @Test
    void oneFoodIsAtMostAShareOfCookedMass() {
        String most = RICE + " at most 50 % of cooked mass";
        assertThat(coefficient(build, most, RICE + " g"))
                .isEqualTo(Tiny.item(build, RICE).preparation().yieldCookedOverRaw());
        assertThat(coefficient(build, most, "cooked grams")).isCloseTo(-0.5 * (1 - reserve), within(1e-12));
        assertThat(row(build, most).tag().kind()).isEqualTo(Wish.Kind.FOOD_LIMIT);
        assertThat(row(build, most).tag().size()).isCloseTo(0.5 * usualGrams(), within(1e-9));
    }

    @Test
    void aFoodWithACapOfItsOwnKeepsIt() {
        assertThat(Tiny.hasRow(build, "chicken liver at most 5 % of cooked mass"))
                .isTrue();
    }

    @Test
    void foodsAreCountedWithoutSupplementsAndSupplementsByThemselves() {
        String salt = "salt, iodised, 45 ug per g used";
        assertThat(row(build, "at most 10 foods in the pot").upper()).isEqualTo(10);
        assertThat(coefficient(build, "at most 10 foods in the pot", RICE + " used"))
                .isEqualTo(1);
        assertThat(coefficient(build, "at most 10 foods in the pot", salt)).isZero();
        assertThat(row(build, "at most 6 supplements stirred into the batch").upper())
                .isEqualTo(6);
        assertThat(coefficient(build, "at most 6 supplements stirred into the batch", salt))
                .isEqualTo(1);
        assertThat(coefficient(build, "at most 6 supplements stirred into the batch", RICE + " used"))
                .isZero();
        assertThat(row(build, "at least 5 foods in the pot").lower()).isEqualTo(5);
        assertThat(coefficient(build, "at least 5 foods in the pot", RICE + " used"))
                .isEqualTo(1);
        assertThat(coefficient(build, "at least 5 foods in the pot", salt)).isZero();
    }
}
