package packpot.cli;

import java.util.List;
import packpot.explain.Planner;
import packpot.explain.Shortfall;
import packpot.report.NoPlanReport;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import picocli.CommandLine.Model.CommandSpec;

/** What a command says that explains a plan where there is none. */
final class NoBasePlan {
    private static final SolveLimits SHORTFALL = new SolveLimits(10, 0.05);

    private NoBasePlan() {}

    /**
     * Says why.
     *
     * @param wanted what cannot be told without a plan, such as "what drives the cost"
     * @return the exit code
     */
    static int tell(Planner.Result.NoPlan none, Solver solver, CommandSpec spec, Output output, String wanted)
            throws OutputException {
        if (!none.provedImpossible()) {
            spec.commandLine()
                    .getErr()
                    .println("No plan was found in the time given, so " + wanted
                            + " cannot be told. Give more time with --time-limit.");
            return ExitCode.NO_PLAN_IN_TIME;
        }
        spec.commandLine()
                .getErr()
                .println("There is no plan, so " + wanted + " cannot be told. What stands in the way:");
        List<Shortfall.Miss> misses = Progress.during(
                "There is no plan; looking for what stands in the way",
                () -> Shortfall.of(none.model().linearModel(), solver, SHORTFALL));
        String name = none.household().name();
        output.write(spec, output.json() ? NoPlanReport.json(name, misses) : NoPlanReport.text(name, misses));
        return ExitCode.NO_PLAN;
    }
}
