package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import packpot.audit.PlanAudit;
import packpot.audit.Verdict;
import packpot.household.Household;
import packpot.household.ScenarioException;
import packpot.needs.Needs;
import packpot.plan.Plan;
import packpot.plan.PlanBuilder;
import packpot.ration.RationPlanner;

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
}
