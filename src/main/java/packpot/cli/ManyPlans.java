package packpot.cli;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import packpot.explain.Clash;
import packpot.explain.Planner;
import packpot.explain.WhyNot;
import packpot.household.Fault;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.report.PlansReport;
import packpot.report.PlansReport.Failure;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import packpot.units.Show;

/** Plans many scenario files in one process, as many at a time as there are cores; what is wrong with one stops no other. */
final class ManyPlans {
    /** So many files a core may be ahead of one that takes long: no core waits, and not all answers are in memory. */
    private static final int AHEAD = 8;

    private final Knowledge knowledge;
    private final Solver solver;
    private final SolveLimits limits;
    private final double clashSeconds;
    private final PlansReport report;

    /**
     * Plans to be.
     *
     * @param clashSeconds longest time to look for what stands in the way of a plan
     */
    ManyPlans(Knowledge knowledge, Solver solver, SolveLimits limits, double clashSeconds, PlansReport report) {
        this.knowledge = knowledge;
        this.solver = solver;
        this.limits = limits;
        this.clashSeconds = clashSeconds;
        this.report = report;
    }

    /**
     * What came of one file.
     *
     * @param text of the report
     * @param proved whether there is a plan and it is proved as sharply as was wished
     */
    record Answer(int exitCode, String text, boolean proved) {}

    /** Is told every answer. */
    interface Teller {
        void tell(Answer answer) throws OutputException;
    }

    /** Plans the files, and tells of them in their order. */
    void plan(List<Path> files, Teller teller) throws OutputException {
        int cores = Runtime.getRuntime().availableProcessors();
        ExecutorService pool = Executors.newFixedThreadPool(cores, task -> {
            Thread thread = new Thread(task, "packpot-plans");
            thread.setDaemon(true);
            return thread;
        });
        try {
            Deque<Future<Answer>> begun = new ArrayDeque<>();
            int told = 0;
            for (Path file : files) {
                begun.add(pool.submit(() -> answer(file)));
                if (begun.size() >= AHEAD * cores) {
                    teller.tell(awaited(begun.remove(), ++told, files.size()));
                }
            }
            while (!begun.isEmpty()) {
                teller.tell(awaited(begun.remove(), ++told, files.size()));
            }
        } finally {
            pool.shutdownNow();
        }
    }

    private static Answer awaited(Future<Answer> answer, int number, int all) {
        return Progress.during("Planning " + number + " of " + all, () -> {
            try {
                return answer.get();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException("the work was interrupted", e);
            } catch (ExecutionException e) {
                if (e.getCause() instanceof Error error) {
                    throw error;
                }
                throw new IllegalStateException("the work failed", e);
            }
        });
    }

    /** What comes of one file; whatever is wrong with it is an answer, too. */
    Answer answer(Path file) {
        String name = file.toString();
        try {
            return answer(name, Scenarios.read(knowledge, file));
        } catch (ScenarioException e) {
            return failed(name, ExitCode.SCENARIO_FAULTS, Failure.SCENARIO_FAULTS, e.faults());
        } catch (RuntimeException e) {
            return failed(
                    name, ExitCode.FAULT_OF_PROGRAM, Failure.FAULT_OF_PROGRAM, List.of(new Fault("", Main.words(e))));
        }
    }

    private Answer answer(String name, Household household) {
        Planner.Result result = new Planner(knowledge, solver).plan(household, limits);
        if (result instanceof Planner.Result.Planned planned) {
            return new Answer(
                    planned.verdict().passed() ? ExitCode.DONE : ExitCode.AUDIT_FAILED,
                    report.planned(name, planned.plan(), planned.verdict()),
                    planned.plan().proof().provedOptimal());
        }
        if (!((Planner.Result.NoPlan) result).provedImpossible()) {
            String why = "no plan was found in " + Show.number(limits.seconds())
                    + " s, nor proved that there is none; give more time with --time-limit";
            return failed(name, ExitCode.NO_PLAN_IN_TIME, Failure.NO_PLAN_IN_TIME, List.of(new Fault("", why)));
        }
        @Nullable
        Clash clash = new WhyNot(knowledge, solver)
                .firstClash(household, clashSeconds)
                .orElse(null);
        return new Answer(ExitCode.NO_PLAN, report.noPlan(name, household.name(), clash), false);
    }

    private Answer failed(String name, int exitCode, Failure failure, List<Fault> faults) {
        return new Answer(exitCode, report.failed(name, failure, faults), false);
    }
}
