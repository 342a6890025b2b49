package packpot.report;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import packpot.explain.Clash;
import packpot.explain.Mend;
import packpot.explain.MendEdits;
import packpot.explain.WhyNot;
import packpot.household.Edit;
import packpot.plan.Plan;
import packpot.units.Show;

/** Why there is no plan, and what would mend it, for people and for programs. */
public final class WhyNotReport {
    private static final String INDENT = "  ";
    private static final String FIGURES = "Behind each wish: how near to it one can come while the others of its clash"
            + " hold; with all wishes together it may take more.";

    private static final String NOT_ONE_SCENARIO = "; this cannot be taken over into one scenario";

    private WhyNotReport() {}

    /**
     * The whole explanation, for people.
     *
     * @param edits of the scenario that was asked about
     */
    public static String text(WhyNot.Answer.NoPlan answer, MendEdits edits) {
        StringBuilder text = new StringBuilder(heading(answer.household().name()));
        int number = 0;
        Set<Set<String>> seen = new HashSet<>();
        for (Clash clash : answer.clashes()) {
            number++;
            String label = answer.clashes().size() > 1 ? " " + number : "";
            boolean again = !seen.add(apartFromTheDog(clash));
            text.append('\n').append(again ? sameForAnotherDog(clash, label) : clash(clash, label));
        }
        if (answer.clashes().isEmpty()) {
            text.append('\n').append(paragraph("Which wishes clash was not found in the time."));
        } else {
            text.append('\n').append(paragraph(FIGURES));
        }
        if (answer.clashes().size() > 1) {
            text.append('\n').append(paragraph("Each of these clashes alone stands in the way of a plan."));
        }
        if (!answer.allClashes() && !answer.clashes().isEmpty()) {
            text.append('\n').append(paragraph("There may be more clashes: the time ran out before that was settled."));
        }
        text.append('\n').append(mends(answer, edits));
        return text.append('\n').append(paragraph(Disclaimer.TEXT)).toString();
    }

    private static String heading(String household) {
        return paragraph("There is no plan for " + household + " that meets every wish.");
    }

    /** The first clash, and how to get more; for the command that plans. */
    public static String brief(String household, @Nullable Clash clash, String scenario) {
        return heading(household)
                + (clash == null ? "" : "\n" + clash(clash, "") + "\n" + paragraph(FIGURES))
                + "\n"
                + paragraph("For every clash and for what would mend it at what price:")
                + INDENT + "packpot why-not " + scenario + "\n";
    }

    private static String clash(Clash clash, String number) {
        String words = ClashText.words(clash);
        return paragraph("Clash" + number + ". " + Character.toUpperCase(words.charAt(0)) + words.substring(1))
                + ClashText.items(clash, INDENT);
    }

    private static Set<String> apartFromTheDog(Clash clash) {
        Set<String> wishes = new HashSet<>();
        clash.parts()
                .forEach(part ->
                        wishes.add(part.wish().kind() + " " + part.wish().what()));
        return wishes;
    }

    private static String sameForAnotherDog(Clash clash, String number) {
        return paragraph("Clash" + number + ". The same for another dog:")
                + ClashText.items(clash, part -> !part.wish().who().isEmpty(), INDENT);
    }

    private static String mends(WhyNot.Answer.NoPlan answer, MendEdits edits) {
        StringBuilder text = new StringBuilder();
        if (answer.mends().isEmpty()) {
            text.append(paragraph("No single change was found that gives a plan."));
        } else {
            text.append(paragraph(
                    "What would mend it, the cheapest first. Each has a plan that was checked; its price a day is that"
                            + " of the batch for all dogs, proved to within 2 %:"));
            int number = 0;
            boolean any = false;
            for (Mend mend : answer.told()) {
                number++;
                boolean canBe = edits.of(mend).isPresent();
                any |= canBe;
                String sentence =
                        sentence(mend, answer.household().currency()) + (canBe ? firstOnly(mend) : NOT_ONE_SCENARIO);
                text.append(Wrap.item(number, sentence, INDENT, TextReport.WIDTH));
            }
            if (any) {
                text.append(paragraph("To take one over, give its number to packpot why-not: --apply 1 --to FILE"
                        + " writes the scenario with the first of them into FILE."));
            }
        }
        boolean food = answer.mends().stream().anyMatch(mend -> mend.kind() == Mend.Kind.ADD_FOOD);
        text.append(paragraph(answer.foodsTried() + " foods of the catalogue were tried, each alone"
                + (food ? "; the cheapest that help are shown." : "; none was found that helps.")));
        answer.notTried().forEach(each -> text.append(paragraph("Not tried to the end: " + each + ".")));
        return text.toString();
    }

    private static String firstOnly(Mend mend) {
        return mend.kind() == Mend.Kind.SECOND_SESSION ? "; taken over, the scenario is that of the first time" : "";
    }

    /**
     * That a mend was taken over, and how to go on.
     *
     * @param number by which people know the mend
     */
    public static String takenOver(int number, Mend mend, String file) {
        // The name of the file stands on the last line alone, which is not wrapped.
        return paragraph("Mend " + number + ", " + String.join(", and ", mend.changes()) + ", is taken over"
                        + firstOnly(mend) + ". To plan it:")
                + INDENT + "packpot plan " + file + "\n";
    }

    private static String sentence(Mend mend, String currency) {
        StringBuilder text = new StringBuilder(String.join(", and ", mend.changes()));
        text.append(": ")
                .append(Show.money(mend.costPerDay(), currency))
                .append(" a day, ")
                .append(Show.money(mend.atTheTill(), currency))
                .append(" at the till");
        if (mend.kind() == Mend.Kind.LOOSEN && !mend.smallest()) {
            text.append(" (less may do)");
        }
        mend.notes().forEach(note -> text.append("; ").append(note));
        return text.toString();
    }

    private static String paragraph(String words) {
        return String.join("\n", Wrap.lines(words, TextReport.WIDTH)) + "\n";
    }

    /** The whole explanation, for programs. */
    public static String json(WhyNot.Answer.NoPlan answer, MendEdits edits) {
        return JsonReport.of(data(answer, edits));
    }

    /**
     * The same as the answer to another question, which a scenario without a plan leaves open.
     *
     * @param marker the field by which programs know what that question's command prints
     */
    public static String insteadJson(String marker, WhyNot.Answer.NoPlan answer, MendEdits edits) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put(marker, JsonReport.FORMAT);
        root.put("whyNot", data(answer, edits));
        return JsonReport.of(root);
    }

    private static Map<String, Object> data(WhyNot.Answer.NoPlan answer, MendEdits edits) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("packpotWhyNot", JsonReport.FORMAT);
        root.put("household", answer.household().name());
        root.put("hasPlan", false);
        root.put("currency", answer.household().currency());
        root.put(
                "clashes",
                answer.clashes().stream()
                        .flatMap(clash -> ClashText.data(clash).stream())
                        .toList());
        root.put("allClashes", answer.allClashes());
        root.put(
                "mends",
                answer.mends().stream().map(mend -> data(mend, answer, edits)).toList());
        root.put("foodsTried", answer.foodsTried());
        root.put("notTried", answer.notTried());
        root.put("disclaimer", Disclaimer.TEXT);
        return root;
    }

    /** The first clash, for programs; the form of the command that plans. */
    public static String briefJson(String household, @Nullable Clash clash) {
        return JsonReport.of(briefData(household, clash));
    }

    static Map<String, Object> briefData(String household, @Nullable Clash clash) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("packpotPlan", JsonReport.FORMAT);
        root.put("household", household);
        root.put("plan", null);
        root.put("clashes", ClashText.data(clash));
        return root;
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

    /**
     * The same for people.
     *
     * @param changed whether the plan is of the scenario after changes
     */
    public static String hasPlanText(Plan plan, String scenario, boolean changed) {
        if (changed) {
            return paragraph(
                    "There is a plan for " + plan.household() + " after what changes that meets every wish, at "
                            + Show.money(plan.cost().perDay(), plan.currency())
                            + " a day. The command what-if with the same changes shows it beside the plan now.");
        }
        return paragraph("There is a plan for " + plan.household() + " that meets every wish, at "
                        + Show.money(plan.cost().perDay(), plan.currency()) + " a day. To see it:")
                + INDENT + "packpot plan " + scenario + "\n";
    }

    private static Map<String, Object> data(Mend mend, WhyNot.Answer.NoPlan answer, MendEdits edits) {
        int place = answer.told().indexOf(mend);
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("number", place < 0 ? null : (Integer) (place + 1));
        data.put("kind", mend.kind().name());
        data.put("changes", mend.changes());
        data.put("notes", mend.notes());
        data.put("smallestProved", mend.smallest());
        data.put("costPerDay", mend.costPerDay());
        data.put("atTheTill", mend.atTheTill());
        data.put("nearDouble", place < 0);
        data.put(
                "edits",
                edits.of(mend)
                        .map(each -> each.stream().map(WhyNotReport::data).toList())
                        .orElse(null));
        data.put("plans", mend.plans());
        return data;
    }

    /** One edit of a mend as an operation of a JSON Patch. */
    public static Map<String, Object> data(Edit edit) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("op", edit.op().key());
        data.put("path", edit.path());
        if (edit.value() != null) {
            data.put("value", edit.value());
        }
        return data;
    }
}
