package packpot.cli;

import java.util.concurrent.atomic.AtomicReference;
import packpot.explain.Planner;
import packpot.explain.WhyNot;
import packpot.household.Knowledge;
import packpot.report.WhyNotReport;
import packpot.solver.Solver;
import picocli.CommandLine.Model.CommandSpec;

/** What a command says that starts from the plan of a scenario, where there is none: why, and what would mend it. */
final class NoBasePlan {

    private NoBasePlan() {}

    /**
     * Says why.
     *
     * @param marker the field by which programs know what the command prints
     * @param so what follows for the command, such as "there is nothing to compare with"
     * @return the exit code
     */
    static int tell(
            Planner.Result.NoPlan none,
            Knowledge knowledge,
            Solver solver,
            CommandSpec spec,
            Output output,
            String marker,
            String so)
            throws OutputException {
        if (!none.provedImpossible()) {
            spec.commandLine()
                    .getErr()
                    .println("No plan for the scenario as it stands was found in the time given, so " + so
                            + ". Give more time with --time-limit.");
            return ExitCode.NO_PLAN_IN_TIME;
        }
        spec.commandLine().getErr().println("The scenario has no plan as it stands, so " + so + ". Why:");
        AtomicReference<String> now = new AtomicReference<>("");
        WhyNot.Answer.NoPlan why = Progress.during(
                now::get,
                () -> new WhyNot(knowledge, solver)
                        .explainNone(none.household(), WhyNotCommand.USUAL_SECONDS, now::set));
        output.write(spec, output.json() ? WhyNotReport.insteadJson(marker, why) : WhyNotReport.text(why));
        return ExitCode.NO_PLAN;
    }
}
