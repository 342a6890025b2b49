package packpot.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import packpot.audit.CalendarCheck;
import packpot.audit.Finding;
import packpot.explain.Planner;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.plan.CalendarBuilder;
import packpot.plan.FeedingCalendar;
import packpot.plan.Plan;
import packpot.report.CalendarFile;
import packpot.report.CalendarReport;
import packpot.search.Search;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What to do on which day: shop, cook, freeze, thaw, weigh. */
@Command(
        name = "calendar",
        mixinStandardHelpOptions = true,
        description = {
            "Plan one cook day, and say what is to be done on which day: shop, cook, freeze and thaw bags, weigh dogs,"
                    + " cook again; and where the food is on each day."
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:a calendar that passed the check",
            "1:a fault of the program",
            "2:the command was used wrongly",
            "3:the scenario has faults, all listed; nothing was written",
            "4:there is no plan for these wishes",
            "5:the plan failed the audit, or the calendar its check: do not follow it",
            "6:no plan was found in the time given",
            "7:the output could not be written"
        },
        footerHeading = "%nExample:%n",
        footer = {"  packpot calendar scenarios/three-adults.json", "  packpot calendar mine.json --ics batch.ics"})
final class CalendarCommand extends ScenarioCommand {
    @Mixin
    private final SearchOptions search = new SearchOptions(0.1);

    @Option(
            names = "--ics",
            paramLabel = "FILE",
            description = "also write the events to this file as iCalendar, for any calendar program")
    private @Nullable Path calendarFile;

    @SuppressWarnings("NullAway.Init")
    CalendarCommand() {}

    @Override
    Integer answer() throws ScenarioException, OutputException {
        Path file = calendarFile;
        if (file != null) {
            checkFile("--ics", file);
        }
        SolveLimits limits = limits(search.seconds(), search.gapPercent());
        Solver solver = new Search();
        Knowledge knowledge = Knowledge.load();
        Household household = household(knowledge);
        Planner.Result result =
                Progress.during("Planning", () -> new Planner(knowledge, solver).plan(household, limits));
        if (result instanceof Planner.Result.NoPlan none) {
            return noPlan(none, knowledge, solver, "packpotCalendar", "there is no calendar");
        }
        Planner.Result.Planned planned = (Planner.Result.Planned) result;
        if (!planned.verdict().passed()) {
            say("The plan failed the audit, so there is no calendar for it; packpot plan shows why.");
            return ExitCode.AUDIT_FAILED;
        }
        Plan plan = planned.plan();
        FeedingCalendar calendar = CalendarBuilder.of(plan, household, knowledge);
        List<Finding> findings = CalendarCheck.check(plan, household, knowledge, calendar);
        print(
                () -> CalendarReport.text(calendar, findings, household.units()),
                () -> CalendarReport.json(calendar, findings));
        if (!findings.isEmpty()) {
            say("The calendar failed its check. Do not follow it.");
            return ExitCode.AUDIT_FAILED;
        }
        if (file != null) {
            writeFile(file, CalendarFile.of(calendar, Instant.now()));
        }
        return ExitCode.DONE;
    }
}
