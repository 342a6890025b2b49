package packpot.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntConsumer;
import org.jspecify.annotations.Nullable;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.plan.Plan;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/**
 * What each food of a plan is worth: the plan without it, what that costs more, and what takes its place. A food is lost
 * wholly, what is in the house of it included, and with it any wish that it must be used.
 */
public final class Losses {

    private Losses() {}

    /** How the ranking ended. */
    public sealed interface Result {

        /** The foods of the plan, the dearest loss first; what cannot be lost at all stands before all others. */
        record Ranked(Planner.Result.Planned base, List<Loss> losses) implements Result {
            public Ranked {
                losses = List.copyOf(losses);
            }
        }

        /** There is no plan whose foods could be ranked. */
        record NoBase(Planner.Result.NoPlan base) implements Result {}
    }

    /** How the plan without a food ended. */
    public enum End {
        PLANNED,
        /** Proved: nothing takes its place. */
        IMPOSSIBLE,
        /** Time ran out before a plan was found. */
        NOT_FOUND_IN_TIME,
        /** A plan was found but fails the audit, so that its figures are not shown. */
        FAILED_AUDIT
    }

    /**
     * The loss of one food.
     *
     * @param extraCost money over the whole batch beyond what the plan costs now, both before the kitchen's rounding;
     *     never below zero, since a plan without the food is also a plan with it; null unless planned
     * @param extraPerDay the same a day
     * @param extraAtLeast what it costs more at least, both plans being proved only to within their gaps
     * @param extraAtMost what it costs more at most
     * @param gapShare how far the cost of the plan without it may be above the least, as a share of that cost
     * @param distance between the recipes as in {@link PlanComparison}
     * @param standIn what takes its place; null when nothing grows
     */
    public record Loss(
            String food,
            String label,
            End end,
            @Nullable Double extraCost,
            @Nullable Double extraPerDay,
            @Nullable Double extraAtLeast,
            @Nullable Double extraAtMost,
            @Nullable Double gapShare,
            @Nullable Double distance,
            @Nullable StandIn standIn) {}

    /**
     * Ranks the foods that a plan uses, pot and bowls.
     *
     * @param solver is used from several threads at once
     * @param limits of each plan
     * @param started is told how many plans there are to make, once that is known
     * @param done is told how many are made, from any thread
     */
    public static Result rank(
            Household household,
            Knowledge knowledge,
            Solver solver,
            SolveLimits limits,
            IntConsumer started,
            IntConsumer done) {
        Planner planner = new Planner(knowledge, solver);
        // The plan itself is the one that "plan" prints, however coarsely the others are searched.
        Planner.Result first = planner.plan(
                household,
                new SolveLimits(limits.seconds(), Math.min(limits.relativeGap(), SolveLimits.USUAL.relativeGap())));
        if (first instanceof Planner.Result.NoPlan none) {
            return new Result.NoBase(none);
        }
        Planner.Result.Planned base = (Planner.Result.Planned) first;
        started.accept(base.plan().shopping().size());
        List<Loss> losses = new ArrayList<>(each(base, knowledge, solver, limits, done));
        losses.sort(Comparator.comparing((Loss loss) -> loss.end() != End.IMPOSSIBLE)
                .thenComparingDouble(loss -> -orNothing(loss.extraCost()))
                .thenComparing(Loss::label));
        return new Result.Ranked(base, losses);
    }

    /**
     * What each food of a plan is worth to it, in the order of the shopping list.
     *
     * @param solver is used from several threads at once
     * @param limits of each plan
     * @param done is told how many are made, from any thread
     */
    public static List<Loss> each(
            Planner.Result.Planned base, Knowledge knowledge, Solver solver, SolveLimits limits, IntConsumer done) {
        Planner planner = new Planner(knowledge, solver);
        return Parallel.map(base.plan().shopping(), line -> loss(line, base, planner, knowledge, limits), done);
    }

    private static double orNothing(@Nullable Double cost) {
        return cost == null ? 0 : cost;
    }

    private static Loss loss(
            Plan.Purchase line, Planner.Result.Planned base, Planner planner, Knowledge knowledge, SolveLimits limits) {
        Planner.Result result = planner.plan(without(base.household(), line.food()), limits);
        if (result instanceof Planner.Result.NoPlan none) {
            return unplanned(line, none.provedImpossible() ? End.IMPOSSIBLE : End.NOT_FOUND_IN_TIME);
        }
        Planner.Result.Planned planned = (Planner.Result.Planned) result;
        if (!planned.verdict().passed()) {
            return unplanned(line, End.FAILED_AUDIT);
        }
        Plan old = base.plan();
        Plan now = planned.plan();
        double extra = Math.max(0, now.proof().cost() - old.proof().cost());
        return new Loss(
                line.food(),
                line.label(),
                End.PLANNED,
                extra,
                extra / now.days(),
                Math.max(0, now.proof().noPlanBelow() - old.proof().cost()),
                Math.max(0, now.proof().cost() - old.proof().noPlanBelow()),
                now.proof().gapShare(),
                PlanComparison.of(base, planned, true, 1).distance(),
                StandIn.of(line.food(), base, planned, knowledge));
    }

    private static Loss unplanned(Plan.Purchase line, End end) {
        return new Loss(line.food(), line.label(), end, null, null, null, null, null, null, null);
    }

    private static Household without(Household household, String food) {
        List<PantryItem> rest = household.pantry().stream()
                .filter(item -> !item.food().id().equals(food))
                .toList();
        return household.withPantry(rest);
    }
}
