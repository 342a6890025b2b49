package packpot.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import packpot.household.Recipe;
import packpot.household.RecipeScenario;
import packpot.household.Recipes;
import packpot.household.ScenarioException;

class RecipeAuditTest {
    /** Two dogs of given energy, two foods of round figures that no cooking changes. */
    private static final String TWO_FOODS = """
            {'dogs': [{'name': 'Moss', 'weight': '10 kg', 'age': '4 years', 'vetEnergy': '600 kcal', 'avoid': ['pork']},
                      {'name': 'Pip', 'weight': '5 kg', 'age': '4 years', 'vetEnergy': '400 kcal', 'treats': '100 kcal'}],
             'ownFoods': [
               {'name': 'test meat', 'group': 'meat', 'per': '100 g',
                'holds': {'protein_g': 20, 'fat_g': 10, 'calcium_mg': 10, 'zinc_mg': 4, 'iodine_ug': 2}},
               {'name': 'test grain', 'group': 'grain', 'per': '100 g',
                'holds': {'protein_g': 5, 'carbohydrate_g': 80, 'fibre_g': 5, 'calcium_mg': 30, 'zinc_mg': 2}}],
             'pantry': [{'food': 'test meat', 'price': '$5/kg'}, {'food': 'test grain', 'price': '$2/kg'}]}
            """;

    private static final String RECIPE = """
            {'name': 'Two foods', 'days': 3, 'foods': [{'food': 'test meat', 'amount': '1 kg'},
                                        {'food': 'test grain', 'amount': '500 g'}],
             'additions': [{'food': 'calcium carbonate', 'dog': 'Moss', 'amount': '1 g'}]}
            """;

    private static RecipeVerdict verdict(String scenario, String recipe) throws ScenarioException {
        RecipeScenario read = Recipes.read(scenario, recipe);
        return RecipeAudit.check(read.recipe(), read.household(), Recipes.KNOWLEDGE);
    }

    private static NutrientLine line(DogAudit dog, String key) {
        return dog.nutrients().stream()
                .filter(line -> line.key().equals(key))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void energyAndNutrientsOfTwoFoodsAreAsReckonedByHand() throws ScenarioException {
        RecipeVerdict verdict = verdict(TWO_FOODS, RECIPE);
        // Meat 10 x (20 x 4 + 10 x 9) = 1700 kcal, grain 5 x (5 x 4 + 75 x 4) = 1600 kcal: 3300 kcal in 3 days.
        // Moss needs 600 and Pip 400 - 100 = 300 of every 900 kcal: two thirds and one third.
        DogAudit moss = verdict.dogs().get(0);
        DogAudit pip = verdict.dogs().get(1);
        assertThat(moss.targetKcalPerDay()).isEqualTo(600);
        assertThat(pip.targetKcalPerDay()).isEqualTo(300);
        assertThat(moss.kcalPerDay()).isCloseTo(3300.0 / 3 * 2 / 3, within(1e-9));
        assertThat(pip.kcalPerDay()).isCloseTo(3300.0 / 3 / 3, within(1e-9));
        // Zinc 10 x 4 + 5 x 2 = 50 mg in 3300 kcal.
        assertThat(line(pip, "zinc").got()).isCloseTo(50 / 3.3, within(1e-9));
        assertThat(line(pip, "zinc").gotPerDay()).isCloseTo(50.0 / 3 / 3, within(1e-9));
        // Calcium 10 x 10 + 5 x 30 = 250 mg; for Moss and its 2200 kcal 2/3 of that and 3 g of carbonate, 40.04 %
        // calcium.
        assertThat(line(pip, "calcium").got()).isCloseTo(0.250 / 3.3, within(1e-9));
        assertThat(line(moss, "calcium").got()).isCloseTo((0.250 * 2 / 3 + 3 * 0.4004) / 2.2, within(1e-3));
        assertThat(line(pip, "calcium").tooLittle()).isTrue();
    }

    @Test
    void whatIsNotMeasuredIsToldAndNotTakenForNothing() throws ScenarioException {
        NutrientLine iodine = line(verdict(TWO_FOODS, RECIPE).dogs().get(1), "iodine");
        assertThat(iodine.unknownFoods()).containsExactly("test grain");
        assertThat(iodine.unknownEnergyShare()).isCloseTo(1600.0 / 3300, within(1e-9));
    }

    @Test
    void energyOffTheTargetIsAFindingAndTheShapeIsARemarkAlone() throws ScenarioException {
        RecipeVerdict verdict = verdict(TWO_FOODS, RECIPE);
        assertThat(verdict.nutrition())
                .anySatisfy(finding -> assertThat(finding.toString())
                        .isEqualTo("Pip: energy is 367 kcal a day, 122 % of the target of 300"));
        assertThat(verdict.shape()).extracting(Finding::where).contains("vegetables and fruit", "pot");
        assertThat(verdict.safety()).isEmpty();
        assertThat(verdict.good()).isFalse();
    }

    @Test
    void aFoodAboveItsCapAndOneThatADogMustNotGetAreNotSafe() throws ScenarioException {
        RecipeVerdict verdict = verdict(TWO_FOODS, """
                {'days': 3, 'foods': [{'food': 'test meat', 'amount': '1 kg'}, {'food': 'beef liver', 'amount': '500 g'},
                  {'food': 'ground pork', 'amount': '200 g'}, {'food': 'salt, iodised, 45 ug per g', 'amount': '20 g'}]}
                """);
        assertThat(verdict.safety())
                .extracting(Finding::toString)
                .anySatisfy(told -> assertThat(told).startsWith("beef liver: 27 % of cooked mass, at most 5.0 %"))
                .anySatisfy(told -> assertThat(told).isEqualTo("Moss: must not get ground pork"))
                .anySatisfy(
                        told -> assertThat(told).contains("of salt, iodised, 45 ug per g per 1000 kcal, at most 0.80"));
    }

    @Test
    void cookingIsCountedOnce() throws ScenarioException {
        // The same pot, given raw and given by its cooked weight (poultry simmered keeps 0.9 of its weight).
        DogAudit raw = verdict(
                        TWO_FOODS, "{'days': 1, 'foods': [{'food': 'chicken thigh, skinless', 'amount': '1 kg'}]}")
                .dogs()
                .get(0);
        DogAudit cooked = verdict(TWO_FOODS, """
                {'days': 1, 'foods': [{'food': 'chicken thigh, skinless', 'amount': '900 g', 'weighed': 'cooked'}]}
                """).dogs().get(0);
        assertThat(cooked.kcalPerDay()).isCloseTo(raw.kcalPerDay(), within(1e-9));
        assertThat(line(cooked, "thiamin").got()).isCloseTo(line(raw, "thiamin").got(), within(1e-9));
    }

    @Test
    void aRecipeFeedsOnlyTheDogsThatItNames() throws ScenarioException {
        RecipeScenario read = Recipes.read(
                TWO_FOODS, "{'dogs': ['pip'], 'days': 3, 'foods': [{'food': 'test meat', 'amount': '1 kg'}]}");
        Recipe recipe = read.recipe();
        assertThat(recipe.in(read.household()).dogs()).extracting("name").containsExactly("Pip");
        assertThat(RecipeAudit.check(recipe, read.household(), Recipes.KNOWLEDGE)
                        .dogs())
                .singleElement()
                .satisfies(dog -> assertThat(dog.kcalPerDay()).isCloseTo(1700.0 / 3, within(1e-9)));
    }
}
