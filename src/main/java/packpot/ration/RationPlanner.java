package packpot.ration;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.plan.Amounts;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/**
 * Finds the cheapest ration. The pot is split by the energy that each dog must get from it. Where additions to bowls could
 * bring so much energy that other shares would be fair, these are sought first, in a model with shares open; what is told as
 * the bound is of that model. Every ration holds for the shares that it was found with ({@link Rounds}).
 */
public final class RationPlanner {
    private static final double OPEN_SHARE_OF_GAP = 0.35;

    /** A search may begin with a ration that is so much too dear. */
    private static final double NO_BOUND = 0;
    /** A plan that stands for a moment alone may cost a little more than need be. */
    private static final double FIRST_GAP = 0.02;

    /** What is left is for a better bound, and a plan that is a little cheaper. */
    private static final double SHARE_OF_TIME_TOGETHER = 0.8;

    private final Knowledge knowledge;
    private final Solver solver;

    public RationPlanner(Knowledge knowledge, Solver solver) {
        this.knowledge = knowledge;
        this.solver = solver;
    }

    /** How planning ended: with a ration, or with the model that has none. */
    public sealed interface Outcome {
        /**
         * A ration was found.
         *
         * @param model that was solved last, with the shares that settled
         * @param solution of that model, before foods were weighed in whole steps
         */
        record Found(Amounts amounts, RationModel model, Solution solution) implements Outcome {}

        /** There is none, or none was found in time. */
        record None(RationModel model, boolean provedImpossible) implements Outcome {}
    }

    /** Plans one household. */
    public Outcome plan(Household household, Needs needs, SolveLimits limits) {
        return plan(household, needs, limits, null);
    }

    /** Plans one household; with a goal, as that asks, and the gap is one of what it makes least. */
    public Outcome plan(Household household, Needs needs, SolveLimits limits, @Nullable Goal goal) {
        return plan(household, needs, limits, goal, null);
    }

    /** Plans a household that differs little from one that a ration was found for. */
    public Outcome planFrom(Outcome.Found similar, Household household, Needs needs, SolveLimits limits) {
        return plan(household, needs, limits, null, similar);
    }

    /**
     * Plans one household.
     *
     * @param similar a ration of a household that differs little, to begin the search with; null for none
     */
    public Outcome plan(
            Household household,
            Needs needs,
            SolveLimits limits,
            @Nullable Goal goal,
            Outcome.@Nullable Found similar) {
        return goal == null && ManyDogs.are(needs)
                ? many(household, needs, limits)
                : each(household, needs, limits, goal, similar);
    }

    /** Dogs alike taken together; where that leaves a gap, each for itself in the time that is left, with those foods first. */
    private Outcome many(Household household, Needs needs, SolveLimits limits) {
        long started = System.nanoTime();
        ManyDogs many = new ManyDogs(household, knowledge, solver);
        if (ManyDogs.areTooManyAlone(needs)) {
            return many.plan(needs, limits);
        }
        Outcome together =
                many.plan(needs, new SolveLimits(SHARE_OF_TIME_TOGETHER * limits.seconds(), limits.relativeGap()));
        Outcome.Found found = together instanceof Outcome.Found some ? some : null;
        if (found == null
                ? ((Outcome.None) together).provedImpossible()
                : found.amounts().proved()) {
            return together;
        }
        double left = Math.max(Rounds.LEAST_SECONDS, limits.seconds() - (System.nanoTime() - started) / 1e9);
        Outcome alone = each(household, needs, new SolveLimits(left, limits.relativeGap()), null, found);
        if (found == null) {
            return alone;
        }
        if (!(alone instanceof Outcome.Found other)) {
            return found;
        }
        Outcome.Found cheaper = found.amounts().cost() <= other.amounts().cost() ? found : other;
        double bound = Math.max(found.amounts().bound(), other.amounts().bound());
        return new Outcome.Found(
                cheaper.amounts().boundedBy(bound, limits.relativeGap()), cheaper.model(), cheaper.solution());
    }

    private Outcome each(
            Household household,
            Needs needs,
            SolveLimits limits,
            @Nullable Goal goal,
            Outcome.@Nullable Found similar) {
        Chosen chosen = similar == null ? null : Chosen.of(similar.model(), similar.solution());
        Rounds rounds = new Rounds(household, knowledge, needs, solver, goal);
        // The dogs of a recipe have the shares that it is checked with.
        RationModel open =
                goal instanceof RecipeGoal ? null : RationModel.withSharesOpen(household, knowledge, needs, goal);
        if (open == null || !open.additionsMoveShares()) {
            return rounds.from(sharesByNeed(needs), limits, chosen);
        }
        return goal == null ? withSharesOpen(open, rounds, limits, chosen) : nearWithSharesOpen(open, rounds, limits);
    }

    /** Near to another plan, whose shares need not be those of energy either. */
    private Outcome nearWithSharesOpen(RationModel open, Rounds rounds, SolveLimits limits) {
        Solution solved = solver.solve(
                open.linearModel(), new SolveLimits(limits.seconds() / 2, limits.relativeGap() * OPEN_SHARE_OF_GAP));
        SolveLimits left = left(limits, solved.seconds());
        Outcome fair =
                solved.hasValues() ? rounds.from(rounds.shares(open, solved), left, Chosen.of(open, solved)) : null;
        return fair instanceof Outcome.Found ? fair : rounds.from(sharesByNeed(rounds.needs()), left, null);
    }

    /**
     * Begins with the shares of the pot that additions make fair when all shares are open: from the shares of energy they are
     * not come upon, since the band around each dog's energy is narrow. What is found there is the bound. Where its ration, in
     * whole doses and grams, is not as cheap, the shares of energy are tried too.
     */
    private Outcome withSharesOpen(RationModel open, Rounds rounds, SolveLimits limits, @Nullable Chosen chosen) {
        double gap = limits.relativeGap();
        double half = limits.seconds() / 2;
        Solution start = chosen == null ? null : rounds.start(open, chosen, half);
        Solution solved = solver.solve(
                open.linearModel(),
                new SolveLimits(half, gap * OPEN_SHARE_OF_GAP),
                start == null ? List.of() : start.values());
        double seconds = solved.seconds() + (start == null ? 0 : start.seconds());
        Outcome.Found fair = null;
        if (solved.hasValues()) {
            Outcome found = rounds.from(rounds.shares(open, solved), left(limits, seconds), Chosen.of(open, solved));
            if (found instanceof Outcome.Found ration) {
                fair = bounded(ration, solved.bound(), gap);
                seconds += ration.amounts().solveSeconds();
                if (fair.amounts().proved() || seconds >= limits.seconds()) {
                    return fair;
                }
            }
        }
        Chosen next = fair == null ? chosen : Chosen.of(fair.model(), fair.solution());
        Outcome byNeed = rounds.from(sharesByNeed(rounds.needs()), left(limits, seconds), next);
        if (!(byNeed instanceof Outcome.Found other)) {
            return fair == null ? byNeed : fair;
        }
        return fair != null && fair.amounts().cost() <= other.amounts().cost()
                ? fair
                : bounded(other, solved.hasValues() ? solved.bound() : NO_BOUND, gap);
    }

    private static SolveLimits left(SolveLimits limits, double seconds) {
        return new SolveLimits(Math.max(Rounds.LEAST_SECONDS, limits.seconds() - seconds), limits.relativeGap());
    }

    private static Outcome.Found bounded(Outcome.Found found, double bound, double gap) {
        Amounts amounts = found.amounts();
        return new Outcome.Found(
                amounts.boundedBy(Math.min(bound, amounts.cost()), gap), found.model(), found.solution());
    }

    /**
     * A ration with the foods and additions of a similar household's, found at once: nothing is proved of its cost, and where
     * additions carry so much energy that other shares would be fairer, it may not pass an audit. Empty where none fits.
     */
    public Optional<Outcome.Found> atOnce(Outcome.Found similar, Household household, Needs needs) {
        RationModel model = RationModel.of(household, knowledge, needs, sharesByNeed(needs), null);
        Rounds rounds = new Rounds(household, knowledge, needs, solver, null);
        Solution start = rounds.start(model, Chosen.of(similar.model(), similar.solution()), Rounds.START_SECONDS);
        if (!start.hasValues()) {
            return Optional.empty();
        }
        Solution measured = rounds.measured(model, start, FIRST_GAP);
        Amounts amounts = model.amounts(measured, NO_BOUND, FIRST_GAP, start.seconds() + measured.seconds());
        return Optional.of(new Outcome.Found(amounts, model, start));
    }

    /**
     * The amounts of a solution, weighed in whole steps.
     *
     * @param model that the solution is of, or one that differs from it in limits or costs alone
     * @param gap within which the cost counts as proved
     * @param seconds wall time that finding the solution took
     */
    public Amounts weighed(Household household, RationModel model, Solution solution, double gap, double seconds) {
        Solution measured = Rounds.measured(household, solver, model, solution, gap);
        return model.amounts(measured, solution.bound(), gap, seconds + measured.seconds());
    }

    /** No ration costs less, fractions taken for whole numbers; infinite when there is none. Quick. */
    public double costsAtLeast(Household household, Needs needs, SolveLimits limits) {
        RationModel open = RationModel.withSharesOpen(household, knowledge, needs, null);
        RationModel model =
                open.additionsMoveShares() ? open : RationModel.of(household, knowledge, needs, sharesByNeed(needs));
        Solution relaxed = solver.solve(model.linearModel().relaxed(), limits);
        return switch (relaxed.status()) {
            case OPTIMAL -> relaxed.bound();
            case INFEASIBLE -> Double.POSITIVE_INFINITY;
            case FEASIBLE, UNBOUNDED, UNKNOWN -> 0;
        };
    }

    /** The shares when no addition carries energy. */
    public static Map<DogNeed, Double> sharesByNeed(Needs needs) {
        Map<DogNeed, Double> shares = new LinkedHashMap<>();
        needs.dogs().forEach(dog -> shares.put(dog, needs.share(dog)));
        return shares;
    }
}
