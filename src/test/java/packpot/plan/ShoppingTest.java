package packpot.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.household.Household;
import packpot.household.PantryItem;

class ShoppingTest {
    private static final Household HOUSEHOLD = Demo.read("""
            {"packpot": 1, "dogs": [{"name": "Ash", "weight": "20 kg", "age": "4 years"}], "pantry": [
              {"food": "ground turkey, 93 % lean", "pack": "1 kg", "price": "$8"},
              {"food": "carrots", "pack": "1 kg", "price": "$2"},
              {"food": "sweet potato", "price": "$3/kg"},
              {"food": "chicken liver", "pack": "500 g", "price": "$3", "onHand": "200 g"},
              {"food": "spinach, frozen", "onHand": "200 g"}]}""");

    @Test
    void packsAreBoughtWhole() {
        Plan.Purchase line = buy("ground turkey, 93 % lean", 1001);
        assertThat(line.packs()).isEqualTo(2);
        assertThat(line.buyGramsAsBought()).isEqualTo(2000);
        assertThat(line.pays()).isEqualTo(16);
        assertThat(line.leftOverGrams()).isCloseTo(999, within(1e-9));
    }

    @Test
    void aPackIsEnoughForWhatItHolds() {
        assertThat(buy("ground turkey, 93 % lean", 1000).packs()).isEqualTo(1);
        assertThat(buy("ground turkey, 93 % lean", 1000).leftOverGrams()).isZero();
    }

    @Test
    void aPackHoldsPeelThatNobodyEats() {
        double edible = item("carrots").food().kitchen().edibleShare();
        assertThat(edible).isLessThan(1);
        assertThat(buy("carrots", 1000 * edible).packs()).isEqualTo(1);
        assertThat(buy("carrots", 1000 * edible + 1).packs()).isEqualTo(2);
    }

    @Test
    void whatIsInTheHouseIsUsedFirst() {
        Plan.Purchase line = buy("chicken liver", 250);
        assertThat(line.fromHandGrams()).isEqualTo(200);
        assertThat(line.packs()).isEqualTo(1);
        assertThat(line.leftOverGrams()).isEqualTo(450);
        Plan.Purchase enough = buy("chicken liver", 200);
        assertThat(enough.packs()).isZero();
        assertThat(enough.pays()).isZero();
        assertThat(enough.leftOverGrams()).isZero();
    }

    @Test
    void whatIsSoldByWeightIsBoughtWithItsPeelAndToTheNextTenGrams() {
        double edible = item("sweet potato").food().kitchen().edibleShare();
        Plan.Purchase line = buy("sweet potato", 100);
        assertThat(line.packs()).isNull();
        assertThat(line.buyGramsAsBought()).isBetween(100 / edible, 100 / edible + 10);
        assertThat(line.buyGramsAsBought() % 10).isCloseTo(0, within(1e-9));
        assertThat(line.pays()).isCloseTo(line.buyGramsAsBought() * 0.003, within(1e-9));
        assertThat(line.leftOverGrams()).isCloseTo(line.buyGramsAsBought() * edible - 100, within(1e-9));
    }

    @Test
    void whatTheShopDoesNotHaveCostsNothing() {
        assertThat(buy("spinach, frozen", 150).pays()).isZero();
        assertThat(buy("spinach, frozen", 150).buyGramsAsBought()).isZero();
    }

    private static Plan.Purchase buy(String food, double usedGrams) {
        return Shopping.purchase(item(food), usedGrams);
    }

    private static PantryItem item(String label) {
        return HOUSEHOLD.pantry().stream()
                .filter(item -> item.food().label().equals(label))
                .findFirst()
                .orElseThrow();
    }
}
