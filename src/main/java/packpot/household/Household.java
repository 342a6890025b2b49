package packpot.household;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import packpot.dog.Dog;
import packpot.dog.EnergyMethod;
import packpot.food.FoodEnergy;
import packpot.units.UnitSystem;
import packpot.words.Sentence;

/**
 * A household in base units, valid as it stands.
 *
 * @param currency ISO 4217 code
 * @param locale whose words, figures and dates its sheets have
 * @param profile name of the profile for dogs that name none of their own
 * @param dogs those that are there on the first day
 * @param coming those that come later; no batch that begins on the first day is planned for them
 * @param budget most money for shopping; null when there is no such wish
 * @param defaults what the scenario left open and how it was filled
 * @param cautions what people must be told
 */
public record Household(
        String name,
        LocalDate start,
        String currency,
        UnitSystem units,
        Locale locale,
        String profile,
        EnergyMethod.Maintenance maintenance,
        EnergyMethod.Growth growth,
        FoodEnergy.Method foodEnergy,
        List<Dog> dogs,
        List<Dog> coming,
        Kitchen kitchen,
        List<PantryItem> pantry,
        Shape shape,
        Rules rules,
        @Nullable Double budget,
        List<Sentence> defaults,
        List<Sentence> cautions) {
    public Household {
        dogs = List.copyOf(dogs);
        coming = List.copyOf(coming);
        pantry = List.copyOf(pantry);
        defaults = List.copyOf(defaults);
        cautions = List.copyOf(cautions);
    }

    /** The profile that a dog is held to. */
    public String profileOf(Dog dog) {
        String own = dog.profile();
        return own == null ? profile : own;
    }

    /** Dogs that are there on the first day, and those that come later. */
    public List<Dog> allDogs() {
        List<Dog> all = new ArrayList<>(dogs);
        all.addAll(coming);
        return List.copyOf(all);
    }

    /** Price of the cheapest food, in money per edible gram; 0 where none has a price. Supplements are left out. */
    public double cheapestFoodPerGram() {
        return pantry.stream()
                .filter(item -> !item.food().isSupplement() && item.pricePerGram() > 0)
                .mapToDouble(PantryItem::pricePerGram)
                .min()
                .orElse(0);
    }

    /** Dogs that must not get a food. */
    public List<Dog> avoiders(PantryItem item) {
        return dogs.stream().filter(dog -> Avoidance.avoids(dog, item.food())).toList();
    }

    /** Whether a food may go into the pot that all dogs share. */
    public boolean mayGoIntoPot(PantryItem item) {
        return item.place().pot() && avoiders(item).isEmpty();
    }

    /** The same household with other dogs. */
    public Household withDogs(List<Dog> other) {
        return with(other, kitchen, pantry, shape, rules, budget);
    }

    /**
     * The same household on a later first day.
     *
     * @param thoseDogs that are there on a day of its first batch, as they are then
     */
    public Household from(LocalDate day, List<Dog> thoseDogs) {
        return new Household(
                name,
                day,
                currency,
                units,
                locale,
                profile,
                maintenance,
                growth,
                foodEnergy,
                thoseDogs,
                List.of(),
                kitchen,
                pantry,
                shape,
                rules,
                budget,
                defaults,
                cautions);
    }

    /** The same household with another kitchen. */
    public Household withKitchen(Kitchen other) {
        return with(dogs, other, pantry, shape, rules, budget);
    }

    /** The same household with another pantry. */
    public Household withPantry(List<PantryItem> other) {
        return with(dogs, kitchen, other, shape, rules, budget);
    }

    /** The same household with another shape of the recipe. */
    public Household withShape(Shape other) {
        return with(dogs, kitchen, pantry, other, rules, budget);
    }

    /** The same household with other rules. */
    public Household withRules(Rules other) {
        return with(dogs, kitchen, pantry, shape, other, budget);
    }

    /** The same household with another budget. */
    public Household withBudget(@Nullable Double other) {
        return with(dogs, kitchen, pantry, shape, rules, other);
    }

    private Household with(
            List<Dog> otherDogs,
            Kitchen otherKitchen,
            List<PantryItem> otherPantry,
            Shape otherShape,
            Rules otherRules,
            @Nullable Double otherBudget) {
        return new Household(
                name,
                start,
                currency,
                units,
                locale,
                profile,
                maintenance,
                growth,
                foodEnergy,
                otherDogs,
                coming,
                otherKitchen,
                otherPantry,
                otherShape,
                otherRules,
                otherBudget,
                defaults,
                cautions);
    }
}
