package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.Tiny.variable;

import org.junit.jupiter.api.Test;
import packpot.food.Constituent;
import packpot.household.Rules;
import packpot.household.Wish;
import packpot.needs.DogNeed;
import packpot.needs.Requirement;
import packpot.profile.Limit;
import packpot.solver.LinearModel.Row;

class DogRowsTest {
    private static final String EGGSHELL = "eggshell powder";
    private static final String SALT = "salt, iodised, 45 ug per g";

    private final Build build = Tiny.build(Tiny.household());
    private final DogNeed ash = Tiny.dog(build, "Ash");
    private final Rules rules = build.rules();

    @Test
    void theEnergyOfADogIsItsShareOfThePotAndItsAdditions() {
        Row<Wish> row = Tiny.row(build, "kcal of Ash");
        assertThat(row.expression().coefficient(build.potKcal)).isEqualTo(build.share(ash));
        assertThat(row.expression().coefficient(variable(build, "kcal of Ash"))).isEqualTo(-1);
        assertThat(row.lower()).isZero();
        assertThat(row.upper()).isZero();
    }

    @Test
    void sharesGoByNeed() {
        assertThat(build.share(ash)).isCloseTo(ash.kcalPerDay() / build.needs.kcalPerDay(), within(1e-12));
        assertThat(build.share(ash) + build.share(Tiny.dog(build, "Elm"))).isCloseTo(1, within(1e-12));
    }

    @Test
    void energyLiesInABandAroundTheTarget() {
        double target = ash.kcalPerDay() * 10;
        Row<Wish> row = Tiny.row(build, "energy target of Ash");
        assertThat(row.lower()).isCloseTo(target * (1 - rules.energyBand()), within(1e-9));
        assertThat(row.upper()).isCloseTo(target * (1 + rules.energyBand()), within(1e-9));
        assertThat(rules.energyBand()).isBetween(0.0, 0.01);
        assertThat(row.tag().kind()).isEqualTo(Wish.Kind.ENERGY);
    }

    @Test
    void aNutrientComesFromThePotByShareAndFromAdditionsInFull() {
        Row<Wish> row = limit(Limit.Kind.MINIMUM, "calcium");
        double gramsPerDose =
                10 * Tiny.item(build, EGGSHELL).food().supplement().smallestDoseGrams();
        double calcium = Tiny.perGram(build, EGGSHELL, Constituent.CALCIUM_MG) / 1000;
        assertThat(calcium).isCloseTo(0.38, within(0.01));
        assertThat(row.expression().coefficient(variable(build, "pot calcium"))).isEqualTo(build.share(ash));
        assertThat(row.expression().coefficient(variable(build, EGGSHELL + " for Ash doses")))
                .isCloseTo(calcium * gramsPerDose, within(1e-9));
        assertThat(Tiny.coefficient(build, "pot calcium", EGGSHELL + " g")).isCloseTo(calcium, within(1e-9));
    }

    @Test
    void aMinimumIsAskedWithMarginAndReserve() {
        Row<Wish> row = limit(Limit.Kind.MINIMUM, "calcium");
        double perKcal = requirement(Limit.Kind.MINIMUM, "calcium").per1000Kcal() / 1000;
        assertThat(rules.margin()).isEqualTo(0.05);
        assertThat(rules.roundingReserve()).isPositive();
        assertThat(row.expression().coefficient(variable(build, "kcal of Ash")))
                .isCloseTo(-perKcal * 1.05 * (1 + rules.roundingReserve()), within(1e-12));
        assertThat(row.lower()).isZero();
        assertThat(row.tag().who()).isEqualTo("Ash");
    }

    @Test
    void aMaximumIsAskedWithReserveButWithoutMargin() {
        Row<Wish> row = limit(Limit.Kind.MAXIMUM, "calcium");
        double perKcal = requirement(Limit.Kind.MAXIMUM, "calcium").per1000Kcal() / 1000;
        assertThat(row.expression().coefficient(variable(build, "kcal of Ash")))
                .isCloseTo(-perKcal * (1 - rules.roundingReserve()), within(1e-12));
        assertThat(row.upper()).isZero();
    }

    @Test
    void retinolAloneCountsAgainstTheMaximumOfVitaminA() {
        Row<Wish> most = limit(Limit.Kind.MAXIMUM, "vitamin-a");
        Row<Wish> least = limit(Limit.Kind.MINIMUM, "vitamin-a");
        String maximum = "pot vitamin-a against the maximum";
        assertThat(most.expression().coefficient(variable(build, maximum))).isEqualTo(build.share(ash));
        assertThat(least.expression().coefficient(variable(build, maximum))).isZero();
        assertThat(Tiny.coefficient(build, maximum, "carrots g")).isZero();
        assertThat(Tiny.coefficient(build, "pot vitamin-a", "carrots g")).isPositive();
    }

    @Test
    void aRatioIsHeldOnTheDifferenceOfItsTwoNutrients() {
        Requirement least = requirement(Limit.Kind.MINIMUM, "calcium-phosphorus-ratio");
        Row<Wish> row = row("calcium : phosphorus at least");
        assertThat(row.expression().coefficient(variable(build, "pot calcium"))).isEqualTo(build.share(ash));
        assertThat(row.expression().coefficient(variable(build, "pot phosphorus")))
                .isCloseTo(
                        -least.per1000Kcal() * (1 + rules.roundingReserve()) * (1 + rules.margin()) * build.share(ash),
                        within(1e-12));
        assertThat(row.expression().coefficient(variable(build, "kcal of Ash"))).isZero();
        assertThat(row.tag().kind()).isEqualTo(Wish.Kind.RATIO);
    }

    @Test
    void vitaminERisesWithPolyunsaturatedFatAboveItsThreshold() {
        Limit limit = requirement(Limit.Kind.DEPENDENT_MINIMUM, "vitamin-e").limit();
        double plain = requirement(Limit.Kind.MINIMUM, "vitamin-e").per1000Kcal();
        double reserve = 1 + rules.roundingReserve();
        Row<Wish> row = row("vitamin E rising with");
        assertThat(limit.value()).isEqualTo(0.6);
        assertThat(limit.threshold()).isEqualTo(20.75);
        assertThat(row.expression().coefficient(variable(build, "pot vitamin-e")))
                .isEqualTo(build.share(ash));
        assertThat(row.expression().coefficient(variable(build, "pot pufa")))
                .isCloseTo(-0.6 * reserve * build.share(ash), within(1e-12));
        assertThat(row.expression().coefficient(variable(build, "kcal of Ash")))
                .isCloseTo((-plain * 1.05 + 0.6 * 20.75) * reserve / 1000, within(1e-12));
        assertThat(row.lower()).isZero();
    }

    @Test
    void aSupplementWithALimitOfItsOwnKeepsItInPotAndBowlTogether() {
        double most = Tiny.item(build, SALT).food().supplement().mostGramsPer1000Kcal();
        Row<Wish> row = row(SALT + " at most");
        double dose = 10 * Tiny.item(build, SALT).food().supplement().smallestDoseGrams();
        assertThat(row.expression().coefficient(variable(build, SALT + " g"))).isEqualTo(build.share(ash));
        assertThat(row.expression().coefficient(variable(build, SALT + " for Ash doses")))
                .isCloseTo(dose, within(1e-12));
        assertThat(row.expression().coefficient(variable(build, "kcal of Ash")))
                .isCloseTo(-most * (1 - rules.roundingReserve()) / 1000, within(1e-12));
    }

    private Requirement requirement(Limit.Kind kind, String nutrient) {
        return ash.requirements().stream()
                .filter(each ->
                        each.limit().kind() == kind && each.limit().nutrient().equals(nutrient))
                .findFirst()
                .orElseThrow();
    }

    /** The row of a minimum or maximum of Ash. */
    private Row<Wish> limit(Limit.Kind kind, String nutrient) {
        Wish.Kind wished = kind == Limit.Kind.MINIMUM ? Wish.Kind.NUTRIENT_MINIMUM : Wish.Kind.NUTRIENT_MAXIMUM;
        String label =
                Tiny.start(build.household).knowledge.nutrients().get(nutrient).label();
        return build.model.rows().stream()
                .filter(row -> row.tag() != null
                        && row.tag().kind() == wished
                        && row.tag().who().equals("Ash")
                        && row.tag().what().equals(label)
                        && !row.name().contains("rising"))
                .findFirst()
                .orElseThrow();
    }

    /** The row of Ash whose name goes on like this. */
    private Row<Wish> row(String words) {
        return build.model.rows().stream()
                .filter(row -> row.name().startsWith("Ash: " + words))
                .findFirst()
                .orElseThrow();
    }
}
