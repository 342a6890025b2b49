package packpot.food;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Reference;

class CatalogueTest {
    private static final FoodCatalogue FOODS = FoodCatalogue.load();
    private static final Preparations PREPARATIONS = Preparations.load();
    private static final Measures MEASURES = Measures.load();

    static Stream<Food> foods() {
        return FOODS.all().stream();
    }

    @ParameterizedTest
    @CsvSource({
        "food_kitchen.csv, id",
        "supplements.csv, food",
        "packs.csv, food",
        "measures.csv, food",
        "yields.csv, food"
    })
    void everyTableSpeaksOfFoodsOfTheCatalogue(String table, String column) {
        List<String> ids = FOODS.all().stream().map(Food::id).toList();
        assertThat(Reference.models(table))
                .isNotEmpty()
                .allSatisfy(row -> assertThat(ids).contains(row.text(column)));
    }

    @ParameterizedTest
    @MethodSource("foods")
    void aFoodIsFoundByItsIdLabelAndAliasesInAnyCase(Food food) {
        assertThat(FOODS.find(food.id())).isSameAs(food);
        assertThat(FOODS.find(food.label().toUpperCase(Locale.ROOT))).isSameAs(food);
        food.aliases()
                .forEach(alias -> assertThat(FOODS.find("  " + alias.replace(" ", "  ") + " "))
                        .as(alias)
                        .isSameAs(food));
    }

    @Test
    void labelsAndAliasesAreEachOfOneFood() {
        assertThat(FOODS.all().stream().map(food -> food.label().toLowerCase(Locale.ROOT)))
                .doesNotHaveDuplicates();
        assertThat(FOODS.all().stream().flatMap(food -> food.aliases().stream()))
                .doesNotHaveDuplicates();
    }

    @ParameterizedTest
    @MethodSource("foods")
    void everyFoodHasAUsualPreparationThatKeepsWhatItCan(Food food) {
        Preparation usual = PREPARATIONS.usual(food);
        assertThat(PREPARATIONS.methods(food)).contains(usual.method());
        for (String method : PREPARATIONS.methods(food)) {
            Preparation preparation = PREPARATIONS.find(food, method);
            assertThat(preparation).isNotNull();
            assertThat(preparation.yieldCookedOverRaw()).as(method).isBetween(0.4, 6.0);
            assertThat(preparation.retention().values()).as(method).allMatch(share -> share >= 0 && share <= 1);
            assertThat(preparation.retention(Constituent.PROTEIN_G)).isEqualTo(1);
        }
        assertThat(PREPARATIONS.find(food, "no such method")).isNull();
    }

    @ParameterizedTest
    @MethodSource("foods")
    void kitchenFiguresAreWhatAKitchenCanHave(Food food) {
        assertThat(food.kitchen().edibleShare()).isGreaterThan(0.2).isLessThanOrEqualTo(1);
        assertThat(food.kitchen().densityGramsPerMl()).isBetween(0.05, 2.5);
        assertThat(food.kitchen().mostShare()).isGreaterThan(0).isLessThanOrEqualTo(1);
        if (food.kitchen().mostShare() < 1) {
            assertThat(food.kitchen().mostShareReason()).isNotBlank();
        }
    }

    @ParameterizedTest
    @MethodSource("foods")
    void aUsualPackHoldsNoMoreEdibleFoodThanItWeighs(Food food) {
        Measures.Pack pack = MEASURES.usualPack(food);
        if (pack != null) {
            assertThat(pack.gramsAsBought()).isPositive();
            assertThat(pack.edibleGrams()).isPositive().isLessThanOrEqualTo(pack.gramsAsBought());
        }
    }

    @Test
    void eggsAreCountedAndTabletsToo() {
        Food egg = FOODS.find("egg-whole-raw");
        assertThat(egg).isNotNull();
        assertThat(MEASURES.gramsOf(egg, "large")).hasValue(50);
        assertThat(MEASURES.gramsOf(egg, "bucket")).isEmpty();
        Food kelp = FOODS.find("kelp-tablet-150ug");
        assertThat(kelp).isNotNull();
        assertThat(MEASURES.gramsOf(kelp, "tablets")).hasValue(0.2);
    }

    @Test
    void aSearchNeedsEveryWord() {
        assertThat(FOODS.search(List.of("chicken", "liver")))
                .isNotEmpty()
                .allMatch(food -> (food.id() + food.label() + food.name())
                        .toLowerCase(Locale.ROOT)
                        .contains("liver"));
        assertThat(FOODS.search(List.of("chicken", "zucchini"))).isEmpty();
    }

    @Test
    void vitaminAOfPlantsCountsTowardTheMinimumAlone() {
        Nutrient vitaminA = Nutrients.load().get("vitamin-a");
        assertThat(vitaminA.towardMinimum()).containsOnlyKeys(Constituent.VITAMIN_A_RAE_UG);
        assertThat(vitaminA.towardMaximum()).containsOnlyKeys(Constituent.RETINOL_UG);
    }
}
