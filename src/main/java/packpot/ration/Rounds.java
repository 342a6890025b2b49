package packpot.ration;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.plan.Amounts;
import packpot.ration.RationPlanner.Outcome;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/**
 * One search for a ration: a model for given shares of the pot is solved, the shares that its additions make fair are taken,
 * and so on until they settle; then foods are weighed in whole steps.
 *
 * @param goal what is kept of a recipe or of another plan; null for a pot that is cheapest and nothing else
 */
record Rounds(
        Household household,
        Knowledge knowledge,
        Needs needs,
        Solver solver,
        @Nullable Goal goal) {
    private static final int MOST_ROUNDS = 5;
    /** The rest of the gap is left for weighing in whole steps. */
    private static final double SEARCH_SHARE_OF_GAP = 0.7;

    /** With so little of the gap left open, a further search could not pay for the weighing. */
    private static final double CLOSED_SHARE_OF_GAP = 0.02;

    static final double LEAST_SECONDS = 0.1;
    private static final double START_GAP = 5e-3;

    static final double START_SECONDS = 1;
    /** More than it ever takes: what is broken off on a busy machine could cost far more than need be. */
    private static final double MEASURE_SECONDS = 20;

    /** Of the gap that the whole plan is proved to. */
    private static final double MEASURE_SHARE_OF_GAP = 0.1;
    /** As far as the energy band can take up. */
    static final double SETTLED = 5e-3;

    private record Solved(RationModel model, Solution solution) {}

    /** Plans with shares of the pot to begin with, and then with those that come of each ration, until they settle. */
    Outcome from(Map<DogNeed, Double> first, SolveLimits limits, @Nullable Chosen similar) {
        Map<DogNeed, Double> shares = first;
        Chosen chosen = similar;
        Solved before = null;
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
            boolean stuck = !found.hasValues() && before != null;
            if (!found.hasValues()) {
                if (before == null) {
                    return new Outcome.None(model, found.status() == Solution.Status.INFEASIBLE);
                }
                // Nothing goes with the shares that the ration before makes fair; with its own it stands.
                model = before.model();
                found = before.solution();
            }
            chosen = Chosen.of(model, found);
            boolean last = stuck || round == MOST_ROUNDS || seconds >= limits.seconds();
            Map<DogNeed, Double> next = shares(model, found);
            if (!last && !settled(shares, next)) {
                shares = next;
                before = new Solved(model, found);
                continue;
            }
            Solution measured = found;
            // Whole steps of every food would break the proportions of a recipe.
            if (!(goal instanceof RecipeGoal.AddOnly)) {
                measured = measured(model, found, limits.relativeGap());
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

    /** A good ration with the foods and additions of another one, to begin a search with; without values where none fits. */
    Solution start(RationModel model, Chosen chosen, double seconds) {
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
     * The same choices in amounts that a kitchen scale shows. Where round steps do not fit between the limits or cost more
     * than the gap, as in a small batch, finer ones are tried; where none fit the solution stays as it is, and the audit
     * judges it.
     */
    Solution measured(RationModel model, Solution found, double gap) {
        return measured(household, solver, model, found, gap);
    }

    /** The same without a search before it. */
    static Solution measured(Household household, Solver solver, RationModel model, Solution found, double gap) {
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

    /** The shares that are fair with the additions of a solution. */
    Map<DogNeed, Double> shares(RationModel model, Solution solution) {
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
