package packpot.cli;

import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import packpot.audit.Verdict;
import packpot.explain.Clash;
import packpot.explain.Planner;
import packpot.explain.WhyNot;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.plan.Plan;
import packpot.report.JsonReport;
import packpot.report.TextReport;
import packpot.report.WhyNotReport;
import packpot.solver.OrToolsSolver;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The main job: a least-cost plan for one cook day, audited before it is shown. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        description = "Plan one cook day: shopping, pot, bowls, bags, cost, and every nutrient of every dog.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:a plan that passed the audit",
            "1:a fault of the program",
            "2:the command was used wrongly",
            "3:the scenario has faults, all listed; nothing was written",
            "4:there is no plan for these wishes",
            "5:the plan failed the audit: do not feed it",
            "6:no plan was found in the time given",
            "7:the output could not be written"
        },
        footerHeading = "%nExample:%n",
        footer = {"  packpot plan scenarios/three-adults.json", "  packpot plan mine.json --json --out plan.json"})
final class PlanCommand implements Callable<Integer> {
    private static final double CLASH_SECONDS = 15;

    @Parameters(paramLabel = "SCENARIO", description = "a scenario file; see the README and scenarios/")
    private Path scenario;

    @Mixin
    private Output output;

    @Option(
            names = "--time-limit",
            paramLabel = "SECONDS",
            defaultValue = "20",
            description = "longest time to search; default: ${DEFAULT-VALUE}")
    private double seconds;

    @Option(
            names = "--gap",
            paramLabel = "PERCENT",
            defaultValue = "0.1",
            description = "stop when the cost is proved to be within this; default: ${DEFAULT-VALUE}")
    private double gapPercent;

    @Spec
    private CommandSpec spec;

    @SuppressWarnings("NullAway.Init")
    PlanCommand() {}

    @Override
    public Integer call() throws ScenarioException, OutputException {
        if (!(seconds > 0 && seconds <= 86_400) || !(gapPercent >= 0 && gapPercent <= 100)) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--time-limit is from above 0 to 86400 seconds, and --gap from 0 to 100 percent");
        }
        Solver solver = new OrToolsSolver();
        Knowledge knowledge = Knowledge.load();
        Household household = Scenarios.read(knowledge, scenario);
        Planner.Result result = Progress.during(
                "Planning",
                () -> new Planner(knowledge, solver).plan(household, new SolveLimits(seconds, gapPercent / 100)));
        if (result instanceof Planner.Result.NoPlan none) {
            return none(none.provedImpossible(), knowledge, solver, household);
        }
        Plan plan = ((Planner.Result.Planned) result).plan();
        Verdict verdict = ((Planner.Result.Planned) result).verdict();
        output.write(
                spec, output.json() ? JsonReport.plan(plan, verdict) : TextReport.of(plan, verdict, household.units()));
        if (!verdict.passed()) {
            spec.commandLine().getErr().println("The plan failed the audit. Do not feed it.");
            return ExitCode.AUDIT_FAILED;
        }
        return ExitCode.DONE;
    }

    private int none(boolean provedImpossible, Knowledge knowledge, Solver solver, Household household)
            throws OutputException {
        if (!provedImpossible) {
            spec.commandLine()
                    .getErr()
                    .println(String.format(
                            Locale.ROOT,
                            "No plan was found in %.0f seconds, and it is not proved that there is none. Give more time with"
                                    + " --time-limit.",
                            seconds));
            return ExitCode.NO_PLAN_IN_TIME;
        }
        Clash clash = Progress.during(
                "There is no plan; looking for what stands in the way",
                () -> new WhyNot(knowledge, solver)
                        .firstClash(household, CLASH_SECONDS)
                        .orElse(null));
        output.write(
                spec,
                output.json()
                        ? WhyNotReport.briefJson(household.name(), clash)
                        : WhyNotReport.brief(household.name(), clash, scenario.toString()));
        return ExitCode.NO_PLAN;
    }
}
