package packpot.plan;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import packpot.food.Keeps;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.units.Show;

/** The day of shopping, and where what is bought waits for the cook day. */
final class ShoppingDay {

    private ShoppingDay() {}

    /** One event; none when nothing has to be bought. */
    static List<FeedingCalendar.Event> events(Plan plan, Household household) {
        Map<Keeps, List<String>> bought = new EnumMap<>(Keeps.class);
        int lines = 0;
        for (Plan.Purchase purchase : plan.shopping()) {
            if (purchase.buyGramsAsBought() > 0) {
                lines++;
                bought.computeIfAbsent(keeps(household, purchase), key -> new ArrayList<>())
                        .add(purchase.label());
            }
        }
        if (lines == 0) {
            return List.of();
        }
        List<String> details = new ArrayList<>();
        place(bought, Keeps.PERISHABLE, "Into the fridge", details);
        place(bought, Keeps.FROZEN, "Into the freezer", details);
        return List.of(new FeedingCalendar.Event(
                household.start().minusDays(household.kitchen().shopDaysBefore()),
                FeedingCalendar.Kind.SHOP,
                "",
                "Shop: " + lines + (lines == 1 ? " line" : " lines") + " of the list, "
                        + Show.money(plan.cost().atTheTill(), plan.currency()) + " at the till.",
                details,
                List.of()));
    }

    private static void place(Map<Keeps, List<String>> bought, Keeps keeps, String where, List<String> details) {
        List<String> labels = bought.get(keeps);
        if (labels != null) {
            details.add(where + ": " + String.join("; ", labels) + ".");
        }
    }

    private static Keeps keeps(Household household, Plan.Purchase purchase) {
        for (PantryItem item : household.pantry()) {
            if (item.food().id().equals(purchase.food())) {
                return item.food().kitchen().keeps();
            }
        }
        throw new IllegalArgumentException(purchase.food() + " is not in the pantry");
    }
}
