package packpot.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import packpot.explain.Alternatives.Alternative;
import packpot.explain.Alternatives.Found;
import packpot.household.Household;
import packpot.plan.Plan;
import packpot.units.Show;

/** Plans at nearly the same cost, side by side. */
public final class AlternativesReport {
    private static final int FORMAT = 1;

    private AlternativesReport() {}

    /** For people at a terminal, in 80 columns. */
    public static String text(Found found) {
        List<Alternative> plans = found.plans();
        Household household = plans.get(0).planned().household();
        StringBuilder text = new StringBuilder();
        String title = "Different plans at nearly the same cost: " + household.name();
        text.append(title)
                .append('\n')
                .append(Columns.underline(title, TextReport.WIDTH))
                .append('\n');
        paragraph(
                text,
                plans.size() == 1
                        ? "The cheapest plan. No other that costs at most " + Show.number(100 * found.within())
                                + " % more was found."
                        : "The cheapest plan and " + (plans.size() - 1) + (plans.size() == 2 ? " other" : " others")
                                + " that cost at most " + Show.number(100 * found.within())
                                + " % more, each chosen to differ from all before it. Every one passed the check.");
        text.append('\n');
        TextTable table = new TextTable("l" + "r".repeat(plans.size()));
        row(table, plans, "", (index, plan) -> index == 0 ? "cheapest" : "plan " + (index + 1));
        row(
                table,
                plans,
                "cost a week",
                (index, plan) -> Show.money(plan.planned().plan().cost().perDay() * 7, household.currency()));
        row(
                table,
                plans,
                "more than the cheapest",
                (index, plan) -> index == 0 ? "" : String.format(Locale.ROOT, "%.1f %%", 100 * plan.costsMoreShare()));
        row(
                table,
                plans,
                "at the till",
                (index, plan) -> Show.money(plan.planned().plan().cost().atTheTill(), household.currency()));
        row(
                table,
                plans,
                "other food than before",
                (index, plan) -> index == 0 ? "" : String.format(Locale.ROOT, "%.0f %%", 100 * plan.nearest()));
        table.heading("share of cooked mass");
        for (Map.Entry<String, String> food : foods(plans).entrySet()) {
            row(
                    table,
                    plans,
                    food.getValue(),
                    (index, plan) -> share(plan.planned().plan(), food.getKey()));
        }
        row(
                table,
                plans,
                "supplements stirred in",
                (index, plan) -> Long.toString(plan.planned().plan().pot().stream()
                        .filter(Plan.Ingredient::stirredIn)
                        .count()));
        row(
                table,
                plans,
                "additions in the bowls",
                (index, plan) -> Long.toString(plan.planned().plan().dogs().stream()
                        .flatMap(dog -> dog.additions().stream())
                        .map(Plan.Addition::food)
                        .distinct()
                        .count()));
        text.append(table.render("  ", TextReport.WIDTH)).append('\n');
        paragraph(
                text,
                "Other food than before: the share of the cooked batch that is different from the most similar plan to"
                        + " the left. \"--show 2\" prints a plan in full.");
        if (!found.reason().isEmpty()) {
            paragraph(text, "There are no more, because " + found.reason() + ".");
        }
        if (found.refused() > 0) {
            paragraph(
                    text,
                    "Left out: " + found.refused()
                            + " more that, in amounts that a kitchen can weigh, cost too much, were"
                            + " too like another, or failed the check.");
        }
        text.append('\n');
        paragraph(text, Disclaimer.TEXT);
        return text.toString();
    }

    private interface Cell {
        String of(int index, Alternative plan);
    }

    private static void row(TextTable table, List<Alternative> plans, String label, Cell cell) {
        List<String> cells = new ArrayList<>(List.of(label));
        for (int i = 0; i < plans.size(); i++) {
            cells.add(cell.of(i, plans.get(i)));
        }
        table.row(cells.toArray(String[]::new));
    }

    /** Labels of the foods in any of the pots, by the largest share that each has, supplements left out. */
    private static Map<String, String> foods(List<Alternative> plans) {
        Map<String, Double> most = new LinkedHashMap<>();
        Map<String, String> labels = new LinkedHashMap<>();
        plans.forEach(each -> each.planned().plan().pot().stream()
                .filter(food -> !food.stirredIn())
                .forEach(food -> {
                    most.merge(food.food(), food.shareOfCookedMass(), Math::max);
                    labels.put(food.food(), food.label());
                }));
        Map<String, String> sorted = new LinkedHashMap<>();
        most.entrySet().stream()
                .sorted(Comparator.comparingDouble((Map.Entry<String, Double> entry) -> -entry.getValue()))
                .forEach(entry -> sorted.put(entry.getKey(), labels.getOrDefault(entry.getKey(), entry.getKey())));
        return sorted;
    }

    private static String share(Plan plan, String food) {
        return plan.pot().stream()
                .filter(each -> each.food().equals(food))
                .map(each -> String.format(Locale.ROOT, "%.1f %%", 100 * each.shareOfCookedMass()))
                .findFirst()
                .orElse("-");
    }

    private static void paragraph(StringBuilder text, String words) {
        Wrap.lines(words, TextReport.WIDTH).forEach(line -> text.append(line).append('\n'));
    }

    /** For programs: each plan in full with the audit's verdict. */
    public static String json(Found found) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("packpotAlternatives", FORMAT);
        root.put("withinShare", found.within());
        root.put("plans", found.plans().stream().map(AlternativesReport::plan).toList());
        root.put("refused", found.refused());
        root.put("whyNoMore", found.reason());
        root.put("disclaimer", Disclaimer.TEXT);
        return JsonReport.of(root);
    }

    private static Map<String, Object> plan(Alternative each) {
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("costsMoreShare", each.costsMoreShare());
        fields.put("differsShare", each.nearest());
        fields.put("auditPassed", each.planned().verdict().passed());
        fields.put("plan", each.planned().plan());
        fields.put("audit", each.planned().verdict());
        return fields;
    }
}
