package packpot.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.needs.Needs;
import packpot.report.JsonReport;
import packpot.report.TargetsReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What each dog must get, with sources; no planning. */
@Command(
        name = "targets",
        mixinStandardHelpOptions = true,
        description = "Show the energy and nutrient targets of each dog of a scenario, each with its source.",
        footerHeading = "%nExample:%n",
        footer = "  packpot targets scenarios/growing-puppy.json")
final class TargetsCommand implements Callable<Integer> {
    @Parameters(paramLabel = "SCENARIO", description = "a scenario file")
    private Path scenario;

    @Mixin
    private Output output;

    @Spec
    private CommandSpec spec;

    @SuppressWarnings("NullAway.Init")
    TargetsCommand() {}

    @Override
    public Integer call() throws ScenarioException, OutputException {
        Knowledge knowledge = Knowledge.load();
        Household household = Scenarios.read(knowledge, scenario);
        Needs needs = Needs.of(household, knowledge);
        output.write(
                spec,
                output.json()
                        ? JsonReport.of(TargetsReport.data(needs, knowledge.nutrients()))
                        : TargetsReport.text(needs, knowledge.nutrients(), household));
        return ExitCode.DONE;
    }
}
