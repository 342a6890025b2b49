package packpot.dog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Reference;
import packpot.Reference.Line;
import packpot.data.ModelFiles;
import packpot.dog.EnergyMethod.Growth;
import packpot.dog.EnergyMethod.Maintenance;
import packpot.food.FoodEnergy;
import packpot.food.FoodEnergy.Method;

class EnergyEquationsTest {
    private static final EnergyEquations ENERGY = EnergyEquations.load();
    private static final FoodEnergy FOOD = FoodEnergy.load();
    private static final double KG = 17;
    private static final Map<String, Consumer<Map<String, Double>>> CHECKS = new HashMap<>();

    static {
        CHECKS.put("rer", f -> same(ENERGY.resting(KG) / Dog.metabolicWeight(KG), f.get("resting")));
        CHECKS.put("nrc_active_pet", f -> maintenance(Activity.MODERATE, Maintenance.NRC_PET, f));
        CHECKS.put("fediaf_low", f -> maintenance(Activity.LOW, Maintenance.BY_ACTIVITY, f));
        CHECKS.put("fediaf_age_3_7", f -> maintenance(Activity.HIGH, Maintenance.BY_AGE, f));
        CHECKS.put("growth_nrc", f -> {
            double factor = f.get("factor") * (Math.exp(f.get("exponent") * 0.4) - f.get("less"));
            same(ENERGY.nrcGrowthFactor(0.4), factor);
            same(growth(Growth.NRC, 0.4), f.get("base") * factor);
        });
        CHECKS.put("growth_klein", f -> same(growth(Growth.KLEIN, 0.4), f.get("at_zero") - 0.4 * f.get("per_share")));
        for (String id : new String[] {"fediaf_growth_lt50", "fediaf_growth_50_80", "fediaf_growth_80_100"}) {
            CHECKS.put(id, f -> same(growth(Growth.BANDS, f.get("share")), f.get("growth")));
        }
        CHECKS.put(
                "neonate",
                f -> same(
                        ModelFiles.json("energy_equations.json")
                                .at("/newborn/kcalPer100Grams")
                                .asDouble(),
                        f.get("kcal_per_100g")));
        for (String share : new String[] {"15", "30", "43", "60", "71", "80", "100"}) {
            CHECKS.put(
                    "largebreed_" + share,
                    f -> assertThat(ENERGY.nrcGrowthFactor(f.get("share"))).isCloseTo(f.get("factor"), within(0.05)));
        }
        CHECKS.put("atwater", f -> atwater(Method.ATWATER, f));
        CHECKS.put("modified_atwater", f -> atwater(Method.MODIFIED_ATWATER, f));
        CHECKS.put("me_ge", f -> {
            same(FOOD.figure(Method.NRC_STEPS, "grossProtein"), f.get("protein"));
            same(FOOD.figure(Method.NRC_STEPS, "grossFat"), f.get("fat"));
            same(FOOD.figure(Method.NRC_STEPS, "grossCarbohydrate"), f.get("carbohydrate"));
        });
        CHECKS.put("me_dig", f -> {
            same(FOOD.figure(Method.NRC_STEPS, "digestibilityPercent"), f.get("at_zero"));
            same(FOOD.figure(Method.NRC_STEPS, "perFibrePercentOfDryMatter"), f.get("per_fibre_percent"));
        });
        CHECKS.put(
                "me_me", f -> same(FOOD.figure(Method.NRC_STEPS, "lessPerGramProtein"), f.get("less_per_g_protein")));
        CHECKS.put(
                "bcs_ideal_weight",
                f -> same(ENERGY.idealKg(KG, 7), KG / (1 + f.get("share_per_point") * (7 - f.get("ideal")))));
    }

    static Stream<Line> equations() {
        // Two rows are definitions that other tests use: digestible energy is a step of WorkedExamplesTest, and the
        // factor 2.5 is what ProfilesTest holds the profiles against.
        return Reference.table("energy_equations.csv").stream()
                .filter(line -> !Set.of("me_de", "unit_dm").contains(line.text("id")));
    }

    @Test
    void everyPublishedEquationIsChecked() {
        assertThat(CHECKS.keySet())
                .isEqualTo(equations().map(line -> line.text("id")).collect(Collectors.toSet()));
    }

    @ParameterizedTest
    @MethodSource("equations")
    void coefficientsAreThePublishedOnes(Line equation) {
        assertThat(equation.text("found")).isEqualTo("text");
        CHECKS.get(equation.text("id")).accept(equation.figures("figures"));
    }

    @ParameterizedTest
    @CsvSource({"364, GROWTH", "365.25, ADULT", "366, ADULT"})
    void aDogOfUnknownAdultWeightIsGrownAtTwelveMonths(double days, LifeStage stage) {
        assertThat(ENERGY.stage(TestDogs.aged(12, days))).isEqualTo(stage);
    }

    @ParameterizedTest
    @CsvSource({"44.9, 13, ADULT", "45, 13, GROWTH", "45, 17.9, GROWTH", "45, 18.1, ADULT"})
    void aVeryLargeDogGrowsForEighteenMonths(double adultKg, double months, LifeStage stage) {
        assertThat(ENERGY.stage(TestDogs.puppy(30, months * 365.25 / 12 / 7, adultKg)))
                .isEqualTo(stage);
    }

    @ParameterizedTest
    @CsvSource({"1095, 130", "1095.75, 110", "1096, 110", "2921, 110", "2922, 95", "2923, 95"})
    void ageBandsChangeOnTheirBirthdays(double days, double perKg075) {
        same(kcal(TestDogs.aged(KG, days), Maintenance.BY_AGE) / Dog.metabolicWeight(KG), perKg075);
    }

    @Test
    void intactAdultsNeedMoreThanNeuteredOnes() {
        assertThat(kcal(TestDogs.intact(KG), Maintenance.BY_RESTING))
                .isGreaterThan(kcal(TestDogs.adult(KG), Maintenance.BY_RESTING));
    }

    @Test
    void adultsByRestingEnergyNeedItsPublishedMultiple() {
        same(kcal(TestDogs.adult(KG), Maintenance.BY_RESTING), 1.6 * 70 * Math.pow(KG, 0.75));
        same(kcal(TestDogs.intact(KG), Maintenance.BY_RESTING), 1.8 * 70 * Math.pow(KG, 0.75));
    }

    /** Three times the resting energy to the age of four months, twice from then on. */
    @ParameterizedTest
    @CsvSource({"60, 3", "121.5, 3", "121.75, 2", "300, 2"})
    void aPuppyOfUnknownAdultWeightNeedsAMultipleOfItsRestingEnergy(double days, double multiple) {
        same(kcal(TestDogs.aged(6, days), Maintenance.BY_ACTIVITY), multiple * 70 * Math.pow(6, 0.75));
    }

    @ParameterizedTest
    @CsvSource({"0.499, 210", "0.5, 175", "0.799, 175", "0.8, 140", "1, 140"})
    void bandsOfGrowthEndBelowTheirShare(double share, double perKg075) {
        same(ENERGY.growth(Growth.BANDS, 20 * share, 20) / Dog.metabolicWeight(20 * share), perKg075);
    }

    @Test
    void theIdealWeightOfADogFollowsFromItsConditionScore() {
        assertThat(ENERGY.idealKg(TestDogs.adult(20))).isNull();
        Dog fat = new Dog(
                "Moss", 24, 2000, null, Dog.Sex.MALE, true, Activity.LOW, 7, null, null, null, 0, List.of(), null);
        assertThat(ENERGY.idealKg(fat)).isCloseTo(20, within(1e-9));
    }

    @Test
    void treatsMakeUpATenthAtMost() {
        assertThat(EnergyEquations.load().mostTreatShare()).isEqualTo(0.1);
    }

    @Test
    void aNeedOverSomeDaysIsTheirAverage() {
        Dog dog = TestDogs.adult(KG).withCourse(Course.NONE.withAverage(555.0));
        EnergyNeed need = ENERGY.need(dog, Maintenance.BY_ACTIVITY, Growth.KLEIN);
        EnergyNeed today = ENERGY.need(TestDogs.adult(KG), Maintenance.BY_ACTIVITY, Growth.KLEIN);
        assertThat(need.kcalPerDay()).isEqualTo(555);
        assertThat(need.equation().toString())
                .contains(today.equation().toString())
                .isNotEqualTo(today.equation().toString());
        assertThat(need.source()).isEqualTo(today.source());
    }

    @ParameterizedTest
    @CsvSource({
        "ADULT, adult, false",
        "GROWTH, growing, true",
        "WEIGHT_LOSS, losing weight, true",
        "LACTATION, nursing, true"
    })
    void aStageThatIsNotMaintenanceAsksForAVeterinarian(LifeStage stage, String words, boolean asks) {
        assertThat(stage.asksForVeterinarian()).isEqualTo(asks);
        assertThat(stage.words()).isEqualTo(words);
        assertThat(stage.term()).hasToString(words);
    }

    @Test
    void losingWeightIsReckonedAtTheGoalAndGainingNeverBelowMaintenanceThere() {
        assertThat(ENERGY.stage(TestDogs.withGoal(20, 15))).isEqualTo(LifeStage.WEIGHT_LOSS);
        same(kcal(TestDogs.withGoal(20, 15), Maintenance.BY_ACTIVITY), ENERGY.resting(15));
        assertThat(ENERGY.stage(TestDogs.withGoal(15, 20))).isEqualTo(LifeStage.WEIGHT_GAIN);
        same(
                kcal(TestDogs.withGoal(15, 20), Maintenance.BY_ACTIVITY),
                kcal(TestDogs.adult(20), Maintenance.BY_ACTIVITY));
        Dog lazy = TestDogs.adult(20, Activity.LOW);
        assertThat(kcal(lazy, Maintenance.NRC_PET)).isLessThan(1.4 * ENERGY.resting(20));
        Dog thin = new Dog(
                "Moss", 15, 2000, null, Dog.Sex.MALE, true, Activity.LOW, null, 20.0, null, null, 0, List.of(), null);
        same(kcal(thin, Maintenance.NRC_PET), 1.4 * 70 * Math.pow(20, 0.75));
    }

    @Test
    void milkIsReckonedForEightPuppiesAtMostAndRisesByWeek() {
        assertThat(lactation(3, 12)).isEqualTo(lactation(3, 8));
        assertThat(lactation(3, 8)).isGreaterThan(lactation(3, 4));
        assertThat(lactation(4, 4)).isGreaterThan(lactation(3, 4));
        same(lactation(3, 5) - lactation(3, 4), (lactation(3, 4) - lactation(3, 3)) / 2);
    }

    @Test
    void lateGestationNeedsMoreThanEarly() {
        assertThat(kcal(TestDogs.bitch(KG, new Reproduction.Gestation(5)), Maintenance.BY_ACTIVITY))
                .isGreaterThan(kcal(TestDogs.bitch(KG, new Reproduction.Gestation(4)), Maintenance.BY_ACTIVITY));
    }

    @ParameterizedTest
    @CsvSource({"KLEIN", "NRC", "BANDS"})
    void aPuppyNeedsLessPerMetabolicKiloAsItGrowsUp(Growth method) {
        for (double share = 0.2; share < 0.95; share += 0.1) {
            assertThat(growth(method, share + 0.1)).isLessThan(growth(method, share) + 1e-9);
        }
    }

    @Test
    void everyNeedNamesItsEquationAndSource() {
        EnergyNeed need = ENERGY.need(TestDogs.adult(KG), Maintenance.BY_ACTIVITY, Growth.KLEIN);
        assertThat(need.equation().toString()).contains("x BW^0.75");
        assertThat(need.source()).isNotBlank();
        assertThat(need.found()).isIn("text", "memory", "computed");
    }

    private static double lactation(int week, int puppies) {
        return kcal(TestDogs.bitch(KG, new Reproduction.Lactation(week, puppies)), Maintenance.BY_ACTIVITY);
    }

    private static double kcal(Dog dog, Maintenance method) {
        return ENERGY.need(dog, method, Growth.KLEIN).kcalPerDay();
    }

    private static double growth(Growth method, double share) {
        return ENERGY.growth(method, KG * share, KG) / Dog.metabolicWeight(KG * share);
    }

    private static void maintenance(Activity activity, Maintenance method, Map<String, Double> figures) {
        same(kcal(TestDogs.adult(KG, activity), method) / Dog.metabolicWeight(KG), figures.get("maintenance"));
    }

    private static void atwater(Method method, Map<String, Double> figures) {
        same(FOOD.figure(method, "protein"), figures.get("protein"));
        same(FOOD.figure(method, "fat"), figures.get("fat"));
        same(FOOD.figure(method, "digestibleCarbohydrate"), figures.get("carbohydrate"));
    }

    private static void same(double reckoned, double published) {
        assertThat(reckoned).isCloseTo(published, within(1e-9 * Math.max(1, Math.abs(published))));
    }
}
