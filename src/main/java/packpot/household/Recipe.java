package packpot.household;

import java.util.ArrayList;
import java.util.List;
import packpot.dog.Dog;

/**
 * A recipe that somebody cooks today: what goes into the pot for so many days, and what single dogs get on top.
 *
 * @param days that the pot feeds
 * @param dogs that it feeds on all of its days, at least one
 * @param foods into the pot, supplements that are stirred in among them
 * @param additions to bowls
 * @param remarks what was taken for granted in reading it, in sentences
 */
public record Recipe(
        String name, int days, List<Dog> dogs, List<Part> foods, List<Addition> additions, List<String> remarks) {
    public Recipe {
        dogs = List.copyOf(dogs);
        foods = List.copyOf(foods);
        additions = List.copyOf(additions);
        remarks = List.copyOf(remarks);
    }

    /**
     * One food in the pot.
     *
     * @param item the food as this recipe prepares it, with the pantry's price or a guessed one
     * @param grams edible, as weighed before cooking
     * @param written the amount as the recipe gives it
     */
    public record Part(PantryItem item, double grams, String written) {
        public double cookedGrams() {
            return grams * item.preparation().yieldCookedOverRaw();
        }
    }

    /**
     * What one dog gets into its bowl every day.
     *
     * @param dog its name
     * @param written the amount as the recipe gives it
     */
    public record Addition(String dog, PantryItem item, double gramsPerDay, String written) {}

    /** Mass of the cooked pot in g. */
    public double cookedGrams() {
        return foods.stream().mapToDouble(Part::cookedGrams).sum();
    }

    /** Mass of the cooked pot in g, supplements left out. */
    public double cookedFoodGrams() {
        return foods.stream()
                .filter(part -> !part.item().food().isSupplement())
                .mapToDouble(Part::cookedGrams)
                .sum();
    }

    /** The same recipe with other foods in the pot. */
    public Recipe withFoods(List<Part> other) {
        return new Recipe(name, days, dogs, other, additions, remarks);
    }

    /**
     * The household as this recipe meets it: its dogs and days, its foods first in the pantry, and after them every
     * supplement that the household has. A budget, and what the pantry says must or may be used, are wishes about the
     * household's own batch and do not bind a recipe.
     */
    public Household in(Household household) {
        List<PantryItem> pantry = new ArrayList<>();
        foods.forEach(part -> put(pantry, part.item()));
        additions.forEach(addition -> put(pantry, addition.item()));
        household.pantry().stream()
                .filter(item -> item.food().isSupplement())
                .forEach(item -> put(pantry, item.withoutWishes()));
        return household
                .withDogs(dogs.stream()
                        .map(dog -> dog.withCourse(dog.course().staying()))
                        .toList())
                .withKitchen(household.kitchen().withDays(days))
                .withPantry(pantry)
                .withBudget(null);
    }

    private static void put(List<PantryItem> pantry, PantryItem item) {
        if (pantry.stream()
                .noneMatch(other -> other.food().id().equals(item.food().id()))) {
            pantry.add(item);
        }
    }
}
