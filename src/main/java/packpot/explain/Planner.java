package packpot.explain;

import org.jspecify.annotations.Nullable;
import packpot.audit.PlanAudit;
import packpot.audit.Verdict;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.needs.Needs;
import packpot.plan.Plan;
import packpot.plan.PlanBuilder;
import packpot.ration.Goal;
import packpot.ration.RationPlanner;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/** The whole way from a household to an audited plan; explanations go it several times with a changed household. */
public final class Planner {
    private final Knowledge knowledge;
    private final Solver solver;

    public Planner(Knowledge knowledge, Solver solver) {
        this.knowledge = knowledge;
        this.solver = solver;
    }

    /** How planning ended. */
    public sealed interface Result {

        /** A plan, and what the audit says of it. */
        record Planned(Household household, Plan plan, Verdict verdict) implements Result {}

        /**
         * No plan.
         *
         * @param provedImpossible false when the time ran out before anything was found
         */
        record NoPlan(Household household, boolean provedImpossible) implements Result {}
    }

    /** Plans one household. */
    public Result plan(Household household, SolveLimits limits) {
        return plan(household, limits, null);
    }

    /** Plans one household; with a goal, as that asks and not just as cheap as can be. */
    public Result plan(Household household, SolveLimits limits, @Nullable Goal goal) {
        Needs needs = Needs.of(household, knowledge);
        RationPlanner.Outcome outcome = new RationPlanner(knowledge, solver).plan(household, needs, limits, goal);
        if (outcome instanceof RationPlanner.Outcome.None none) {
            return new Result.NoPlan(household, none.provedImpossible());
        }
        Plan plan = PlanBuilder.build(household, knowledge, needs, ((RationPlanner.Outcome.Found) outcome).amounts());
        return new Result.Planned(household, plan, PlanAudit.check(plan, household, knowledge));
    }
}
