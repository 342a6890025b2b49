package packpot.cli;

import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import packpot.explain.Planner;
import packpot.explain.WhyNot;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.report.WhyNotReport;
import packpot.solver.OrToolsSolver;
import packpot.solver.Solver;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Why a scenario has no plan, and what would mend it. */
@Command(
        name = "why-not",
        mixinStandardHelpOptions = true,
        description = {
            "Explain why a scenario has no plan: the fewest wishes that clash, with figures, and what would mend it at"
                    + " what price. Every mend that is shown has a plan that passed the audit.",
            "",
            "A clash is a set of wishes that cannot hold together, though the others can once any one of them is"
                    + " dropped. Mends: a wish loosened by as little as will do, a food added, an addition, a second"
                    + " cook day, a second pot."
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:there is a plan after all",
            "1:a fault of the program",
            "2:the command was used wrongly",
            "3:the scenario has faults, all listed; nothing was written",
            "4:there is no plan, and this is why",
            "5:there is a plan, but it failed the audit",
            "6:neither a plan nor a reason was found in the time given",
            "7:the output could not be written"
        },
        footerHeading = "%nExample:%n",
        footer = {
            "  packpot why-not mine.json",
            "  packpot why-not mine.json --json --out why.json",
            "  packpot why-not mine.json --change \"all chicken: out of stock\""
        })
final class WhyNotCommand extends ScenarioCommand {
    /** Of wall time: enough for most scenarios. */
    static final int USUAL_SECONDS = 30;

    @Option(
            names = "--time-limit",
            paramLabel = "SECONDS",
            defaultValue = "" + USUAL_SECONDS,
            description = "longest time in all; what is not tried by then is said; default: ${DEFAULT-VALUE}")
    private double seconds;

    @Option(
            names = "--change",
            paramLabel = "CHANGE",
            description = "explain the scenario after a change, as what-if takes it; give the option again for more,"
                    + " which then hold together")
    private List<String> changes = List.of();

    @SuppressWarnings("NullAway.Init")
    WhyNotCommand() {}

    @Override
    Integer answer() throws ScenarioException, OutputException {
        timeLimit(seconds);
        Solver solver = new OrToolsSolver();
        Knowledge knowledge = Knowledge.load();
        Household household = changes.isEmpty()
                ? household(knowledge)
                : Scenarios.changes(knowledge, scenario()).with(Scenarios.changes(changes), List.of());
        AtomicReference<String> now = new AtomicReference<>("");
        WhyNot.Answer answer =
                Progress.during(now::get, () -> new WhyNot(knowledge, solver).explain(household, seconds, now::set));
        if (answer instanceof WhyNot.Answer.HasPlan has) {
            return hasPlan(has.planned());
        }
        if (answer instanceof WhyNot.Answer.NoPlan none) {
            print(() -> WhyNotReport.text(none), () -> WhyNotReport.json(none));
            return ExitCode.NO_PLAN;
        }
        say("Neither a plan nor a proof that there is none was found in the time. Give more with" + " --time-limit.");
        return ExitCode.NO_PLAN_IN_TIME;
    }

    private int hasPlan(Planner.Result.Planned planned) throws OutputException {
        boolean passed = planned.verdict().passed();
        print(
                () -> passed
                        ? WhyNotReport.hasPlanText(planned.plan(), scenario().toString(), !changes.isEmpty())
                        : "",
                () -> WhyNotReport.hasPlanJson(planned.plan(), passed));
        if (!passed) {
            say("There is a plan, but it failed the audit: "
                    + planned.verdict().findings().get(0) + ". Do not feed it.");
            return ExitCode.AUDIT_FAILED;
        }
        return ExitCode.DONE;
    }
}
