package packpot.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import packpot.explain.Planner;
import packpot.explain.Pots;
import packpot.household.Household;
import packpot.plan.Plan;
import packpot.units.Show;

/** One, two, three pots side by side. */
public final class PotsReport {
    private PotsReport() {}

    /** The text, in 80 columns. */
    public static String text(Household household, List<Pots.UpTo> found) {
        int days = household.kitchen().days();
        Page page = new Page()
                .heading(household.name(), 1)
                .paragraph("What a second pot buys, for one cook day of " + days + " days; every plan was checked");
        Pots.Way one = found.get(0).exactly();
        TextTable table = new TextTable("lrrl").row("", "a day", "against one", "");
        for (Pots.UpTo upTo : found) {
            Pots.Way best = upTo.exactly();
            String name = upTo.pots() == 1 ? "one pot" : upTo.pots() + " pots";
            if (best == null) {
                table.row(name, "-", "-", "no plan");
                continue;
            }
            table.row(
                    name,
                    Show.money(best.cost() / days, household.currency()),
                    one == null
                            ? "-"
                            : String.format(Locale.ROOT, "%+.1f %%", 100 * (best.cost() / one.cost() - 1) + 0.0),
                    best.pots().stream().map(PotsReport::dogs).collect(Collectors.joining(" | ")));
        }
        page.raw("\n").table(table);
        for (Pots.UpTo upTo : found) {
            if (upTo.best() != null) {
                page.item(String.format(
                        Locale.ROOT,
                        "up to %s: the cheapest found is proved to within %.1f %%%s",
                        upTo.pots() == 1 ? "one pot" : upTo.pots() + " pots",
                        100 * Math.max(0, 1 - upTo.noneBelow() / upTo.best().cost()),
                        upTo.complete() ? "" : "; the time ended before every way was planned"));
            }
        }
        List<Pots.Way> shown = new ArrayList<>();
        for (Pots.UpTo upTo : found) {
            Pots.Way best = upTo.exactly();
            if (best != null && !shown.contains(best)) {
                shown.add(best);
                way(page, household, best);
            }
        }
        return page.raw("\n").paragraph(Disclaimer.TEXT).toString();
    }

    private static void way(Page page, Household household, Pots.Way way) {
        page.title(
                way.pots().size() == 1
                        ? "In one pot, " + Show.money(way.atTheTill(), household.currency()) + " at the till"
                        : "In " + way.pots().size() + " pots, " + Show.money(way.atTheTill(), household.currency())
                                + " at the till");
        for (Planner.Result.Planned pot : way.pots()) {
            Plan plan = pot.plan();
            page.item(dogs(pot) + ": " + Show.weight(plan.batch().cookedGrams(), household.units()) + ", "
                    + MainFoods.of(plan).stream()
                            .map(food -> String.format(
                                    Locale.ROOT, "%s %.0f %%", food.label(), 100 * food.shareOfCookedMass()))
                            .collect(Collectors.joining("; "))
                    + "; a day "
                    + plan.dogs().stream()
                            .map(dog -> dog.name() + " " + Show.grams(dog.potGramsPerDay()))
                            .collect(Collectors.joining(", ")));
        }
    }

    private static String dogs(Planner.Result.Planned pot) {
        return pot.plan().dogs().stream().map(Plan.DogPlan::name).collect(Collectors.joining(", "));
    }

    /** The plans of all pots in full. */
    public static String full(Household household, Pots.Way way) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < way.pots().size(); i++) {
            Planner.Result.Planned pot = way.pots().get(i);
            text.append(i == 0 ? "" : "\n\n")
                    .append(TextReport.of(
                            pot.plan(),
                            pot.verdict(),
                            household.units(),
                            "Pot " + (i + 1) + " of " + way.pots().size()
                                    + (i == 0 ? "" : ", with what the pots before it left in opened packs")));
        }
        return text.toString();
    }

    /** For programs; the fields are described in models/pots.schema.json. */
    public static String json(Household household, List<Pots.UpTo> found) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("packpotPots", JsonReport.FORMAT);
        data.put("household", household.name());
        data.put("currency", household.currency());
        data.put("days", household.kitchen().days());
        List<Object> upTos = new ArrayList<>();
        for (Pots.UpTo upTo : found) {
            Map<String, Object> each = new LinkedHashMap<>();
            each.put("pots", upTo.pots());
            Pots.Way best = upTo.exactly();
            each.put("found", best != null);
            if (best != null) {
                each.put("atTheTill", best.atTheTill());
                each.put("cost", best.cost());
                each.put("noneBelow", upTo.noneBelow());
                each.put("complete", upTo.complete());
                each.put(
                        "plans",
                        best.pots().stream().map(Planner.Result.Planned::plan).toList());
            }
            upTos.add(each);
        }
        data.put("upTo", upTos);
        data.put("disclaimer", Disclaimer.TEXT);
        return JsonReport.of(data);
    }
}
