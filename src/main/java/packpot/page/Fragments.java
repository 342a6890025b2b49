package packpot.page;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.audit.CalendarCheck;
import packpot.audit.RecipeVerdict;
import packpot.explain.Clash;
import packpot.explain.PlanComparison;
import packpot.explain.Planner;
import packpot.explain.RecipeMend;
import packpot.explain.WhyNot;
import packpot.horizon.HorizonPlan;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.RecipeScenario;
import packpot.plan.CalendarBuilder;
import packpot.plan.FeedingCalendar;
import packpot.sheets.LabelSheet;
import packpot.sheets.Paper;
import packpot.sheets.SheetSource;
import packpot.sheets.Sheets;
import packpot.sheets.Wording;
import packpot.words.Texts;

/** Answers as pieces of HTML, from the same templates as the sheets where these have them. */
final class Fragments {
    private final Knowledge knowledge;
    private final TemplateEngine templates =
            TemplateEngine.createPrecompiled(null, ContentType.Html, null, "gg.jte.generated.precompiled");

    Fragments(Knowledge knowledge) {
        this.knowledge = knowledge;
    }

    private String render(String template, Map<String, Object> values) {
        StringOutput output = new StringOutput(1 << 16);
        templates.render("page/" + template + ".jte", values, output);
        return output.toString();
    }

    /** Figures in the household's measures; the page's own language is English. */
    static Wording wording(Household household) {
        return new Wording(english(household), household.units(), household.currency());
    }

    private static Texts english(Household household) {
        return Texts.of(household.locale().getLanguage().equals("en") ? household.locale() : Locale.US);
    }

    /** The sheets of a plan in a language; empty when its calendar fails its check. */
    Sheets sheets(Planner.Result.Planned planned, Texts texts) throws Refused {
        Household household = planned.household();
        FeedingCalendar calendar = CalendarBuilder.of(planned.plan(), household, knowledge);
        if (!CalendarCheck.check(planned.plan(), household, knowledge, calendar).isEmpty()) {
            throw new Refused(Refused.FAULT_OF_PROGRAM, "the calendar of this plan failed its check; do not follow it");
        }
        Paper paper = Paper.usual(household.units());
        return new Sheets(
                new SheetSource(household, knowledge, planned.plan(), planned.verdict(), calendar, List.of()),
                texts,
                paper,
                LabelSheet.on(paper).get(0));
    }

    Sheets sheets(Planner.Result.Planned planned) throws Refused {
        return sheets(planned, english(planned.household()));
    }

    /** A plan; {@code first} while a cheaper one is being looked for. */
    String plan(Planner.Result.Planned planned, boolean first) throws Refused {
        return render("plan", Map.of("s", sheets(planned), "first", first));
    }

    String compared(PlanComparison comparison, Household household) {
        return render("compared", Map.of("c", comparison, "w", wording(household)));
    }

    String none(Household household, @Nullable Clash clash) {
        return render("none", Map.of("clashes", clash == null ? List.of() : List.of(clash), "w", wording(household)));
    }

    String why(WhyNot.Answer.NoPlan answer) {
        return render("why", Map.of("answer", answer, "w", wording(answer.household())));
    }

    String recipe(RecipeScenario scenario, RecipeVerdict verdict, List<RecipeMend> mends) {
        return render(
                "recipe",
                Map.of("scenario", scenario, "verdict", verdict, "mends", mends, "w", wording(scenario.household())));
    }

    String weeks(HorizonPlan plan, FeedingCalendar calendar) {
        return render("weeks", Map.of("plan", plan, "calendar", calendar, "w", wording(plan.household())));
    }
}
