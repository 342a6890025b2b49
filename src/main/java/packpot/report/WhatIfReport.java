package packpot.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import packpot.audit.DogAudit;
import packpot.audit.NutrientLine;
import packpot.explain.Carried;
import packpot.explain.Clash;
import packpot.explain.Mode;
import packpot.explain.PlanComparison;
import packpot.explain.Planner;
import packpot.explain.WhatIf.Alternative;
import packpot.explain.WhatIf.Answer;
import packpot.explain.WhatIf.Nearness;
import packpot.explain.WhatIf.Outcome;
import packpot.plan.Plan;
import packpot.units.Show;
import packpot.units.UnitSystem;

/** An old plan and what becomes of it, side by side in 80 columns. */
public final class WhatIfReport {
    /** More plans than this beside the old one go into a block of their own. */
    private static final int MOST_BESIDE = 3;

    private static final String NONE = "-";

    private final Answer.Compared answer;
    private final UnitSystem units;
    private final String currency;
    private final StringBuilder text = new StringBuilder();

    /** A new plan with the letter that stands for it. */
    private record Column(String letter, Outcome.NewPlan plan) {}

    private WhatIfReport(Answer.Compared answer) {
        this.answer = answer;
        this.units = answer.base().household().units();
        this.currency = answer.base().plan().currency();
    }

    /** For people. */
    public static String text(Answer.Compared answer) {
        return new WhatIfReport(answer).write();
    }

    private String write() {
        String title = "What if: " + answer.base().plan().household();
        text.append(title).append('\n');
        text.append("=".repeat(Math.min(TextReport.WIDTH, title.length()))).append('\n');
        text.append(modeWords());
        text.append("now: the plan as the scenario stands; ")
                .append(proof(answer.base().plan()))
                .append('\n');
        List<Column> columns = new ArrayList<>();
        for (int i = 0; i < answer.alternatives().size(); i++) {
            Alternative alternative = answer.alternatives().get(i);
            String letter = letter(i);
            text.append(String.join("\n   ", Wrap.lines(letter + ": " + heading(alternative), TextReport.WIDTH - 3)))
                    .append('\n');
            outcome(alternative);
            if (alternative.outcome() instanceof Outcome.NewPlan plan
                    && plan.planned().verdict().passed()) {
                columns.add(new Column(letter, plan));
            }
        }
        for (int start = 0; start < columns.size(); start += MOST_BESIDE) {
            block(columns.subList(start, Math.min(columns.size(), start + MOST_BESIDE)));
        }
        if (!columns.isEmpty()) {
            String note = "Every plan shown here passed the check. Distance between recipes: half the sum of the"
                    + " differences of all shares of cooked mass; 0 % is the same recipe, 100 % one that has nothing in"
                    + " common with it.";
            text.append('\n')
                    .append(String.join("\n", Wrap.lines(note, TextReport.WIDTH)))
                    .append('\n');
        }
        boolean noPlan = answer.alternatives().stream()
                .anyMatch(each -> each.outcome() instanceof Outcome.NoPlan none && none.provedImpossible());
        if (noPlan && answer.mode() == Mode.BEFORE) {
            String mends =
                    "What would mend a change that has no plan is told by packpot why-not with the same --change.";
            text.append('\n')
                    .append(String.join("\n", Wrap.lines(mends, TextReport.WIDTH)))
                    .append('\n');
        }
        text.append('\n')
                .append(String.join("\n", Wrap.lines(Disclaimer.TEXT, TextReport.WIDTH)))
                .append('\n');
        return text.toString();
    }

    private static String letter(int index) {
        return index < 26 ? String.valueOf((char) ('A' + index)) : "plan " + (index + 1);
    }

    private static String heading(Alternative alternative) {
        String changes = String.join("; ", alternative.changes());
        return alternative.name().equals(changes) ? changes : alternative.name() + ": " + changes;
    }

    private String modeWords() {
        String words = switch (answer.mode()) {
            case BEFORE -> "Nothing is bought yet: every plan is free to buy what it likes.";
            case BOUGHT ->
                "The shopping of the plan now is done: what it bought is in the house and costs"
                        + " nothing more; a new plan is chosen by what is still to be paid, and what spoils"
                        + " unused is shown as waste.";
            case COOKED ->
                "The batch of the plan now is cooked: all dogs eat from it first, as long as its"
                        + " energy lasts, and a new batch is planned for the days after. The old food is not"
                        + " checked again for a dog that came or changed; a new batch is. What keeps is taken"
                        + " over, opened food that spoils is not.";
        };
        return String.join("\n", Wrap.lines(words, TextReport.WIDTH)) + "\n\n";
    }

    private static String proof(Plan plan) {
        return plan.proof().provedOptimal()
                ? String.format(
                        Locale.ROOT, "proved to %.1f %%", 100 * plan.proof().gapShare())
                : String.format(
                        Locale.ROOT,
                        "not proved cheapest, it may be %.1f %% too dear",
                        100 * plan.proof().gapShare());
    }

    private void outcome(Alternative alternative) {
        Carried carried = alternative.carried();
        if (carried != null) {
            carried(carried);
        }
        if (alternative.outcome() instanceof Outcome.NothingToCook && carried != null) {
            item("nothing is cooked or bought: what is cooked lasts " + days(carried.coveredDays()) + ", until before "
                    + carried.cookAgain());
        } else if (alternative.outcome() instanceof Outcome.NoPlan none) {
            noPlan(none);
        } else if (alternative.outcome() instanceof Outcome.NewPlan found) {
            if (found.planned().verdict().passed()) {
                newPlan(found);
            } else {
                item("the plan that was found failed the check and is not shown: "
                        + found.planned().verdict().findings().get(0));
            }
        }
    }

    private void noPlan(Outcome.NoPlan none) {
        Clash clash = none.clash();
        if (!none.provedImpossible()) {
            item("no plan was found in the time given, and it is not proved that there is none");
        } else if (clash == null) {
            item("there is no plan");
        } else {
            item("there is no plan: " + ClashText.words(clash));
            text.append(ClashText.items(clash, "     "));
        }
    }

    private void newPlan(Outcome.NewPlan found) {
        Nearness nearness = found.nearness();
        Plan plan = found.planned().plan();
        if (nearness == null) {
            item(proof(plan));
            return;
        }
        item(
                nearness.found()
                        ? "as near to the recipe now as " + money(nearness.mostCost()) + " allow; the cheapest costs "
                                + money(nearness.cheapest())
                                + (nearness.proved() ? "" : "; not proved, a nearer one may exist")
                        : "no nearer plan was found at that cost; this is the cheapest, " + proof(plan));
    }

    private void carried(Carried carried) {
        item("paid already: " + money(carried.paid()));
        if (answer.mode() == Mode.COOKED && carried.daysToCook() > 0) {
            item("what is cooked feeds " + days(carried.coveredDays()) + "; cook again on " + carried.cookAgain()
                    + " for " + days(carried.daysToCook()));
        }
        carried.waste()
                .forEach(waste -> item("waste: " + Show.weight(waste.grams(), units) + " of " + waste.label()
                        + " spoil unless frozen or eaten, " + money(waste.worth()) + " of what was paid"));
    }

    private static String days(int days) {
        return days + (days == 1 ? " day" : " days");
    }

    private void item(String sentence) {
        text.append(Wrap.item(sentence, "   ", TextReport.WIDTH));
    }

    private void block(List<Column> columns) {
        figures(columns);
        pot(columns);
        columns.forEach(this::shopping);
        portions(columns);
        additions(columns);
        nutrients(columns);
    }

    private TextTable table(List<Column> columns) {
        String[] head = new String[columns.size() + 2];
        head[0] = "now";
        for (int i = 0; i < columns.size(); i++) {
            head[i + 1] = columns.get(i).letter();
        }
        head[columns.size() + 1] = "";
        return new TextTable("r".repeat(columns.size() + 1) + "l").row(head);
    }

    private void row(TextTable table, String label, List<Column> columns, String now, Function<Column, String> cell) {
        String[] cells = new String[columns.size() + 2];
        cells[0] = now;
        for (int i = 0; i < columns.size(); i++) {
            cells[i + 1] = cell.apply(columns.get(i));
        }
        cells[columns.size() + 1] = label;
        table.row(cells);
    }

    private void figures(List<Column> columns) {
        title("Cost and kitchen");
        TextTable table = table(columns);
        boolean sunk = answer.mode() != Mode.BEFORE;
        figure(
                table,
                columns,
                sunk ? "at the till, still to pay beyond now" : "at the till",
                f -> money(f.atTheTill()));
        figure(table, columns, "for the batch, without what keeps", f -> money(f.ofTheBatch()));
        figure(table, columns, "a day", f -> money(f.perDay()));
        figure(table, columns, "days fed", f -> String.valueOf(f.days()));
        figure(table, columns, "cooked", f -> Show.weight(f.cookedGrams(), units));
        figure(table, columns, "bags", f -> String.valueOf(f.bags()));
        figure(table, columns, "of them frozen", f -> String.valueOf(f.bagsFrozen()));
        if (columns.stream().anyMatch(c -> c.plan().comparison().after().freezerMl() != null)) {
            figure(table, columns, "taken in the freezer", f -> volume(f.freezerMl()));
        }
        row(
                table,
                "distance from the recipe now",
                columns,
                NONE,
                column -> percent(column.plan().comparison().distance()));
        text.append(table.render("  ", TextReport.WIDTH));
    }

    private void figure(
            TextTable table, List<Column> columns, String label, Function<PlanComparison.Figures, String> show) {
        row(
                table,
                label,
                columns,
                show.apply(columns.get(0).plan().comparison().before()),
                column -> show.apply(column.plan().comparison().after()));
    }

    private String volume(@Nullable Double ml) {
        return ml == null ? NONE : Show.volume(ml, units);
    }

    private void pot(List<Column> columns) {
        title("Into the pot, raw");
        TextTable table = table(columns);
        Map<String, String> foods = new LinkedHashMap<>();
        answer.base().plan().pot().forEach(each -> foods.put(each.food(), each.label()));
        columns.forEach(column ->
                column.plan().planned().plan().pot().forEach(each -> foods.putIfAbsent(each.food(), each.label())));
        foods.forEach((food, label) -> row(
                table,
                label,
                columns,
                grams(answer.base().plan(), food),
                column -> grams(column.plan().planned().plan(), food)));
        text.append(table.render("  ", TextReport.WIDTH));
    }

    private static String grams(Plan plan, String food) {
        return plan.pot().stream()
                .filter(each -> each.food().equals(food))
                .findFirst()
                .map(each -> Show.grams(each.grams()))
                .orElse(NONE);
    }

    private void shopping(Column column) {
        boolean open = answer.mode() == Mode.BEFORE;
        title(column.letter() + (open ? ", in the shop" : ", still to buy"));
        List<PlanComparison.ShoppingLine> lines = column.plan().comparison().shopping();
        if (lines.isEmpty()) {
            text.append(open ? "  the shopping list stays as it is\n" : "  nothing\n");
            return;
        }
        TextTable table = new TextTable("lrrll");
        for (boolean back : new boolean[] {true, false}) {
            lines.stream()
                    .filter(line -> line.gramsAsBought() < 0 == back)
                    .forEach(line -> table.row(
                            back ? "put back" : "pick up",
                            amount(line),
                            money(line.pays()),
                            line.label(),
                            line.packs() == null ? "" : line.pack()));
        }
        text.append(table.render("  ", TextReport.WIDTH));
    }

    private String amount(PlanComparison.ShoppingLine line) {
        Integer packs = line.packs();
        return packs == null ? Show.weight(Math.abs(line.gramsAsBought()), units) : Math.abs(packs) + " x";
    }

    private void portions(List<Column> columns) {
        title("Cooked food a day");
        TextTable table = table(columns);
        Map<String, String> dogs = new LinkedHashMap<>();
        columns.forEach(column -> column.plan()
                .comparison()
                .portions()
                .forEach(line -> dogs.putIfAbsent(line.dog(), gramsADay(line.gramsPerDayBefore()))));
        dogs.forEach((dog, now) -> row(
                table,
                dog,
                columns,
                now,
                column -> column.plan().comparison().portions().stream()
                        .filter(line -> line.dog().equals(dog))
                        .findFirst()
                        .map(line -> gramsADay(line.gramsPerDayAfter()))
                        .orElse(NONE)));
        text.append(table.render("  ", TextReport.WIDTH));
    }

    private static String gramsADay(@Nullable Integer grams) {
        return grams == null ? NONE : grams + " g";
    }

    private void additions(List<Column> columns) {
        for (Column column : columns) {
            List<PlanComparison.AdditionLine> changed = column.plan().comparison().additions().stream()
                    .filter(line -> !words(line.doseBefore()).equals(words(line.doseAfter())))
                    .toList();
            if (!changed.isEmpty()) {
                title(column.letter() + ", on top of the bowls, now and then");
                TextTable table = new TextTable("lll");
                changed.forEach(line -> table.row(
                        line.dog(), line.label(), words(line.doseBefore()) + " -> " + words(line.doseAfter())));
                text.append(table.render("  ", TextReport.WIDTH));
            }
        }
    }

    private static String words(@Nullable String dose) {
        return dose == null ? "none" : dose;
    }

    private void nutrients(List<Column> columns) {
        Map<String, PlanComparison.NutrientMove> moved = new LinkedHashMap<>();
        columns.forEach(column -> column.plan()
                .comparison()
                .nutrients()
                .forEach(move -> moved.putIfAbsent(move.nutrient() + "/" + move.dog(), move)));
        if (moved.isEmpty()) {
            text.append("\nNo nutrient of any dog moved far.\n");
            return;
        }
        // Dogs that share a pot mostly share the figures too, and then a line.
        Map<List<String>, List<String>> dogsOfLine = new LinkedHashMap<>();
        moved.values()
                .forEach(move -> dogsOfLine
                        .computeIfAbsent(nutrientCells(move, columns), cells -> new ArrayList<>())
                        .add(move.dog()));
        title("Nutrients that moved far, per 1000 kcal");
        TextTable table = table(columns);
        dogsOfLine.forEach((cells, dogs) -> {
            String[] row = cells.toArray(new String[0]);
            row[row.length - 1] = String.join(", ", dogs) + ": " + row[row.length - 1];
            table.row(row);
        });
        text.append(table.render("  ", TextReport.WIDTH));
    }

    private static List<String> nutrientCells(PlanComparison.NutrientMove move, List<Column> columns) {
        List<String> cells = new ArrayList<>();
        cells.add(Show.number(move.before()));
        columns.forEach(column -> cells.add(got(column.plan().planned(), move)));
        cells.add(move.label() + (move.unit().isEmpty() ? "" : ", " + move.unit()) + limits(move));
        return cells;
    }

    private static String limits(PlanComparison.NutrientMove move) {
        Double minimum = move.minimum();
        Double maximum = move.maximum();
        String least = minimum == null ? "" : "at least " + Show.number(minimum);
        String most = maximum == null ? "" : "at most " + Show.number(maximum);
        return least.isEmpty() && most.isEmpty()
                ? ""
                : " (" + least + (least.isEmpty() || most.isEmpty() ? "" : ", ") + most + ")";
    }

    private static String got(Planner.Result.Planned planned, PlanComparison.NutrientMove move) {
        for (DogAudit dog : planned.verdict().dogs()) {
            for (NutrientLine line : dog.nutrients()) {
                if (dog.dog().equals(move.dog()) && line.key().equals(move.nutrient())) {
                    return Show.number(line.got());
                }
            }
        }
        return NONE;
    }

    private void title(String title) {
        text.append('\n').append(title).append('\n');
    }

    private String money(double amount) {
        return Show.money(amount, currency);
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.0f %%", 100 * share);
    }

    /** For programs; the fields are described in models/what-if.schema.json. */
    public static String json(Answer.Compared answer) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("packpotWhatIf", JsonReport.FORMAT);
        root.put("mode", answer.mode().key());
        root.put("base", planned(answer.base()));
        root.put(
                "alternatives",
                answer.alternatives().stream().map(WhatIfReport::alternative).toList());
        root.put("disclaimer", Disclaimer.TEXT);
        return JsonReport.of(root);
    }

    private static Map<String, Object> planned(Planner.Result.Planned planned) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("auditPassed", planned.verdict().passed());
        map.put("plan", planned.plan());
        map.put("audit", planned.verdict());
        return map;
    }

    private static Map<String, Object> alternative(Alternative alternative) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("name", alternative.name());
        map.put("changes", alternative.changes());
        if (alternative.carried() != null) {
            map.put("carried", alternative.carried());
        }
        Outcome outcome = alternative.outcome();
        if (outcome instanceof Outcome.NewPlan failed
                && !failed.planned().verdict().passed()) {
            map.put("outcome", "failed-audit");
            map.put("findings", failed.planned().verdict().findings());
        } else if (outcome instanceof Outcome.NewPlan plan) {
            map.put("outcome", "plan");
            map.put("comparison", plan.comparison());
            if (plan.nearness() != null) {
                map.put("nearness", plan.nearness());
            }
            map.put("new", planned(plan.planned()));
        } else if (outcome instanceof Outcome.NoPlan none) {
            map.put("outcome", none.provedImpossible() ? "no-plan" : "not-found-in-time");
            map.put("clashes", ClashText.data(none.clash()));
        } else {
            map.put("outcome", "nothing-to-cook");
        }
        return map;
    }
}
