package packpot.cli;

import java.util.Locale;
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
import packpot.search.Search;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import packpot.units.Show;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

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
final class PlanCommand extends ScenarioCommand {
    private static final double CLASH_SECONDS = 15;

    @Mixin
    private final SearchOptions search = new SearchOptions(0.1);

    @SuppressWarnings("NullAway.Init")
    PlanCommand() {}

    @Override
    Integer answer() throws ScenarioException, OutputException {
        SolveLimits limits = limits(search.seconds(), search.gapPercent());
        Solver solver = new Search();
        Knowledge knowledge = Knowledge.load();
        Household household = household(knowledge);
        Planner.Result result =
                Progress.during("Planning", () -> new Planner(knowledge, solver).plan(household, limits));
        if (result instanceof Planner.Result.NoPlan none) {
            return none(none.provedImpossible(), knowledge, solver, household);
        }
        Plan plan = ((Planner.Result.Planned) result).plan();
        Verdict verdict = ((Planner.Result.Planned) result).verdict();
        print(() -> TextReport.of(plan, verdict, household.units()), () -> JsonReport.plan(plan, verdict));
        if (!verdict.passed()) {
            say("The plan failed the audit. Do not feed it.");
            return ExitCode.AUDIT_FAILED;
        }
        return ExitCode.DONE;
    }

    private int none(boolean provedImpossible, Knowledge knowledge, Solver solver, Household household)
            throws OutputException {
        if (!provedImpossible) {
            say(String.format(
                    Locale.ROOT,
                    "No plan was found in %s seconds, and it is not proved that there is none. Give more time with"
                            + " --time-limit.",
                    Show.number(search.seconds())));
            return ExitCode.NO_PLAN_IN_TIME;
        }
        Clash clash = Progress.during(
                "There is no plan; looking for what stands in the way",
                () -> new WhyNot(knowledge, solver)
                        .firstClash(household, CLASH_SECONDS)
                        .orElse(null));
        print(
                () -> WhyNotReport.brief(household.name(), clash, scenario().toString()),
                () -> WhyNotReport.briefJson(household.name(), clash));
        return ExitCode.NO_PLAN;
    }
}
