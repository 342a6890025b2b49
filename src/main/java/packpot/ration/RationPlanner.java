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
 * Finds the cheapest ration. The pot is split by the energy that each dog must get from it. Every solution holds for the
 * shares that it was found with, additions included; but where additions carry so much energy that other shares would be
 * fairer, these are taken and the model is solved again, until they settle.
 */
public final class RationPlanner {
    private static final int MOST_ROUNDS = 5;
    /** The rest of the gap is left for weighing in whole steps. */
    private static final double SEARCH_SHARE_OF_GAP = 0.7;

    /** With so little of the gap left open, a further search could not pay for the weighing. */
    private static final double CLOSED_SHARE_OF_GAP = 0.02;

    /** A search may begin with a ration that is so much too dear. */
    private static final double NO_BOUND = 0;
    /** A plan that stands for a moment alone may cost a little more than need be. */
    private static final double FIRST_GAP = 0.02;

    /** What is left is for a better bound, and a plan that is a little cheaper. */
    private static final double SHARE_OF_TIME_TOGETHER = 0.8;

    private static final double LEAST_SECONDS = 0.1;
    private static final double START_GAP = 5e-3;

    private static final double START_SECONDS = 1;
    /** More than it ever takes: what is broken off on a busy machine could cost far more than need be. */
    private static final double MEASURE_SECONDS = 20;

    /** Of the gap that the whole plan is proved to. */
    private static final double MEASURE_SHARE_OF_GAP = 0.1;
    /** As far as the energy band can take up. */
    private static final double SETTLED = 5e-3;

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
        ManyDogs many = new ManyDogs(household, knowledge, solver, this);
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
        double left = Math.max(LEAST_SECONDS, limits.seconds() - (System.nanoTime() - started) / 1e9);
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
        Map<DogNeed, Double> shares = sharesByNeed(needs);
        Chosen chosen = similar == null ? null : Chosen.of(similar.model(), similar.solution());
        double seconds = 0;
        double searchGap = limits.relativeGap() * SEARCH_SHARE_OF_GAP;
        for (int round = 1; ; round++) {
            RationModel model = RationModel.of(household, knowledge, needs, shares, goal);
            Solution start =
                    chosen == null ? null : start(model, chosen, Math.max(LEAST_SECONDS, limits.seconds() - seconds));
            seconds += start == null ? 0 : start.seconds();
            Solution found = solver.solve(
                    model.linearModel(),
                    new SolveLimits(Math.max(LEAST_SECONDS, limits.seconds() - seconds), searchGap),
                    start == null ? List.of() : start.values());
            seconds += found.seconds();
            if (!found.hasValues()) {
                return new Outcome.None(model, found.status() == Solution.Status.INFEASIBLE);
            }
            chosen = Chosen.of(model, found);
            boolean last = round == MOST_ROUNDS || seconds >= limits.seconds();
            Map<DogNeed, Double> next = shares(needs, model, found);
            if (!last && !settled(shares, next)) {
                shares = next;
                continue;
            }
            Solution measured = found;
            // Whole steps of every food would break the proportions of a recipe.
            if (!(goal instanceof RecipeGoal.AddOnly)) {
                measured = measured(household, model, found, limits.relativeGap());
                seconds += measured.seconds();
            }
            boolean proved = goal instanceof RecipeGoal || within(model, measured, found.bound(), limits.relativeGap());
            if (proved || last || found.status() != Solution.Status.OPTIMAL || closed(found, limits.relativeGap())) {
                Amounts amounts = model.amounts(measured, found.bound(), limits.relativeGap(), seconds);
                return new Outcome.Found(amounts, model, found);
            }
            // Weighing took more of the gap than was left for it: search on for a better bound.
            searchGap *= SEARCH_SHARE_OF_GAP / 4;
        }
    }

    /**
     * A ration with the foods and additions of a similar household's, found at once: nothing is proved of its cost, and where
     * additions carry so much energy that other shares would be fairer, it may not pass an audit. Empty where none fits.
     */
    public Optional<Outcome.Found> atOnce(Outcome.Found similar, Household household, Needs needs) {
        RationModel model = RationModel.of(household, knowledge, needs, sharesByNeed(needs), null);
        Solution start = start(model, Chosen.of(similar.model(), similar.solution()), START_SECONDS);
        if (!start.hasValues()) {
            return Optional.empty();
        }
        Solution measured = measured(household, model, start, FIRST_GAP);
        Amounts amounts = model.amounts(measured, NO_BOUND, FIRST_GAP, start.seconds() + measured.seconds());
        return Optional.of(new Outcome.Found(amounts, model, start));
    }

    /** A good ration with the foods and additions of another one, to begin a search with; without values where none fits. */
    private Solution start(RationModel model, Chosen chosen, double seconds) {
        return solver.solve(chosen.in(model), new SolveLimits(Math.min(START_SECONDS, seconds), START_GAP));
    }

    /** Where nothing is left between cost and bound, what weighing costs more is no matter of searching. */
    private static boolean closed(Solution found, double gap) {
        return found.objective() - found.bound() <= gap * CLOSED_SHARE_OF_GAP * Math.abs(found.objective());
    }

    private static boolean within(RationModel model, Solution solution, double bound, double gap) {
        return solution.objective() - bound <= gap * Math.abs(solution.objective()) + model.nothing();
    }

    /**
     * The amounts of a solution, weighed in whole steps.
     *
     * @param model that the solution is of, or one that differs from it in limits or costs alone
     * @param gap within which the cost counts as proved
     * @param seconds wall time that finding the solution took
     */
    public Amounts weighed(Household household, RationModel model, Solution solution, double gap, double seconds) {
        Solution measured = measured(household, model, solution, gap);
        return model.amounts(measured, solution.bound(), gap, seconds + measured.seconds());
    }

    /**
     * The same choices in amounts that a kitchen scale shows. Where round steps do not fit between the limits or cost more
     * than the gap, as in a small batch, finer ones are tried; where none fit the solution stays as it is, and the audit
     * judges it.
     */
    Solution measured(Household household, RationModel model, Solution found, double gap) {
        Solution best = found;
        double round = household.rules().foodRoundingGrams();
        for (double grams : new double[] {round, household.rules().oilRoundingGrams()}) {
            Solution measured = solver.solve(
                    model.measured(found, grams), new SolveLimits(MEASURE_SECONDS, gap * MEASURE_SHARE_OF_GAP));
            if (measured.hasValues()) {
                best = measured;
                if (within(model, measured, found.bound(), gap)) {
                    return measured;
                }
            }
        }
        return best;
    }

    /** No ration costs less, fractions taken for whole numbers; infinite when there is none. Quick. */
    public double costsAtLeast(Household household, Needs needs, SolveLimits limits) {
        Solution relaxed = solver.solve(
                RationModel.of(household, knowledge, needs, sharesByNeed(needs))
                        .linearModel()
                        .relaxed(),
                limits);
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

    private static Map<DogNeed, Double> shares(Needs needs, RationModel model, Solution solution) {
        Map<DogNeed, Double> fromPot = new LinkedHashMap<>();
        needs.dogs().forEach(dog -> fromPot.put(dog, dog.kcalPerBatch() - model.additionKcal(dog, solution)));
        double all = fromPot.values().stream().mapToDouble(Double::doubleValue).sum();
        fromPot.replaceAll((dog, kcal) -> kcal / all);
        return fromPot;
    }

    static boolean settled(Map<DogNeed, Double> old, Map<DogNeed, Double> next) {
        return next.entrySet().stream()
                .allMatch(entry -> Math.abs(old.getOrDefault(entry.getKey(), 0.0) - entry.getValue())
                        <= SETTLED * entry.getValue());
    }
}
