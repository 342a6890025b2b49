package packpot.plan;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import packpot.data.ModelDataException;
import packpot.data.ModelFiles;
import packpot.food.Keeps;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.units.Show;
import packpot.words.Amount;
import packpot.words.Sentence;
import packpot.words.Term;

/** The day of shopping, and where what is bought waits for the cook day. */
final class ShoppingDay {

    private static final Set<String> CUPBOARD = Set.of("dry goods", "canned goods", "oils", "supplements");
    private static final String RAW = "Raw ground meat or poultry";

    private ShoppingDay() {}

    /** A warning when raw meat would lie too long before it is cooked; empty otherwise. */
    static List<Sentence> notes(Household household) {
        int days = household.kitchen().shopDaysBefore();
        int keeps = (int) ModelFiles.table("storage.csv").stream()
                .filter(row -> row.text("what").equals(RAW))
                .findFirst()
                .orElseThrow(() -> new ModelDataException("models/storage.csv has no row " + RAW))
                .number("fridge_days_max");
        return days <= keeps ? List.of() : List.of(Sentence.of("know.shopEarly", days, keeps));
    }

    /** One event; none when nothing has to be bought. */
    static List<FeedingCalendar.Event> events(Plan plan, Household household) {
        Map<Keeps, List<Term>> bought = new EnumMap<>(Keeps.class);
        int lines = 0;
        for (Plan.Purchase purchase : plan.shopping()) {
            if (purchase.buyGramsAsBought() > 0) {
                lines++;
                bought.computeIfAbsent(place(household, purchase), key -> new ArrayList<>())
                        .add(Term.food(purchase.food(), purchase.label()));
            }
        }
        if (lines == 0) {
            return List.of();
        }
        List<Sentence> details = new ArrayList<>();
        place(bought, Keeps.PERISHABLE, "todo.intoFridge", details);
        place(bought, Keeps.FROZEN, "todo.intoFreezer", details);
        return List.of(new FeedingCalendar.Event(
                household.start().minusDays(household.kitchen().shopDaysBefore()),
                FeedingCalendar.Kind.SHOP,
                "",
                Sentence.of(
                        "todo.shop", lines, new Amount(Show.money(plan.cost().atTheTill(), plan.currency()))),
                details,
                List.of()));
    }

    private static void place(Map<Keeps, List<Term>> bought, Keeps keeps, String key, List<Sentence> details) {
        List<Term> labels = bought.get(keeps);
        if (labels != null) {
            details.add(Sentence.of(key, Sentence.apart(labels)));
        }
    }

    /** A full tin or packet stands in the cupboard, though what is left of an opened one would not keep. */
    private static Keeps place(Household household, Plan.Purchase purchase) {
        if (purchase.section().equals("frozen")) {
            return Keeps.FROZEN;
        }
        if (CUPBOARD.contains(purchase.section())) {
            return Keeps.SHELF;
        }
        for (PantryItem item : household.pantry()) {
            if (item.food().id().equals(purchase.food())) {
                return item.food().kitchen().keeps();
            }
        }
        throw new IllegalArgumentException(purchase.food() + " is not in the pantry");
    }
}
