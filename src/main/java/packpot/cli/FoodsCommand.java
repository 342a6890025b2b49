package packpot.cli;

import java.util.List;
import java.util.concurrent.Callable;
import packpot.food.Food;
import packpot.household.Knowledge;
import packpot.report.FoodsReport;
import packpot.report.JsonReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A search in the food catalogue. */
@Command(
        name = "foods",
        mixinStandardHelpOptions = true,
        description = "Find foods of the catalogue by words of their names or by group; all words must match.",
        footerHeading = "%nExample:%n",
        footer = {"  packpot foods turkey ground", "  packpot foods --details beef liver"})
final class FoodsCommand implements Callable<Integer> {
    @Parameters(paramLabel = "WORD", arity = "0..*", description = "words of a name, such as: turkey ground")
    private List<String> words = List.of();

    @Option(names = "--details", description = "every figure of each food that is found")
    private boolean details;

    @Mixin
    private Output output;

    @Spec
    private CommandSpec spec;

    @SuppressWarnings("NullAway.Init")
    FoodsCommand() {}

    @Override
    public Integer call() throws OutputException {
        Knowledge knowledge = Knowledge.load();
        List<Food> found = knowledge.foods().search(words);
        if (output.json()) {
            output.write(spec, JsonReport.of(FoodsReport.data(found, knowledge)));
        } else {
            output.write(spec, FoodsReport.text(words, found, knowledge, details));
        }
        return ExitCode.DONE;
    }
}
