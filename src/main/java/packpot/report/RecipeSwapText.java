package packpot.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.audit.DogAudit;
import packpot.audit.Finding;
import packpot.explain.RecipeSwap;
import packpot.units.Show;

/** What moves when a food of a recipe takes the place of another. */
final class RecipeSwapText {

    private RecipeSwapText() {}

    static void write(Page page, RecipeSwap swapped) {
        page.title("Swap, by equal " + swapped.by().key());
        for (RecipeSwap.Exchange exchange : swapped.exchanges()) {
            page.item(RecipeFigures.grams(exchange.fromGrams()) + " of " + exchange.from() + " become "
                    + RecipeFigures.grams(exchange.toGrams())
                    + " of " + exchange.to()
                    + (exchange.sameGroup()
                            ? ""
                            : "; mind: the one is of the group " + exchange.fromGroup() + ", the other of "
                                    + exchange.toGroup()));
        }
        page.raw("\n");
        Map<List<RecipeSwap.Moved>, List<String>> dogsByMoved = new LinkedHashMap<>();
        for (int i = 0; i < swapped.before().dogs().size(); i++) {
            DogAudit was = swapped.before().dogs().get(i);
            DogAudit is = swapped.after().dogs().get(i);
            page.raw(String.format(
                    Locale.ROOT,
                    "  %s: %,.0f kcal a day before, %,.0f after, of %,.0f needed%n",
                    was.dog(),
                    was.kcalPerDay(),
                    is.kcalPerDay(),
                    was.targetKcalPerDay()));
            List<RecipeSwap.Moved> moved = swapped.moved().stream()
                    .filter(each -> each.dog().equals(was.dog()))
                    .map(RecipeSwap.Moved::ofAnyDog)
                    .toList();
            dogsByMoved.computeIfAbsent(moved, key -> new ArrayList<>()).add(was.dog());
        }
        dogsByMoved.forEach((moved, names) -> {
            page.raw("\n" + String.join(", ", names) + "\n");
            if (moved.isEmpty()) {
                page.indented("no nutrient moved by more than " + RecipeFigures.percent(swapped.share()));
            } else {
                page.table(moved(moved));
            }
        });
        page.paragraph("Listed are nutrients that moved by more than " + RecipeFigures.percent(swapped.share()) + ".");
        List<Finding> unsafe = swapped.after().safety().stream()
                .filter(finding -> !swapped.before().safety().contains(finding))
                .toList();
        page.items(
                "Not safe after the swap",
                unsafe.stream().map(Finding::toString).distinct().toList());
    }

    private static TextTable moved(List<RecipeSwap.Moved> moved) {
        // The maximum is rarely near, and with it the table would be too wide for its last column.
        boolean over = moved.stream().anyMatch(each -> each.now().contains("over"));
        TextTable table = new TextTable("lrrrrl")
                .row("per 1000 kcal", over ? "limit" : "minimum", "before", "after", "moved", "");
        moved.forEach(each -> table.row(
                each.unit().isEmpty() ? each.nutrient() : each.nutrient() + ", " + each.unit(),
                each.now().contains("over") ? "at most " + limit(each.maximum()) : limit(each.minimum()),
                Show.number(each.before()),
                Show.number(each.after()),
                RecipeFigures.signed(each.change()),
                each.now()));
        return table;
    }

    private static String limit(@Nullable Double limit) {
        return limit == null ? "-" : Show.number(limit);
    }
}
