package packpot.report;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import packpot.explain.Clash;
import packpot.explain.WayOut;
import packpot.explain.WhyNot;
import packpot.plan.Plan;
import packpot.units.Show;

/** Why there is no plan, and what would mend it, for people and for programs. */
public final class WhyNotReport {
    private static final String INDENT = "  ";

    private WhyNotReport() {}

    /** The whole explanation, for people. */
    public static String text(WhyNot.Answer.NoPlan answer) {
        StringBuilder text = new StringBuilder(heading(answer.household().name()));
        int number = 0;
        Set<Set<String>> seen = new HashSet<>();
        for (Clash clash : answer.clashes()) {
            number++;
            String label = answer.clashes().size() > 1 ? " " + number : "";
            boolean again = !seen.add(apartFromTheDog(clash));
            text.append('\n').append(again ? sameForAnotherDog(clash, label) : clash(clash, label));
        }
        if (answer.clashes().size() > 1) {
            text.append('\n').append(paragraph("Each of these clashes alone stands in the way of a plan."));
        }
        if (!answer.allClashes()) {
            text.append('\n').append(paragraph("There may be more clashes: the time ran out before that was settled."));
        }
        text.append('\n').append(mends(answer));
        return text.append('\n').append(paragraph(Disclaimer.TEXT)).toString();
    }

    private static String heading(String household) {
        return paragraph("There is no plan for " + household + " that meets every wish.");
    }

    /** The first clash, and how to get more; for the command that plans. */
    public static String brief(String household, @Nullable Clash clash, String scenario) {
        return heading(household)
                + (clash == null ? "" : "\n" + clash(clash, ""))
                + "\n"
                + paragraph("For every clash and for what would mend it at what price:")
                + INDENT + "packpot why-not " + scenario + "\n";
    }

    private static String clash(Clash clash, String number) {
        StringBuilder text = new StringBuilder(paragraph(
                clash.parts().size() == 1
                        ? "Clash" + number + ". This cannot be had at all with these foods:"
                        : "Clash" + number + ". These cannot all be had together"
                                + (clash.irreducible() ? "; without any one of them the others can:" : ":")));
        clash.parts().forEach(part -> text.append(item(part)));
        return text.toString();
    }

    private static Set<String> apartFromTheDog(Clash clash) {
        Set<String> wishes = new HashSet<>();
        clash.parts()
                .forEach(part ->
                        wishes.add(part.wish().kind() + " " + part.wish().what()));
        return wishes;
    }

    private static String sameForAnotherDog(Clash clash, String number) {
        StringBuilder text = new StringBuilder(paragraph("Clash" + number + ". The same for another dog:"));
        clash.parts().stream().filter(part -> !part.wish().who().isEmpty()).forEach(part -> text.append(item(part)));
        return text.toString();
    }

    private static String item(Clash.Part part) {
        return Wrap.item(
                part.wish().sentence() + (part.figures().isEmpty() ? "" : " - " + part.figures()),
                INDENT,
                TextReport.WIDTH);
    }

    private static String mends(WhyNot.Answer.NoPlan answer) {
        StringBuilder text = new StringBuilder();
        if (answer.mends().isEmpty()) {
            text.append(paragraph("No single change was found that gives a plan."));
        } else {
            text.append(paragraph(
                    "What would mend it, the cheapest first. Each has a plan that was checked; its price a day is that"
                            + " of the batch for all dogs, proved to within 2 %:"));
            for (WayOut mend : answer.mends()) {
                text.append(Wrap.item(sentence(mend, answer.household().currency()), INDENT, TextReport.WIDTH));
            }
        }
        text.append(paragraph(answer.foodsTried() + " foods of the catalogue were tried, each alone."));
        answer.notTried().forEach(each -> text.append(paragraph("Not tried to the end: " + each + ".")));
        return text.toString();
    }

    private static String sentence(WayOut mend, String currency) {
        StringBuilder text = new StringBuilder(String.join(", and ", mend.changes()));
        text.append(": ")
                .append(Show.money(mend.costPerDay(), currency))
                .append(" a day, ")
                .append(Show.money(mend.atTheTill(), currency))
                .append(" at the till");
        if (mend.kind() == WayOut.Kind.LOOSEN && !mend.smallest()) {
            text.append(" (less may do)");
        }
        mend.notes().forEach(note -> text.append("; ").append(note));
        return text.toString();
    }

    private static String paragraph(String words) {
        return String.join("\n", Wrap.lines(words, TextReport.WIDTH)) + "\n";
    }

    /** The whole explanation, for programs. */
    public static String json(WhyNot.Answer.NoPlan answer) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("packpotWhyNot", JsonReport.FORMAT);
        root.put("household", answer.household().name());
        root.put("hasPlan", false);
        root.put("currency", answer.household().currency());
        root.put("clashes", answer.clashes().stream().map(WhyNotReport::data).toList());
        root.put("allClashes", answer.allClashes());
        root.put("mends", answer.mends().stream().map(WhyNotReport::data).toList());
        root.put("foodsTried", answer.foodsTried());
        root.put("notTried", answer.notTried());
        root.put("disclaimer", Disclaimer.TEXT);
        return JsonReport.of(root);
    }

    /** The first clash, for programs; the form of the command that plans. */
    public static String briefJson(String household, @Nullable Clash clash) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("packpotPlan", JsonReport.FORMAT);
        root.put("household", household);
        root.put("plan", null);
        root.put("clashes", clash == null ? List.of() : List.of(data(clash)));
        return JsonReport.of(root);
    }

    /** That there is a plan after all, for programs. */
    public static String hasPlanJson(Plan plan, boolean auditPassed) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("packpotWhyNot", JsonReport.FORMAT);
        root.put("household", plan.household());
        root.put("hasPlan", true);
        root.put("auditPassed", auditPassed);
        root.put("costPerDay", plan.cost().perDay());
        root.put("currency", plan.currency());
        return JsonReport.of(root);
    }

    /** The same for people. */
    public static String hasPlanText(Plan plan, String scenario) {
        return paragraph("There is a plan for " + plan.household() + " that meets every wish, at "
                        + Show.money(plan.cost().perDay(), plan.currency()) + " a day. To see it:")
                + INDENT + "packpot plan " + scenario + "\n";
    }

    private static Map<String, Object> data(Clash clash) {
        List<Map<String, Object>> wishes = new ArrayList<>();
        for (Clash.Part part : clash.parts()) {
            Map<String, Object> wish = new LinkedHashMap<>();
            wish.put("wish", part.wish().sentence());
            wish.put("kind", part.wish().kind().name());
            wish.put("dog", part.wish().who().isEmpty() ? null : part.wish().who());
            wish.put("about", part.wish().what());
            wish.put("atLeast", part.atLeast());
            wish.put("asked", part.asked());
            wish.put("reached", part.reached());
            wish.put("unit", part.unit().isEmpty() ? null : part.unit());
            wishes.add(wish);
        }
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("irreducible", clash.irreducible());
        data.put("wishes", wishes);
        return data;
    }

    private static Map<String, Object> data(WayOut mend) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("kind", mend.kind().name());
        data.put("changes", mend.changes());
        data.put("notes", mend.notes());
        data.put("smallestProved", mend.smallest());
        data.put("costPerDay", mend.costPerDay());
        data.put("atTheTill", mend.atTheTill());
        data.put("plans", mend.plans());
        return data;
    }
}
