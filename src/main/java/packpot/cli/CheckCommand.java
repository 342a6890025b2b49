package packpot.cli;

import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import packpot.audit.RecipeAudit;
import packpot.audit.RecipeVerdict;
import packpot.explain.RecipeMend;
import packpot.explain.RecipeMender;
import packpot.explain.RecipeSwap;
import packpot.household.Knowledge;
import packpot.household.RecipeScenario;
import packpot.household.ScenarioException;
import packpot.household.SwapReader;
import packpot.report.JsonReport;
import packpot.report.RecipeReport;
import packpot.search.Search;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Checks a recipe that somebody cooks, and mends it. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = {
            "Check a recipe that you cook today: energy and every nutrient for every dog that it feeds, foods that are"
                    + " not safe, and three ways to mend it, each checked like a plan.",
            "",
            "The recipe stands in the scenario under \"recipe\", or in a file of its own; its fields are described in"
                    + " models/recipe.schema.json, those of --json in models/recipe-check.schema.json."
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:the recipe was checked, whether it is good or not",
            "1:a fault of the program",
            "2:the command was used wrongly",
            "3:scenario, recipe or swap have faults, all listed; nothing was written",
            "4:with --show: there is no such mend, or it was not found in the time given",
            "7:the output could not be written"
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  packpot check mine.json",
            "  packpot check scenarios/three-adults.json --recipe scenarios/recipes/meat-and-rice.json",
            "  packpot check mine.json --show 2",
            "  packpot check mine.json --swap \"chicken thigh=ground turkey\" --swap-by protein"
        })
final class CheckCommand extends ScenarioCommand {
    @Option(names = "--recipe", paramLabel = "FILE", description = "a recipe in a file of its own")
    private @Nullable Path recipe;

    @Option(
            names = "--swap",
            paramLabel = "FOOD=OTHER",
            description = "show side by side what moves when another food takes a food's place; may be repeated")
    private List<String> swaps = List.of();

    @Option(
            names = "--swap-by",
            paramLabel = "WHAT",
            defaultValue = "weight",
            description = "what the new food equals the old one in: ${COMPLETION-CANDIDATES}; default: weight")
    private RecipeSwap.By by;

    @Option(
            names = "--moved",
            paramLabel = "PERCENT",
            defaultValue = "10",
            description = "with --swap: list nutrients that moved by more than this; default: ${DEFAULT-VALUE}")
    private double movedPercent;

    @Option(
            names = "--band",
            paramLabel = "PERCENT",
            defaultValue = "25",
            description = "how far shares may lie off the recipe's in the third mend, as a part of each share; default:"
                    + " ${DEFAULT-VALUE}")
    private double bandPercent;

    @Option(
            names = "--show",
            paramLabel = "NUMBER",
            description = "look for this mend alone, 1 to 3, and print it in full as a plan")
    private @Nullable Integer show;

    @Option(names = "--no-mends", description = "check alone, look for no mends")
    private boolean noMends;

    @Option(
            names = "--time-limit",
            paramLabel = "SECONDS",
            defaultValue = "20",
            description = "longest time to search for one mend; default: ${DEFAULT-VALUE}")
    private double seconds;

    @Option(
            names = "--gap",
            paramLabel = "PERCENT",
            defaultValue = "0.5",
            description = "stop when a mend is proved to be within this of the best; default: ${DEFAULT-VALUE}")
    private double gapPercent;

    @SuppressWarnings("NullAway.Init")
    CheckCommand() {}

    @Override
    Integer answer() throws ScenarioException, OutputException {
        SolveLimits limits = limits(seconds, gapPercent);
        range("--moved", movedPercent, 0, 1000);
        range("--band", bandPercent, 0, 100);
        Integer shown = show;
        if (shown != null && (shown < 1 || shown > RecipeMend.Way.values().length)) {
            throw wrongUse("--show is from 1 to " + RecipeMend.Way.values().length);
        }
        if (shown != null && (noMends || !swaps.isEmpty())) {
            throw wrongUse("--show prints a mend in full, and goes with neither --no-mends nor --swap");
        }
        Solver solver = new Search();
        Knowledge knowledge = Knowledge.load();
        RecipeScenario read = Scenarios.reader(knowledge).readWithRecipe(scenario(), recipe);
        double band = bandPercent / 100;
        if (shown != null) {
            RecipeMend.Way way = List.of(RecipeMend.Way.values()).get(shown - 1);
            return showOne(
                    read,
                    Progress.during(
                            "Mending the recipe",
                            () -> new RecipeMender(knowledge, solver, band).mend(way, read, limits)),
                    band);
        }
        RecipeSwap swap = swap(knowledge, read);
        RecipeVerdict verdict = RecipeAudit.check(read.recipe(), read.household(), knowledge);
        List<RecipeMend> mends = noMends
                ? List.of()
                : Progress.during(
                        "Mending the recipe in three ways",
                        () -> new RecipeMender(knowledge, solver, band).all(read, limits));
        RecipeReport report = new RecipeReport(read, knowledge, verdict, mends, swap, band);
        print(() -> report.text(), () -> report.json());
        return ExitCode.DONE;
    }

    private int showOne(RecipeScenario read, RecipeMend mend, double band) throws OutputException {
        if (mend.outcome() instanceof RecipeMend.Outcome.Planned planned) {
            print(
                    () -> RecipeReport.inFull(mend.way(), planned, read.household(), band),
                    () -> JsonReport.plan(planned.plan(), planned.verdict()));
            return ExitCode.DONE;
        }
        say("There is no such mend to show: " + ((RecipeMend.Outcome.None) mend.outcome()).reason()
                + ". Without --show, what stands in the way is told.");
        return ExitCode.NO_PLAN;
    }

    private @Nullable RecipeSwap swap(Knowledge knowledge, RecipeScenario read) throws ScenarioException {
        if (swaps.isEmpty()) {
            return null;
        }
        List<SwapReader.Swap> asked = new SwapReader(knowledge, read).read(swaps);
        try {
            return RecipeSwap.of(read, asked, by, movedPercent / 100, knowledge);
        } catch (RecipeSwap.NothingInCommonException e) {
            throw wrongUse("--swap-by " + by.key() + ": " + e.getMessage() + "; try --swap-by weight", e);
        }
    }
}
