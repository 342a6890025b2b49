package packpot.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.audit.TwoFoods.HOUSEHOLD;
import static packpot.audit.TwoFoods.KCAL;
import static packpot.audit.TwoFoods.RECIPE;
import static packpot.audit.TwoFoods.household;
import static packpot.audit.TwoFoods.line;
import static packpot.audit.TwoFoods.recipe;
import static packpot.audit.TwoFoods.told;
import static packpot.audit.TwoFoods.verdict;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import packpot.Records;
import packpot.Reference;
import packpot.food.Composition;
import packpot.food.Constituent;
import packpot.food.FoodEnergy;
import packpot.household.Household;
import packpot.household.Recipe;

/** What a recipe holds, food by food, and every nutrient at its limits and a little beyond them. */
class RecipeNutrientsTest {
    @ParameterizedTest
    @CsvSource({"ATWATER, 170, 320", "MODIFIED_ATWATER, 155, 280", "NRC_STEPS, 168.896, 291.6"})
    void foodsHaveTheEnergyThatTheHouseholdsRuleGives(FoodEnergy.Method method, double meat, double grain) {
        DogAudit dog = verdict(RECIPE, household("foodEnergy", method)).dogs().get(0);
        double steps = 356.5 * (91.2 - 1.43 * 5 / 0.9) / 100 - 5 * 1.04;
        double exact = method == FoodEnergy.Method.NRC_STEPS ? steps : grain;
        assertThat(exact).isCloseTo(grain, within(0.05));
        assertThat(dog.kcalPerDay()).isCloseTo(3 * meat + 0.3 * exact, within(1e-9));
        assertThat(dog.dryGramsPerDay()).isCloseTo(300 + 27 + 1, within(0.02));
    }

    private static Recipe withCalcium(double gramsPer1000Kcal) {
        double carbonate = RECIPE.additions().get(0).item().food().composition().perGram(Constituent.CALCIUM_MG) / 1000;
        return recipe("additions[0].gramsPerDay", (gramsPer1000Kcal * KCAL / 1000 - 0.03 - 0.009) / carbonate);
    }

    @Test
    void aNutrientIsJudgedAtItsLimitsToAMillionth() {
        String is = "calcium is";
        assertThat(told(verdict(withCalcium(1.25 * (1 - 0.9e-6)), HOUSEHOLD).nutrition(), is))
                .isEmpty();
        assertThat(told(verdict(withCalcium(1.25 * (1 - 1.1e-6)), HOUSEHOLD).nutrition(), is))
                .containsExactly("Moss: calcium is 1.250 g per 1000 kcal, below the minimum of 1.250");
        assertThat(told(verdict(withCalcium(6.25 * (1 + 0.9e-6)), HOUSEHOLD).nutrition(), is))
                .isEmpty();
        assertThat(told(verdict(withCalcium(6.25 * (1 + 1.1e-6)), HOUSEHOLD).nutrition(), is))
                .containsExactly("Moss: calcium is 6.250 g per 1000 kcal, above the maximum of 6.250");
        NutrientLine line = line(withCalcium(2), HOUSEHOLD, "calcium");
        assertThat(line.got()).isCloseTo(2, within(1e-9));
        assertThat(line.gotPerDay()).isCloseTo(2 * KCAL / 1000, within(1e-9));
        assertThat(line.minimum()).isEqualTo(1.25);
        assertThat(line.maximum()).isEqualTo(6.25);
    }

    @Test
    void aRatioIsJudgedAtItsLimits() {
        String is = "calcium : phosphorus is";
        double phosphorus = 0.63 / KCAL * 1000;
        assertThat(told(
                        verdict(withCalcium(phosphorus * (1 - 0.9e-6)), HOUSEHOLD)
                                .nutrition(),
                        is))
                .isEmpty();
        assertThat(told(
                        verdict(withCalcium(phosphorus * (1 - 1.1e-6)), HOUSEHOLD)
                                .nutrition(),
                        is))
                .containsExactly("Moss: calcium : phosphorus is 1.000 : 1, below the minimum of 1.000");
        assertThat(told(
                        verdict(withCalcium(2 * phosphorus * (1 + 0.9e-6)), HOUSEHOLD)
                                .nutrition(),
                        is))
                .isEmpty();
        assertThat(told(
                        verdict(withCalcium(2 * phosphorus * (1 + 1.1e-6)), HOUSEHOLD)
                                .nutrition(),
                        is))
                .containsExactly("Moss: calcium : phosphorus is 2.000 : 1, above the maximum of 2.000");
        NutrientLine line = line(withCalcium(1.5 * phosphorus), HOUSEHOLD, "calcium-phosphorus-ratio");
        assertThat(line.got()).isCloseTo(1.5, within(1e-9));
        assertThat(line.unknownEnergyShare()).isZero();
        NutrientLine fats = line(RECIPE, HOUSEHOLD, "n6-n3-ratio");
        assertThat(fats.got()).isInfinite();
        assertThat(fats.minimum()).isNull();
        assertThat(fats.unknownFoods()).containsExactly("test meat", "test grain");
        assertThat(fats.unknownEnergyShare()).isCloseTo(1, within(1e-9));
    }

    @Test
    void everyDayOfARecipeIsOnePartOfIt() {
        DogAudit one = verdict(RECIPE, HOUSEHOLD).dogs().get(0);
        DogAudit two = verdict(recipe("days", 2), HOUSEHOLD).dogs().get(0);
        assertThat(two.kcalPerDay()).isCloseTo(one.kcalPerDay() / 2, within(1e-9));
        assertThat(two.dryGramsPerDay()).isCloseTo(one.dryGramsPerDay() / 2 + 0.5, within(0.01));
    }

    @Test
    void aNutrientIsToldWhereItHasALimitAndNowhereElse() {
        assertThat(verdict(RECIPE, HOUSEHOLD).dogs().get(0).nutrients())
                .extracting(NutrientLine::key)
                .contains("chloride", "epa-dha", "zinc", "n6-n3-ratio")
                .doesNotContain("pufa");
        Recipe grainWithoutPhosphorus = recipe(
                "foods[1].item.food.composition",
                Composition.ofPer100Grams(Map.of(
                        Constituent.PROTEIN_G, 5.0, Constituent.CARBOHYDRATE_G, 75.0, Constituent.CALCIUM_MG, 30.0)));
        NutrientLine ratio = line(grainWithoutPhosphorus, HOUSEHOLD, "calcium-phosphorus-ratio");
        assertThat(ratio.unknownFoods()).containsExactly("test grain");
        assertThat(line(grainWithoutPhosphorus, HOUSEHOLD, "calcium").unknownFoods())
                .isEmpty();
    }

    @Test
    void vitaminACountsOtherwiseTowardItsMaximum() {
        NutrientLine line = line(RECIPE, HOUSEHOLD, "vitamin-a");
        assertThat(line.got()).isCloseTo(3 * 30 / 0.3 / KCAL * 1000, within(1e-6));
        assertThat(line.gotAgainstMaximum()).isCloseTo(3 * 21 / 0.3 / KCAL * 1000, within(1e-6));
        assertThat(line.unknownFoods()).containsExactly("test grain");
        assertThat(line.unknownEnergyShare()).isCloseTo(96 / KCAL, within(1e-9));
        Recipe grain = recipe("foods[1].grams", 300.0);
        assertThat(line(grain, HOUSEHOLD, "iodine").unknownFoods()).containsExactly("test grain", "test meat");
    }

    @Test
    void theLowerOfTwoMaximumsHoldsAndTheHouseholdsOfSodium() {
        assertThat(line(RECIPE, HOUSEHOLD, "sodium").maximum()).isEqualTo(1.25);
        assertThat(line(RECIPE, household("rules.sodiumMostGramsPer1000Kcal", 9.0), "sodium")
                        .maximum())
                .isEqualTo(3.75);
        assertThat(line(RECIPE, HOUSEHOLD, "sodium").fromMemory()).isTrue();
        assertThat(line(RECIPE, HOUSEHOLD, "protein").fromMemory()).isFalse();
    }

    @Test
    void minimumsRiseForADogThatEatsLess() {
        Household frugal = household("dogs[0].vetKcalPerDay", 400.0);
        Recipe for400 = recipe("dogs[0].vetKcalPerDay", 400.0);
        double raise = 95 * Math.pow(10, 0.75) / 400;
        assertThat(line(for400, frugal, "protein").minimum()).isCloseTo(45 * raise, within(1e-9));
        assertThat(line(for400, frugal, "calcium-phosphorus-ratio").minimum()).isEqualTo(1);
        Recipe lighter = Records.with(for400, "dogs[0].goalKg", 8.0);
        assertThat(line(lighter, frugal, "protein").minimum())
                .isCloseTo(45 * 95 * Math.pow(8, 0.75) / 400, within(1e-9));
        Recipe heavier = Records.with(for400, "dogs[0].goalKg", 12.0);
        assertThat(line(heavier, frugal, "protein").minimum()).isCloseTo(45 * raise, within(1e-9));
    }

    @Test
    void aMinimumThatRisesWithAnotherNutrient() {
        double plain = Reference.models("profiles.csv").stream()
                .filter(row -> row.text("profile").equals("fediaf")
                        && row.text("stage").equals("adult-95")
                        && row.text("nutrient").equals("arginine")
                        && row.text("limit").equals("min"))
                .findFirst()
                .orElseThrow()
                .number("value");
        Recipe fediaf = recipe("dogs[0].profile", "fediaf");
        double protein = 61.5 / KCAL * 1000;
        assertThat(line(fediaf, HOUSEHOLD, "arginine").minimum())
                .isCloseTo(plain + 0.01 * (protein - 52.1), within(1e-9));
        Recipe poor = Records.with(fediaf, "foods[0].grams", 0.0);
        assertThat(line(poor, HOUSEHOLD, "arginine").minimum()).isCloseTo(plain, within(1e-9));
        Recipe frugal = Records.with(fediaf, "dogs[0].vetKcalPerDay", 400.0);
        double raise = 95 * Math.pow(10, 0.75) / 400;
        assertThat(line(frugal, HOUSEHOLD, "arginine").minimum())
                .isCloseTo(plain * raise + 0.01 * (protein - 52.1), within(1e-9));
    }

    private static NutrientLine judged(double least, double got, double most, double unknown) {
        return new NutrientLine("k", "l", "g", least, got, got, most, got, unknown, List.of(), false);
    }

    @Test
    void aLineTellsWhatIsWrongWithIt() {
        assertThat(judged(2, 2, 3, 0.25)).matches(line -> !line.tooLittle() && !line.tooMuch() && !line.thin());
        assertThat(judged(2, 2 - 3e-6, 3, 0.26)).matches(line -> line.tooLittle() && !line.tooMuch() && line.thin());
        assertThat(judged(2, 3 + 2e-6, 3, 0)).matches(line -> !line.tooLittle() && !line.tooMuch());
        assertThat(judged(2, 3 + 4e-6, 3, 0)).matches(NutrientLine::tooMuch);
        assertThat(judged(2, Double.NaN, 3, 0)).matches(line -> line.tooLittle() && line.tooMuch());
        NutrientLine free = new NutrientLine("k", "l", "g", null, 1, 1, null, 1, 0, List.of(), false);
        assertThat(free).matches(line -> !line.tooLittle() && !line.tooMuch());
        assertThat(new RecipeVerdict(List.of(), List.of(), List.of(), List.of(), List.of()).good())
                .isTrue();
        Finding finding = new Finding("Moss", "is short");
        assertThat(new RecipeVerdict(List.of(), List.of(finding), List.of(), List.of(), List.of()).good())
                .isFalse();
        assertThat(new RecipeVerdict(List.of(), List.of(), List.of(finding), List.of(), List.of()).good())
                .isFalse();
    }
}
