package packpot.cli;

import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicReference;
import packpot.explain.MarginSearch;
import packpot.explain.Planner;
import packpot.food.Nutrient;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.report.SpreadReport;
import packpot.search.Search;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import packpot.spread.Odds;
import packpot.spread.Spread;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How sure a plan is of its minimums, and which margin buys certainty. */
@Command(
        name = "spread",
        mixinStandardHelpOptions = true,
        description = {
            "Foods vary and scales are coarse: draw what the plan really brings many times over, and show how often each"
                    + " dog's minimums are met; then plan with larger margins until each is met as often as wished.",
            "",
            "It is a reckoning with stated spreads and no promise; ask your veterinarian."
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:how sure the plan is",
            "1:a fault of the program",
            "2:the command was used wrongly",
            "3:the scenario has faults, all listed",
            "4:there is no plan",
            "5:the plan failed the audit, so nothing is drawn",
            "6:no plan was found in the time given",
            "7:the output could not be written"
        },
        footerHeading = "%nExample:%n",
        footer = {
            "  packpot spread scenarios/three-adults.json",
            "  packpot spread mine.json --spread zinc=20%% --weighing-error 3%% --seed 7"
        })
final class SpreadCommand extends ScenarioCommand {
    private static final double LEAST_WISHED = 0.5;
    private static final double MOST_WISHED = 0.999;
    private static final double LARGEST_MARGIN = 0.5;

    @Option(
            names = "--draws",
            paramLabel = "COUNT",
            defaultValue = "10000",
            description = "how often the plan is drawn; default: ${DEFAULT-VALUE}")
    private int draws;

    @Option(
            names = "--seed",
            paramLabel = "NUMBER",
            defaultValue = "1",
            description = "where the random numbers begin; the same seed, the same answer; default: ${DEFAULT-VALUE}")
    private String seed;

    @Option(
            names = "--share",
            paramLabel = "PERCENT",
            defaultValue = "95%",
            description = "how often each minimum should be met; default: ${DEFAULT-VALUE}")
    private String share;

    @Option(
            names = "--largest-margin",
            paramLabel = "PERCENT",
            defaultValue = "30%",
            description = "largest margin to plan with, in whole percent; default: ${DEFAULT-VALUE}")
    private String largestMargin;

    @Option(names = "--no-margin", description = "plan with no other margin than the scenario's own")
    private boolean noMargin;

    @Mixin
    private final SpreadOptions spreads = new SpreadOptions();

    @Mixin
    private final SearchOptions search = new SearchOptions(0.5);

    @SuppressWarnings("NullAway.Init")
    SpreadCommand() {}

    @Override
    Integer answer() throws ScenarioException, OutputException {
        range("--draws", draws, 1, Odds.MOST_DRAWS);
        SolveLimits limits = limits(search.seconds(), search.gapPercent());
        double wished = percent("--share", share, LEAST_WISHED, MOST_WISHED);
        int largest = (int) Math.floor(100 * percent("--largest-margin", largestMargin, 0, LARGEST_MARGIN) + 1e-9);
        long number = seed();
        Knowledge knowledge = Knowledge.load();
        Spread spread = spread(knowledge);
        Household household = household(knowledge);
        Solver solver = new Search();
        MarginSearch.Question question = new MarginSearch.Question(spread, draws, number, wished, largest);
        MarginSearch margins = new MarginSearch(knowledge, solver, limits, question);
        Planner.Searched own = Progress.during("Planning", () -> margins.plan(household));
        if (own.result() instanceof Planner.Result.NoPlan none) {
            return noPlan(none, knowledge, solver, "packpotSpread", "there is nothing to draw");
        }
        Planner.Result.Planned base = (Planner.Result.Planned) own.result();
        if (!base.verdict().passed()) {
            say("The plan failed the audit, so how sure it is means nothing.");
            return ExitCode.AUDIT_FAILED;
        }
        MarginSearch.Answer answer = noMargin ? margins.alone(base) : searched(margins, own, base);
        SpreadReport report =
                new SpreadReport(answer, question, !noMargin, spreads.stated(), recalled(spread, knowledge));
        print(report::text, report::json);
        return ExitCode.DONE;
    }

    private static MarginSearch.Answer searched(
            MarginSearch margins, Planner.Searched own, Planner.Result.Planned base) {
        AtomicReference<String> now = new AtomicReference<>("");
        return Progress.during(now::get, () -> margins.from(own, base, now::set));
    }

    private static List<String> recalled(Spread spread, Knowledge knowledge) {
        return knowledge.nutrients().all().stream()
                .filter(nutrient ->
                        !Collections.disjoint(nutrient.towardMinimum().keySet(), spread.recalled()))
                .map(Nutrient::label)
                .toList();
    }

    private long seed() {
        try {
            return Long.parseLong(seed.strip());
        } catch (NumberFormatException e) {
            throw wrongUse("--seed is a whole number, such as 7; read \"" + seed + "\"", e);
        }
    }

    private Spread spread(Knowledge knowledge) {
        try {
            return spreads.read(knowledge.nutrients());
        } catch (SpreadOptions.WrongOptionException e) {
            throw wrongUse(String.valueOf(e.getMessage()), e);
        }
    }

    private double percent(String option, String given, double least, double most) {
        OptionalDouble read = Percent.share(given);
        if (read.isEmpty()) {
            throw wrongUse(option + " is a percentage, such as 20%; read \"" + given + "\"");
        }
        range(option, 100 * read.getAsDouble(), 100 * least, 100 * most);
        return read.getAsDouble();
    }
}
