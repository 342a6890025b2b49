package packpot.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import packpot.audit.Verdict;
import packpot.explain.Clash;
import packpot.explain.Planner;
import packpot.explain.WhyNot;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.plan.Plan;
import packpot.report.JsonReport;
import packpot.report.PlansReport;
import packpot.report.TextReport;
import packpot.report.WhyNotReport;
import packpot.search.Search;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import packpot.units.Show;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** The main job: a least-cost plan for one cook day, audited before it is shown. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        description = {
            "Plan one cook day: shopping, pot, bowls, bags, cost, and every nutrient of every dog.",
            "",
            "Several scenarios are planned in one process, as many at a time as there are cores, and told in their order,"
                    + " each in one line: file, household, cost a day, and within how much of the cheapest it is"
                    + " proved to be, or what is wrong with it. What is wrong with one stops no other. With --json each"
                    + " line is a document of models/plan.schema.json (JSON Lines)."
        },
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
        footerHeading = "%nOf several scenarios the exit code is that of the worst: the first that came up of%n"
                + "1, 5, 3, 6, 4, 0. After 7 no more of them are told.%n%nExample:%n",
        footer = {
            "  packpot plan scenarios/three-adults.json",
            "  packpot plan mine.json --json --out plan.json",
            "  packpot plan kennel/*.json --json > plans.jsonl"
        })
final class PlanCommand extends ScenarioCommand {
    private static final double CLASH_SECONDS = 15;

    @Parameters(
            index = "1..*",
            arity = "0..*",
            paramLabel = "SCENARIO",
            description = "further scenario files; --out takes the plan of one alone")
    private final List<Path> further = new ArrayList<>();

    @Mixin
    private final SearchOptions search = new SearchOptions(0.1);

    @SuppressWarnings("NullAway.Init")
    PlanCommand() {}

    @Override
    Integer answer() throws ScenarioException, OutputException {
        SolveLimits limits = limits(search.seconds(), search.gapPercent());
        Knowledge knowledge = Knowledge.load();
        return further.isEmpty() ? one(knowledge, limits) : several(knowledge, limits);
    }

    private int one(Knowledge knowledge, SolveLimits limits) throws ScenarioException, OutputException {
        Solver solver = new Search();
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

    private int several(Knowledge knowledge, SolveLimits limits) throws OutputException {
        if (toFile()) {
            throw wrongUse("--out takes the plan of one scenario, and here are " + (1 + further.size())
                    + "; plan one alone, or send the lines into a file:"
                    + " packpot plan A.json B.json --json > plans.jsonl");
        }
        List<Path> files =
                Stream.concat(Stream.of(scenario()), further.stream()).toList();
        PlansReport report = new PlansReport(files.stream().map(Path::toString).toList(), json());
        Tally tally = new Tally();
        print(report::head, report::head);
        new ManyPlans(knowledge, new Search(), limits, Math.min(CLASH_SECONDS, limits.seconds()), report)
                .plan(files, answer -> {
                    tally.add(answer);
                    print(answer::text, answer::text);
                });
        String summary = tally.words() + ".";
        if (json()) {
            say(summary);
        } else {
            print(() -> "\n" + summary + "\n", () -> "");
        }
        if (!json() && tally.files(ExitCode.DONE) < files.size()) {
            say("To read all that is wrong with one of them, plan it alone.");
        }
        if (tally.files(ExitCode.FAULT_OF_PROGRAM) > 0) {
            say(Main.REPORT);
        }
        return tally.exitCode();
    }
}
