package packpot.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.explain.CostDrivers;
import packpot.explain.CostDrivers.EntryPrice;
import packpot.explain.CostDrivers.LimitCost;
import packpot.explain.CostDrivers.Margin;
import packpot.explain.CostDrivers.PriceRange;
import packpot.explain.CostDrivers.Priced;
import packpot.explain.CostDrivers.Replanned;
import packpot.explain.CostDrivers.Turn;
import packpot.household.Household;
import packpot.units.Show;
import packpot.units.Unit;
import packpot.units.UnitSystem;

/** What drives the cost, for people and for programs. */
public final class DriversReport {
    private static final int FORMAT = 1;
    private static final double CENT = 0.005;

    private final CostDrivers drivers;
    private final Household household;
    private final StringBuilder text = new StringBuilder();

    private DriversReport(CostDrivers drivers) {
        this.drivers = drivers;
        this.household = drivers.base().household();
    }

    /** For people at a terminal, in 80 columns. */
    public static String text(CostDrivers drivers) {
        return new DriversReport(drivers).write();
    }

    private String write() {
        String title = "What drives the cost: " + household.name();
        text.append(title)
                .append('\n')
                .append(Columns.underline(title, TextReport.WIDTH))
                .append('\n');
        paragraph("The cheapest plan costs "
                + money(perWeek(drivers.base().plan().cost().ofTheBatch())) + " a week. It is checked; \"packpot plan\""
                + " prints it. All money below is for a week.");
        limits();
        prices();
        leftOut();
        legend();
        text.append('\n');
        paragraph(Disclaimer.TEXT);
        return text.toString();
    }

    private void limits() {
        text.append("\nLimits that hold the cost up, and what loosening them saves\n");
        if (drivers.limits().isEmpty()) {
            text.append("  none by as much as a cent\n");
        }
        for (LimitCost limit : drivers.limits()) {
            text.append(Wrap.item(limit.wish().sentence(), "  ", TextReport.WIDTH));
            lines(limit)
                    .forEach(line -> Wrap.lines(line, TextReport.WIDTH - 6)
                            .forEach(part -> text.append("      ").append(part).append('\n')));
        }
        if (drivers.smallLimits() > 0) {
            text.append(String.format(
                    Locale.ROOT,
                    "  - %d more that save%s less than a cent%n",
                    drivers.smallLimits(),
                    drivers.smallLimits() == 1 ? "s" : ""));
        }
    }

    private List<String> lines(LimitCost limit) {
        List<String> lines = new ArrayList<>();
        String step = step(limit);
        Replanned plan = limit.replanned();
        if (plan == null) {
            lines.add(step + ", planned anew: not tried, the time ran out");
        } else {
            boolean open = plan.savesAtMost() - plan.saves()
                    > CENT * household.kitchen().days() / 7;
            lines.add(step + ", planned anew: saves " + money(perWeek(plan.saves()))
                    + (open ? ", at most " + money(perWeek(plan.savesAtMost())) : ""));
        }
        Margin margin = limit.atTheMargin();
        if (margin != null) {
            lines.add(step + ", same foods, packs and doses: saves " + money(perWeek(margin.stepGives())));
            double each = Math.abs(perWeek(margin.perUnit() * limit.step()));
            String range = "from " + fine(margin.from()) + " to " + fine(margin.to())
                    + (limit.unit().isEmpty() ? "" : " " + limit.unit());
            lines.add(
                    margin.exact()
                            ? "at the margin " + money(each) + " for " + size(limit) + ", exact " + range
                            : "at the margin about " + money(each) + " for " + size(limit)
                                    + ", not exact: moving it to " + fine(margin.triedAt()) + " should save "
                                    + money(perWeek(margin.says())) + " and saves " + money(perWeek(margin.gives())));
        }
        return lines;
    }

    /** Ends of a range can lie close to the limit itself. */
    private static String fine(double figure) {
        return new BigDecimal(figure)
                .round(new MathContext(4))
                .stripTrailingZeros()
                .toPlainString();
    }

    private static String step(LimitCost limit) {
        return size(limit) + (limit.step() > 0 ? " more" : " less");
    }

    private static String size(LimitCost limit) {
        String figure = Show.number(Math.abs(limit.step()));
        return limit.unit().isEmpty() ? (figure.equals("1") ? "one" : figure) : figure + " " + limit.unit();
    }

    private void prices() {
        if (drivers.prices().isEmpty()) {
            return;
        }
        text.append("\nPrices between which the pot keeps its foods, one price moved at a time\n");
        TextTable table = new TextTable("lrrrl").row("food", "now", "from", "to", "beyond");
        for (PriceRange range : drivers.prices()) {
            List<String> beyond = new ArrayList<>();
            change("below", range.down(), beyond);
            change("above", range.up(), beyond);
            table.row(
                    range.food().label(),
                    price(range.food(), range.food().price()),
                    end(range.food(), range.down()),
                    end(range.food(), range.up()),
                    String.join("; ", beyond));
        }
        text.append(table.render("  ", TextReport.WIDTH));
    }

    private void leftOut() {
        if (drivers.leftOut().isEmpty()) {
            return;
        }
        text.append("\nFoods that are left out, and the price at which each would come in\n");
        TextTable table = new TextTable("lrrl").row("food", "now", "in at", "and then");
        for (EntryPrice entry : drivers.leftOut()) {
            List<String> then = new ArrayList<>();
            change("", entry.down(), then);
            table.row(
                    entry.food().label(),
                    price(entry.food(), entry.food().price()),
                    entry.down().ending() == CostDrivers.Ending.NEVER ? "never" : end(entry.food(), entry.down()),
                    String.join("; ", then));
        }
        text.append(table.render("  ", TextReport.WIDTH));
    }

    private static void change(String side, Turn turn, List<String> sentences) {
        List<String> parts = new ArrayList<>();
        turn.goesOut().forEach(food -> parts.add("- " + food));
        turn.comesIn().forEach(food -> parts.add("+ " + food));
        if (!parts.isEmpty()) {
            sentences.add((side.isEmpty() ? "" : side + ": ") + String.join(", ", parts));
        }
    }

    private String end(Priced food, Turn turn) {
        return switch (turn.ending()) {
            case FOUND -> price(food, turn.price());
            case NEVER -> "any";
            case OUT_OF_TIME -> turn.price() == food.price() ? "?" : price(food, turn.price()) + "?";
        };
    }

    private void legend() {
        text.append('\n');
        paragraph("Planned anew: foods, packs and doses are open, and so is everything else but the kinds of additions"
                + " in the bowls, which are open only where a limit counts additions, supplements or foods.");
        paragraph("At the margin: what the linear model says while foods, packs and doses stay and weights move, in the"
                + " range in which it holds. It is called exact when moving the limit and solving again agrees within"
                + " 1 %.");
        double precision = 0;
        boolean open = false;
        for (Turn turn : turns()) {
            open |= turn.ending() == CostDrivers.Ending.OUT_OF_TIME;
            if (turn.ending() == CostDrivers.Ending.FOUND && turn.price() > 0) {
                precision = Math.max(precision, turn.precision() / turn.price());
            }
        }
        paragraph(
                "Prices are for a pack, or where marked by weight. They are found by planning anew with whole packs, to"
                        + " within " + Show.number(Math.max(0.1, Math.ceil(1000 * precision) / 10))
                        + " %; + comes in, - goes out. \"any\": the pot"
                        + " keeps its foods however far the price goes.");
        if (open) {
            paragraph("?: the time ran out before the price was found; a figure before it is how far it is known not to"
                    + " change. Give more time with --time-limit.");
        }
    }

    private List<Turn> turns() {
        List<Turn> turns = new ArrayList<>();
        drivers.prices().forEach(range -> {
            turns.add(range.down());
            turns.add(range.up());
        });
        drivers.leftOut().forEach(entry -> turns.add(entry.down()));
        return turns;
    }

    private void paragraph(String words) {
        Wrap.lines(words, TextReport.WIDTH).forEach(line -> text.append(line).append('\n'));
    }

    private double perWeek(double ofTheBatch) {
        return ofTheBatch * 7 / household.kitchen().days();
    }

    private String money(double amount) {
        return Show.money(amount, household.currency());
    }

    private String price(Priced food, double price) {
        if (food.pack() != null) {
            return money(price);
        }
        boolean metric = household.units() == UnitSystem.METRIC;
        return money(price * (metric ? 1000 : Unit.POUND.inBaseUnit())) + (metric ? "/kg" : "/lb");
    }

    /** For programs: money of the whole batch, prices of a pack or of a gram. */
    public static String json(CostDrivers drivers) {
        Household household = drivers.base().household();
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("packpotDrivers", FORMAT);
        root.put("household", household.name());
        root.put("currency", household.currency());
        root.put("days", household.kitchen().days());
        root.put("auditPassed", drivers.base().verdict().passed());
        root.put("costOfTheBatch", drivers.base().plan().cost().ofTheBatch());
        root.put("limits", drivers.limits().stream().map(DriversReport::limit).toList());
        root.put("limitsUnderACentAWeek", drivers.smallLimits());
        root.put("prices", drivers.prices());
        root.put("leftOut", drivers.leftOut());
        root.put("disclaimer", Disclaimer.TEXT);
        return JsonReport.of(root);
    }

    private static Map<String, @Nullable Object> limit(LimitCost limit) {
        Map<String, @Nullable Object> fields = new LinkedHashMap<>();
        fields.put("wish", limit.wish().sentence());
        fields.put("kind", limit.wish().kind().name());
        fields.put("who", limit.wish().who());
        fields.put("what", limit.wish().what());
        fields.put("figure", limit.figure());
        fields.put("unit", limit.unit());
        fields.put("step", limit.step());
        fields.put("atTheMargin", limit.atTheMargin());
        fields.put("replanned", limit.replanned());
        return fields;
    }
}
