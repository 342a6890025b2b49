package packpot.household;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import packpot.food.Food;
import packpot.food.Place;
import packpot.food.Preparation;

/** Reads "chicken thigh=ground turkey": a food of a recipe, and the food that is to take its place. */
public final class SwapReader {
    private static final String OPTION = "--swap";

    private final Knowledge knowledge;
    private final RecipeScenario scenario;
    private final FoodFinder foods;
    private final GuessedPrices guesses;

    /** Two foods of which the second is to take the place of the first. */
    public record Swap(Recipe.Part from, PantryItem to) {}

    public SwapReader(Knowledge knowledge, RecipeScenario scenario) {
        this.knowledge = knowledge;
        this.scenario = scenario;
        this.foods = new FoodFinder(
                knowledge,
                scenario.household().pantry().stream()
                        .map(PantryItem::food)
                        .filter(food -> food.id().startsWith("own:"))
                        .toList());
        this.guesses = GuessedPrices.load(knowledge);
    }

    /** The swaps of a command line, or every fault of them at once. */
    public List<Swap> read(List<String> texts) throws ScenarioException {
        List<Fault> faults = new ArrayList<>();
        Fields fields = new Fields(JsonNodeFactory.instance.objectNode(), "", faults);
        List<Swap> swaps = new ArrayList<>();
        for (String text : texts) {
            Swap swap = swap(fields, text);
            if (swap != null && swaps.stream().anyMatch(other -> other.from().equals(swap.from()))) {
                fields.fault(
                        OPTION, "\"" + swap.from().item().food().label() + "\" is swapped twice; give one of the two");
            } else if (swap != null) {
                swaps.add(swap);
            }
        }
        if (!faults.isEmpty()) {
            throw new ScenarioException("The command line", faults);
        }
        return swaps;
    }

    private @Nullable Swap swap(Fields fields, String text) {
        int sign = text.indexOf('=');
        String from = sign < 0 ? "" : text.substring(0, sign).strip();
        String to = sign < 0 ? "" : text.substring(sign + 1).strip();
        if (from.isEmpty() || to.isEmpty()) {
            fields.fault(OPTION, "read \"" + text + "\", expected two foods such as \"chicken thigh=ground turkey\"");
            return null;
        }
        Recipe.Part part = part(fields, from);
        Food food = food(fields, to);
        if (part == null || food == null) {
            return null;
        }
        if (food.isSupplement()) {
            fields.fault(OPTION, "\"" + food.label() + "\" is a supplement, which takes no food's place");
            return null;
        }
        if (food.equals(part.item().food())) {
            fields.fault(OPTION, "\"" + food.label() + "\" would take its own place; name another food");
            return null;
        }
        return new Swap(part, item(part, food));
    }

    /** A food of the recipe, by its whole name or by words that are in one food's name alone. */
    private Recipe.@Nullable Part part(Fields fields, String name) {
        List<Recipe.Part> parts = scenario.recipe().foods();
        Food exact = knowledge.foods().find(name);
        List<Recipe.Part> found = parts.stream()
                .filter(part -> part.item().food().equals(exact)
                        || part.item().food().label().equalsIgnoreCase(name))
                .toList();
        if (found.isEmpty()) {
            found = parts.stream()
                    .filter(part -> hasWords(part.item().food(), name))
                    .toList();
        }
        if (found.size() != 1) {
            List<String> labels =
                    parts.stream().map(part -> part.item().food().label()).toList();
            fields.fault(
                    OPTION,
                    "\"" + name + "\" "
                            + (found.isEmpty() ? "is not in the recipe" : "may be more than one of its foods")
                            + Nearest.advice(name, labels, 2) + "; the recipe has: " + String.join("; ", labels));
            return null;
        }
        return found.get(0);
    }

    private @Nullable Food food(Fields fields, String name) {
        List<Food> owned = scenario.household().pantry().stream()
                .map(PantryItem::food)
                .filter(food -> hasWords(food, name))
                .toList();
        boolean known = knowledge.foods().find(name) != null;
        // Where the words name one food of the pantry, it is that one that the cook speaks of.
        return !known && owned.size() == 1
                ? foods.find(fields, OPTION, owned.get(0).label(), "the swap")
                : foods.find(fields, OPTION, name, "the swap");
    }

    private static boolean hasWords(Food food, String name) {
        String label = food.label().toLowerCase(Locale.ROOT);
        return Arrays.stream(name.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+"))
                .allMatch(label::contains);
    }

    private PantryItem item(Recipe.Part from, Food food) {
        Preparation same =
                knowledge.preparations().find(food, from.item().preparation().method());
        Preparation preparation = same == null ? knowledge.preparations().usual(food) : same;
        return scenario.household().pantry().stream()
                .filter(item -> item.food().id().equals(food.id()))
                .map(item -> item.withoutWishes().prepared(preparation, Place.POT))
                .findFirst()
                .orElseGet(() -> guesses.item(food, preparation, Place.POT));
    }
}
