package packpot.report;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import packpot.explain.Carried;
import packpot.explain.Clash;
import packpot.explain.Mode;
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

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM", Locale.ENGLISH);

    private final Answer.Compared answer;
    private final UnitSystem units;
    private final String currency;
    private final Page page = new Page();

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
        page.heading("What if: " + answer.base().plan().household(), 0);
        page.paragraph(modeWords()).raw("\n");
        page.paragraph(
                "now: the plan as the scenario stands; " + proof(answer.base().plan()));
        List<PlansBeside.Column> columns = new ArrayList<>();
        for (int i = 0; i < answer.alternatives().size(); i++) {
            Alternative alternative = answer.alternatives().get(i);
            String letter = letter(i);
            page.raw(String.join("\n   ", Wrap.lines(letter + ": " + heading(alternative), TextReport.WIDTH - 3))
                    + "\n");
            outcome(alternative);
            if (alternative.outcome() instanceof Outcome.NewPlan plan
                    && plan.planned().verdict().passed()) {
                columns.add(new PlansBeside.Column(letter, plan));
            }
        }
        PlansBeside beside = new PlansBeside(page, answer);
        for (int start = 0; start < columns.size(); start += MOST_BESIDE) {
            beside.write(columns.subList(start, Math.min(columns.size(), start + MOST_BESIDE)));
        }
        if (!columns.isEmpty()) {
            page.raw("\n")
                    .paragraph("Every plan shown here passed the check. Distance between recipes: half the sum of the"
                            + " differences of all shares of cooked mass; 0 % is the same recipe, 100 % one that has"
                            + " nothing in common with it.");
        }
        if (!columns.isEmpty()) {
            page.paragraph("A whole plan, as packpot plan prints it: the same command with --show "
                    + columns.get(0).letter() + ".");
        }
        boolean noPlan = answer.alternatives().stream()
                .anyMatch(each -> each.outcome() instanceof Outcome.NoPlan none && none.provedImpossible());
        if (noPlan && answer.mode() == Mode.BEFORE) {
            page.raw("\n")
                    .paragraph("What would mend a change that has no plan is told by packpot why-not with the same"
                            + " --change.");
        }
        return page.raw("\n").paragraph(Disclaimer.TEXT).toString();
    }

    /** What the new plan at a place, counted from 0, is called in the report. */
    public static String letter(int index) {
        return index < 26 ? String.valueOf((char) ('A' + index)) : "plan " + (index + 1);
    }

    private static String heading(Alternative alternative) {
        String changes = String.join("; ", alternative.changes());
        return alternative.name().equals(changes) ? changes : alternative.name() + ": " + changes;
    }

    private String modeWords() {
        return switch (answer.mode()) {
            case BEFORE -> "Nothing is bought yet: every plan is free to buy what it likes.";
            case BOUGHT ->
                "The shopping of the plan now is done: what it bought is in the house and costs"
                        + " nothing more; a new plan is chosen by what is still to be paid, then by little waste"
                        + " of what spoils, then by nearness to the recipe now.";
            case COOKED ->
                "The batch of the plan now is cooked: all dogs eat from it first, as long as its"
                        + " energy lasts, and a new batch is planned for the days after. What is wrong with the"
                        + " old food for the dogs and the freezer as they are then stands as a warning. What keeps"
                        + " is taken over, opened food that spoils is not.";
        };
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
            item((carried.notFed().isEmpty() ? "nothing is cooked or bought" : "no new batch is planned")
                    + ": what is cooked lasts " + days(carried.coveredDays()) + ", through "
                    + DAY.format(carried.cookAgain().minusDays(1)));
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
            page.raw(ClashText.items(clash, "     "));
        }
    }

    private void newPlan(Outcome.NewPlan found) {
        Nearness nearness = found.nearness();
        Plan plan = found.planned().plan();
        if (nearness == null) {
            item(proof(plan));
            return;
        }
        String near =
                nearness.proved() ? "; proved nearest, to 2 % of the distance" : "; not proved, a nearer one may exist";
        if (!nearness.found()) {
            item("no nearer plan was found at that cost; this is the cheapest, " + proof(plan));
        } else if (nearness.oldPlanStands()) {
            item("the old plan stands: nothing more to buy, the same recipe and bowls");
        } else if (answer.mode() == Mode.BOUGHT) {
            item("of the plans that cost at most " + money(nearness.mostCost())
                    + " more, one that wastes little of what was bought and stays near the recipe now"
                    + (nearness.proved() ? "; proved best at that, to 2 %" : "; not proved, a better one may exist"));
        } else {
            item("as near to the recipe now as " + money(nearness.mostCost()) + " allow; the cheapest costs "
                    + money(nearness.cheapest()) + near);
        }
    }

    private void carried(Carried carried) {
        item("paid already: " + money(carried.paid()));
        if (answer.mode() == Mode.COOKED && carried.daysToCook() > 0) {
            item("what is cooked feeds " + days(carried.coveredDays()) + "; cook again on "
                    + DAY.format(carried.cookAgain()) + " for " + days(carried.daysToCook()));
        }
        if (!carried.portions().isEmpty()) {
            item("of the old batch a day: "
                    + String.join(
                            ", ",
                            carried.portions().stream()
                                    .map(portion -> portion.dog() + " " + Show.grams(portion.gramsPerDay()))
                                    .toList()));
        }
        carried.warnings().forEach(warning -> item("WARNING: " + warning));
        carried.waste()
                .forEach(waste -> item("waste: " + Show.weight(waste.grams(), units) + " of " + waste.label()
                        + " spoil unless frozen or eaten, " + money(waste.worth()) + " of what was paid"));
    }

    private static String days(int days) {
        return days + (days == 1 ? " day" : " days");
    }

    private void item(String sentence) {
        page.raw(Wrap.item(sentence, "   ", TextReport.WIDTH));
    }

    private String money(double amount) {
        return Show.money(amount, currency);
    }

    /** For programs; the fields are described in models/what-if.schema.json. */
    public static String json(Answer.Compared answer) {
        return JsonReport.of(WhatIfData.of(answer));
    }
}
