package packpot.explain;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.household.Freezer;
import packpot.household.Household;
import packpot.household.Kitchen;
import packpot.household.PantryItem;
import packpot.plan.Plan;

/** What is left of a household's means once a plan is carried out. Left-over parts of packs are not counted on. */
public final class Rest {

    private Rest() {}

    /** For another pot on the same cook day: what is on hand, money, bags and freezer are shared. */
    public static Household sameDay(Household household, Plan plan) {
        Kitchen kitchen = household.kitchen();
        Integer bags = kitchen.mostBags();
        Freezer freezer = kitchen.freezer();
        Double taken = plan.batch().freezerMl();
        return laterDay(household, plan)
                .withKitchen(kitchen.withMostBags(
                                bags == null
                                        ? null
                                        : (Integer)
                                                Math.max(0, bags - plan.batch().bags()))
                        .withFreezer(
                                freezer == null || taken == null
                                        ? freezer
                                        : new Freezer(
                                                freezer.ratedMl(),
                                                freezer.usableShare(),
                                                freezer.takenMl() + taken,
                                                freezer.packingShare())));
    }

    /** For a later cook day: what is on hand and money are shared; bags are bought anew, the freezer is empty again. */
    static Household laterDay(Household household, Plan plan) {
        Map<String, Plan.Purchase> used = new HashMap<>();
        plan.shopping().forEach(line -> used.put(line.food(), line));
        Double budget = household.budget();
        return household
                .withPantry(household.pantry().stream()
                        .map(item -> less(item, used.get(item.food().id())))
                        .toList())
                .withBudget(
                        budget == null
                                ? null
                                : (Double) Math.max(0, budget - plan.cost().atTheTill()));
    }

    private static PantryItem less(PantryItem item, Plan.@Nullable Purchase line) {
        if (line == null) {
            return item;
        }
        Double atMost = item.atMostGrams();
        return item.withOnHand(Math.max(0, item.onHandGrams() - line.fromHandGrams()))
                .withMustUse(Math.max(0, item.mustUseGrams() - line.usedGrams()))
                .withAtMost(atMost == null ? null : (Double) Math.max(0, atMost - line.usedGrams()));
    }
}
