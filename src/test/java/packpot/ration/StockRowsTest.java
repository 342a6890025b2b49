package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.Tiny.coefficient;
import static packpot.ration.Tiny.row;
import static packpot.ration.Tiny.variable;

import org.junit.jupiter.api.Test;
import packpot.household.Wish;

class StockRowsTest {
    private static final String TURKEY = "ground turkey, 93 % lean";
    private static final String RICE = "white rice, enriched, dry";
    private static final String LIVER = "chicken liver";
    private static final String SALT = "salt, iodised, 45 ug per g";

    private final Build build = Tiny.build(Tiny.household());

    @Test
    void whatIsUsedComesFromHandAndFromPacks() {
        String row = LIVER + " used";
        assertThat(row(build, row).lower()).isZero();
        assertThat(row(build, row).upper()).isZero();
        assertThat(coefficient(build, row, LIVER + " g")).isEqualTo(1);
        assertThat(coefficient(build, row, LIVER + " from hand")).isEqualTo(-1);
        assertThat(coefficient(build, row, LIVER + " from packs")).isEqualTo(-1);
        assertThat(variable(build, LIVER + " from hand").upper()).isEqualTo(200);
    }

    @Test
    void dosesInBowlsUseTheStockToo() {
        double dose = 10 * Tiny.item(build, SALT).food().supplement().smallestDoseGrams();
        assertThat(coefficient(build, SALT + " used", SALT + " for Ash doses")).isCloseTo(dose, within(1e-12));
        assertThat(coefficient(build, SALT + " used", SALT + " g")).isEqualTo(1);
    }

    @Test
    void whatIsOnHandCostsNothing() {
        assertThat(build.model.objective().coefficient(variable(build, LIVER + " from hand")))
                .isZero();
        assertThat(build.model.variables()).noneMatch(v -> v.name().equals(TURKEY + " from hand"));
    }

    @Test
    void packsAreBoughtWholeAndHoldWhatIsTaken() {
        String row = TURKEY + " out of packs";
        assertThat(variable(build, TURKEY + " packs").integer()).isTrue();
        assertThat(coefficient(build, row, TURKEY + " packs")).isCloseTo(1000, within(1e-9));
        assertThat(coefficient(build, row, TURKEY + " from packs")).isEqualTo(-1);
        assertThat(row(build, row).lower()).isZero();
        assertThat(row(build, row).upper()).isInfinite();
    }

    @Test
    void aFoodThatIsUsedOpensAPackUnlessThereIsSomeInTheHouse() {
        String row = TURKEY + " opens a pack";
        assertThat(coefficient(build, row, TURKEY + " used")).isEqualTo(1);
        assertThat(coefficient(build, row, TURKEY + " packs")).isEqualTo(-1);
        assertThat(row(build, row).upper()).isZero();
        assertThat(Tiny.hasRow(build, LIVER + " opens a pack")).isFalse();
    }

    @Test
    void wholePacksAreUsedUp() {
        String row = "carrots whole packs";
        double edible = Tiny.item(build, "carrots").food().kitchen().edibleShare() * 1000;
        assertThat(row(build, row).lower()).isZero();
        assertThat(row(build, row).upper()).isZero();
        assertThat(edible).isLessThan(1000);
        assertThat(coefficient(build, row, "carrots packs")).isCloseTo(edible, within(1e-9));
    }

    @Test
    void aPerishablePackIsPaidInFull() {
        assertThat(cost(TURKEY + " packs")).isEqualTo(8);
        assertThat(cost(TURKEY + " from packs")).isZero();
    }

    @Test
    void theRestOfAPackThatKeepsIsWorthAShareOfItsPrice() {
        double share = build.rules().leftoverWorthShare();
        assertThat(share).isBetween(0.5, 0.999);
        assertThat(cost(RICE + " packs")).isCloseTo(2 - 2 * share, within(1e-12));
        assertThat(cost(RICE + " from packs")).isCloseTo(2 * share / 1000, within(1e-12));
    }

    @Test
    void aSupplementIsPaidByTheGram() {
        assertThat(cost(SALT + " from packs")).isCloseTo(1.0 / 500, within(1e-12));
        // Packs that keep their whole worth need no variable, but for a budget or where they are used up.
        assertThat(build.model.variables()).noneMatch(v -> v.name().equals(SALT + " packs"));
        Build whole = Tiny.build(Tiny.household(
                Tiny.DOGS,
                Tiny.PANTRY.replace(
                        "\"500 g\", \"price\": \"$1.00\"", "\"500 g\", \"price\": \"$1.00\", \"wholePacks\": true"),
                Tiny.KITCHEN,
                ""));
        assertThat(variable(whole, SALT + " packs").integer()).isTrue();
    }

    @Test
    void aFoodSoldByWeightIsPaidByTheGram() {
        Build alone = Tiny.build(Tiny.household(
                "[{\"name\": \"Ash\", \"weight\": \"20 kg\", \"age\": \"4 years\"}]", Tiny.PANTRY, Tiny.KITCHEN, ""));
        assertThat(alone.model.objective().coefficient(variable(alone, "ground beef, 90 % lean from packs")))
                .isCloseTo(12.0 / 1000, within(1e-12));
    }

    @Test
    void aFoodOutOfStockCannotBeBought() {
        assertThat(coefficient(build, "eggshell powder used", "eggshell powder from hand"))
                .isEqualTo(-1);
        assertThat(build.model.variables()).noneMatch(v -> v.name().equals("eggshell powder from packs"));
    }

    @Test
    void aCapCountsPotAndBowlsTogether() {
        Build capped = Tiny.build(Tiny.household(
                Tiny.DOGS,
                Tiny.PANTRY.replace(
                        "\"500 g\", \"price\": \"$1.00\"", "\"500 g\", \"price\": \"$1.00\", \"atMost\": \"8 g\""),
                Tiny.KITCHEN,
                ""));
        String name = capped.model.rows().stream()
                .map(row -> row.name())
                .filter(each -> each.startsWith("at most 8 g of " + SALT))
                .findFirst()
                .orElseThrow();
        assertThat(row(capped, name).upper()).isEqualTo(8);
        assertThat(coefficient(capped, name, SALT + " g")).isEqualTo(1);
        assertThat(coefficient(capped, name, SALT + " for Ash doses")).isPositive();
        assertThat(row(capped, name).tag().kind()).isEqualTo(Wish.Kind.FOOD_LIMIT);
    }

    @Test
    void theBudgetCountsMoneyAtTheTill() {
        Build poor = Tiny.build(Tiny.household(Tiny.DOGS, Tiny.PANTRY, Tiny.KITCHEN, ", \"budget\": \"$40\""));
        var budget = poor.model.rows().stream()
                .filter(row -> row.tag() != null && row.tag().kind() == Wish.Kind.BUDGET)
                .findFirst()
                .orElseThrow();
        assertThat(budget.upper()).isEqualTo(40);
        assertThat(budget.expression().coefficient(variable(poor, TURKEY + " packs")))
                .isEqualTo(8);
        assertThat(budget.expression().coefficient(variable(poor, SALT + " packs")))
                .isEqualTo(1);
    }

    private double cost(String variable) {
        return build.model.objective().coefficient(variable(build, variable));
    }
}
