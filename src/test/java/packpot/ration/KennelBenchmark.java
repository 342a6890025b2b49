package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.KennelScenarios;
import packpot.explain.Planner;
import packpot.household.Household;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;
import packpot.search.Search;
import packpot.solver.SolveLimits;

/**
 * How long kennels take, 150 foods in the pantry, a cold process but for what came before it. No part of the ordinary tests:
 * {@code mvn -q test -Dtest=KennelBenchmark} prints the table of DEVELOPERS.md.
 */
class KennelBenchmark {
    @Test
    void table() throws ScenarioException {
        System.out.println("| dogs | seconds | proved within |");
        System.out.println("| --- | --- | --- |");
        for (int dogs : new int[] {12, 16, 20, 24, 25, 60, 100, 200}) {
            Household household = new ScenarioReader(Demo.knowledge(), LocalDate.of(2026, 3, 7))
                    .read(KennelScenarios.file(dogs, 150));
            long started = System.nanoTime();
            Planner.Result result =
                    new Planner(Demo.knowledge(), new Search()).plan(household, new SolveLimits(20, 0.001));
            double seconds = (System.nanoTime() - started) / 1e9;
            assertThat(result).isInstanceOf(Planner.Result.Planned.class);
            Planner.Result.Planned planned = (Planner.Result.Planned) result;
            assertThat(planned.verdict().passed()).isTrue();
            System.out.printf(
                    Locale.ROOT,
                    "| %d | %.1f | %.2f %% |%n",
                    dogs,
                    seconds,
                    100 * planned.plan().proof().gapShare());
        }
    }
}
