package packpot.sheets;

import java.util.List;
import packpot.audit.Verdict;
import packpot.explain.Losses;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.plan.FeedingCalendar;
import packpot.plan.Plan;

/**
 * What sheets are made of.
 *
 * @param plan one that passed its audit
 * @param verdict of that audit, with every dog's nutrients
 * @param calendar of the batch, checked
 * @param standIns what takes the place of each food that the shop has not; empty when that was not asked
 */
public record SheetSource(
        Household household,
        Knowledge knowledge,
        Plan plan,
        Verdict verdict,
        FeedingCalendar calendar,
        List<Losses.Loss> standIns) {
    public SheetSource {
        standIns = List.copyOf(standIns);
    }

    /**
     * The pantry's item of a food that the plan uses.
     *
     * @throws IllegalArgumentException when the pantry does not have it
     */
    PantryItem item(String food) {
        return household.pantry().stream()
                .filter(item -> item.food().id().equals(food))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(food + " is not in the pantry"));
    }

    /** Where a food of the plan stands in the pantry, from 0. */
    public int placeInPantry(String food) {
        return household.pantry().indexOf(item(food));
    }
}
