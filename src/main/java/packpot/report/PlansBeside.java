package packpot.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import packpot.explain.Mode;
import packpot.explain.PlanComparison;
import packpot.explain.Planner;
import packpot.explain.WhatIf.Answer;
import packpot.explain.WhatIf.Outcome;
import packpot.plan.Plan;
import packpot.units.Show;
import packpot.units.UnitSystem;

/** The plan now and a few new ones in columns: cost, pot, shopping, portions, additions and nutrients. */
final class PlansBeside {
    static final String NONE = "-";

    private final Page page;
    private final Mode mode;
    private final Plan now;
    private final Planner.Result.Planned old;
    private final UnitSystem units;

    /** A new plan with the letter that stands for it. */
    record Column(String letter, Outcome.NewPlan plan) {}

    PlansBeside(Page page, Answer.Compared answer) {
        this.page = page;
        this.mode = answer.mode();
        this.old = answer.base();
        this.now = old.plan();
        this.units = answer.base().household().units();
    }

    void write(List<Column> columns) {
        figures(columns);
        pot(columns);
        columns.forEach(this::shopping);
        portions(columns);
        additions(columns);
        MovedNutrientsText.write(page, columns);
        columns.forEach(column -> NewPlanText.write(page, old, column));
    }

    static TextTable table(List<Column> columns) {
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
        page.title("Cost and kitchen");
        TextTable table = table(columns);
        boolean sunk = mode != Mode.BEFORE;
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
        page.table(table);
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
        page.title("Into the pot, raw");
        TextTable table = table(columns);
        Map<String, String> foods = new LinkedHashMap<>();
        now.pot().forEach(each -> foods.put(each.food(), each.label()));
        columns.forEach(column ->
                column.plan().planned().plan().pot().forEach(each -> foods.putIfAbsent(each.food(), each.label())));
        foods.forEach((food, label) -> row(
                table,
                label,
                columns,
                grams(now, food),
                column -> grams(column.plan().planned().plan(), food)));
        page.table(table);
    }

    private static String grams(Plan plan, String food) {
        return plan.pot().stream()
                .filter(each -> each.food().equals(food))
                .findFirst()
                .map(each -> Show.grams(each.grams()))
                .orElse(NONE);
    }

    private void shopping(Column column) {
        boolean open = mode == Mode.BEFORE;
        page.title(column.letter() + (open ? ", in the shop" : ", still to buy"));
        List<PlanComparison.ShoppingLine> lines = column.plan().comparison().shopping();
        if (lines.isEmpty()) {
            page.raw(open ? "  the shopping list stays as it is\n" : "  nothing\n");
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
        page.table(table);
    }

    private String amount(PlanComparison.ShoppingLine line) {
        Integer packs = line.packs();
        return packs == null ? Show.weight(Math.abs(line.gramsAsBought()), units) : Math.abs(packs) + " x";
    }

    private void portions(List<Column> columns) {
        page.title("Cooked food a day");
        byDog(columns, line -> gramsADay(line.gramsPerDayBefore()), line -> gramsADay(line.gramsPerDayAfter()));
        page.title("Energy a day, bowl additions included, treats and other food not");
        byDog(columns, line -> kcalADay(line.kcalPerDayBefore()), line -> kcalADay(line.kcalPerDayAfter()));
    }

    private void byDog(
            List<Column> columns,
            Function<PlanComparison.PortionLine, String> before,
            Function<PlanComparison.PortionLine, String> after) {
        TextTable table = table(columns);
        Map<String, String> dogs = new LinkedHashMap<>();
        columns.forEach(column -> column.plan()
                .comparison()
                .portions()
                .forEach(line -> dogs.putIfAbsent(line.dog(), before.apply(line))));
        dogs.forEach((dog, now) -> row(
                table,
                dog,
                columns,
                now,
                column -> column.plan().comparison().portions().stream()
                        .filter(line -> line.dog().equals(dog))
                        .findFirst()
                        .map(after)
                        .orElse(NONE)));
        page.table(table);
    }

    private static String kcalADay(@Nullable Double kcal) {
        return kcal == null ? NONE : String.format(Locale.ROOT, "%,.0f kcal", kcal);
    }

    private static String gramsADay(@Nullable Integer grams) {
        return grams == null ? NONE : Show.grams(grams);
    }

    private void additions(List<Column> columns) {
        for (Column column : columns) {
            List<PlanComparison.AdditionLine> changed = column.plan().comparison().additions().stream()
                    .filter(line -> !words(line.doseBefore()).equals(words(line.doseAfter())))
                    .toList();
            if (!changed.isEmpty()) {
                page.title(column.letter() + ", on top of the bowls, now and then");
                TextTable table = new TextTable("lll");
                changed.forEach(line -> table.row(
                        line.dog(), line.label(), words(line.doseBefore()) + " -> " + words(line.doseAfter())));
                page.table(table);
            }
        }
    }

    private static String words(@Nullable String dose) {
        return dose == null ? "none" : dose;
    }

    private String money(double amount) {
        return Show.money(amount, now.currency());
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.0f %%", 100 * share);
    }
}
