package packpot.household;

import java.util.List;
import packpot.dog.Dog;
import packpot.dog.EnergyEquations;

/** Faults of a scenario that show when its parts are held against each other. */
final class PartsTogether {
    private static final double MOST_OTHER_SHARE = 0.9;

    private PartsTogether() {}

    /** What a dog gets beside the plan leaves something to plan. */
    static void energyIsLeft(
            Fields fields, List<Dog> allDogs, EnergyEquations energy, SettingReader.Equations equations) {
        for (Dog dog : allDogs) {
            double needs = energy.need(dog, equations.maintenance(), equations.growth())
                    .kcalPerDay();
            if (needs > 0 && dog.otherKcalPerDay() > MOST_OTHER_SHARE * needs) {
                fields.fault(
                        "dogs",
                        dog.name() + ": treats and other food bring " + Math.round(dog.otherKcalPerDay())
                                + " kcal a day of the " + Math.round(needs)
                                + " kcal that it needs; too little is left to plan, expected at most nine tenths");
            }
        }
    }

    /** No food is in the pantry that none of the dogs may have. */
    static void everyFoodHasADog(Fields fields, List<Dog> dogs, List<PantryItem> pantry) {
        for (PantryItem item : pantry) {
            if (!dogs.isEmpty() && dogs.stream().allMatch(dog -> Avoidance.avoids(dog, item.food()))) {
                fields.fault(
                        "pantry", "every dog must avoid \"" + item.food().label() + "\"; take it out of the pantry");
            }
        }
    }

    /**
     * The shape for what is in the pantry: where the scenario does not ask for a number of foods, no more are asked for
     * than could go into the pot.
     */
    static Shape enoughFoods(
            Fields fields, List<Dog> dogs, List<PantryItem> pantry, Shape shape, boolean asked, Notes notes) {
        int usable = usable(pantry, dogs);
        if (pantry.isEmpty() || usable >= shape.fewestFoods() || shape.fewestFoods() > shape.mostFoods()) {
            return shape;
        }
        if (asked || usable == 0) {
            fields.fault(
                    "pantry",
                    usable + (usable == 1 ? " food" : " foods") + " of it can go into the pot, and at least "
                            + shape.fewestFoods()
                            + " are wished; add foods, or change what is out of stock or avoided");
            return shape;
        }
        notes.filled("taken.fewestFoods", usable);
        return shape.withFewestFoods(usable);
    }

    /** Foods, supplements apart, that could go into a pot that all dogs share. */
    static int usable(List<PantryItem> pantry, List<Dog> dogs) {
        return (int) pantry.stream()
                .filter(item -> !item.food().isSupplement() && item.place().pot())
                .filter(item -> !item.outOfStock() || item.onHandGrams() > 0)
                .filter(item -> item.atMostGrams() == null || item.atMostGrams() > 0)
                .filter(item -> dogs.stream().noneMatch(dog -> Avoidance.avoids(dog, item.food())))
                .count();
    }
}
