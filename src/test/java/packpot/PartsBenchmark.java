package packpot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import packpot.audit.PlanAudit;
import packpot.audit.Verdict;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.needs.Needs;
import packpot.plan.Plan;
import packpot.plan.PlanBuilder;
import packpot.ration.RationModel;
import packpot.ration.RationPlanner;
import packpot.ration.RationPlanner.Outcome;
import packpot.report.TextReport;
import packpot.search.Search;
import packpot.solver.LinearModel;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;

/**
 * What the parts of a plan take in a process that has run for a while. No part of the ordinary tests: {@code mvn -q test
 * -Dtest=PartsBenchmark} prints the table of DEVELOPERS.md.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class PartsBenchmark {
    private static final SolveLimits LIMITS = new SolveLimits(60, 0.001);

    @Param({"tiny-freezer", "three-adults", "growing-puppy", "foster-home"})
    String demo;

    private String text;
    private Knowledge knowledge;
    private Household household;
    private Needs needs;
    private LinearModel<?> model;
    private Outcome.Found found;
    private Plan plan;
    private Verdict verdict;

    @Setup
    public void plan() {
        text = Demo.text(Demo.file(demo));
        knowledge = Demo.knowledge();
        household = readScenario();
        needs = needs();
        model = model();
        found = search();
        plan = buildPlan();
        verdict = audit();
        assertThat(verdict.passed()).isTrue();
    }

    @Benchmark
    public Household readScenario() {
        return Demo.read(text);
    }

    @Benchmark
    public Needs needs() {
        return Needs.of(household, knowledge);
    }

    @Benchmark
    public LinearModel<?> model() {
        return RationModel.of(household, knowledge, needs, RationPlanner.sharesByNeed(needs))
                .linearModel();
    }

    @Benchmark
    public Solution solve() {
        return new Search().solve(model, LIMITS);
    }

    @Benchmark
    public Outcome.Found search() {
        return (Outcome.Found) new RationPlanner(knowledge, new Search()).plan(household, needs, LIMITS);
    }

    @Benchmark
    public Plan buildPlan() {
        return PlanBuilder.build(household, knowledge, needs, found.amounts());
    }

    @Benchmark
    public Verdict audit() {
        return PlanAudit.check(plan, household, knowledge);
    }

    @Benchmark
    public String report() {
        return TextReport.of(plan, verdict, household.units());
    }

    @Test
    void table() throws RunnerException {
        var options =
                new OptionsBuilder().include(PartsBenchmark.class.getName()).build();
        StringBuilder table =
                new StringBuilder("| part | demo | milliseconds | 99.9 % within |\n| --- | --- | --- | --- |\n");
        for (RunResult run : new Runner(options).run()) {
            Result<?> result = run.getPrimaryResult();
            table.append(String.format(
                    Locale.ROOT,
                    "| %s | %s | %.2f | %.2f |%n",
                    result.getLabel(),
                    run.getParams().getParam("demo"),
                    result.getScore(),
                    result.getScoreError()));
        }
        System.out.print(table);
    }
}
