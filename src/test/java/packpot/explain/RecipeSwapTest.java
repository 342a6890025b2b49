package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import packpot.household.RecipeScenario;
import packpot.household.Recipes;
import packpot.household.ScenarioException;
import packpot.household.SwapReader;

class RecipeSwapTest {
    private static RecipeScenario scenario;

    @BeforeAll
    static void read() throws ScenarioException {
        scenario = Recipes.read("""
                {'dogs': [{'name': 'Moss', 'weight': '10 kg', 'age': '4 years'}],
                 'ownFoods': [
                   {'name': 'lean meat', 'group': 'meat', 'per': '100 g', 'holds': {'protein_g': 20, 'fat_g': 5, 'zinc_mg': 4}},
                   {'name': 'fat meat', 'group': 'meat', 'per': '100 g', 'holds': {'protein_g': 16, 'fat_g': 20, 'zinc_mg': 4}},
                   {'name': 'test grain', 'group': 'grain', 'per': '100 g', 'holds': {'carbohydrate_g': 80, 'zinc_mg': 1}}],
                 'pantry': [{'food': 'lean meat', 'price': '$5/kg'}, {'food': 'fat meat', 'price': '$3/kg'},
                            {'food': 'test grain', 'price': '$2/kg'}]}
                """, """
                {'days': 2, 'foods': [{'food': 'lean meat', 'amount': '1 kg'}, {'food': 'test grain', 'amount': '500 g'}]}
                """);
    }

    private static RecipeSwap swap(String text, RecipeSwap.By by, double share) throws ScenarioException {
        List<SwapReader.Swap> swaps = new SwapReader(Recipes.KNOWLEDGE, scenario).read(List.of(text));
        return RecipeSwap.of(scenario, swaps, by, share, Recipes.KNOWLEDGE);
    }

    @ParameterizedTest
    @CsvSource({"WEIGHT, 1000", "PROTEIN, 1250", "ENERGY, 512.295"})
    void theNewFoodEqualsTheOldOneInWhatIsAsked(RecipeSwap.By by, double grams) throws ScenarioException {
        // Lean: 20 g protein, 125 kcal in 100 g; fat: 16 g, 244 kcal.
        RecipeSwap swap = swap("lean meat=fat meat", by, 0.1);
        assertThat(swap.exchanges()).singleElement().satisfies(exchange -> {
            assertThat(exchange.toGrams()).isCloseTo(grams, within(1e-3));
            assertThat(exchange.sameGroup()).isTrue();
        });
    }

    @Test
    void nutrientsThatMovedStandSideBySide() throws ScenarioException {
        // By energy 1250 kcal of meat and 1600 of grain stay 2850: zinc 40 + 5 mg before, 20.49 + 5 after.
        RecipeSwap swap = swap("lean=fat meat", RecipeSwap.By.ENERGY, 0.1);
        assertThat(swap.moved())
                .filteredOn(moved -> moved.nutrient().equals("zinc"))
                .singleElement()
                .satisfies(moved -> {
                    assertThat(moved.before()).isCloseTo(45 / 2.85, within(1e-6));
                    assertThat(moved.after()).isCloseTo((512.2951 * 0.04 + 5) / 2.85, within(1e-6));
                    assertThat(moved.now()).isEqualTo("still short");
                });
        assertThat(swap("lean=fat meat", RecipeSwap.By.ENERGY, 0.5).moved())
                .noneMatch(moved -> moved.nutrient().equals("zinc"));
    }

    @Test
    void aSwapAcrossGroupsIsMarked() throws ScenarioException {
        RecipeSwap swap = swap("test grain=fat meat", RecipeSwap.By.WEIGHT, 0.1);
        assertThat(swap.exchanges().get(0).sameGroup()).isFalse();
        assertThat(swap.exchanges().get(0).fromGroup()).isEqualTo("grain");
    }

    @Test
    void foodsWithNothingInCommonCannotBeMatched() {
        assertThatThrownBy(() -> swap("test grain=fat meat", RecipeSwap.By.PROTEIN, 0.1))
                .isInstanceOf(RecipeSwap.NothingInCommonException.class)
                .hasMessage("test grain has no protein");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            lean meat            | expected two foods
            lean meat=           | expected two foods
            beef=fat meat        | "beef" is not in the recipe
            leen meat=fat meat   | near it: "lean meat"
            e=fat meat           | may be more than one of its foods
            lean meat=onion      | is refused: Onion
            lean meat=fatt mead  | is not a food known here; near it: "fat meat"
            lean meat=lean meat  | would take its own place
            lean meat=taurine    | is a supplement
            """)
    void aSwapThatCannotBeIsToldWithTheNearestNames(String text, String told) {
        assertThatThrownBy(() -> new SwapReader(Recipes.KNOWLEDGE, scenario).read(List.of(text)))
                .isInstanceOf(ScenarioException.class)
                .hasMessageStartingWith("The command line has a fault:")
                .hasMessageContaining(told);
    }
}
