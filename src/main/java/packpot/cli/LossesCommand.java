package packpot.cli;

import java.util.concurrent.atomic.AtomicInteger;
import packpot.explain.Losses;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.report.LossesReport;
import packpot.search.Search;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

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
final class LossesCommand extends ScenarioCommand {
    @Mixin
    private final SearchOptions search = new SearchOptions(0.5);

    @SuppressWarnings("NullAway.Init")
    LossesCommand() {}

    @Override
    Integer answer() throws ScenarioException, OutputException {
        SolveLimits limits = limits(search.seconds(), search.gapPercent());
        Solver solver = new Search();
        Knowledge knowledge = Knowledge.load();
        Household household = household(knowledge);
        AtomicInteger all = new AtomicInteger();
        AtomicInteger done = new AtomicInteger();
        Losses.Result result = Progress.during(
                () -> all.get() == 0 ? "Planning" : "Plans without a food: " + done.get() + " of " + all.get(),
                () -> Losses.rank(household, knowledge, solver, limits, all::set, done::set));
        if (result instanceof Losses.Result.NoBase none) {
            return noPlan(none.base(), knowledge, solver, "packpotLosses", "its foods cannot be ranked");
        }
        Losses.Result.Ranked ranked = (Losses.Result.Ranked) result;
        if (!ranked.base().verdict().passed()) {
            say("The plan failed the audit, so its foods are not ranked.");
            return ExitCode.AUDIT_FAILED;
        }
        print(() -> LossesReport.text(ranked), () -> LossesReport.json(ranked));
        return ExitCode.DONE;
    }
}
