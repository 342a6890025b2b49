package packpot.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicInteger;
import packpot.explain.Losses;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.report.LossesReport;
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

/** What each food of the plan is worth. */
@Command(
        name = "losses",
        mixinStandardHelpOptions = true,
        description = "Plan a scenario without each food of its plan in turn: what that costs more, and what takes its"
                + " place.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:a ranking",
            "1:a fault of the program",
            "2:the command was used wrongly",
            "3:the scenario has faults, all listed",
            "4:there is no plan whose foods could be ranked",
            "5:the plan failed the audit",
            "6:no plan was found in the time given",
            "7:the output could not be written"
        },
        footerHeading = "%nExample:%n",
        footer = "  packpot losses scenarios/three-adults.json")
final class LossesCommand implements Callable<Integer> {
    @Parameters(paramLabel = "SCENARIO", description = "a scenario file")
    private Path scenario;

    @Option(
            names = "--time-limit",
            paramLabel = "SECONDS",
            defaultValue = "20",
            description = "longest time to search for each plan; default: ${DEFAULT-VALUE}")
    private double seconds;

    @Option(
            names = "--gap",
            paramLabel = "PERCENT",
            defaultValue = "0.5",
            description = "stop when the cost is proved to be within this; default: ${DEFAULT-VALUE}")
    private double gapPercent;

    @Mixin
    private Output output;

    @Spec
    private CommandSpec spec;

    @SuppressWarnings("NullAway.Init")
    LossesCommand() {}

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
        AtomicInteger all = new AtomicInteger();
        AtomicInteger done = new AtomicInteger();
        Losses.Result result = Progress.during(
                () -> all.get() == 0 ? "Planning" : "Plans without a food: " + done.get() + " of " + all.get(),
                () -> Losses.rank(
                        household, knowledge, solver, new SolveLimits(seconds, gapPercent / 100), all::set, done::set));
        if (result instanceof Losses.Result.NoBase none) {
            return NoBasePlan.tell(
                    none.base(), knowledge, solver, spec, output, "packpotLosses", "its foods cannot be ranked");
        }
        Losses.Result.Ranked ranked = (Losses.Result.Ranked) result;
        if (!ranked.base().verdict().passed()) {
            spec.commandLine().getErr().println("The plan failed the audit, so its foods are not ranked.");
            return ExitCode.AUDIT_FAILED;
        }
        output.write(spec, output.json() ? LossesReport.json(ranked) : LossesReport.text(ranked));
        return ExitCode.DONE;
    }
}
