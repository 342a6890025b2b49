package packpot.audit;

import java.util.List;
import packpot.Records;
import packpot.household.Household;
import packpot.household.Recipe;
import packpot.household.RecipeScenario;
import packpot.household.Recipes;
import packpot.household.ScenarioException;

/** A recipe for one dog from two foods of round figures that no cooking changes. */
final class TwoFoods {
    static final RecipeScenario READ = read();
    static final Recipe RECIPE = READ.recipe();
    static final Household HOUSEHOLD = READ.household();

    /** Meat 300 g x 1.7 kcal, grain 30 g x 3.2 kcal. */
    static final double KCAL = 606;

    static RecipeScenario read() {
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

    static RecipeVerdict verdict(Recipe recipe, Household household) {
        return RecipeAudit.check(recipe, household, Recipes.KNOWLEDGE);
    }

    static Recipe recipe(String place, Object part) {
        return Records.with(RECIPE, place, part);
    }

    static Household household(String place, Object part) {
        return Records.with(HOUSEHOLD, place, part);
    }

    static List<String> told(List<Finding> findings, String words) {
        return findings.stream()
                .map(Finding::toString)
                .filter(each -> each.contains(words))
                .toList();
    }

    static NutrientLine line(Recipe recipe, Household household, String key) {
        return verdict(recipe, household).dogs().get(0).nutrients().stream()
                .filter(line -> line.key().equals(key))
                .findFirst()
                .orElseThrow();
    }

    private TwoFoods() {}
}
