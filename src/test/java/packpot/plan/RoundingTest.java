package packpot.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.Demo;
import packpot.household.Household;
import packpot.household.PantryItem;

class RoundingTest {
    private static final Household HOUSEHOLD = Demo.read("""
            {"packpot": 1, "units": "us", "dogs": [{"name": "Ash", "weight": "20 kg", "age": "4 years"}], "pantry": [
              {"food": "ground turkey, 93 % lean", "pack": "1 kg", "price": "$8"},
              {"food": "ground beef, 90 % lean", "price": "$12/kg"},
              {"food": "chicken liver", "pack": "503 g", "price": "$3", "onHand": "201 g"},
              {"food": "egg, whole", "price": "$12/kg", "atMost": "303 g"},
              {"food": "spinach, frozen", "onHand": "198 g"},
              {"food": "canola oil", "pack": "500 g", "price": "$3"},
              {"food": "salt, iodised, 45 ug per g", "pack": "500 g", "price": "$1"},
              {"food": "zinc gluconate", "pack": "100 tablets", "price": "$7"}]}""");

    @ParameterizedTest
    @CsvSource({
        "'ground beef, 90 % lean', 1002.4, 1000",
        "'ground beef, 90 % lean', 1002.6, 1005",
        "'ground beef, 90 % lean', 702.4, 702",
        "'canola oil', 17.4, 17",
        "'salt, iodised, 45 ug per g', 3.0, 3",
    })
    void gramsAreWeighedAsFinelyAsAKitchenScaleDoes(String food, double grams, double rounded) {
        assertThat(Rounding.potGrams(item(food), grams, HOUSEHOLD)).isCloseTo(rounded, within(1e-9));
    }

    @Test
    void roundingOpensNoFurtherPack() {
        assertThat(Rounding.potGrams(item("ground turkey, 93 % lean"), 1999.4, HOUSEHOLD))
                .isEqualTo(2000);
        assertThat(Rounding.potGrams(item("chicken liver"), 703.9, HOUSEHOLD)).isEqualTo(704);
        assertThat(Rounding.potGrams(item("spinach, frozen"), 198, HOUSEHOLD)).isEqualTo(198);
    }

    @Test
    void roundingOpensNoFurtherPackAtAnyAmount() {
        for (String food : List.of("ground turkey, 93 % lean", "chicken liver", "canola oil")) {
            PantryItem item = item(food);
            IntStream.range(1, 4000).mapToDouble(tenths -> tenths * 0.7).forEach(grams -> {
                Integer packs = Shopping.purchase(item, grams).packs();
                double rounded = Rounding.potGrams(item, grams, HOUSEHOLD);
                assertThat(Shopping.purchase(item, rounded).packs())
                        .as(food + " " + grams)
                        .isLessThanOrEqualTo(packs);
                assertThat(rounded).isCloseTo(grams, within(5.0));
            });
        }
    }

    @Test
    void roundingKeepsTheCapOnAFood() {
        assertThat(Rounding.potGrams(item("egg, whole"), 302.9, HOUSEHOLD)).isLessThanOrEqualTo(303);
    }

    @Test
    void portionsNeverExceedTheBatch() {
        for (double first = 100; first < 101; first += 0.07) {
            for (double second = 20; second < 21; second += 0.09) {
                double batch = first + second;
                assertThat(Rounding.portions(List.of(first, second), List.of(1, 1), batch).stream()
                                .mapToInt(Integer::intValue)
                                .sum())
                        .isLessThanOrEqualTo((int) Math.floor(batch + 1e-3));
            }
        }
    }

    @Test
    void roundingTakesNoWholeGramFromAnyDog() {
        List<Double> shares = List.of(130.6, 50.6, 40.6, 30.6, 20.6);
        List<Integer> portions =
                Rounding.portions(shares, shares.stream().map(share -> 1).toList(), 273);
        for (int i = 0; i < shares.size(); i++) {
            assertThat((double) portions.get(i)).isCloseTo(shares.get(i), within(0.999));
        }
        assertThat(portions.stream().mapToInt(Integer::intValue).sum()).isEqualTo(273);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 6})
    void mealsAddUpToTheDay(int meals) {
        for (int grams = 0; grams < 50; grams++) {
            List<Integer> split = Rounding.meals(grams, meals);
            assertThat(split).hasSize(meals);
            assertThat(split.stream().mapToInt(Integer::intValue).sum()).isEqualTo(grams);
            assertThat(split.get(0) - split.get(meals - 1)).isBetween(0, 1);
        }
    }

    @Test
    void aDoseIsToldInMeasuresThatAPersonOwns() {
        var salt = item("salt, iodised, 45 ug per g").food().supplement();
        var zinc = item("zinc gluconate").food().supplement();
        assertThat(Rounding.dose(salt, 1)).isEqualTo("1/8 tsp");
        assertThat(Rounding.dose(salt, 10)).isEqualTo("1 1/4 tsp");
        assertThat(Rounding.dose(zinc, 1)).startsWith("1/2 tablet ");
        assertThat(Rounding.dose(zinc, 3)).startsWith("1 1/2 tablets ");
    }

    private static PantryItem item(String label) {
        return HOUSEHOLD.pantry().stream()
                .filter(item -> item.food().label().equals(label))
                .findFirst()
                .orElseThrow();
    }
}
