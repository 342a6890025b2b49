package packpot.cli;

import packpot.explain.CostDrivers;
import packpot.explain.DriverSearch;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.report.DriversReport;
import packpot.search.Search;
import packpot.solver.SolveLimits;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

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
            "  packpot drivers mine.json --time-limit 120 --json --out drivers.json"
        })
final class DriversCommand extends ScenarioCommand {
    @Option(
            names = "--time-limit",
            paramLabel = "SECONDS",
            defaultValue = "60",
            description = "longest time for plan and search; what does not fit is marked; default: ${DEFAULT-VALUE}")
    private double seconds;

    @SuppressWarnings("NullAway.Init")
    DriversCommand() {}

    @Override
    Integer answer() throws ScenarioException, OutputException {
        timeLimit(seconds);
        Search solver = new Search();
        Knowledge knowledge = Knowledge.load();
        Household household = household(knowledge);
        CostDrivers.Result result = Progress.during(
                "Planning, then moving limits and prices",
                () -> new DriverSearch(knowledge, solver, solver)
                        .find(household, new SolveLimits(seconds, SolveLimits.USUAL.relativeGap()), seconds));
        if (result instanceof CostDrivers.Result.NoBase none) {
            return noPlan(none.none(), knowledge, solver, "packpotDrivers", "what drives its cost cannot be told");
        }
        CostDrivers drivers = ((CostDrivers.Result.Driven) result).drivers();
        if (!drivers.base().verdict().passed()) {
            say("The plan failed the audit, so what drives its cost means nothing.");
            return ExitCode.AUDIT_FAILED;
        }
        print(() -> DriversReport.text(drivers), () -> DriversReport.json(drivers));
        return ExitCode.DONE;
    }
}
