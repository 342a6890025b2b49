package packpot.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.Demo;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.needs.Needs;
import packpot.ration.RationPlanner;

/** Plans as they are printed: amounts that add up, however the solved ones are rounded. */
class PlanBuilderTest {
    private static final double CLOSE = 1e-9;

    static Stream<Demo.Planned> demos() {
        return Demo.all();
    }

    @ParameterizedTest
    @MethodSource("demos")
    void mealsAddUpToTheDay(Demo.Planned demo) {
        for (Plan.DogPlan dog : demo.plan().dogs()) {
            assertThat(dog.potGramsPerMeal()).hasSize(demo.plan().mealsPerDay());
            assertThat(dog.potGramsPerMeal().stream()
                            .mapToInt(Integer::intValue)
                            .sum())
                    .isEqualTo(dog.potGramsPerDay());
        }
    }

    @ParameterizedTest
    @MethodSource("demos")
    void portionsAndTheRestAreTheBatch(Demo.Planned demo) {
        double eaten = demo.plan().days()
                * demo.plan().dogs().stream()
                        .mapToDouble(Plan.DogPlan::potGramsPerDay)
                        .sum();
        assertThat(demo.plan().batch().spareGrams()).isNotNegative();
        assertThat(eaten + demo.plan().batch().spareGrams())
                .isCloseTo(demo.plan().batch().cookedGrams(), within(1e-6));
    }

    @ParameterizedTest
    @MethodSource("demos")
    void roundingMovesNoPortionByMoreThanTwoGramsAndOnePercent(Demo.Planned demo) {
        double cooked = demo.plan().batch().cookedGrams();
        for (int i = 0; i < demo.needs().dogs().size(); i++) {
            double exact = demo.amounts().shares().get(demo.needs().dogs().get(i))
                    * cooked
                    / demo.plan().days();
            assertThat(demo.plan().dogs().get(i).potGramsPerDay())
                    .isBetween((int) (exact * 0.99 - 2), (int) (exact + 1));
        }
    }

    @ParameterizedTest
    @MethodSource("demos")
    void theShoppingListCoversPotAndBowls(Demo.Planned demo) {
        Map<String, Double> used = new HashMap<>();
        demo.plan().pot().forEach(each -> used.merge(each.food(), each.grams(), Double::sum));
        demo.plan()
                .dogs()
                .forEach(dog -> dog.additions()
                        .forEach(each -> used.merge(
                                each.food(), each.gramsPerDose() * each.onDays().size(), Double::sum)));
        Map<String, Double> listed = new HashMap<>();
        demo.plan().shopping().forEach(line -> listed.merge(line.food(), line.usedGrams(), Double::sum));
        assertThat(listed.keySet()).isEqualTo(used.keySet());
        used.forEach((food, grams) -> assertThat(listed.get(food)).as(food).isCloseTo(grams, within(1e-6)));
    }

    @ParameterizedTest
    @MethodSource("demos")
    void roundingOpensNoFurtherPack(Demo.Planned demo) {
        Map<String, Double> solved = new HashMap<>();
        demo.amounts()
                .potGrams()
                .forEach((item, grams) -> solved.merge(item.food().id(), grams, Double::sum));
        for (Plan.Purchase line : demo.plan().shopping()) {
            PantryItem item = item(demo.household(), line.food());
            Integer packs = line.packs();
            if (packs != null && !item.food().isSupplement()) {
                double need = solved.get(line.food()) - item.onHandGrams();
                assertThat(packs).as(line.label()).isEqualTo((int)
                        Math.ceil(Math.max(0, need - 1e-2) / item.packGrams()));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("demos")
    void theCostOfTheDogsIsTheCostOfTheBatch(Demo.Planned demo) {
        Plan.Cost cost = demo.plan().cost();
        double dogs =
                cost.perDogPerDay().stream().mapToDouble(Plan.DogCost::perDay).sum();
        double till =
                demo.plan().shopping().stream().mapToDouble(Plan.Purchase::pays).sum();
        assertThat(dogs).isCloseTo(cost.perDay(), within(1e-6));
        assertThat(cost.perDay() * demo.plan().days()).isCloseTo(cost.ofTheBatch(), within(1e-6));
        assertThat(cost.atTheTill()).isCloseTo(till, within(1e-6));
        assertThat(cost.ofTheBatch()).isLessThanOrEqualTo(till + 1e-9);
    }

    @ParameterizedTest
    @MethodSource("demos")
    void roundingMovesTheCostByLessThanOnePercent(Demo.Planned demo) {
        double before = demo.plan().proof().cost();
        assertThat(demo.plan().cost().ofTheBatch()).isCloseTo(before, within(0.01 * before));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 5, 7, 9, 10})
    void spreadDosesFallOnDistinctDaysAsEvenlyAsCanBe(int doses) {
        Household household = Demo.read("""
                {"packpot": 1, "dogs": [{"name": "Ash", "weight": "20 kg", "age": "4 years"}], "kitchen": {"days": 10},
                 "pantry": [{"food": "ground beef, 90 % lean", "price": "$12/kg"},
                            {"food": "vitamin d3 drops", "pack": "300 drops", "price": "$9"}]}""");
        Plan.Addition drops = built(household, doses).dogs().get(0).additions().get(0);
        assertThat(drops.onDays()).hasSize(doses).doesNotHaveDuplicates().allMatch(day -> day >= 1 && day <= 10);
        for (int i = 0; i < doses; i++) {
            int next =
                    i + 1 < doses ? drops.onDays().get(i + 1) : drops.onDays().get(0) + 10;
            assertThat(next - drops.onDays().get(i)).isBetween(10 / doses, (10 + doses - 1) / doses);
        }
        assertThat(drops.gramsInBatch()).isCloseTo(doses * 0.03, within(CLOSE));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3})
    void dailyDosesFallOnEveryDay(int parts) {
        Household household = Demo.read("""
                {"packpot": 1, "dogs": [{"name": "Ash", "weight": "20 kg", "age": "4 years"}], "kitchen": {"days": 10},
                 "pantry": [{"food": "ground beef, 90 % lean", "price": "$12/kg"},
                            {"food": "zinc gluconate", "pack": "100 tablets", "price": "$9"}]}""");
        Plan.Addition zinc = built(household, parts).dogs().get(0).additions().get(0);
        assertThat(zinc.onDays()).containsExactly(1, 2, 3, 4, 5, 6, 7, 8, 9, 10);
        assertThat(zinc.gramsPerDose()).isCloseTo(parts * 0.174, within(CLOSE));
    }

    /** A plan of a kilogram of the first food and doses of the second. */
    private static Plan built(Household household, int doses) {
        Needs needs = Needs.of(household, Demo.knowledge());
        Amounts amounts = new Amounts(
                RationPlanner.sharesByNeed(needs),
                Map.of(household.pantry().get(0), 1000.0),
                Map.of(needs.dogs().get(0), Map.of(household.pantry().get(1), doses)),
                10,
                10,
                true,
                0);
        return PlanBuilder.build(household, Demo.knowledge(), needs, amounts);
    }

    private static PantryItem item(Household household, String food) {
        List<PantryItem> found = household.pantry().stream()
                .filter(item -> item.food().id().equals(food))
                .toList();
        assertThat(found).hasSize(1);
        return found.get(0);
    }
}
