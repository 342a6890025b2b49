package packpot.food;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.Reference;
import packpot.Reference.Line;
import packpot.food.UnsafeFoods.Rule;

class UnsafeFoodsTest {
    private static final UnsafeFoods UNSAFE = UnsafeFoods.load();
    private static final FoodCatalogue FOODS = FoodCatalogue.load();

    private static boolean blocked(String name) {
        return UNSAFE.inName(name).stream().anyMatch(food -> food.rule() == Rule.BLOCK);
    }

    static Stream<String> wordsOfBlockedFoods() {
        return rows("block").flatMap(row -> list(row, "match_words"));
    }

    static Stream<Line> blockedRows() {
        return rows("block");
    }

    private static Stream<Line> rows(String rule) {
        return Reference.models("unsafe_foods.csv").stream()
                .filter(row -> row.text("rule").equals(rule));
    }

    private static Stream<String> list(Line row, String column) {
        return row.text(column).isEmpty()
                ? Stream.empty()
                : Stream.of(row.text(column).split("\\|"));
    }

    @ParameterizedTest
    @MethodSource("wordsOfBlockedFoods")
    void aPoisonIsKnownInAnyCaseAndForm(String word) {
        assertThat(blocked(word)).isTrue();
        assertThat(blocked(word.toUpperCase(Locale.ROOT))).isTrue();
        assertThat(blocked("organic " + word + ", dried")).isTrue();
        assertThat(blocked("(" + word + ")")).isTrue();
        assertThat(blocked(word.replace(' ', '-'))).isTrue();
    }

    /** An excuse such as "unsalted" or "canned" would let any poison through; "grape tomato" speaks of the word itself. */
    @ParameterizedTest
    @MethodSource("blockedRows")
    void aPoisonIsExcusedOnlyByAPhraseThatSpeaksOfItself(Line row) {
        assertThat(list(row, "not_words"))
                .allSatisfy(excuse -> assertThat(list(row, "match_words")
                                .anyMatch(word ->
                                        excuse.contains(word) || !Collections.disjoint(stems(word), stems(excuse))))
                        .as(excuse)
                        .isTrue());
    }

    private static List<String> stems(String phrase) {
        return Stream.of(phrase.split(" "))
                .map(word -> word.replaceAll("s$", ""))
                .toList();
    }

    @ParameterizedTest
    @MethodSource("blockedRows")
    void noExcuseOfTheSameFoodSmugglesIt(Line row) {
        assertThat(list(row, "match_words"))
                .allSatisfy(word -> assertThat(list(row, "not_words")).allSatisfy(excuse -> {
                    assertThat(blocked(word + " and " + excuse))
                            .as(word + " and " + excuse)
                            .isTrue();
                    assertThat(blocked(excuse + ", " + word))
                            .as(excuse + ", " + word)
                            .isTrue();
                }));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"grapes and grape seed oil", "cream\u00a0of\u00a0tartar", "bone\u2011in thighs", "soup, bones"})
    void aPoisonIsKnownBesideAnExcuseAndAcrossAnySeparator(String name) {
        assertThat(blocked(name)).isTrue();
    }

    @ParameterizedTest
    @MethodSource("blockedRows")
    void noExcuseOfAnotherFoodSmugglesAPoison(Line row) {
        List<String> excuses = Reference.models("unsafe_foods.csv").stream()
                .filter(other -> !other.text("id").equals(row.text("id")))
                .flatMap(other -> list(other, "not_words"))
                .distinct()
                .filter(excuse -> list(row, "not_words").noneMatch(excuse::equals))
                .toList();
        assertThat(list(row, "match_words"))
                .allSatisfy(word -> assertThat(excuses).allSatisfy(excuse -> {
                    assertThat(blocked(word + " " + excuse))
                            .as(word + " " + excuse)
                            .isTrue();
                    assertThat(blocked(excuse + ", " + word))
                            .as(excuse + ", " + word)
                            .isTrue();
                }));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "onion powder",
                "onion powder without salt",
                "Onions, dehydrated flakes",
                "GARLIC",
                "garlic granules, unsalted",
                "macadamias",
                "Macadamia nuts, dry roasted, no salt",
                "bone-in chicken thighs",
                "chicken thighs, bone in",
                "raisins, seedless",
                "red grapes",
                "cocoa powder, unsweetened",
                "peanut butter with xylitol",
                "cooking wine",
                "hops",
                "avocado oil",
                "leek soup",
                "king mackerel, canned",
                "garlic-free onion powder",
                "onion, garlic free",
                "rum raisin"
            })
    void theseAreRefused(String name) {
        assertThat(blocked(name)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "pork chops",
                "lamb chop",
                "chicken drumstick, boneless",
                "drumstick",
                "beef rump",
                "hamburger",
                "grape seed oil",
                "grape-seed oil",
                "grape tomatoes",
                "chickpeas",
                "ginger",
                "shrimp",
                "mackerel, Atlantic",
                "bone meal, food grade",
                "boneless skinless chicken thighs",
                "onion-free beef stew",
                "potatoes, cooked without skin",
                "sweet potato",
                "canned salmon with bones removed",
                "teaspoon",
                "steak",
                "whole-wheat spaghetti",
                "mustard greens",
                "winter squash"
            })
    void theseAreInnocent(String name) {
        assertThat(blocked(name)).isFalse();
    }

    @ParameterizedTest
    @CsvSource({
        "salmon, COOK",
        "kidney beans, COOK",
        "eggs, COOK",
        "chicken liver, CAUTION",
        "kelp powder, CAUTION",
        "spinach, CAUTION",
        "tuna, CAUTION",
        "canned ham, CAUTION"
    })
    void someFoodsAskForCookingOrForCare(String name, Rule rule) {
        assertThat(UNSAFE.inName(name).stream().map(UnsafeFoods.UnsafeFood::rule))
                .contains(rule);
        assertThat(blocked(name)).isFalse();
    }

    @Test
    void noFoodOfTheCatalogueIsBlocked() {
        assertThat(FOODS.all())
                .allSatisfy(food -> Stream.concat(Stream.of(food.label(), food.name()), food.aliases().stream())
                        .forEach(name -> assertThat(blocked(name)).as(name).isFalse()));
    }

    @Test
    void everyHarmIsExplainedWithItsSource() {
        assertThat(UNSAFE.all()).hasSizeGreaterThan(20).allSatisfy(food -> {
            assertThat(food.why()).isNotBlank();
            assertThat(food.source()).isNotBlank();
        });
    }
}
