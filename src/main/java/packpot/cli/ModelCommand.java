package packpot.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.needs.Needs;
import packpot.ration.RationModel;
import packpot.ration.RationPlanner;
import packpot.solver.MpsWriter;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The model itself, for whoever wants to solve it with something else. */
@Command(
        name = "model",
        mixinStandardHelpOptions = true,
        description = "Write the model of a scenario as free-format MPS, which every solver reads.",
        footerHeading = "%nExample:%n",
        footer = "  packpot model scenarios/three-adults.json --out three-adults.mps")
final class ModelCommand implements Callable<Integer> {
    @Parameters(paramLabel = "SCENARIO", description = "a scenario file")
    private Path scenario;

    @Mixin
    private Output output;

    @Spec
    private CommandSpec spec;

    @SuppressWarnings("NullAway.Init")
    ModelCommand() {}

    @Override
    public Integer call() throws ScenarioException, OutputException {
        Knowledge knowledge = Knowledge.load();
        Household household = Scenarios.read(knowledge, scenario);
        Needs needs = Needs.of(household, knowledge);
        RationModel model = RationModel.of(household, knowledge, needs, RationPlanner.sharesByNeed(needs));
        output.write(spec, MpsWriter.write(model.linearModel(), household.name()));
        return ExitCode.DONE;
    }
}
