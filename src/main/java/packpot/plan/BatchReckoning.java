package packpot.plan;

import java.util.List;
import packpot.household.Freezer;
import packpot.household.Kitchen;

/** Volume, pot loads, bags and freezer of a cooked batch. */
public final class BatchReckoning {

    private BatchReckoning() {}

    static Plan.Batch batch(Kitchen kitchen, double cookedGrams, List<Plan.DogPlan> dogs) {
        double eaten = dogs.stream().mapToDouble(Plan.DogPlan::potGramsInBatch).sum();
        double ml = cookedGrams / kitchen.mixDensityGramsPerMl();
        Double pot = kitchen.potMl();
        int bags = bags(kitchen, cookedGrams);
        // The bags that stay in the fridge must feed its days in full; the others are frozen.
        int frozen = bags - (int) Math.ceil(bags * (1 - kitchen.frozenShare()) - 1e-9);
        Freezer freezer = kitchen.freezer();
        return new Plan.Batch(
                cookedGrams,
                ml,
                pot == null ? null : (int) Math.ceil(ml / (pot * kitchen.potFillShare()) - 1e-9),
                kitchen.bagName(),
                bags,
                cookedGrams / bags,
                frozen,
                kitchen.fridgeDays(),
                freezer == null ? null : frozen * (ml / bags) / freezer.packingShare(),
                freezer == null ? null : freezer.freeForFoodMl() / freezer.packingShare(),
                cookedGrams - eaten);
    }

    /** Bags that a cooked mass fills; no bag holds more than is eaten while it keeps in the fridge. */
    public static int bags(Kitchen kitchen, double cookedGrams) {
        double ml = cookedGrams / kitchen.mixDensityGramsPerMl();
        int byVolume = (int) Math.max(1, Math.ceil(ml / kitchen.bagUsableMl() - 1e-9));
        int byLife = (int) Math.ceil((double) kitchen.days() / Math.max(1, kitchen.fridgeDays()));
        Integer most = kitchen.mostBags();
        return Math.max(byVolume, most == null ? byLife : Math.min(byLife, most));
    }
}
