package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.audit.PlanAudit;
import packpot.audit.Verdict;
import packpot.household.Change;
import packpot.household.Household;
import packpot.household.ScenarioException;
import packpot.needs.Needs;
import packpot.plan.Plan;
import packpot.plan.PlanBuilder;
import packpot.ration.RationPlanner;
import packpot.solver.Solution;

class PlannerTest {

    /** With a reserve below nothing the model goes past its limits, as rounding does with ill luck. */
    private static Household withTooLittleReserve() throws ScenarioException {
        Household household = AskedScenario.changes().unchanged();
        return household.withRules(household.rules().withRoundingReserve(-0.03).withMargin(0));
    }

    @Test
    void aPlanThatRoundingSpoilsIsLookedForAgain() throws ScenarioException {
        Household household = withTooLittleReserve();
        Needs needs = Needs.of(household, AskedScenario.KNOWLEDGE);
        RationPlanner.Outcome once = new RationPlanner(AskedScenario.KNOWLEDGE, AskedScenario.SOLVER)
                .plan(household, needs, AskedScenario.LIMITS);
        assertThat(once).isInstanceOf(RationPlanner.Outcome.Found.class);
        Plan spoilt = PlanBuilder.build(
                household, AskedScenario.KNOWLEDGE, needs, ((RationPlanner.Outcome.Found) once).amounts());
        assertThat(PlanAudit.check(spoilt, household, AskedScenario.KNOWLEDGE).passed())
                .as("the case is one that rounding spoils")
                .isFalse();

        Planner.Result result =
                new Planner(AskedScenario.KNOWLEDGE, AskedScenario.SOLVER).plan(household, AskedScenario.LIMITS);

        assertThat(result).isInstanceOf(Planner.Result.Planned.class);
        Plan plan = ((Planner.Result.Planned) result).plan();
        Verdict verdict = ((Planner.Result.Planned) result).verdict();
        assertThat(verdict.passed()).isTrue();
        assertThat(plan.proof().noPlanBelow()).isEqualTo(spoilt.proof().noPlanBelow());
        assertThat(plan.proof().cost()).isGreaterThanOrEqualTo(spoilt.proof().noPlanBelow());
        assertThat(plan.proof().gapShare() <= AskedScenario.LIMITS.relativeGap())
                .isEqualTo(plan.proof().provedOptimal());
    }

    /** Changes that leave the old foods as they are, take one of them away, or take a dog away. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "Moss: weight 23 lb",
                "Pip: leaves",
                "chicken thigh: out of stock",
                "egg: out of stock",
                "white rice: price +50 %",
                "days: 12",
                "egg: price +100 %"
            })
    void aPlanThatBeginsFromAnotherIsAsCheapAsOneThatBeginsFromNothing(String change) throws ScenarioException {
        Planner planner = new Planner(AskedScenario.KNOWLEDGE, AskedScenario.SOLVER);
        Planner.Searched old = planner.search(AskedScenario.household(), AskedScenario.LIMITS);
        Household changed = AskedScenario.changes().with(List.of(Change.of(change)), List.of());

        Planner.Searched fresh = planner.search(changed, AskedScenario.LIMITS);
        Planner.Searched begun = planner.searchFrom(old, changed, AskedScenario.LIMITS);

        assertThat(planned(begun).verdict().findings()).isEmpty();
        assertThat(solution(begun).relativeGap()).isLessThanOrEqualTo(AskedScenario.LIMITS.relativeGap());
        assertThat(solution(begun).objective())
                .isGreaterThanOrEqualTo(solution(fresh).bound() - 1e-6);
        assertThat(solution(fresh).objective())
                .isGreaterThanOrEqualTo(solution(begun).bound() - 1e-6);
        assertThat(planned(planner.searchFrom(old, changed, AskedScenario.LIMITS))
                        .plan()
                        .pot())
                .as("the same plan for the same question")
                .isEqualTo(planned(begun).plan().pot());
    }

    private static Planner.Result.Planned planned(Planner.Searched searched) {
        return (Planner.Result.Planned) searched.result();
    }

    private static Solution solution(Planner.Searched searched) {
        RationPlanner.Outcome.Found found = searched.found();
        if (found == null) {
            throw new AssertionError("there is no plan");
        }
        return found.solution();
    }

    @Test
    void aHouseholdWithoutAPlanHasNoneFromAnotherPlanEither() throws ScenarioException {
        Planner planner = new Planner(AskedScenario.KNOWLEDGE, AskedScenario.SOLVER);
        Planner.Searched old = planner.search(AskedScenario.household(), AskedScenario.LIMITS);
        Planner.Searched none =
                planner.searchFrom(old, AskedScenario.withoutPlan().unchanged(), AskedScenario.LIMITS);
        assertThat(none.found()).isNull();
        assertThat(none.result())
                .isInstanceOfSatisfying(
                        Planner.Result.NoPlan.class,
                        result -> assertThat(result.provedImpossible()).isTrue());
    }
}
