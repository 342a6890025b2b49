package packpot.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;
import packpot.audit.Finding;
import packpot.horizon.HorizonCalendar;
import packpot.horizon.HorizonPlan;
import packpot.horizon.Sessions;
import packpot.household.Horizon;
import packpot.household.HorizonScenario;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.plan.FeedingCalendar;
import packpot.report.CalendarFile;
import packpot.report.CalendarReport;
import packpot.report.SessionsReport;
import packpot.search.Search;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Several cook days. */
@Command(
        name = "sessions",
        mixinStandardHelpOptions = true,
        description = {
            "Plan several cook days at once: what is bought, cooked and left on each, as dogs grow, come and leave."
                    + " \"horizon\" in the scenario says for how long and on which days; without it, cook days are spread"
                    + " evenly, as far apart as the days of the kitchen allow."
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:a plan that passed the audit",
            "1:a fault of the program",
            "2:the command was used wrongly",
            "3:the scenario has faults, all listed; nothing was written",
            "4:there is no plan for these wishes",
            "5:a plan failed the audit: do not follow it",
            "6:no plan was found in the time given",
            "7:the output could not be written"
        },
        footerHeading = "%nExample:%n",
        footer = {"  packpot sessions scenarios/growing-puppy.json --weeks 8"})
final class SessionsCommand extends ScenarioCommand {
    private static final String CALENDAR = "calendar";

    @Option(
            names = "--weeks",
            paramLabel = "WEEKS",
            description = "weeks to plan for, 1 to 26; default: those of the scenario, else 8")
    private @Nullable Integer weeks;

    @Option(
            names = "--time-limit",
            paramLabel = "SECONDS",
            defaultValue = "60",
            description = "longest time to search, all cook days together; default: ${DEFAULT-VALUE}")
    private double seconds;

    @Option(
            names = "--gap",
            paramLabel = "PERCENT",
            defaultValue = "0.8",
            description = "stop a batch when its cost is proved to be within this; default: ${DEFAULT-VALUE}")
    private double gapPercent;

    @Option(
            names = "--show",
            paramLabel = "BATCH",
            description =
                    "print the plan of a batch in full, 1 being the first, or \"calendar\" for what to do on which day")
    private @Nullable String show;

    @Option(
            names = "--ics",
            paramLabel = "FILE",
            description = "also write the events to this file as iCalendar, for any calendar program")
    private @Nullable Path calendarFile;

    @SuppressWarnings("NullAway.Init")
    SessionsCommand() {}

    private String text(HorizonPlan plan, FeedingCalendar calendar, List<Finding> findings) {
        String part = show;
        if (part == null) {
            return SessionsReport.text(plan, findings);
        }
        if (part.equals(CALENDAR)) {
            return CalendarReport.text(calendar, findings, plan.household().units());
        }
        return SessionsReport.batch(plan, batch(part, plan.sessions().size()));
    }

    /** The number of a batch that is to be shown. */
    private int batch(String part, int most) {
        if (!part.matches("[1-9][0-9]{0,3}") || Integer.parseInt(part) > most) {
            throw wrongUse("--show is the number of a batch, 1 to " + most + ", or \"calendar\"; read " + part);
        }
        return Integer.parseInt(part);
    }

    @Override
    Integer answer() throws ScenarioException, OutputException {
        Integer asked = weeks;
        if (asked != null) {
            range("--weeks", asked, 1, Horizon.MOST_WEEKS);
        }
        Path file = calendarFile;
        if (file != null) {
            checkFile("--ics", file);
        }
        if (show != null && !show.equals(CALENDAR)) {
            batch(show, 7 * Horizon.MOST_WEEKS);
        }
        SolveLimits limits = limits(seconds, gapPercent);
        Solver solver = new Search();
        Knowledge knowledge = Knowledge.load();
        HorizonScenario scenario = Scenarios.reader(knowledge).readWithHorizon(scenario(), asked);
        AtomicInteger done = new AtomicInteger();
        Sessions.Answer answer = Progress.during(
                () -> "Planning, " + done.get() + " batches are ready",
                () -> new Sessions(knowledge, solver).plan(scenario, limits, done::set));
        if (answer instanceof Sessions.Answer.NoPlan none) {
            say("The batch of " + none.none().household().start() + ", for "
                    + none.interval().days() + " days, has no plan with what the batches before it leave.");
            return noPlan(none.none(), knowledge, solver, "packpotSessions", "there is none for these weeks");
        }
        HorizonPlan plan = ((Sessions.Answer.Planned) answer).plan();
        List<Finding> findings = new ArrayList<>(plan.audit(knowledge));
        HorizonCalendar.Checked calendar = HorizonCalendar.of(plan, knowledge);
        findings.addAll(calendar.findings());
        print(
                () -> text(plan, calendar.calendar(), findings),
                () -> SessionsReport.json(plan, calendar.calendar(), findings));
        if (file != null && findings.isEmpty()) {
            writeFile(file, CalendarFile.of(calendar.calendar(), Instant.now()));
        }
        return findings.isEmpty() ? ExitCode.DONE : ExitCode.AUDIT_FAILED;
    }
}
