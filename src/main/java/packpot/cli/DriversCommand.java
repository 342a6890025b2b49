package packpot.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import packpot.explain.CostDrivers;
import packpot.explain.DriverSearch;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.report.DriversReport;
import packpot.solver.OrToolsSolver;
import packpot.solver.SolveLimits;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What the cost of the cheapest plan hangs on. */
@Command(
        name = "drivers",
        mixinStandardHelpOptions = true,
        description =
                "Show what drives the cost of a scenario's plan: what each limit costs, how far each food's price"
                        + " can move before the pot changes its foods, and the price at which each food left out would come in.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:the drivers",
            "1:a fault of the program",
            "2:the command was used wrongly",
            "3:the scenario has faults, all listed",
            "4:there is no plan",
            "5:the plan failed the audit, so nothing is said of it",
            "6:no plan was found in the time given",
            "7:the output could not be written"
        },
        footerHeading = "%nExample:%n",
        footer = {
            "  packpot drivers scenarios/tiny-freezer.json",
            "  packpot drivers mine.json --time-limit 60 --json --out drivers.json"
        })
final class DriversCommand implements Callable<Integer> {
    @Parameters(paramLabel = "SCENARIO", description = "a scenario file")
    private Path scenario;

    @Mixin
    private Output output;

    @Option(
            names = "--time-limit",
            paramLabel = "SECONDS",
            defaultValue = "13",
            description = "longest time for plan and search; what does not fit is marked; default: ${DEFAULT-VALUE}")
    private double seconds;

    @Spec
    private CommandSpec spec;

    @SuppressWarnings("NullAway.Init")
    DriversCommand() {}

    @Override
    public Integer call() throws ScenarioException, OutputException {
        if (!(seconds > 0 && seconds <= 86_400)) {
            throw new ParameterException(spec.commandLine(), "--time-limit is from above 0 to 86400 seconds");
        }
        OrToolsSolver solver = new OrToolsSolver();
        Knowledge knowledge = Knowledge.load();
        Household household = Scenarios.read(knowledge, scenario);
        CostDrivers.Result result = Progress.during(
                "Planning, then moving limits and prices",
                () -> new DriverSearch(knowledge, solver, solver)
                        .find(household, new SolveLimits(seconds, SolveLimits.USUAL.relativeGap()), seconds));
        if (result instanceof CostDrivers.Result.NoBase none) {
            return NoBasePlan.tell(
                    none.none(),
                    knowledge,
                    solver,
                    spec,
                    output,
                    "packpotDrivers",
                    "what drives its cost cannot be told");
        }
        CostDrivers drivers = ((CostDrivers.Result.Driven) result).drivers();
        if (!drivers.base().verdict().passed()) {
            spec.commandLine().getErr().println("The plan failed the audit, so what drives its cost means nothing.");
            return ExitCode.AUDIT_FAILED;
        }
        output.write(spec, output.json() ? DriversReport.json(drivers) : DriversReport.text(drivers));
        return ExitCode.DONE;
    }
}
