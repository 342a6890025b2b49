package packpot.cli;

import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import packpot.explain.Alternatives;
import packpot.explain.Planner;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.report.AlternativesReport;
import packpot.report.JsonReport;
import packpot.report.TextReport;
import packpot.search.Search;
import packpot.solver.SolveLimits;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Variety: plans at nearly the same cost whose foods differ as much as they can. */
@Command(
        name = "alternatives",
        mixinStandardHelpOptions = true,
        description = "Find plans that cost nearly as little as the cheapest and differ from it and from each other as"
                + " much as they can in their foods; each is checked.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:the plans",
            "1:a fault of the program",
            "2:the command was used wrongly",
            "3:the scenario has faults, all listed",
            "4:there is no plan",
            "5:the cheapest plan failed the audit",
            "6:no plan was found in the time given",
            "7:the output could not be written"
        },
        footerHeading = "%nExample:%n",
        footer = {
            "  packpot alternatives scenarios/three-adults.json",
            "  packpot alternatives mine.json --within 3%% --plans 4 --show 2"
        })
final class AlternativesCommand extends ScenarioCommand {
    private static final int MOST_PLANS = 5;
    private static final double MOST_WITHIN = 1;

    @Option(
            names = "--within",
            paramLabel = "PERCENT",
            defaultValue = "5%",
            description = "how much more than the cheapest a plan may cost; default: ${DEFAULT-VALUE}")
    private String within;

    @Option(
            names = "--plans",
            paramLabel = "COUNT",
            defaultValue = "5",
            description = "how many plans, the cheapest counted, 2 to 5; default: ${DEFAULT-VALUE}")
    private int plans;

    @Option(names = "--show", paramLabel = "NUMBER", description = "print one of the plans in full")
    private @Nullable Integer show;

    @Option(
            names = "--time-limit",
            paramLabel = "SECONDS",
            defaultValue = "45",
            description = "longest time for all plans together; default: ${DEFAULT-VALUE}")
    private double seconds;

    @SuppressWarnings("NullAway.Init")
    AlternativesCommand() {}

    @Override
    Integer answer() throws ScenarioException, OutputException {
        timeLimit(seconds);
        if (plans < 2 || plans > MOST_PLANS) {
            throw wrongUse("--plans is from 2 to " + MOST_PLANS);
        }
        Integer shown = show;
        if (shown != null && (shown < 1 || shown > plans)) {
            throw wrongUse("--show is from 1 to " + plans + ", as --plans says");
        }
        double share = share();
        Search solver = new Search();
        Knowledge knowledge = Knowledge.load();
        Household household = household(knowledge);
        Alternatives.Result result = Progress.during(
                "Planning, then looking for plans that differ",
                () -> new Alternatives(knowledge, solver)
                        .find(
                                household,
                                share,
                                plans,
                                new SolveLimits(seconds, SolveLimits.USUAL.relativeGap()),
                                seconds));
        if (result instanceof Alternatives.Result.NoBase none) {
            return noPlan(
                    none.none(),
                    knowledge,
                    solver,
                    "packpotAlternatives",
                    "there is none that others could differ from");
        }
        Alternatives.Found found = ((Alternatives.Result.Several) result).found();
        if (!found.plans().get(0).planned().verdict().passed()) {
            say("The cheapest plan failed the audit, so no others are shown beside it.");
            return ExitCode.AUDIT_FAILED;
        }
        if (shown != null) {
            return showOne(found, shown);
        }
        print(() -> AlternativesReport.text(found), () -> AlternativesReport.json(found));
        return ExitCode.DONE;
    }

    private int showOne(Alternatives.Found found, int number) throws OutputException {
        if (number > found.plans().size()) {
            say("There are " + found.plans().size() + " plans, so plan " + number + " cannot be shown: "
                    + found.reason() + ".");
            return ExitCode.NO_PLAN;
        }
        Planner.Result.Planned planned = found.plans().get(number - 1).planned();
        print(
                () -> TextReport.of(
                        planned.plan(), planned.verdict(), planned.household().units()),
                () -> JsonReport.plan(planned.plan(), planned.verdict()));
        return ExitCode.DONE;
    }

    private double share() {
        OptionalDouble share = Percent.share(within);
        if (share.isPresent() && share.getAsDouble() > 0 && share.getAsDouble() <= MOST_WITHIN) {
            return share.getAsDouble();
        }
        throw wrongUse("--within is a percentage above 0 and at most 100, such as 5%; read \"" + within + "\"");
    }
}
