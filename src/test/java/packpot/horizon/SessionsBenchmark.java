package packpot.horizon;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.household.HorizonScenario;
import packpot.household.Household;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;
import packpot.search.Search;
import packpot.solver.SolveLimits;

/**
 * How long several cook days take, by cook days and dogs; 60 foods and 13 supplements in whole packs. No part of the
 * ordinary tests: {@code mvn -q test -Dtest=SessionsBenchmark} prints the table of DEVELOPERS.md.
 */
class SessionsBenchmark {
    private static final Path SCENARIO = Path.of("src", "test", "resources", "sessions", "sixty-foods.json");

    @Test
    void table() throws ScenarioException {
        Sessions sessions = new Sessions(Demo.knowledge(), new Search());
        System.out.println("| cook days | weeks | dogs | seconds | proved within | seconds per cook day and dog |");
        System.out.println("| --- | --- | --- | --- | --- | --- |");
        for (int dogs : new int[] {1, 3, 5}) {
            for (int weeks : new int[] {4, 8, 16, 26}) {
                HorizonScenario all =
                        new ScenarioReader(Demo.knowledge(), LocalDate.of(2026, 3, 7)).readWithHorizon(SCENARIO, weeks);
                Household some = all.household()
                        .withDogs(List.copyOf(all.household().dogs().subList(0, dogs)));
                long started = System.nanoTime();
                Sessions.Answer answer =
                        sessions.plan(new HorizonScenario(some, all.horizon()), new SolveLimits(60, 0.008), done -> {});
                double seconds = (System.nanoTime() - started) / 1e9;
                assertThat(answer).isInstanceOf(Sessions.Answer.Planned.class);
                HorizonPlan plan = ((Sessions.Answer.Planned) answer).plan();
                assertThat(plan.audit(Demo.knowledge())).isEmpty();
                System.out.printf(
                        Locale.ROOT,
                        "| %d | %d | %d | %.1f | %.2f %% | %.2f |%n",
                        plan.sessions().size(),
                        weeks,
                        dogs,
                        seconds,
                        100 * plan.cost().gapShare(),
                        seconds / plan.sessions().size() / dogs);
            }
        }
    }
}
