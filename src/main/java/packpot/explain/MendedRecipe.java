package packpot.explain;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import packpot.food.Food;
import packpot.food.FoodGroup;
import packpot.household.GuessedPrices;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.household.Recipe;
import packpot.plan.Plan;

/** What becomes of a recipe in the plan that mends it. */
final class MendedRecipe {

    private MendedRecipe() {}

    static RecipeMend.Outcome.Planned of(
            RecipeMend.Way way,
            Recipe recipe,
            double scale,
            Planner.Result.Planned planned,
            Household before,
            List<String> left,
            GuessedPrices guesses) {
        Plan plan = planned.plan();
        Set<String> own =
                recipe.foods().stream().map(part -> part.item().food().id()).collect(Collectors.toSet());
        double shown = switch (way) {
            case SMALLEST_CHANGE -> scale;
            // All of them by the same, but for oil that may be more.
            case ADDITIONS_ONLY ->
                cooked(plan, recipe, part -> part.item().food().group() != FoodGroup.OIL);
            case CHEAPEST_ALIKE -> cooked(plan, recipe, part -> true);
        };
        List<RecipeMend.Change> foods = changes(recipe, plan, shown);
        double distance = 0;
        for (int i = 0; i < recipe.foods().size(); i++) {
            RecipeMend.Change change = foods.get(i);
            if (!change.supplement()) {
                distance += recipe.foods().get(i).cookedGrams() / recipe.cookedGrams() * Math.abs(change.relative());
            }
        }
        distance += plan.pot().stream()
                .filter(ingredient -> !ingredient.stirredIn() && !own.contains(ingredient.food()))
                .mapToDouble(ingredient -> ingredient.cookedGrams() / (shown * recipe.cookedGrams()))
                .sum();
        Map<String, PantryItem> items = new HashMap<>();
        planned.household().pantry().forEach(item -> items.put(item.food().id(), item));
        // What the recipe itself costs is told where the recipe is read.
        Set<String> priced = Stream.concat(
                        before.pantry().stream(), recipe.foods().stream().map(Recipe.Part::item))
                .filter(item -> !item.outOfStock())
                .map(item -> item.food().id())
                .collect(Collectors.toSet());
        recipe.additions().forEach(addition -> priced.add(addition.item().food().id()));
        List<String> guessed = new ArrayList<>();
        double cost = 0;
        for (Plan.Purchase purchase : plan.shopping()) {
            PantryItem item = items.get(purchase.food());
            if (item == null) {
                throw new IllegalStateException(purchase.food() + " is not in the pantry");
            }
            cost += purchase.usedGrams() * item.pricePerGram();
            if (!priced.contains(purchase.food()) && purchase.buyGramsAsBought() > 0) {
                guessed.add(guesses.words(item, plan.currency()));
            }
        }
        return new RecipeMend.Outcome.Planned(
                plan, planned.verdict(), shown, distance, foods, guessed, left, cost / plan.days());
    }

    /** How much of some foods the plan cooks, over the recipe; of all foods where the recipe has none of these. */
    private static double cooked(Plan plan, Recipe recipe, Predicate<Recipe.Part> counted) {
        double before = 0;
        double now = 0;
        for (Recipe.Part part : recipe.foods()) {
            if (!part.item().food().isSupplement() && counted.test(part)) {
                before += part.cookedGrams();
                now += plan.pot().stream()
                        .filter(ingredient ->
                                ingredient.food().equals(part.item().food().id()))
                        .mapToDouble(Plan.Ingredient::cookedGrams)
                        .sum();
            }
        }
        return before > 0 ? now / before : cooked(plan, recipe, part -> true);
    }

    private static List<RecipeMend.Change> changes(Recipe recipe, Plan plan, double scale) {
        Map<String, Plan.Ingredient> pot = new HashMap<>();
        plan.pot().forEach(ingredient -> pot.put(ingredient.food(), ingredient));
        List<RecipeMend.Change> changes = new ArrayList<>();
        for (Recipe.Part part : recipe.foods()) {
            Food food = part.item().food();
            Plan.Ingredient now = pot.remove(food.id());
            changes.add(new RecipeMend.Change(
                    food.id(),
                    food.label(),
                    food.isSupplement(),
                    part.grams(),
                    part.grams() * scale,
                    now == null ? 0 : now.grams()));
        }
        plan.pot().stream()
                .filter(ingredient -> pot.containsKey(ingredient.food()))
                .forEach(ingredient -> changes.add(new RecipeMend.Change(
                        ingredient.food(), ingredient.label(), ingredient.stirredIn(), 0, 0, ingredient.grams())));
        return changes;
    }
}
