package packpot.cli;

import java.util.List;
import org.jspecify.annotations.Nullable;
import packpot.explain.Planner;
import packpot.explain.Pots;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.report.PotsReport;
import packpot.search.Search;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What a second and a third pot buy. */
@Command(
        name = "pots",
        mixinStandardHelpOptions = true,
        description = {
            "Part the dogs over one, two and more pots of one cook day, and show the cheapest way of each side by side:"
                    + " what a second pot buys, or that it takes one where the dogs cannot share."
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:at least one way was found; its plans passed the audit",
            "1:a fault of the program",
            "2:the command was used wrongly",
            "3:the scenario has faults, all listed; nothing was written",
            "4:there is no plan, in however many pots",
            "7:the output could not be written"
        },
        footerHeading = "%nExample:%n",
        footer = {"  packpot pots scenarios/growing-puppy.json", "  packpot pots mine.json --most 2 --show 2"})
final class PotsCommand extends ScenarioCommand {
    @Option(
            names = "--most",
            paramLabel = "POTS",
            defaultValue = "3",
            description = "most pots, 1 to 7; default: ${DEFAULT-VALUE}")
    private int most;

    @Option(
            names = "--show",
            paramLabel = "POTS",
            description = "print the plans of the best way with so many pots in full")
    private @Nullable Integer show;

    @Option(
            names = "--time-limit",
            paramLabel = "SECONDS",
            defaultValue = "60",
            description = "longest time to search; default: ${DEFAULT-VALUE}")
    private double seconds;

    @Option(
            names = "--gap",
            paramLabel = "PERCENT",
            defaultValue = "0.2",
            description = "stop a pot when its cost is proved to be within this; default: ${DEFAULT-VALUE}")
    private double gapPercent;

    @SuppressWarnings("NullAway.Init")
    PotsCommand() {}

    @Override
    Integer answer() throws ScenarioException, OutputException {
        range("--most", most, 1, Pots.MOST_DOGS);
        Integer part = show;
        if (part != null) {
            range("--show", part, 1, most);
        }
        SolveLimits limits = limits(seconds, gapPercent);
        Solver solver = new Search();
        Knowledge knowledge = Knowledge.load();
        Household household = household(knowledge);
        if (household.dogs().size() > Pots.MOST_DOGS) {
            say("There are " + household.dogs().size() + " dogs, and more than " + Pots.MOST_DOGS
                    + " can be parted in too many ways to weigh them all; ask for some of them in a scenario of their"
                    + " own.");
            return ExitCode.WRONG_USE;
        }
        List<Pots.UpTo> found =
                Progress.during("Parting the dogs", () -> new Pots(household, knowledge, solver, limits).find(most));
        if (found.stream().allMatch(upTo -> upTo.best() == null)) {
            return noPlan(
                    new Planner.Result.NoPlan(household, true),
                    knowledge,
                    solver,
                    "packpotPots",
                    "no way to part the dogs was found either");
        }
        if (part == null) {
            print(() -> PotsReport.text(household, found), () -> PotsReport.json(household, found));
            return ExitCode.DONE;
        }
        Pots.Way way = found.get(Math.min(part, found.size()) - 1).exactly();
        if (way == null) {
            say("There is no plan with " + part + (part == 1 ? " pot." : " pots."));
            return ExitCode.NO_PLAN;
        }
        print(() -> PotsReport.full(household, way), () -> PotsReport.json(household, found));
        return ExitCode.DONE;
    }
}
