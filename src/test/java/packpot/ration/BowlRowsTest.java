package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.Tiny.coefficient;
import static packpot.ration.Tiny.row;
import static packpot.ration.Tiny.variable;

import org.junit.jupiter.api.Test;
import packpot.food.Supplement;
import packpot.household.Wish;

class BowlRowsTest {
    private static final String PUPPY = """
            [{"name": "Ash", "weight": "8 kg", "born": "2025-12-01", "expectedAdultWeight": "25 kg"}]""";
    private static final String ZINC = "zinc gluconate";
    private static final String SHELL = "eggshell powder";
    private static final String DROPS = "vitamin d3 drops";

    private final Build build = Tiny.build(Tiny.household());

    @Test
    void aDailyDoseIsGivenOnEveryDayOfTheBatch() {
        assertThat(build.doseGrams(Tiny.find(build.dosesOf(Tiny.dog(build, "Ash")), ZINC), Tiny.dog(build, "Ash")))
                .isCloseTo(10 * supplement(ZINC).smallestDoseGrams(), within(1e-12));
        assertThat(variable(build, ZINC + " for Ash doses").integer()).isTrue();
        assertThat(variable(build, ZINC + " for Ash doses").upper()).isBetween(1.0, 12.0);
    }

    @Test
    void aSpreadDoseIsGivenAtMostOnceADay() {
        assertThat(build.doseGrams(Tiny.find(build.dosesOf(Tiny.dog(build, "Ash")), DROPS), Tiny.dog(build, "Ash")))
                .isEqualTo(supplement(DROPS).smallestDoseGrams());
        assertThat(variable(build, DROPS + " for Ash doses").upper()).isBetween(1.0, 10.0);
    }

    @Test
    void dosesOfWhatCannotBeBoughtStayWithinWhatIsOnHand() {
        double dose = 10 * supplement("eggshell powder").smallestDoseGrams();
        assertThat(variable(build, "eggshell powder for Ash doses").upper()).isBetween(1.0, Math.floor(50 / dose));
    }

    @Test
    void anAdditionIsCountedWhenItIsGiven() {
        String row = ZINC + " for Ash only when given";
        assertThat(coefficient(build, row, ZINC + " for Ash doses")).isEqualTo(1);
        String given = ZINC + " for " + Tiny.dog(build, "Ash").profile().title() + " ADULT given";
        assertThat(coefficient(build, row, given))
                .isEqualTo(-variable(build, ZINC + " for Ash doses").upper());
        assertThat(row(build, row).upper()).isZero();
        assertThat(coefficient(build, "additions for Ash", given)).isEqualTo(1);
    }

    /** What is stirred into the whole batch is not measured into an adult's bowl again; a puppy may need more of it. */
    @Test
    void anAdultGetsAnAdditionInPotOrBowl() {
        String given = ZINC + " for " + Tiny.dog(build, "Ash").profile().title() + " ADULT";
        assertThat(coefficient(build, given + " in pot or bowl", ZINC + " used"))
                .isEqualTo(1);
        assertThat(coefficient(build, given + " in pot or bowl", given + " given"))
                .isEqualTo(1);
        assertThat(row(build, given + " in pot or bowl").upper()).isEqualTo(1);
        assertThat(build.model.rows().stream().filter(row -> row.name().equals(given + " in pot or bowl")))
                .hasSize(1);
        assertThat(Tiny.build(Tiny.household(PUPPY, Tiny.PANTRY, Tiny.KITCHEN, ""))
                        .model
                        .rows())
                .noneMatch(row -> row.name().endsWith(" in pot or bowl"));
    }

    @Test
    void anAdultGetsFewAdditionsAndAPuppyMore() {
        Build puppy = Tiny.build(Tiny.household(PUPPY, Tiny.PANTRY, Tiny.KITCHEN, ""));
        assertThat(row(build, "additions for Ash").upper())
                .isEqualTo(build.household.shape().mostAdditions());
        assertThat(row(puppy, "additions for Ash").upper())
                .isEqualTo(build.household.shape().mostAdditionsSpecialNeeds())
                .isGreaterThan(build.household.shape().mostAdditions());
        assertThat(row(puppy, "additions for Ash").tag().kind()).isEqualTo(Wish.Kind.ADDITIONS);
    }

    @Test
    void additionsAreAShareOfTheBowlsMass() {
        double share = build.household.shape().additionsMostMassShare()
                * (1 - build.rules().roundingReserve());
        double grams = 10 * supplement(SHELL).smallestDoseGrams();
        String row = "mass of additions for Elm";
        assertThat(coefficient(build, row, SHELL + " for Elm doses")).isCloseTo((1 - share) * grams, within(1e-12));
        assertThat(coefficient(build, row, "cooked grams"))
                .isCloseTo(-share * build.share(Tiny.dog(build, "Elm")), within(1e-12));
        assertThat(row(build, row).upper()).isZero();
        // A twentieth of what Elm gets of a pot that has the usual 1.3 kcal a gram.
        assertThat(row(build, row).tag().size())
                .isCloseTo(0.05 * 10 * Tiny.dog(build, "Elm").kcalPerDay() / 1.3, within(1e-9));
    }

    @Test
    void aDogGetsNoAdditionThatItMustAvoid() {
        assertThat(build.dosesOf(Tiny.dog(build, "Ash")).keySet())
                .anyMatch(food -> food.item().food().label().contains("kelp"));
        assertThat(build.dosesOf(Tiny.dog(build, "Elm")).keySet())
                .noneMatch(food -> food.item().food().label().contains("kelp"));
    }

    private Supplement supplement(String label) {
        return Tiny.item(build, label).food().supplement();
    }
}
