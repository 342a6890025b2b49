package packpot.report;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.explain.RecipeMend;
import packpot.explain.RecipeSwap;
import packpot.household.Recipe;

/** A checked recipe as data for programs; the fields are described in models/recipe-check.schema.json. */
final class RecipeData {

    private RecipeData() {}

    static Map<String, Object> recipe(Recipe recipe, double costPerDay, String currency) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("name", recipe.name());
        data.put("days", recipe.days());
        data.put("dogs", recipe.dogs().stream().map(dog -> dog.name()).toList());
        data.put("costPerDay", costPerDay);
        data.put("currency", currency);
        data.put(
                "foods",
                recipe.foods().stream()
                        .map(part -> {
                            Map<String, Object> food = new LinkedHashMap<>();
                            food.put("food", part.item().food().id());
                            food.put("label", part.item().food().label());
                            food.put("written", part.written());
                            food.put("grams", part.grams());
                            food.put("method", part.item().preparation().method());
                            food.put("cookedGrams", part.cookedGrams());
                            return food;
                        })
                        .toList());
        data.put(
                "additions",
                recipe.additions().stream()
                        .map(addition -> {
                            Map<String, Object> given = new LinkedHashMap<>();
                            given.put("dog", addition.dog());
                            given.put("food", addition.item().food().id());
                            given.put("label", addition.item().food().label());
                            given.put("written", addition.written());
                            given.put("gramsPerDay", addition.gramsPerDay());
                            return given;
                        })
                        .toList());
        return data;
    }

    static Map<String, Object> swap(RecipeSwap swapped) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("by", swapped.by().key());
        data.put("movedByMoreThanShare", swapped.share());
        data.put("exchanges", swapped.exchanges());
        data.put(
                "moved",
                swapped.moved().stream()
                        .map(each -> {
                            Map<String, Object> line = new LinkedHashMap<>();
                            line.put("dog", each.dog());
                            line.put("nutrient", each.nutrient());
                            line.put("unit", each.unit());
                            line.put("minimum", each.minimum());
                            line.put("before", finite(each.before()));
                            line.put("after", finite(each.after()));
                            line.put("maximum", each.maximum());
                            line.put("changeShare", finite(each.change()));
                            line.put("now", each.now());
                            return line;
                        })
                        .toList());
        data.put("after", swapped.after());
        return data;
    }

    private static @Nullable Double finite(double value) {
        return Double.isFinite(value) ? (Double) value : null;
    }

    static Map<String, Object> mend(RecipeMend mend, String words) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("way", mend.way().key());
        data.put("words", words);
        if (mend.outcome() instanceof RecipeMend.Outcome.Planned planned) {
            data.put("found", true);
            data.put("scale", planned.scale());
            data.put("distance", planned.distance());
            data.put("costPerDay", planned.costPerDay());
            data.put(
                    "foods",
                    planned.foods().stream()
                            .map(change -> {
                                Map<String, Object> food = new LinkedHashMap<>();
                                food.put("food", change.food());
                                food.put("label", change.label());
                                food.put("supplement", change.supplement());
                                food.put("recipeGrams", change.recipeGrams());
                                food.put("scaledGrams", change.scaledGrams());
                                food.put("grams", change.grams());
                                food.put("measure", MendedPlanText.measure(planned.plan(), change));
                                food.put("changeShare", finite(change.relative()));
                                return food;
                            })
                            .toList());
            data.put("guessedPrices", planned.guessed());
            data.put("shapeThatDoesNotBind", planned.left());
            data.put("auditPassed", planned.verdict().passed());
            data.put("plan", planned.plan());
            data.put("audit", planned.verdict());
        } else if (mend.outcome() instanceof RecipeMend.Outcome.None none) {
            data.put("found", false);
            data.put("reason", none.reason());
            data.put("clashes", ClashText.data(none.clash()));
        }
        return data;
    }
}
