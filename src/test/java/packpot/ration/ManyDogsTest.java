package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Demo;
import packpot.GeneratedScenarios;
import packpot.KennelScenarios;
import packpot.audit.PlanAudit;
import packpot.household.Household;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.plan.Plan;
import packpot.plan.PlanBuilder;
import packpot.search.Search;
import packpot.solver.SolveLimits;

/** Dogs alike taken as one, against the model that has every dog for itself. */
@Tag("demos")
class ManyDogsTest {
    private static final SolveLimits LIMITS = new SolveLimits(5, 0.001);
    private static final int GENERATED = 40;

    private static RationPlanner.Outcome together(Household household) {
        return new ManyDogs(household, Demo.knowledge(), new Search())
                .plan(Needs.of(household, Demo.knowledge()), LIMITS);
    }

    private static RationPlanner planner() {
        return new RationPlanner(Demo.knowledge(), new Search());
    }

    private static void assertAudited(Household household, RationPlanner.Outcome.Found found) {
        Plan plan =
                PlanBuilder.build(household, Demo.knowledge(), Needs.of(household, Demo.knowledge()), found.amounts());
        assertThat(PlanAudit.check(plan, household, Demo.knowledge()).findings())
                .as(household.name())
                .isEmpty();
    }

    static Stream<Household> households() {
        return Stream.concat(
                Stream.of("three-adults", "growing-puppy", "foster-home", "tiny-freezer")
                        .map(name -> Demo.read(Demo.text(Demo.file(name)))),
                IntStream.rangeClosed(1, GENERATED)
                        .mapToObj(ManyDogsTest::generated)
                        .flatMap(Optional::stream)
                        .filter(household -> household.dogs().size() >= 3));
    }

    private static Optional<Household> generated(int seed) {
        try {
            return Optional.of(
                    new ScenarioReader(Demo.knowledge(), LocalDate.of(2026, 3, 7)).read(GeneratedScenarios.file(seed)));
        } catch (ScenarioException e) {
            return Optional.empty();
        }
    }

    /** Neither bound passes the other's ration, and what one proves impossible the other does not find. */
    @ParameterizedTest
    @MethodSource("households")
    void boundsHoldOnBothSides(Household household) {
        RationPlanner.Outcome exact = planner().plan(household, Needs.of(household, Demo.knowledge()), LIMITS);
        RationPlanner.Outcome together = together(household);
        if (together instanceof RationPlanner.Outcome.Found found) {
            assertAudited(household, found);
            assertThat(exact).isInstanceOf(RationPlanner.Outcome.Found.class);
            var best = ((RationPlanner.Outcome.Found) exact).amounts();
            assertThat(found.amounts().cost()).isGreaterThanOrEqualTo(best.bound() - 1e-6);
            assertThat(best.cost()).isGreaterThanOrEqualTo(found.amounts().bound() - 1e-6);
        } else if (((RationPlanner.Outcome.None) together).provedImpossible()) {
            assertThat(exact).isInstanceOf(RationPlanner.Outcome.None.class);
        }
    }

    @Test
    void dogsAlikeAddUp() {
        Household household = Demo.read(Demo.text(Demo.file("three-adults")));
        List<DogNeed> dogs = Needs.of(household, Demo.knowledge()).dogs();
        DogNeed all = DogNeed.together(dogs);
        assertThat(all.heads()).isEqualTo(3);
        assertThat(all.kcalPerDay())
                .isEqualTo(dogs.get(0).kcalPerDay()
                        + dogs.get(1).kcalPerDay()
                        + dogs.get(2).kcalPerDay());
    }

    /** Sixty dogs from 3 to 45 kg and 150 foods: every dog passes the audit, and little is left to prove. */
    @Test
    void aKennelIsPlannedAndProved() throws ScenarioException {
        Household household =
                new ScenarioReader(Demo.knowledge(), LocalDate.of(2026, 3, 7)).read(KennelScenarios.file(60, 150));
        RationPlanner.Outcome outcome = planner().plan(household, Needs.of(household, Demo.knowledge()), LIMITS);
        assertThat(outcome).isInstanceOf(RationPlanner.Outcome.Found.class);
        var found = (RationPlanner.Outcome.Found) outcome;
        assertAudited(household, found);
        assertThat(found.amounts().doses()).hasSize(60);
        assertThat(found.amounts().bound()).isGreaterThan(0.98 * found.amounts().cost());
    }
}
