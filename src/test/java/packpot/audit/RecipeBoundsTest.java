package packpot.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import packpot.Records;
import packpot.Reference;
import packpot.food.Composition;
import packpot.food.Constituent;
import packpot.food.FoodEnergy;
import packpot.food.FoodGroup;
import packpot.household.Household;
import packpot.household.Recipe;
import packpot.household.RecipeScenario;
import packpot.household.Recipes;
import packpot.household.ScenarioException;
import packpot.household.Shape;

/** A recipe for one dog from foods of round figures that no cooking changes, at every limit and a little beyond it. */
class RecipeBoundsTest {
    private static final RecipeScenario READ = read();
    private static final Recipe RECIPE = READ.recipe();
    private static final Household HOUSEHOLD = READ.household();

    /** Meat 300 g x 1.7 kcal, grain 30 g x 3.2 kcal. */
    private static final double KCAL = 606;

    private static RecipeScenario read() {
        try {
            return Recipes.read("""
                    {'dogs': [{'name': 'Moss', 'weight': '10 kg', 'age': '4 years', 'vetEnergy': '600 kcal'}],
                     'ownFoods': [
                       {'name': 'test meat', 'group': 'meat', 'per': '100 g',
                        'holds': {'protein_g': 20, 'fat_g': 10, 'calcium_mg': 10, 'phosphorus_mg': 200,
                                  'vitamin_a_rae_ug': 30, 'retinol_ug': 21}},
                       {'name': 'test grain', 'group': 'grain', 'per': '100 g',
                        'holds': {'protein_g': 5, 'carbohydrate_g': 80, 'fibre_g': 5, 'water_g': 10, 'calcium_mg': 30,
                                  'phosphorus_mg': 100}}],
                     'pantry': [{'food': 'test meat', 'price': '$5/kg'}, {'food': 'test grain', 'price': '$2/kg'}]}
                    """, """
                    {'name': 'Two foods', 'days': 1, 'foods': [{'food': 'test meat', 'amount': '300 g'},
                                                {'food': 'test grain', 'amount': '30 g'}],
                     'additions': [{'food': 'calcium carbonate', 'dog': 'Moss', 'amount': '1 g'}]}
                    """);
        } catch (ScenarioException e) {
            throw new AssertionError(e);
        }
    }

    private static RecipeVerdict verdict(Recipe recipe, Household household) {
        return RecipeAudit.check(recipe, household, Recipes.KNOWLEDGE);
    }

    private static Recipe recipe(String place, Object part) {
        return Records.with(RECIPE, place, part);
    }

    private static Household household(String place, Object part) {
        return Records.with(HOUSEHOLD, place, part);
    }

    private static List<String> told(List<Finding> findings, String words) {
        return findings.stream()
                .map(Finding::toString)
                .filter(each -> each.contains(words))
                .toList();
    }

    private static NutrientLine line(Recipe recipe, Household household, String key) {
        return verdict(recipe, household).dogs().get(0).nutrients().stream()
                .filter(line -> line.key().equals(key))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({"1.0099, true", "1.0101, false", "0.9901, true", "0.9899, false"})
    void energyLiesWithinAPercentOfItsTarget(double share, boolean good) {
        double meat = (600 * share - 96) / 1.7;
        List<String> told =
                told(verdict(recipe("foods[0].grams", meat), HOUSEHOLD).nutrition(), "energy is");
        if (good) {
            assertThat(told).isEmpty();
        } else {
            assertThat(told)
                    .containsExactly(String.format(
                            Locale.ROOT,
                            "Moss: energy is %.0f kcal a day, %.0f %% of the target of 600",
                            600 * share,
                            100 * share));
        }
    }

    /**
     * Grain: 5 g of protein, 75 g of carbohydrate beside 5 g of fibre, and 10 g of water in 100 g. Four steps: gross energy
     * 5 x 5.7 + 80 x 4.1 = 356.5 kcal, of which 91.2 - 1.43 x 5.56 = 83.26 % are digestible, less 5 x 1.04; meat 208 kcal of
     * which 91.2 %, less 20 x 1.04.
     */
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

    /** Carbonate until calcium comes to a share of its minimum of 1.25 g, or its maximum of 6.25 g, per 1000 kcal. */
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

    /** 600 + 30 mg of phosphorus; as much calcium is the least, twice as much the most. */
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

    /** 95 kcal per kg^0.75 are 534.2 for 10 kg: on 400 kcal minimums rise by 1.3356; at a goal of 8 kg by 1.1298. */
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

    /** FEDIAF: 0.01 g of arginine more for each gram of protein above 52.1 g per 1000 kcal. */
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

    @Test
    void aSupplementIsNoMoreThanItsCap() {
        String cap = "additions[0].item.food.supplement.mostGramsPer1000Kcal";
        double per1000 = 1000 / KCAL;
        String told = "of calcium carbonate per 1000 kcal";
        assertThat(told(verdict(recipe(cap, per1000), HOUSEHOLD).safety(), told))
                .isEmpty();
        assertThat(told(verdict(recipe(cap, per1000 * (1 - 1e-5)), HOUSEHOLD).safety(), told))
                .containsExactly("Moss: 1.65 g of calcium carbonate per 1000 kcal, at most 1.65 g");
        Recipe growing = Records.with(recipe(cap + "Growing", 0.0), "dogs[0].ageDays", 100.0);
        assertThat(told(verdict(growing, HOUSEHOLD).safety(), told)).hasSize(1);
        assertThat(told(verdict(recipe(cap + "Growing", 0.0), HOUSEHOLD).safety(), told))
                .isEmpty();
        // On two days as much again, and nothing of what another dog gets.
        assertThat(told(
                        verdict(Records.with(recipe(cap, per1000 * 2), "days", 2), HOUSEHOLD)
                                .safety(),
                        told))
                .isEmpty();
        assertThat(told(
                        verdict(Records.with(recipe(cap, per1000 * 1.99), "days", 2), HOUSEHOLD)
                                .safety(),
                        told))
                .hasSize(1);
        assertThat(told(
                        verdict(Records.with(recipe(cap, 0.0), "additions[0].dog", "Pip"), HOUSEHOLD)
                                .safety(),
                        told))
                .isEmpty();
        // The same stirred into the pot counts too.
        List<Recipe.Part> foods = new ArrayList<>(RECIPE.foods());
        foods.add(new Recipe.Part(recipe(cap, per1000 * 1.9).additions().get(0).item(), 1, "1 g"));
        Recipe both = Records.with(recipe(cap, per1000 * 1.9).withFoods(foods), "name", "both");
        assertThat(told(verdict(both, HOUSEHOLD).safety(), told))
                .containsExactly("Moss: 3.30 g of calcium carbonate per 1000 kcal, at most 3.14 g");
        assertThat(told(verdict(both, HOUSEHOLD).shape(), "foods,"))
                .containsExactly("pot: 2 foods, 5 to 10 are wished");
    }

    @Test
    void whatADogMustNotGetAndWhatHarms() {
        String carbonate = RECIPE.additions().get(0).item().food().id();
        assertThat(told(
                        verdict(recipe("dogs[0].avoids", List.of(carbonate)), HOUSEHOLD)
                                .safety(),
                        "must not"))
                .containsExactly("Moss: must not get calcium carbonate");
        Recipe another = Records.with(recipe("dogs[0].avoids", List.of(carbonate)), "additions[0].dog", "Pip");
        assertThat(told(verdict(another, HOUSEHOLD).safety(), "must not")).isEmpty();
        assertThat(told(
                        verdict(recipe("foods[0].item.food.label", "onion powder"), HOUSEHOLD)
                                .safety(),
                        "harms"))
                .singleElement()
                .asString()
                .startsWith("onion powder: harms dogs: damages red blood cells");
        assertThat(told(
                        verdict(recipe("additions[0].item.food.label", "onion powder"), HOUSEHOLD)
                                .safety(),
                        "harms"))
                .hasSize(1);
        assertThat(verdict(recipe("foods[0].item.food.label", "tuna"), HOUSEHOLD)
                        .advice())
                .contains("tuna: a small share only; small fish are better");
        assertThat(verdict(recipe("additions[0].item.food.supplement.caution", "Mind this."), HOUSEHOLD)
                        .advice())
                .containsExactly("calcium carbonate: Mind this.");
        assertThat(verdict(recipe("additions[0].item.food.supplement.caution", ""), HOUSEHOLD)
                        .advice())
                .isEmpty();
    }

    @Test
    void aFoodIsNoMoreThanIsSafe() {
        String cap = "foods[1].item.food.kitchen.mostShare";
        double share = 30.0 / 330;
        assertThat(told(verdict(recipe(cap, share), HOUSEHOLD).safety(), "mass"))
                .isEmpty();
        Recipe over = recipe(cap, share - 1e-5);
        assertThat(told(verdict(over, HOUSEHOLD).safety(), "mass"))
                .containsExactly("test grain: 9.1 % of cooked mass, at most 9.1 %");
        assertThat(told(
                        verdict(
                                        Records.with(over, "foods[1].item.food.kitchen.mostShareReason", "it swells"),
                                        HOUSEHOLD)
                                .safety(),
                        "mass"))
                .containsExactly("test grain: 9.1 % of cooked mass, at most 9.1 %: it swells");
    }

    private static List<String> band(double least, double most, boolean usual) {
        Shape.Band band = new Shape.Band("grain", "grains", Set.of(FoodGroup.GRAIN), least, most, usual);
        return told(verdict(RECIPE, household("shape.bands", List.of(band))).shape(), "grains");
    }

    @Test
    void theShapeIsRemarkedOnAtItsBounds() {
        double share = 30.0 / 330;
        assertThat(band(share, share, true)).isEmpty();
        assertThat(band(share + 1e-5, 1, true))
                .containsExactly("grains: 9.1 % of cooked mass, usual are 9.1 % to 100 %");
        assertThat(band(0, share - 1e-5, false))
                .containsExactly("grains: 9.1 % of cooked mass, the household wishes 0 % to 9.1 %");
        String one = "one food is usually";
        assertThat(told(
                        verdict(RECIPE, household("shape.oneFoodMost", 300.0 / 330))
                                .shape(),
                        one))
                .isEmpty();
        assertThat(told(
                        verdict(RECIPE, household("shape.oneFoodMost", 300.0 / 330 - 1e-5))
                                .shape(),
                        one))
                .containsExactly("test meat: 91 % of cooked mass, one food is usually at most 91 %");
        assertThat(told(verdict(RECIPE, household("shape.fewestFoods", 2)).shape(), "foods,"))
                .isEmpty();
        assertThat(told(verdict(RECIPE, household("shape.fewestFoods", 3)).shape(), "foods,"))
                .containsExactly("pot: 2 foods, 3 to 10 are wished");
        Household two = household("shape.fewestFoods", 1);
        assertThat(told(verdict(RECIPE, Records.with(two, "shape.mostFoods", 2)).shape(), "foods,"))
                .isEmpty();
        assertThat(told(verdict(RECIPE, Records.with(two, "shape.mostFoods", 1)).shape(), "foods,"))
                .containsExactly("pot: 2 foods, 1 to 1 are wished");
        assertThat(told(
                        verdict(RECIPE.withFoods(RECIPE.foods().subList(0, 1)), HOUSEHOLD)
                                .shape(),
                        "1 food, "))
                .containsExactly("pot: 1 food, 5 to 10 are wished");
    }

    private static NutrientLine line(double least, double got, double most, double unknown) {
        return new NutrientLine("k", "l", "g", least, got, got, most, got, unknown, List.of(), false);
    }

    @Test
    void aLineTellsWhatIsWrongWithIt() {
        assertThat(line(2, 2, 3, 0.25)).matches(line -> !line.tooLittle() && !line.tooMuch() && !line.thin());
        assertThat(line(2, 2 - 3e-6, 3, 0.26)).matches(line -> line.tooLittle() && !line.tooMuch() && line.thin());
        assertThat(line(2, 3 + 2e-6, 3, 0)).matches(line -> !line.tooLittle() && !line.tooMuch());
        assertThat(line(2, 3 + 4e-6, 3, 0)).matches(NutrientLine::tooMuch);
        assertThat(line(2, Double.NaN, 3, 0)).matches(line -> line.tooLittle() && line.tooMuch());
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
