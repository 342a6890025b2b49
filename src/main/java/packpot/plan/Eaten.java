package packpot.plan;

import java.util.ArrayList;
import java.util.List;
import packpot.dog.Dog;
import packpot.household.Household;

/** What of the pot is eaten on each day of a batch, by the dogs that are there. Days are counted from 0. */
final class Eaten {

    private Eaten() {}

    /** Grams of the pot that one dog gets on a day. */
    static double grams(Plan.DogPlan portion, Dog dog, int day) {
        return dog.course().isThere(day)
                ? Math.rint(portion.potGramsPerDay() * dog.course().newShareOn(day))
                : 0;
    }

    /** Grams of the pot that all dogs get, day by day. */
    static List<Double> perDay(Plan plan, Household household) {
        List<Double> perDay = new ArrayList<>();
        for (int day = 0; day < plan.days(); day++) {
            double grams = 0;
            for (Plan.DogPlan portion : plan.dogs()) {
                grams += grams(portion, dog(household, portion.name()), day);
            }
            perDay.add(grams);
        }
        return List.copyOf(perDay);
    }

    /** The dog that a portion is for. */
    static Dog dog(Household household, String name) {
        return household.dogs().stream()
                .filter(dog -> dog.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(name + " is not in the household"));
    }
}
