package packpot.report;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.explain.Losses;
import packpot.explain.StandIn;
import packpot.plan.Plan;
import packpot.units.Show;

/** What each food of a plan is worth, in one table. */
public final class LossesReport {

    /** From this share of the cooked pot on it is another pot. */
    private static final double ANOTHER_POT = 0.05;

    private static final double LEAST_COIN = 0.005;

    private LossesReport() {}

    /** For people. */
    public static String text(Losses.Result.Ranked ranked) {
        Plan plan = ranked.base().plan();
        String title = "What each food is worth: " + plan.household();
        StringBuilder text = new StringBuilder(title).append('\n');
        text.append(Columns.underline(title, TextReport.WIDTH)).append('\n');
        String head = "The plan costs " + Show.money(plan.cost().perDay(), plan.currency())
                + " a day with all of these. Without one of them, in the house or in the shop, it costs more:";
        text.append(String.join("\n", Wrap.lines(head, TextReport.WIDTH))).append("\n\n");
        TextTable table = new TextTable("rrrll").row("more a day", "in all", "exchanged", "without", "stand-in");
        for (Losses.Loss loss : ranked.losses()) {
            table.row(
                    more(loss, loss.extraPerDay(), plan.days(), plan),
                    more(loss, loss.extraCost(), 1, plan),
                    percent(loss.distance()),
                    loss.label(),
                    standIn(loss));
        }
        text.append(table.render("  ", TextReport.WIDTH));
        String notes = "Exchanged: the share of the cooked pot that changes. Stand-in: the food that brings most"
                + " more of what the lost one was there for, which is energy where it brought a twentieth of all"
                + " energy or more, and else the nutrient of which it brought the largest part. "
                + precision(ranked);
        text.append('\n')
                .append(String.join("\n", Wrap.lines(notes, TextReport.WIDTH)))
                .append("\n\n");
        text.append(String.join("\n", Wrap.lines(Disclaimer.TEXT, TextReport.WIDTH)))
                .append('\n');
        return text.toString();
    }

    private static String precision(Losses.Result.Ranked ranked) {
        double worst = ranked.base().plan().proof().gapShare();
        for (Losses.Loss loss : ranked.losses()) {
            Double gap = loss.gapShare();
            worst = Math.max(worst, gap == null ? 0 : gap);
        }
        return String.format(
                Locale.ROOT,
                "Each plan is proved to within %.2f %% of its cost, so that far a figure may be off; a range stands"
                        + " where that leaves open whether it costs more at all.",
                100 * worst);
    }

    private static String standIn(Losses.Loss loss) {
        return switch (loss.end()) {
            case IMPOSSIBLE -> "nothing: there is no plan without it";
            case NOT_FOUND_IN_TIME -> "no plan was found in the time given";
            case FAILED_AUDIT -> "the plan without it failed the check";
            case PLANNED -> standIn(loss.standIn(), orNothing(loss.distance()));
        };
    }

    private static String standIn(@Nullable StandIn standIn, double distance) {
        if (standIn != null) {
            return standIn.label() + " (" + standIn.of() + ")";
        }
        return distance > ANOTHER_POT ? "none alone: the pot changes" : "none needed";
    }

    private static double orNothing(@Nullable Double figure) {
        return figure == null ? 0 : figure;
    }

    /** Where the proof leaves open whether it costs more at all, the most that it can be. */
    private static String more(Losses.Loss loss, @Nullable Double amount, int days, Plan plan) {
        if (amount == null) {
            return "-";
        }
        double atMost = orNothing(loss.extraAtMost()) / days;
        boolean open = orNothing(loss.extraAtLeast()) == 0 && atMost >= LEAST_COIN;
        return open ? "0 to " + Show.money(atMost, plan.currency()) : "+" + Show.money(amount, plan.currency());
    }

    private static String percent(@Nullable Double share) {
        return share == null ? "-" : String.format(Locale.ROOT, "%.0f %%", 100 * share);
    }

    /** For programs; the fields are described in models/losses.schema.json. */
    public static String json(Losses.Result.Ranked ranked) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("packpotLosses", JsonReport.FORMAT);
        root.put("auditPassed", ranked.base().verdict().passed());
        root.put("plan", ranked.base().plan());
        root.put("losses", ranked.losses());
        root.put("disclaimer", Disclaimer.TEXT);
        return JsonReport.of(root);
    }
}
