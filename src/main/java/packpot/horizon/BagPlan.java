package packpot.horizon;

import packpot.household.Freezer;
import packpot.household.Kitchen;
import packpot.plan.Plan;

/**
 * What it takes to bag a batch for the whole household, or for each dog by itself.
 *
 * @param shared bags, each for all dogs
 * @param perDog bags, each for one dog: none holds more than the dog eats while an opened bag keeps
 * @param freezerHolds bags for one dog each, filled as they are on average, that fit the freezer's room; the largest whole number where nothing limits it
 */
public record BagPlan(int shared, int perDog, int freezerHolds) {

    /** The bags of a batch. */
    static BagPlan of(Kitchen kitchen, Plan plan) {
        int perDog = 0;
        double usableGrams = kitchen.bagUsableMl() * kitchen.mixDensityGramsPerMl();
        for (Plan.DogPlan dog : plan.dogs()) {
            double daysOfOne = Math.floor(usableGrams / Math.max(1, dog.potGramsPerDay()));
            double days = Math.min(daysOfOne, Math.max(1, kitchen.fridgeDays()));
            // A dog that eats more than a bag a day has several of them each day.
            perDog += (int)
                    (days >= 1
                            ? Math.ceil(dog.daysFed() / days)
                            : dog.daysFed() * Math.ceil(dog.potGramsPerDay() / usableGrams));
        }
        Freezer freezer = kitchen.freezer();
        int holds = freezer == null
                ? Integer.MAX_VALUE
                : (int) Math.floor(freezer.freeForFoodMl() / (plan.batch().millilitres() / perDog) + 1e-9);
        return new BagPlan(plan.batch().bags(), perDog, holds);
    }

    /** Whether bags for each dog fit the freezer, those of the first days being in the fridge. */
    public boolean perDogFits(int days, int fridgeDays) {
        return perDog - (int) Math.floor((double) perDog * Math.min(days, fridgeDays) / days) <= freezerHolds;
    }
}
