package packpot.explain;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import packpot.audit.PlanAudit;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.needs.Needs;
import packpot.plan.Amounts;
import packpot.plan.Plan;
import packpot.plan.PlanBuilder;
import packpot.ration.RationModel;
import packpot.ration.RationPlanner;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import packpot.solver.Variant;

/** The cheapest plan of a household together with the model that it was found with, to ask what lies around it. */
final class SolvedPlan {
    private static final double USED = 0.5;

    private final Household household;
    private final Knowledge knowledge;
    private final Solver solver;
    private final Needs needs;
    private final RationModel model;
    private final Solution solution;
    private final Planner.Result.Planned planned;

    private SolvedPlan(
            Household household,
            Knowledge knowledge,
            Solver solver,
            Needs needs,
            RationModel model,
            Solution solution,
            Amounts amounts) {
        this.household = household;
        this.knowledge = knowledge;
        this.solver = solver;
        this.needs = needs;
        this.model = model;
        this.solution = solution;
        this.planned = planned(amounts);
    }

    /** What solving gave: the plan, or none. */
    sealed interface Outcome {
        record Solved(SolvedPlan plan) implements Outcome {}

        record None(Planner.Result.NoPlan none) implements Outcome {}
    }

    static Outcome of(Household household, Knowledge knowledge, Solver solver, SolveLimits limits) {
        Needs needs = Needs.of(household, knowledge);
        RationPlanner.Outcome outcome = new RationPlanner(knowledge, solver).plan(household, needs, limits);
        if (outcome instanceof RationPlanner.Outcome.None none) {
            return new Outcome.None(new Planner.Result.NoPlan(household, none.provedImpossible()));
        }
        RationPlanner.Outcome.Found found = (RationPlanner.Outcome.Found) outcome;
        return new Outcome.Solved(
                new SolvedPlan(household, knowledge, solver, needs, found.model(), found.solution(), found.amounts()));
    }

    Household household() {
        return household;
    }

    RationModel model() {
        return model;
    }

    Solution solution() {
        return solution;
    }

    Planner.Result.Planned planned() {
        return planned;
    }

    /** Money of the whole batch, before foods are weighed in whole steps. */
    double cost() {
        return solution.objective();
    }

    /** The model, open to changes. */
    Variant<Wish> variant() {
        return new Variant<>(model.linearModel());
    }

    /** The model with what goes into the bowls chosen as in this plan; doses, foods, amounts and packs stay open. */
    Variant<Wish> sameBowls() {
        Variant<Wish> variant = variant();
        model.bowlChoices().forEach(choice -> variant.bound(choice, solution.value(choice), solution.value(choice)));
        return variant;
    }

    /** Solves a variant of the model, beginning from this plan. */
    Solution solve(LinearModel<Wish> changed, SolveLimits limits) {
        return solve(changed, limits, solution);
    }

    /** Solves a variant of the model, beginning from another plan. */
    Solution solve(LinearModel<Wish> changed, SolveLimits limits, Solution start) {
        return solver.solve(changed, limits, start.values());
    }

    /** The foods in the pot of a solution, supplements not counted. */
    Set<PantryItem> foods(Solution of) {
        Set<PantryItem> foods = new LinkedHashSet<>();
        foodChoices().forEach((item, used) -> {
            if (of.value(used) > USED) {
                foods.add(item);
            }
        });
        return foods;
    }

    /** For each food that may go into the pot, supplements not counted, whether it does. */
    Map<PantryItem, Variable> foodChoices() {
        Map<PantryItem, Variable> choices = new LinkedHashMap<>(model.potChoices());
        choices.keySet().removeIf(item -> item.food().isSupplement());
        return choices;
    }

    /** A solution of this model, or of one with other limits, as a plan of its own. */
    Planner.Result.Planned finished(Solution other, double gap) {
        // Nothing costs less than the cheapest plan is proved to, whatever else was asked of this one.
        Solution bounded =
                new Solution(other.status(), other.values(), other.objective(), solution.bound(), other.seconds());
        return planned(new RationPlanner(knowledge, solver).weighed(household, model, bounded, gap, other.seconds()));
    }

    private Planner.Result.Planned planned(Amounts amounts) {
        Plan plan = PlanBuilder.build(household, knowledge, needs, amounts);
        return new Planner.Result.Planned(household, plan, PlanAudit.check(plan, household, knowledge));
    }

    static List<String> labels(Iterable<PantryItem> items) {
        List<String> labels = new ArrayList<>();
        items.forEach(item -> labels.add(item.food().label()));
        return labels;
    }
}
