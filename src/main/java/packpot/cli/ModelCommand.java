package packpot.cli;

import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.needs.Needs;
import packpot.ration.RationModel;
import packpot.ration.RationPlanner;
import packpot.solver.MpsWriter;
import picocli.CommandLine.Command;

/** The model itself, for whoever wants to solve it with something else. */
@Command(
        name = "model",
        mixinStandardHelpOptions = true,
        description = "Write the model of a scenario as free-format MPS, which every solver reads.",
        footerHeading = "%nExample:%n",
        footer = "  packpot model scenarios/three-adults.json --out three-adults.mps")
final class ModelCommand extends ScenarioCommand {
    @SuppressWarnings("NullAway.Init")
    ModelCommand() {}

    @Override
    Integer answer() throws ScenarioException, OutputException {
        Knowledge knowledge = Knowledge.load();
        Household household = household(knowledge);
        Needs needs = Needs.of(household, knowledge);
        RationModel model = RationModel.of(household, knowledge, needs, RationPlanner.sharesByNeed(needs));
        String mps = MpsWriter.write(model.linearModel(), household.name());
        print(() -> mps, () -> mps);
        return ExitCode.DONE;
    }
}
