package packpot.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import packpot.audit.DogAudit;
import packpot.audit.NutrientLine;
import packpot.explain.RecipeMend;
import packpot.plan.Plan;

/** What a mended recipe puts into pot and bowls, in the amounts that were audited. */
final class MendedPlanText {
    private static final int NEAREST = 4;

    private MendedPlanText() {}

    /** Foods beside the recipe's amounts, supplements in the measure that they are counted in. */
    static void pot(Page page, RecipeMend.Outcome.Planned planned) {
        TextTable table = new TextTable("rrrl").row("recipe", "now", "", "");
        for (RecipeMend.Change change : planned.foods()) {
            String measure = measure(planned.plan(), change);
            table.row(
                    change.recipeGrams() > 0 ? RecipeFigures.potGrams(change, change.recipeGrams()) : "-",
                    RecipeFigures.potGrams(change, change.grams()),
                    Double.isInfinite(change.relative())
                            ? "new"
                            : Math.abs(change.relative()) < RecipeFigures.NO_CHANGE
                                    ? "same"
                                    : RecipeFigures.signed(change.relative()),
                    change.label()
                            + (measure.isEmpty() ? "" : ": " + measure)
                            + (ordinary(change) ? " (a food, since supplements alone do not do)" : ""));
        }
        page.table(table);
    }

    private static boolean ordinary(RecipeMend.Change change) {
        return !change.supplement() && change.recipeGrams() == 0;
    }

    /** A supplement's amount in tablets, capsules or spoons; empty for foods and for what is not in the plan. */
    static String measure(Plan plan, RecipeMend.Change change) {
        return plan.pot().stream()
                .filter(ingredient ->
                        ingredient.stirredIn() && ingredient.food().equals(change.food()))
                .map(Plan.Ingredient::measure)
                .findFirst()
                .orElse("");
    }

    static void bowls(Page page, Plan plan) {
        TextTable bowls = new TextTable("ll");
        for (Plan.DogPlan dog : plan.dogs()) {
            bowls.row(dog.name(), String.format(Locale.ROOT, "%,d g a day of the cooked pot", dog.potGramsPerDay()));
            for (Plan.Addition addition : dog.additions()) {
                bowls.row("", "+ " + addition.label() + ": " + addition.dose() + when(addition, dog.daysFed()));
            }
        }
        page.table(bowls);
    }

    private static String when(Plan.Addition addition, int days) {
        List<String> on = addition.onDays().stream().map(String::valueOf).toList();
        return on.size() == days
                ? ", once a day"
                : (on.size() == 1 ? ", on day " : ", on days ") + String.join(", ", on);
    }

    /** For each dog the limits that it comes nearest to, dogs that share them on one line. */
    static void nearestLimits(Page page, List<DogAudit> dogs) {
        Map<String, List<String>> dogsByLine = new LinkedHashMap<>();
        dogs.forEach(dog -> dogsByLine
                .computeIfAbsent(nearestLimits(dog), key -> new ArrayList<>())
                .add(dog.dog()));
        dogsByLine.forEach((line, names) -> page.item(String.join(", ", names) + ", nearest to a limit: " + line));
    }

    private record Near(double distance, String words) {}

    private static String nearestLimits(DogAudit dog) {
        List<Near> all = new ArrayList<>();
        for (NutrientLine line : dog.nutrients()) {
            Double least = line.minimum();
            Double most = line.maximum();
            if (least != null && least > 0) {
                all.add(near(line.label(), line.got() / least, line.got() / least - 1, "minimum"));
            }
            if (most != null && most > 0) {
                all.add(near(
                        line.label(), line.gotAgainstMaximum() / most, 1 - line.gotAgainstMaximum() / most, "maximum"));
            }
        }
        return String.join(
                ", ",
                all.stream()
                        .sorted(Comparator.comparingDouble(Near::distance))
                        .limit(NEAREST)
                        .map(Near::words)
                        .toList());
    }

    private static Near near(String label, double share, double distance, String limit) {
        return new Near(distance, String.format(Locale.ROOT, "%s %.0f %% of the %s", label, 100 * share, limit));
    }
}
