package packpot.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Reference;
import packpot.Reference.Line;
import packpot.dog.Dog;
import packpot.dog.EnergyEquations;
import packpot.dog.EnergyMethod;
import packpot.dog.TestDogs;
import packpot.food.Nutrients;

class ProfilesTest {
    private static final Pattern DRY_MATTER =
            Pattern.compile("^dry matter (?:minimum|maximum) ([\\d.]+) (%|mg/kg|IU/kg)");
    private static final Nutrients NUTRIENTS = Nutrients.load();
    private static final Profiles PROFILES = Profiles.load(NUTRIENTS);
    private static final EnergyEquations ENERGY = EnergyEquations.load();

    static Stream<Line> rowsWithTheirDryMatterFigure() {
        return Reference.models("profiles.csv").stream()
                .filter(row -> DRY_MATTER.matcher(row.text("note")).find());
    }

    @Test
    void mostRowsOfTheProfilePrintedByDryMatterSayTheirDryMatterFigure() {
        assertThat(rowsWithTheirDryMatterFigure())
                .hasSizeGreaterThan(85)
                .allMatch(row -> row.text("profile").equals("aafco-2016"));
    }

    @ParameterizedTest
    @MethodSource("rowsWithTheirDryMatterFigure")
    void theFigurePerThousandKcalIsTheDryMatterFigureWithinItsRounding(Line row) {
        Matcher note = DRY_MATTER.matcher(row.text("note"));
        assertThat(note.find()).isTrue();
        double dry = Double.parseDouble(note.group(1));
        // At 4 kcal per g, 1000 kcal are 250 g of dry matter.
        double converted = note.group(2).equals("%") ? dry * 2.5 : dry / 4;
        assertThat(row.text("unit")).isEqualTo(unit(note.group(2)));
        assertThat(row.number("value")).isCloseTo(converted, within(halfOfLastDigit(row.text("value")) + 1e-9));
    }

    private static String unit(String dryMatterUnit) {
        return switch (dryMatterUnit) {
            case "%" -> "g";
            case "mg/kg" -> "mg";
            default -> "IU";
        };
    }

    private static double halfOfLastDigit(String printed) {
        int point = printed.indexOf('.');
        return 0.5 * Math.pow(10, point < 0 ? 0 : -(printed.length() - point - 1));
    }

    @ParameterizedTest
    @CsvSource({
        "aafco-2016, 12, growth",
        "aafco-2016, 200, adult",
        "aafco-2016, 52, growth",
        "fediaf, 12, early-growth",
        "fediaf, 13.9, early-growth",
        "fediaf, 14, late-growth",
        "fediaf, 15, late-growth",
        "fediaf, 200, adult-110",
        "nrc-2006, 12, growth-4-14-weeks",
        "nrc-2006, 15, growth-over-14-weeks",
        "nrc-2006, 200, adult"
    })
    void aDogIsHeldToTheColumnOfItsAge(String profile, double weeks, String stage) {
        assertThat(forDog(profile, TestDogs.puppy(8, weeks, 20.0)).stage()).isEqualTo(stage);
    }

    @ParameterizedTest
    @CsvSource({"70, 4.5", "31.75, 4.5", "31.7, 6.25", ", 4.5"})
    void largePuppiesAndThoseOfUnknownSizeGetTheLowerCalciumMaximum(Double adultKg, double most) {
        assertThat(only(forDog("aafco-2016", TestDogs.puppy(8, 16, adultKg)), "calcium", Limit.Kind.MAXIMUM))
                .isEqualTo(most);
    }

    @Test
    void noColumnHoldsTwoFiguresOfOneKindForOneDogOrAMinimumAboveItsMaximum() {
        List<Dog> dogs = List.of(
                TestDogs.adult(5),
                TestDogs.adult(60),
                TestDogs.puppy(3, 10, 6.0),
                TestDogs.puppy(3, 20, 6.0),
                TestDogs.puppy(9, 10, 60.0),
                TestDogs.puppy(9, 20, 60.0),
                TestDogs.puppy(9, 30, 60.0),
                TestDogs.puppy(9, 10, null));
        for (String profile : PROFILES.names()) {
            for (Dog dog : dogs) {
                ProfileStage stage = forDog(profile, dog);
                assertThat(stage.limits().stream().map(limit -> limit.nutrient() + " " + limit.kind()))
                        .as("%s, %s", profile, stage.stage())
                        .doesNotHaveDuplicates();
                stage.limits().stream()
                        .filter(limit -> limit.kind() == Limit.Kind.MAXIMUM)
                        .forEach(most -> stage.limits().stream()
                                .filter(limit -> limit.kind() == Limit.Kind.MINIMUM
                                        && limit.nutrient().equals(most.nutrient()))
                                .forEach(least -> assertThat(least.value())
                                        .as("%s, %s, %s", profile, stage.stage(), most.nutrient())
                                        .isLessThanOrEqualTo(most.value())));
            }
        }
    }

    /** FEDIAF: 2.5 g to half a year of age above 15 kg of adult weight, 2.0 g for others; unknown sizes count as large. */
    @ParameterizedTest
    @CsvSource({"15, 20, 2.0, 1.8", "15.1, 20, 2.5, 1.6", ", 20, 2.5, 1.6", "30, 25.9, 2.5, 1.6", "30, 26, 2.0, 1.8"})
    void largePuppiesGetMoreCalciumToHalfAYearOfAge(Double adultKg, double weeks, double least, double mostRatio) {
        ProfileStage stage = forDog("fediaf", TestDogs.puppy(8, weeks, adultKg));
        assertThat(only(stage, "calcium", Limit.Kind.MINIMUM)).isEqualTo(least);
        assertThat(only(stage, "calcium-phosphorus-ratio", Limit.Kind.MAXIMUM)).isEqualTo(mostRatio);
    }

    @Test
    void ceilingsAreMaximumsAlone() {
        assertThat(PROFILES.ceilings(TestDogs.adult(15)))
                .isNotEmpty()
                .allMatch(limit -> limit.kind() == Limit.Kind.MAXIMUM);
    }

    @Test
    void aLimitSaysWhetherItsFigureWasSeenInPrint() {
        assertThat(forDog("fediaf", TestDogs.adult(15)).limits())
                .anyMatch(Limit::fromMemory)
                .anyMatch(limit -> !limit.fromMemory())
                .allMatch(limit -> limit.fromMemory() == limit.found().equals("memory"));
    }

    @Test
    void everyFigureSpeaksOfAKnownNutrientOrRatioAndIsAboveZero() {
        for (Line row : Reference.models("profiles.csv")) {
            String key = row.text("nutrient");
            assertThat(NUTRIENTS.isRatio(key) || NUTRIENTS.get(key) != null).isTrue();
            assertThat(row.number("value")).as(key).isPositive();
            assertThat(row.text("source")).isNotBlank();
        }
    }

    /** One microgram of retinol is 3.33 IU and one of vitamin D 40 IU. */
    @Test
    void vitaminsOfEveryProfileAreInTheNutrientsOwnUnit() {
        for (String profile : PROFILES.names()) {
            ProfileStage stage = forDog(profile, TestDogs.adult(15));
            assertThat(only(stage, "vitamin-a", Limit.Kind.MINIMUM)).as(profile).isBetween(1000.0, 3000.0);
            assertThat(only(stage, "vitamin-d", Limit.Kind.MINIMUM)).as(profile).isBetween(100.0, 200.0);
            assertThat(only(stage, "iodine", Limit.Kind.MINIMUM)).as(profile).isBetween(150.0, 400.0);
            assertThat(only(stage, "selenium", Limit.Kind.MINIMUM)).as(profile).isBetween(50.0, 120.0);
        }
    }

    private static ProfileStage forDog(String profile, Dog dog) {
        return PROFILES.forDog(
                profile, dog, ENERGY.need(dog, EnergyMethod.Maintenance.BY_ACTIVITY, EnergyMethod.Growth.KLEIN));
    }

    private static double only(ProfileStage stage, String nutrient, Limit.Kind kind) {
        return stage.limits().stream()
                .filter(limit -> limit.nutrient().equals(nutrient) && limit.kind() == kind)
                .findFirst()
                .orElseThrow()
                .value();
    }
}
