package packpot.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import packpot.explain.MendEdits;
import packpot.explain.Planner;
import packpot.explain.WhyNot;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.report.WhyNotReport;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import packpot.units.Show;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What all commands have in common that are asked about one scenario. */
abstract class ScenarioCommand implements Callable<Integer> {
    private static final int MOST_SECONDS = 86_400;

    @Parameters(paramLabel = "SCENARIO", description = "a scenario file; see the README and scenarios/")
    private Path scenario;

    @Mixin
    private Output output;

    @Spec
    private CommandSpec spec;

    @SuppressWarnings("NullAway.Init")
    ScenarioCommand() {}

    /** Answers, once it is sure that the answer can be written where it is to go: nobody waits for nothing. */
    @Override
    public final Integer call() throws ScenarioException, OutputException {
        output.check();
        return answer();
    }

    /** Does what the command is for, and gives the exit code. */
    abstract Integer answer() throws ScenarioException, OutputException;

    final Path scenario() {
        return scenario;
    }

    final Household household(Knowledge knowledge) throws ScenarioException {
        return Scenarios.read(knowledge, scenario);
    }

    /** Whether the result is for programs. */
    final boolean json() {
        return output.json();
    }

    /** Whether the result goes to a file and not to the terminal. */
    final boolean toFile() {
        return output.file() != null;
    }

    /** Whether files of the user's are replaced. */
    final boolean overwrite() {
        return output.overwrite();
    }

    /** Prints the result, for people or for programs. */
    final void print(Supplier<String> text, Supplier<String> json) throws OutputException {
        output.write(spec, (output.json() ? json : text).get());
    }

    /** Refuses a further file that could not be written, or that the result goes to. */
    final void checkFile(String option, Path file) throws OutputException {
        Path result = output.file();
        if (result != null
                && result.toAbsolutePath()
                        .normalize()
                        .equals(file.toAbsolutePath().normalize())) {
            throw wrongUse(option + " and --out name the same file, " + file + "; give each a name of its own");
        }
        output.check(file);
    }

    /** Writes a further file, whole or not at all. */
    final void writeFile(Path file, String text) throws OutputException {
        output.write(file, text);
    }

    /** Tells a person what is no part of the result. */
    final void say(String sentence) {
        spec.commandLine().getErr().println(sentence);
    }

    final ParameterException wrongUse(String sentence) {
        return new ParameterException(spec.commandLine(), sentence);
    }

    final ParameterException wrongUse(String sentence, Throwable cause) {
        return new ParameterException(spec.commandLine(), sentence, cause);
    }

    /** Refuses a figure outside of a range. */
    final void range(String option, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw wrongUse(option + " is from " + plain(least) + " to " + plain(most) + "; read " + plain(value));
        }
    }

    private static String plain(double figure) {
        return Show.number(figure).replace(",", "");
    }

    final void timeLimit(double seconds) {
        if (!(seconds > 0 && seconds <= MOST_SECONDS)) {
            throw wrongUse("--time-limit is from above 0 to " + MOST_SECONDS + " seconds; read " + plain(seconds));
        }
    }

    /** The limits of one search. */
    final SolveLimits limits(double seconds, double gapPercent) {
        timeLimit(seconds);
        range("--gap", gapPercent, 0, 100);
        return new SolveLimits(seconds, gapPercent / 100);
    }

    /**
     * Says why a scenario has no plan to start from, and what would mend it.
     *
     * @param marker the field by which programs know what the command prints
     * @param so what follows for the command, such as "there is nothing to compare with"
     * @return the exit code
     */
    final int noPlan(Planner.Result.NoPlan none, Knowledge knowledge, Solver solver, String marker, String so)
            throws ScenarioException, OutputException {
        if (!none.provedImpossible()) {
            say("No plan for the scenario as it stands was found in the time given, so " + so
                    + ". Give more time with --time-limit.");
            return ExitCode.NO_PLAN_IN_TIME;
        }
        say("The scenario has no plan as it stands, so " + so + ". Why:");
        AtomicReference<String> now = new AtomicReference<>("");
        WhyNot.Answer.NoPlan why = Progress.during(
                now::get,
                () -> new WhyNot(knowledge, solver)
                        .explainNone(none.household(), WhyNotCommand.USUAL_SECONDS, now::set));
        MendEdits edits = Scenarios.edits(
                knowledge, Scenarios.changes(knowledge, scenario).scenario(List.of(), List.of()));
        print(() -> WhyNotReport.text(why, edits), () -> WhyNotReport.insteadJson(marker, why, edits));
        return ExitCode.NO_PLAN;
    }
}
