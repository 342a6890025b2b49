package packpot.household;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import packpot.food.Food;
import packpot.food.Place;
import packpot.food.Supplement;

class GuessedPricesTest {
    private static final GuessedPrices GUESSES = GuessedPrices.load(Recipes.KNOWLEDGE);

    private static PantryItem guessed(Food food) {
        return GUESSES.item(food, Recipes.KNOWLEDGE.preparations().usual(food), Place.EITHER);
    }

    /** By the gram of its salt alone a tablet would cost next to nothing. */
    @Test
    void aSupplementThatCanBeBoughtIsGuessedByThePack() {
        int pieces = 0;
        for (Food food : Recipes.KNOWLEDGE.foods().all()) {
            Supplement supplement = food.supplement();
            if (supplement == null || supplement.place() == Place.NONE) {
                continue;
            }
            PantryItem item = guessed(food);
            Double pack = item.packGrams();
            assertThat(pack).as(food.label()).isNotNull();
            String name = supplement.measurePlural();
            if (pack != null && (name.contains("tablet") || name.contains("capsule"))) {
                pieces++;
                assertThat(item.packPrice() * supplement.gramsPerMeasure() / pack)
                        .as("price of one of %s", name)
                        .isBetween(0.03, 0.5);
                assertThat(pack / supplement.gramsPerMeasure())
                        .as("pieces in a pack of %s", name)
                        .isBetween(30.0, 300.0);
            }
        }
        assertThat(pieces).isGreaterThan(10);
    }

    @Test
    void whatIsMadeAtHomeIsNotPricedAtNothingForAPack() {
        Food eggshell = Recipes.KNOWLEDGE.foods().all().stream()
                .filter(food -> food.id().equals("eggshell-powder"))
                .findFirst()
                .orElseThrow();
        assertThat(GUESSES.words(guessed(eggshell), "USD"))
                .isEqualTo("eggshell powder: no price is given, guessed as nothing (home-made from 12 shells)");
    }
}
