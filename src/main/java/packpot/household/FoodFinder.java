package packpot.household;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.food.Food;
import packpot.food.UnsafeFoods;

/** Finds the food that a file names: the household's own before the catalogue's, and never one that poisons dogs. */
final class FoodFinder {
    private static final int NEAR = 4;

    private final Knowledge knowledge;
    private final Map<String, Food> ownFoods = new HashMap<>();

    FoodFinder(Knowledge knowledge, Collection<Food> ownFoods) {
        this.knowledge = knowledge;
        ownFoods.forEach(food -> this.ownFoods.put(food.label().toLowerCase(Locale.ROOT), food));
    }

    /** The food of that name, refused or not; null when it is unknown. */
    @Nullable
    Food known(String name) {
        Food own = ownFoods.get(name.strip().toLowerCase(Locale.ROOT));
        return own != null ? own : knowledge.foods().find(name);
    }

    /** The food of that name; null when it is refused or unknown, which adds a fault at the field. */
    @Nullable
    Food find(Fields fields, String field, String name, String where) {
        Food food = known(name);
        String names = food == null ? name : name + " / " + food.label() + " / " + food.name();
        for (UnsafeFoods.UnsafeFood unsafe : knowledge.unsafeFoods().inName(names)) {
            if (unsafe.rule() == UnsafeFoods.Rule.BLOCK) {
                fields.fault(
                        field,
                        "\"" + name + "\" is refused: " + unsafe.food() + " harms dogs (" + unsafe.why() + "). "
                                + sentence(unsafe.advice(), where));
                return null;
            }
        }
        if (food == null) {
            List<String> labels = new ArrayList<>(
                    knowledge.foods().all().stream().map(Food::label).toList());
            labels.addAll(ownFoods.keySet());
            fields.fault(
                    field,
                    "\"" + name + "\" is not a food known here" + Nearest.advice(name, labels, NEAR)
                            + "; look foods up with: packpot foods WORD, or give it under \"ownFoods\"");
        }
        return food;
    }

    private static String sentence(String advice, String where) {
        return advice.isEmpty()
                ? "Take it out of " + where + "."
                : Character.toUpperCase(advice.charAt(0)) + advice.substring(1) + ".";
    }
}
