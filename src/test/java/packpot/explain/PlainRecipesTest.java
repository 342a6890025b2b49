package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.Reference;
import packpot.audit.NutrientLine;
import packpot.audit.RecipeAudit;
import packpot.dog.Dog;
import packpot.dog.TestDogs;
import packpot.household.Household;
import packpot.household.Recipe;
import packpot.household.RecipeScenario;
import packpot.household.Recipes;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;

/** Plain recipes of our own fall short where surveys of published home-made recipes found them to. */
class PlainRecipesTest {
    private static final Set<String> SURVEYED = Reference.table("home_made_shortfalls.csv").stream()
            .map(line -> line.text("nutrient"))
            .collect(Collectors.toSet());
    private static final List<String> PLAIN = List.of("meat-and-rice", "meat-vegetables-pulses", "meat-and-potato");

    /** Nutrients that the foods of a recipe leave some dog short of, additions to bowls left out. */
    private static Set<String> shortOf(String name, String profile) throws ScenarioException {
        RecipeScenario read = new ScenarioReader(Recipes.KNOWLEDGE, LocalDate.of(2026, 3, 7))
                .readWithRecipe(Path.of("scenarios/three-adults.json"), Path.of("scenarios/recipes/" + name + ".json"));
        Recipe given = read.recipe();
        Household household = read.household();
        List<Dog> dogs = given.dogs().stream()
                .map(dog -> TestDogs.like(dog, dog.weightKg(), dog.avoids(), profile))
                .toList();
        Recipe foods = new Recipe(given.name(), given.days(), dogs, given.foods(), List.of(), List.of());
        return RecipeAudit.check(foods, household.withDogs(dogs), Recipes.KNOWLEDGE).dogs().stream()
                .flatMap(dog -> dog.nutrients().stream())
                .filter(NutrientLine::tooLittle)
                // A figure that was not measured shows no shortfall.
                .filter(line -> !line.thin())
                .map(NutrientLine::key)
                .collect(Collectors.toSet());
    }

    @ParameterizedTest
    @ValueSource(strings = {"aafco-2016", "nrc-2006", "fediaf"})
    void everyPlainRecipeIsShortOfNutrientsOfTheSurveys(String profile) throws ScenarioException {
        for (String name : PLAIN) {
            Set<String> found = shortOf(name, profile);
            found.retainAll(SURVEYED);
            assertThat(found).as("%s on %s", name, profile).hasSizeGreaterThanOrEqualTo(2);
        }
    }

    @Test
    void togetherTheyAreShortOfAllThatTheSurveysName() throws ScenarioException {
        Set<String> found = new HashSet<>();
        for (String name : PLAIN) {
            found.addAll(shortOf(name, "aafco-2016"));
            found.addAll(shortOf(name, "nrc-2006"));
        }
        assertThat(found).containsAll(SURVEYED);
    }

    @Test
    void calciumIsShortInEachOfThem() throws ScenarioException {
        for (String name : PLAIN) {
            assertThat(shortOf(name, "aafco-2016")).as(name).contains("calcium");
        }
    }

    @Test
    void whatMeatBringsInPlentyIsNotShort() throws ScenarioException {
        for (String name : PLAIN) {
            assertThat(shortOf(name, "aafco-2016")).as(name).doesNotContain("protein", "niacin", "lysine");
        }
    }
}
