package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import packpot.household.GuessedPrices;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.household.RecipeScenario;
import packpot.household.Recipes;
import packpot.household.ScenarioException;

class RecipeHouseholdTest {
    private static final RecipeHousehold HOUSEHOLDS =
            new RecipeHousehold(Recipes.KNOWLEDGE, GuessedPrices.load(Recipes.KNOWLEDGE));

    private static Household of(RecipeMend.Way way) throws ScenarioException {
        RecipeScenario turkey = Recipes.forThreeAdults(
                "{'days': 7, 'foods': [{'food': 'ground turkey, 93 % lean', 'amount': '6 lb'}]}");
        return HOUSEHOLDS.of(way, turkey, 1, false, new ArrayList<>());
    }

    @Test
    void whatIsInTheHouseStaysThereWhenTheShopOffersMoreOfIt() throws ScenarioException {
        Household with = HOUSEHOLDS.withShopSupplements(of(RecipeMend.Way.SMALLEST_CHANGE));
        assertThat(with.pantry())
                .filteredOn(item -> item.food().id().equals("eggshell-powder"))
                .singleElement()
                .satisfies(item -> {
                    assertThat(item.onHandGrams()).isEqualTo(200);
                    assertThat(item.outOfStock()).isFalse();
                });
    }

    @Test
    void theShopOffersNoOrdinaryFoodUnlessItIsAskedForOils() throws ScenarioException {
        Household with = HOUSEHOLDS.withShopSupplements(of(RecipeMend.Way.ADDITIONS_ONLY));
        List<String> foods = with.pantry().stream()
                .map(PantryItem::food)
                .filter(food -> !food.isSupplement())
                .map(food -> food.id())
                .toList();
        assertThat(foods).containsExactly("turkey-ground-93-lean-raw");
        assertThat(HOUSEHOLDS.withShopOils(with).pantry())
                .anySatisfy(item -> assertThat(item.food().id()).isEqualTo("oil-corn"));
    }
}
