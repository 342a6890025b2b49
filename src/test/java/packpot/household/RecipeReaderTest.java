package packpot.household;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class RecipeReaderTest {
    private static final ScenarioReader READER = new ScenarioReader(Scenarios.KNOWLEDGE, Scenarios.TODAY);

    @TempDir
    private Path folder;

    private static Recipe small(String recipe) throws ScenarioException {
        return Recipes.read(Scenarios.SMALL, recipe).recipe();
    }

    @Test
    void amountsAreReadInAnyUnitAndTheDogsAreAllWhereNoneIsNamed() throws ScenarioException {
        Recipe recipe = small("""
                {'name': 'Plain', 'days': 3, 'foods': [
                  {'food': 'ground turkey, 93 % lean', 'amount': '2 lb'},
                  {'food': 'egg, whole', 'amount': '2 large'}],
                 'additions': [{'food': 'salt, iodised, 45 ug per g', 'amount': '0.25 tsp'}]}
                """);
        assertThat(recipe.days()).isEqualTo(3);
        assertThat(recipe.dogs()).extracting("name").containsExactly("Moss");
        assertThat(recipe.foods().get(0).grams()).isCloseTo(2 * 453.59237, within(1e-9));
        assertThat(recipe.foods().get(1).grams()).isCloseTo(100, within(1e-9));
        assertThat(recipe.additions()).singleElement().satisfies(addition -> {
            assertThat(addition.dog()).isEqualTo("Moss");
            assertThat(addition.gramsPerDay()).isCloseTo(1.5, within(1e-9));
        });
    }

    @Test
    void aWeightIsNoCountOfAMeasureThatHasItsUnitInItsName() throws ScenarioException {
        // Zinc sulfate is measured in a "portion of 0.1 g", thiamin in a "tablet of 100 mg".
        Recipe recipe = small("""
                {'foods': [{'food': 'egg, whole', 'amount': '1 kg'}, {'food': 'zinc sulfate', 'amount': '0.3 g'},
                           {'food': 'thiamin hydrochloride', 'amount': '200 mg'}]}
                """);
        assertThat(recipe.foods().get(1).grams()).isCloseTo(0.3, within(1e-9));
        assertThat(recipe.foods().get(2).grams()).isCloseTo(0.2, within(1e-9));
    }

    @Test
    void cookedWeightIsTakenBackToRawByTheYieldOfTheRecipesOwnMethod() throws ScenarioException {
        // models/preparations.csv: poultry keeps 0.9 of its weight simmered with its liquid, 0.74 drained.
        Recipe recipe = small("""
                {'foods': [{'food': 'ground turkey, 93 % lean', 'amount': '900 g', 'weighed': 'cooked'},
                           {'food': 'chicken thigh, skinless', 'amount': '740 g', 'weighed': 'cooked', 'cook': 'drained'}]}
                """);
        assertThat(recipe.foods().get(0).grams()).isCloseTo(1000, within(1e-6));
        assertThat(recipe.foods().get(0).cookedGrams()).isCloseTo(900, within(1e-6));
        assertThat(recipe.foods().get(1).cookedGrams()).isCloseTo(740, within(1e-6));
        assertThat(recipe.foods().get(1).item().preparation().method()).isEqualTo("drained");
    }

    @Test
    void whatIsWeighedAsBoughtLosesBoneAndPeel() throws ScenarioException {
        Recipe recipe = small("{'foods': [{'food': 'egg, whole', 'amount': '1000 g', 'weighed': 'as-bought'}]}");
        double edible = recipe.foods().get(0).item().food().kitchen().edibleShare();
        assertThat(edible).isLessThan(1);
        assertThat(recipe.foods().get(0).grams()).isCloseTo(1000 * edible, within(1e-9));
    }

    @Test
    void aFoodThatThePantryLacksHasAGuessedPriceThatIsStated() throws ScenarioException {
        Recipe recipe = small("""
                {'days': 1, 'foods': [{'food': 'ground turkey, 93 % lean', 'amount': '1 lb'},
                           {'food': 'chicken liver', 'amount': '1 lb'}]}
                """);
        // models/packs.csv: 20 oz (567 g) for 2.90.
        assertThat(recipe.foods().get(1).item().pricePerGram()).isCloseTo(2.9 / 567, within(1e-9));
        assertThat(recipe.remarks())
                .containsExactly("chicken liver: no price is given, guessed as $2.90 for 20 oz tub");
    }

    @Test
    void aFoodWithoutAPackIsGuessedByItsGroup() throws ScenarioException {
        Recipe recipe = small("{'days': 1, 'foods': [{'food': 'beef spleen', 'amount': '1 lb'}]}");
        assertThat(recipe.foods().get(0).item().isLoose()).isTrue();
        assertThat(recipe.remarks()).singleElement().asString().contains("the usual of its group");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            foods[0].food   | {'foods': [{'food': 'onion', 'amount': '1 lb'}]}                                | is refused: Onion
            foods[0].food   | {'foods': [{'food': 'ground turky', 'amount': '1 lb'}]}                         | near it: "ground turkey
            foods[0].amount | {'foods': [{'food': 'egg, whole', 'amount': '3 cup', 'weighed': 'cooked'}]}     | which is a volume
            foods[0].amount | {'foods': [{'food': 'egg, whole', 'amount': '0 g'}]}                            | expected more than nothing
            foods[0].amount | {'foods': [{'food': 'egg, whole'}]}                                             | is missing
            foods[0].cook   | {'foods': [{'food': 'egg, whole', 'amount': '1 lb', 'cook': 'smoked'}]}         | expected one of
            foods[0].weighed| {'foods': [{'food': 'egg, whole', 'amount': '1 lb', 'weighed': 'boiled'}]}      | expected one of raw, cooked, as-bought
            foods           | {'foods': [{'food': 'salt, iodised, 45 ug per g', 'amount': '1 tsp'}]}          | bring no energy at all
            foods           | {'foods': []}                                                                   | is empty
            foods           | {'days': 7}                                                                     | is empty
            days            | {'days': 0, 'foods': [{'food': 'egg, whole', 'amount': '1 lb'}]}                | a whole number from 1 to 60
            dogs            | {'dogs': ['Mos'], 'foods': [{'food': 'egg, whole', 'amount': '1 lb'}]}          | near it: "Moss"
            dogs            | {'dogs': [], 'foods': [{'food': 'egg, whole', 'amount': '1 lb'}]}               | names no dog
            additions[0].dog  | {'foods': [{'food': 'egg, whole', 'amount': '1 lb'}], 'additions': [{'food': 'fish oil capsule', 'dog': 'Pip', 'amount': '1 g'}]} | is not a dog of the scenario
            additions[0].food | {'foods': [{'food': 'egg, whole', 'amount': '1 lb'}], 'additions': [{'food': 'egg, whole', 'amount': '1 large'}]}            | is no supplement
            fods            | {'fods': 1, 'foods': [{'food': 'egg, whole', 'amount': '1 lb'}]}                | near it: "foods"
            """)
    void aFaultIsToldWhereItStands(String path, String recipe, String told) {
        assertThat(Recipes.faults(recipe)).singleElement().satisfies(fault -> {
            assertThat(fault.path()).isEqualTo(path);
            assertThat(fault.message()).contains(told);
        });
    }

    @Test
    void allFaultsAreToldAtOnce() {
        assertThat(Recipes.faults("""
                {'days': 'seven', 'dogs': ['Rex'],
                 'foods': [{'food': 'garlic', 'amount': '1 oz'}, {'food': 'egg, whole', 'amount': 'some'},
                           {'food': 'carrots', 'amount': '1 lb'}, {'food': 'carrots', 'amount': '1 lb'}]}
                """))
                .extracting(Fault::path)
                .containsExactlyInAnyOrder("days", "dogs", "foods[0].food", "foods[1].amount", "foods[3].food");
    }

    @Test
    void aRecipeInTheScenarioIsReadWithItAndItsFaultsAreToldThere() throws IOException {
        Path file = folder.resolve("scenario.json");
        Files.writeString(
                file,
                Scenarios.with("", "'recipe': {'foods': [{'food': 'grapes', 'amount': '1 lb'}]}")
                        .replace('\'', '"'));
        assertThatThrownBy(() -> READER.readWithRecipe(file, null))
                .isInstanceOf(ScenarioException.class)
                .hasMessageContaining("recipe.foods[0].food: \"grapes\" is refused");
        // A plan of the same file needs no recipe, but a fault in the file is a fault.
        assertThatThrownBy(() -> READER.read(file)).isInstanceOf(ScenarioException.class);
    }

    @Test
    void aScenarioWithoutARecipeIsTold() throws IOException {
        Path file = folder.resolve("scenario.json");
        Files.writeString(file, Scenarios.SMALL.replace('\'', '"'));
        assertThatThrownBy(() -> READER.readWithRecipe(file, null))
                .isInstanceOf(ScenarioException.class)
                .hasMessageContaining("recipe: is missing")
                .hasMessageContaining("--recipe FILE");
    }

    static Stream<Path> packagedRecipes() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("scenarios/recipes"))) {
            return files.toList().stream();
        }
    }

    @ParameterizedTest
    @MethodSource("packagedRecipes")
    void everyRecipeOfTheProgramIsValid(Path file) throws ScenarioException {
        RecipeScenario read = READER.readWithRecipe(Path.of("scenarios/three-adults.json"), file);
        assertThat(read.recipe().foods()).isNotEmpty();
    }
}
