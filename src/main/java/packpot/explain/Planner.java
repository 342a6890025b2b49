package packpot.explain;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import packpot.audit.PlanAudit;
import packpot.audit.Verdict;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.Rules;
import packpot.needs.Needs;
import packpot.plan.Plan;
import packpot.plan.PlanBuilder;
import packpot.ration.Goal;
import packpot.ration.RationPlanner;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/** The whole way from a household to an audited plan; explanations go it several times with a changed household. */
public final class Planner {
    private static final double MORE_RESERVE = 4;
    private static final double LARGE_RESERVE = 0.01;
    private static final double NOTHING_MONEY = 1e-9;

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

    /**
     * A plan with the search that it came from, which later searches begin with.
     *
     * @param found the ration; null where there is no plan
     */
    public record Searched(Result result, RationPlanner.Outcome.@Nullable Found found) {}

    /** Plans one household. */
    public Result plan(Household household, SolveLimits limits) {
        return plan(household, limits, null);
    }

    /** Plans one household; with a goal, as that asks and not just as cheap as can be. */
    public Result plan(Household household, SolveLimits limits, @Nullable Goal goal) {
        return search(household, limits, goal, null).result();
    }

    /** Plans one household, for others like it to be planned from. */
    public Searched search(Household household, SolveLimits limits) {
        return search(household, limits, null, null);
    }

    /** Plans a household that differs little from one that was planned: as good a plan, and sooner. */
    public Searched searchFrom(Searched similar, Household household, SolveLimits limits) {
        return searchFrom(similar.found(), household, limits);
    }

    /**
     * Plans a household, beginning with the foods of a ration for one like it.
     *
     * @param similar null for none
     */
    public Searched searchFrom(RationPlanner.Outcome.@Nullable Found similar, Household household, SolveLimits limits) {
        return search(household, limits, null, similar);
    }

    /**
     * A plan with the foods and additions of a similar household's, at once; it passed the audit, and nothing is proved of its
     * cost. Empty where none fits.
     */
    public Optional<Result.Planned> atOnce(Searched similar, Household household) {
        RationPlanner.Outcome.Found found = similar.found();
        if (found == null) {
            return Optional.empty();
        }
        Needs needs = Needs.of(household, knowledge);
        return new RationPlanner(knowledge, solver)
                .atOnce(found, household, needs)
                .map(ration -> {
                    Plan plan = PlanBuilder.build(household, knowledge, needs, ration.amounts());
                    return new Result.Planned(household, plan, PlanAudit.check(plan, household, knowledge));
                })
                .filter(planned -> planned.verdict().passed());
    }

    /** A plan that just misses a limit once the kitchen has rounded it is looked for once more with more in reserve. */
    private Searched search(
            Household household,
            SolveLimits limits,
            @Nullable Goal goal,
            RationPlanner.Outcome.@Nullable Found similar) {
        Searched first = once(household, limits, goal, similar);
        if (!(first.result() instanceof Result.Planned missed)
                || missed.verdict().passed()) {
            return first;
        }
        Rules rules = household.rules();
        Household careful = household.withRules(
                rules.withRoundingReserve(Math.max(LARGE_RESERVE, MORE_RESERVE * rules.roundingReserve())));
        Searched again = once(careful, limits, goal, first.found());
        if (!(again.result() instanceof Result.Planned second)) {
            return first;
        }
        Plan plan = second.plan()
                .withProof(proof(missed.plan().proof(), second.plan().proof(), limits));
        Verdict verdict = PlanAudit.check(plan, household, knowledge);
        return verdict.passed() ? new Searched(new Result.Planned(household, plan, verdict), again.found()) : first;
    }

    /** What was proved with the smaller reserve holds for the larger one, and not the other way round. */
    private static Plan.Proof proof(Plan.Proof smaller, Plan.Proof larger, SolveLimits limits) {
        double gap = Math.max(0, larger.cost() - smaller.noPlanBelow()) / Math.max(NOTHING_MONEY, larger.cost());
        return new Plan.Proof(
                gap <= limits.relativeGap(),
                larger.cost(),
                smaller.noPlanBelow(),
                gap,
                smaller.solveSeconds() + larger.solveSeconds());
    }

    private Searched once(
            Household household,
            SolveLimits limits,
            @Nullable Goal goal,
            RationPlanner.Outcome.@Nullable Found similar) {
        Needs needs = Needs.of(household, knowledge);
        RationPlanner.Outcome outcome =
                new RationPlanner(knowledge, solver).plan(household, needs, limits, goal, similar);
        if (outcome instanceof RationPlanner.Outcome.None none) {
            return new Searched(new Result.NoPlan(household, none.provedImpossible()), null);
        }
        RationPlanner.Outcome.Found found = (RationPlanner.Outcome.Found) outcome;
        Plan plan = PlanBuilder.build(household, knowledge, needs, found.amounts());
        return new Searched(new Result.Planned(household, plan, PlanAudit.check(plan, household, knowledge)), found);
    }
}
