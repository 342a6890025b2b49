package packpot.sheets;

import java.util.List;
import java.util.Locale;
import packpot.Demo;
import packpot.SharedSolver;
import packpot.explain.Losses;
import packpot.explain.Planner;
import packpot.household.Household;
import packpot.plan.CalendarBuilder;
import packpot.solver.SolveLimits;
import packpot.words.Texts;

/** Sheets of the demo scenarios and of households of the tests. */
final class DemoSheets {
    static final Locale GERMAN = Locale.GERMANY;

    private DemoSheets() {}

    static SheetSource source(String demo) {
        return source(Demo.planned(Demo.file(demo)));
    }

    static SheetSource source(Demo.Planned planned) {
        return new SheetSource(
                planned.household(),
                Demo.knowledge(),
                planned.plan(),
                planned.verdict(),
                CalendarBuilder.of(planned.plan(), planned.household(), Demo.knowledge()),
                List.of());
    }

    static SheetSource source(Household household) {
        return source(Demo.plan(household));
    }

    /** With what takes the place of each food. */
    static SheetSource withStandIns(String demo) {
        SheetSource source = source(demo);
        List<Losses.Loss> losses = Losses.each(
                new Planner.Result.Planned(source.household(), source.plan(), source.verdict()),
                Demo.knowledge(),
                new SharedSolver(),
                new SolveLimits(60, 0.01),
                done -> {});
        return new SheetSource(
                source.household(), source.knowledge(), source.plan(), source.verdict(), source.calendar(), losses);
    }

    static Sheets sheets(SheetSource source, Locale locale, Paper paper) {
        return new Sheets(source, Texts.of(locale), paper, LabelSheet.on(paper).get(0));
    }

    static String html(String demo, Locale locale, Paper paper) {
        return sheets(source(demo), locale, paper).html();
    }
}
