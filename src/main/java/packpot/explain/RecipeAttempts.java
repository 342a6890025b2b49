package packpot.explain;

import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import packpot.household.Household;
import packpot.household.Shape;
import packpot.plan.Plan;
import packpot.ration.RecipeGoal;
import packpot.solver.SolveLimits;

/** What is tried one after the other to mend a recipe in one way, each with more to draw on. */
final class RecipeAttempts {
    /** Of a plan that only has to be there. */
    private static final double ANY_PLAN_GAP = 0.5;
    /** Part of the pot; with a larger change a food of the pantry that is not in the recipe may do better. */
    private static final double LITTLE = 0.15;

    private final Planner planner;
    private final SolveLimits limits;
    private final RecipeHousehold households;
    private final Function<Planner.Result.Planned, RecipeMend.Outcome.Planned> mend;
    private final BiFunction<Planner.Result.NoPlan, RecipeGoal, RecipeMend.Outcome.None> clash;

    /** One thing to try, and what with. */
    record Attempt(Household household, RecipeGoal goal) {}

    /**
     * Attempts.
     *
     * @param limits of each of them
     * @param mend what a plan makes of the recipe
     * @param clash what stands in the way where there is no plan
     */
    RecipeAttempts(
            Planner planner,
            SolveLimits limits,
            RecipeHousehold households,
            Function<Planner.Result.Planned, RecipeMend.Outcome.Planned> mend,
            BiFunction<Planner.Result.NoPlan, RecipeGoal, RecipeMend.Outcome.None> clash) {
        this.planner = planner;
        this.limits = limits;
        this.households = households;
        this.mend = mend;
        this.clash = clash;
    }

    /** The first that is planned and passes the audit, or why none is; each is wider than those before it. */
    RecipeMend.Outcome first(List<Attempt> attempts) {
        Attempt widest = attempts.get(attempts.size() - 1);
        // Where not even any number of supplements do, that is proved at once, and with few it takes long.
        Planner.Result any = unlimited(widest);
        if (any instanceof Planner.Result.NoPlan none && none.provedImpossible()) {
            return clash.apply(none, widest.goal());
        }
        for (Attempt attempt : attempts) {
            RecipeMend.Outcome.Planned planned = mended(plan(attempt));
            if (planned != null) {
                return planned;
            }
        }
        return none(any, widest);
    }

    /** The first that changes the recipe little, or else the one that changes it least. */
    RecipeMend.Outcome nearest(List<Attempt> attempts) {
        RecipeMend.Outcome.@Nullable Planned best = null;
        for (Attempt attempt : attempts) {
            RecipeMend.Outcome.Planned planned = mended(plan(attempt));
            if (planned != null && (best == null || planned.distance() < best.distance())) {
                best = planned;
            }
            if (best != null && best.distance() <= LITTLE) {
                return best;
            }
        }
        if (best != null) {
            return best;
        }
        Attempt widest = attempts.get(attempts.size() - 1);
        return none(unlimited(widest), widest);
    }

    private Planner.Result plan(Attempt attempt) {
        return planner.plan(attempt.household(), limits, attempt.goal());
    }

    private Planner.Result unlimited(Attempt attempt) {
        return planner.plan(
                households.withAnyNumberOfSupplements(attempt.household()),
                new SolveLimits(limits.seconds(), ANY_PLAN_GAP),
                attempt.goal());
    }

    private RecipeMend.Outcome.None none(Planner.Result any, Attempt widest) {
        if (any instanceof Planner.Result.NoPlan none) {
            return clash.apply(none, widest.goal());
        }
        Planner.Result.Planned planned = (Planner.Result.Planned) any;
        if (!planned.verdict().passed()) {
            return new RecipeMend.Outcome.None(
                    "a plan was found, but rounded to what a kitchen measures it fails the check ("
                            + planned.verdict().findings().get(0) + ")",
                    null);
        }
        Plan plan = planned.plan();
        Shape shape = widest.household().shape();
        return new RecipeMend.Outcome.None(
                "none was found with at most " + shape.mostStirredIn() + " supplements stirred in and "
                        + shape.mostAdditions()
                        + " in the bowl of an adult at maintenance; with no such limit there"
                        + " is one, with "
                        + plan.pot().stream().filter(Plan.Ingredient::stirredIn).count()
                        + " stirred in and "
                        + plan.dogs().stream()
                                .mapToInt(dog -> dog.additions().size())
                                .max()
                                .orElse(0)
                        + " in a bowl (\"mostStirredIn\" and \"mostAdditions\" in the scenario)",
                null);
    }

    /** The mend that a plan is; null when there is no plan or it fails the audit. */
    private RecipeMend.Outcome.@Nullable Planned mended(Planner.Result result) {
        return result instanceof Planner.Result.Planned planned
                        && planned.verdict().passed()
                ? mend.apply(planned)
                : null;
    }
}
