package packpot.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.explain.MarginSearch;
import packpot.explain.MarginSearch.End;
import packpot.explain.MarginSearch.Tried;
import packpot.plan.Plan;
import packpot.spread.Odds;
import packpot.units.Show;

/** How sure a plan is of its minimums, and which margin buys certainty. */
public final class SpreadReport {
    /** Beyond this a margin says only that it is not to be had. */
    private static final double LARGEST_SHOWN = 1;

    private static final double NEARLY_ALL = 0.9995;

    private final MarginSearch.Answer answer;
    private final MarginSearch.Question question;
    private final boolean searched;
    private final List<String> stated;
    private final List<String> recalled;
    private final Plan plan;

    /**
     * A report.
     *
     * @param searched whether larger margins were to be planned
     * @param stated spreads that a person stated, as they were typed
     * @param recalled nutrients whose spread was not seen in print
     */
    public SpreadReport(
            MarginSearch.Answer answer,
            MarginSearch.Question question,
            boolean searched,
            List<String> stated,
            List<String> recalled) {
        this.answer = answer;
        this.question = question;
        this.searched = searched;
        this.stated = List.copyOf(stated);
        this.recalled = List.copyOf(recalled);
        this.plan = answer.base().plan();
    }

    /** The text, in 80 columns. */
    public String text() {
        Odds odds = answer.odds();
        Page page = new Page().heading(plan.household(), 1);
        page.paragraph(String.format(
                Locale.ROOT,
                "How sure the plan is of its minimums, when foods vary and scales are coarse: %,d draws, seed %d; margin"
                        + " %s; %s a day. It is a reckoning with the spreads below, no promise; ask your veterinarian.",
                odds.draws(),
                odds.seed(),
                percent(plan.marginShare(), 0),
                money(plan.cost().perDay())));
        page.raw("\n").paragraph("Every minimum of every dog is met in " + share(odds.allMet()) + " of the draws.");
        odds.dogs().forEach(dog -> dog(page, dog));
        margins(page);
        page.title("How it is reckoned");
        notes().forEach(page::item);
        return page.raw("\n").paragraph(Disclaimer.TEXT).toString();
    }

    private void dog(Page page, Odds.OfDog dog) {
        page.title(dog.dog() + ": all " + dog.minimums().size() + " minimums are met in " + share(dog.allMet())
                + " of the draws");
        TextTable table = new TextTable("lrrrrr")
                .row("a day", "minimum", "on average", "spread", "met in", "for " + percent(question.wished(), 0));
        int certain = 0;
        for (Odds.OfMinimum minimum : dog.minimums()) {
            if (minimum.met() == answer.odds().draws()) {
                certain++;
                continue;
            }
            table.row(
                    minimum.unit().isEmpty() ? minimum.label() : minimum.label() + ", " + minimum.unit(),
                    Show.number(minimum.minimum()),
                    percent(minimum.mean(), 0),
                    percent(minimum.spread(), 1),
                    met(minimum.share()),
                    needed(minimum.marginNeeded()));
        }
        if (certain < dog.minimums().size()) {
            page.table(table);
        }
        if (certain > 0) {
            page.indented(certain + (certain < dog.minimums().size() ? " more are" : " are") + " met in every draw");
        }
    }

    /** What is not met in every draw is not printed as if it were. */
    private static String met(double share) {
        return share > NEARLY_ALL ? "> 99.9 %" : percent(share, 1);
    }

    private static String needed(double margin) {
        return margin > LARGEST_SHOWN ? "none" : percent(Math.ceil(100 * margin - 1e-9) / 100, 0);
    }

    private void margins(Page page) {
        String wished = percent(question.wished(), 0);
        if (!searched) {
            return;
        }
        page.title("Which margin buys " + wished + ": each minimum of each dog by itself, planned anew");
        TextTable table = new TextTable("rrrrl").row("margin", "a day", "more", "all met", "least certain");
        for (Tried tried : answer.tried()) {
            Double perDay = tried.perDay();
            Odds odds = tried.odds();
            table.row(
                    percent(tried.margin(), 0),
                    perDay == null ? "-" : money(perDay),
                    perDay == null || tried.equals(answer.tried().get(0))
                            ? "-"
                            : money(perDay - plan.cost().perDay()),
                    odds == null ? "-" : share(odds.allMet()),
                    odds == null ? end(tried.end()) : least(odds));
        }
        page.table(table);
        page.paragraph(conclusion(wished));
    }

    private static String end(End end) {
        return switch (end) {
            case NO_PLAN -> "there is no plan";
            case NOT_FOUND_IN_TIME -> "no plan was found in the time given";
            case FAILED_AUDIT -> "the plan failed the check";
            case ENOUGH, TOO_LITTLE -> "";
        };
    }

    private static String least(Odds odds) {
        return odds.dogs().stream()
                .min(Comparator.comparingInt(dog -> dog.minimums().get(0).met()))
                .map(dog -> dog.minimums().get(0).label() + " of " + dog.dog() + ", "
                        + percent(dog.minimums().get(0).share(), 1))
                .orElse("");
    }

    private String conclusion(String wished) {
        Tried enough = answer.enough();
        if (enough == null) {
            Tried none = answer.tried().stream()
                    .filter(tried -> tried.end() == End.NO_PLAN)
                    .findFirst()
                    .orElse(null);
            String why = none == null
                    ? ""
                    : "; packpot why-not with --change \"margin: " + percent(none.margin(), 0) + "\" says why";
            return "No margin that was tried buys " + wished + why
                    + ". The last column above says, nutrient by nutrient," + " what would be needed.";
        }
        if (enough.equals(answer.tried().get(0))) {
            return "The margin that the scenario has is enough.";
        }
        double more = orNothing(enough.perDay()) - plan.cost().perDay();
        return "A margin of " + percent(enough.margin(), 0) + " is enough, and of those tried the smallest: "
                + money(more) + " a day more. Wish it with \"margin\": \"" + percent(enough.margin(), 0) + "\".";
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>();
        notes.add("The minimums are those of the profile, without the margin: the margin is what buys certainty.");
        notes.add(
                "On average: what the plan brings by the table, of the minimum. Spread: one standard deviation, of the"
                        + " minimum. Met in: share of the draws, sure to " + standardError()
                        + " (one standard error). For "
                        + percent(question.wished(), 0)
                        + ": margin that would be needed by the formula for a sum of normals, if more of the same foods brought it.");
        notes.add(
                "Drawn are each figure of each food, the amounts put into the pot, the portions and the doses, each by"
                        + " itself and normal around its mean, and nothing where it would be less. Foods differ in truth together:"
                        + " a lean cut has more of all amino acids. Then all minimums are met more often than is said here.");
        notes.add(
                "Portions stay as printed, and minimums are those of a day at the table's energy; energy, maximums and"
                        + " what cooking leaves are not drawn. What is not measured counts as nothing.");
        notes.add("Spreads are those of models/spread.csv"
                + (stated.isEmpty() ? "" : ", but for " + String.join(", ", stated))
                + ". Those of scale, spoon and tablet there are common practice without a source."
                + (recalled.isEmpty()
                        ? ""
                        : " Recalled and not read in print: that of " + String.join(", ", recalled) + "."));
        return notes;
    }

    /** The largest of all. */
    private String standardError() {
        double largest = answer.odds().dogs().stream()
                .flatMap(dog -> dog.minimums().stream())
                .mapToDouble(Odds.OfMinimum::standardError)
                .max()
                .orElse(0);
        return String.format(Locale.ROOT, "%.2f %% at worst", 100 * largest);
    }

    private String share(int draws) {
        return percent((double) draws / answer.odds().draws(), 1);
    }

    private static String percent(double share, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f %%", 100 * share);
    }

    private String money(double amount) {
        return Show.money(amount, plan.currency());
    }

    private static double orNothing(@Nullable Double figure) {
        return figure == null ? 0 : figure;
    }

    /** For programs; the fields are described in models/spread.schema.json. */
    public String json() {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("packpotSpread", JsonReport.FORMAT);
        root.put("auditPassed", answer.base().verdict().passed());
        root.put("wished", question.wished());
        root.put("stated", stated);
        root.put("recalled", recalled);
        root.put("margin", plan.marginShare());
        root.put("perDay", plan.cost().perDay());
        root.put("currency", plan.currency());
        root.put("odds", odds(answer.odds()));
        root.put("searched", searched);
        root.put("tried", answer.tried().stream().map(this::tried).toList());
        Tried enough = answer.enough();
        root.put("enough", enough == null ? null : enough.margin());
        root.put("disclaimer", Disclaimer.TEXT);
        return JsonReport.of(root);
    }

    private Map<String, Object> tried(Tried tried) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("margin", tried.margin());
        data.put("end", tried.end());
        data.put("perDay", tried.perDay());
        Odds odds = tried.odds();
        data.put("odds", odds == null ? null : odds(odds));
        return data;
    }

    private static Map<String, Object> odds(Odds odds) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("draws", odds.draws());
        data.put("seed", odds.seed());
        data.put("allMet", odds.allMet());
        data.put("dogs", odds.dogs().stream().map(SpreadReport::dog).toList());
        return data;
    }

    private static Map<String, Object> dog(Odds.OfDog dog) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("dog", dog.dog());
        data.put("allMet", dog.allMet());
        data.put("minimums", dog.minimums().stream().map(SpreadReport::minimum).toList());
        return data;
    }

    private static Map<String, Object> minimum(Odds.OfMinimum minimum) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("key", minimum.key());
        data.put("label", minimum.label());
        data.put("unit", minimum.unit());
        data.put("minimum", minimum.minimum());
        data.put("mean", minimum.mean());
        data.put("spread", minimum.spread());
        data.put("met", minimum.met());
        data.put("share", minimum.share());
        data.put("standardError", minimum.standardError());
        data.put("formula", minimum.formula());
        double needed = minimum.marginNeeded();
        data.put("marginNeeded", Double.isInfinite(needed) ? null : needed);
        return data;
    }
}
