package packpot.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.needs.Needs;
import packpot.needs.WeeklyNeeds;
import packpot.report.JsonReport;
import packpot.report.TargetsOverTimeReport;
import packpot.report.TargetsReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What each dog must get, with sources; no planning. */
@Command(
        name = "targets",
        mixinStandardHelpOptions = true,
        description = {
            "Show the energy and nutrient targets of each dog of a scenario, each with its source.",
            "With --weeks, show what every dog is on each later week: age, weight, life stage, energy and the column of"
                    + " its profile. The fields of --json are then described in models/targets-over-time.schema.json."
        },
        footerHeading = "%nExample:%n",
        footer = {
            "  packpot targets scenarios/growing-puppy.json",
            "  packpot targets scenarios/growing-puppy.json --weeks 12"
        })
final class TargetsCommand implements Callable<Integer> {
    private static final int MOST_WEEKS = 52;

    @Parameters(paramLabel = "SCENARIO", description = "a scenario file")
    private Path scenario;

    @Option(
            names = "--weeks",
            paramLabel = "N",
            description = "how each dog goes on for so many weeks, 1 to " + MOST_WEEKS)
    private @Nullable Integer weeks;

    @Mixin
    private Output output;

    @Spec
    private CommandSpec spec;

    @SuppressWarnings("NullAway.Init")
    TargetsCommand() {}

    @Override
    public Integer call() throws ScenarioException, OutputException {
        if (weeks != null && (weeks < 1 || weeks > MOST_WEEKS)) {
            throw new ParameterException(
                    spec.commandLine(), "--weeks: read " + weeks + ", expected a whole number from 1 to " + MOST_WEEKS);
        }
        Knowledge knowledge = Knowledge.load();
        Household household = Scenarios.read(knowledge, scenario);
        if (weeks != null) {
            WeeklyNeeds weekly = WeeklyNeeds.of(household, knowledge, weeks);
            output.write(
                    spec,
                    output.json()
                            ? JsonReport.of(TargetsOverTimeReport.data(weekly))
                            : TargetsOverTimeReport.text(weekly, household.units()));
            return ExitCode.DONE;
        }
        Needs needs = Needs.of(household, knowledge);
        output.write(
                spec,
                output.json()
                        ? JsonReport.of(TargetsReport.data(needs, knowledge.nutrients()))
                        : TargetsReport.text(needs, knowledge.nutrients(), household));
        return ExitCode.DONE;
    }
}
