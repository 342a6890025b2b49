package packpot.ration;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.plan.Amounts;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/**
 * The ration of a dozen dogs or more. Dogs that are held to the same figures per kcal are taken together as one large dog: all rows of such
 * dogs added up are the rows of the large one, and whole doses added up are whole, so that no ration of all dogs costs less than
 * one of the few. Its pot is taken; then each dog has its own doses, a small problem by itself ({@link OneBowl}). Where a dog
 * finds none, its doses being too coarse for it, it stands for itself in the next round, and the pot makes room for it.
 */
final class ManyDogs {
    /** Fewer are planned at one go, to the last cent. */
    private static final int MANY = 12;
    /** So many or more, each for itself, are more than a search of seconds gets anywhere with. */
    private static final int TOO_MANY_ALONE = 25;

    private static final int MOST_ROUNDS = 30;
    /** A pot that is nearer to the cheapest is lost in the rounding of so many doses. */
    private static final double LEAST_GAP = 0.0025;

    private static final double SEARCH_SHARE_OF_GAP = 0.5;
    /** The foods of the round before are kept where they cost no more than this above what is proved. */
    private static final double KEPT_SHARE = 0.01;
    /** No round takes more of the time that is left. */
    private static final double SHARE_OF_TIME = 0.5;

    private static final double CHOSEN = 0.5;

    private final Household household;
    private final Knowledge knowledge;
    private final Solver solver;

    ManyDogs(Household household, Knowledge knowledge, Solver solver) {
        this.household = household;
        this.knowledge = knowledge;
        this.solver = solver;
    }

    static boolean are(Needs needs) {
        return needs.dogs().size() >= MANY;
    }

    /** Whether there is nothing to be gained by planning each dog for itself afterwards. */
    static boolean areTooManyAlone(Needs needs) {
        return needs.dogs().size() >= TOO_MANY_ALONE;
    }

    RationPlanner.Outcome plan(Needs needs, SolveLimits limits) {
        long started = System.nanoTime();
        Map<DogNeed, Double> shares = RationPlanner.sharesByNeed(needs);
        Grouped grouped = Grouped.alike(household, needs);
        double bound = 0;
        boolean byNeed = true;
        boolean again = false;
        double boundOfAllShares = Double.POSITIVE_INFINITY;
        Chosen chosen = null;
        RationModel open = RationModel.withSharesOpen(household, knowledge, grouped.needs(), null);
        if (open.additionsMoveShares()) {
            Solution found = solver.solve(open.linearModel(), own(limits, limits.seconds()));
            if (found.status() == Solution.Status.OPTIMAL) {
                boundOfAllShares = found.bound();
                chosen = Chosen.of(open, found);
                shares = shares(grouped, open, found, shares);
                byNeed = false;
            }
        }
        for (int round = 1; ; round++) {
            RationModel model = RationModel.of(household, knowledge, grouped.needs(), grouped.shares(shares));
            double left = Math.max(1, limits.seconds() - since(started));
            Solution found = searched(model, chosen, bound, own(limits, left));
            if (!found.hasValues() && !byNeed && !again) {
                // What does not go with these shares may go with those of energy.
                shares = RationPlanner.sharesByNeed(needs);
                byNeed = true;
                again = true;
                chosen = null;
                bound = 0;
                continue;
            }
            if (!found.hasValues()) {
                return new RationPlanner.Outcome.None(model, byNeed && found.status() == Solution.Status.INFEASIBLE);
            }
            chosen = Chosen.of(model, found);
            Map<DogNeed, Double> next = shares(grouped, model, found, shares);
            if (round < MOST_ROUNDS && !Rounds.settled(shares, next)) {
                shares = next;
                byNeed = false;
                bound = 0;
                continue;
            }
            bound = Math.max(bound, found.bound());
            Solution weighed = Rounds.measured(household, solver, model, found, limits.relativeGap());
            Map<DogNeed, Map<PantryItem, Integer>> doses = doses(grouped, model, weighed, shares);
            List<DogNeed> without =
                    needs.dogs().stream().filter(dog -> !doses.containsKey(dog)).toList();
            if (without.isEmpty()) {
                double least = Math.min(bound, boundOfAllShares);
                Amounts amounts = amounts(grouped, model, weighed, doses, shares, least, limits, since(started));
                if (amounts != null) {
                    return new RationPlanner.Outcome.Found(amounts, model, weighed);
                }
            }
            if (without.isEmpty() || round >= MOST_ROUNDS || since(started) > limits.seconds()) {
                return new RationPlanner.Outcome.None(model, false);
            }
            grouped = grouped.apart(without);
        }
    }

    private Solution searched(RationModel model, @Nullable Chosen chosen, double bound, SolveLimits limits) {
        Solution start = chosen == null ? null : solver.solve(chosen.in(model), limits);
        if (start == null || !start.hasValues()) {
            return solver.solve(model.linearModel(), limits);
        }
        // Nothing is proved of it but what was proved of fewer groups.
        return start.objective() <= (1 + KEPT_SHARE) * bound
                ? new Solution(start.status(), start.values(), start.objective(), bound, start.seconds())
                : solver.solve(model.linearModel(), limits, start.values());
    }

    private static SolveLimits own(SolveLimits limits, double secondsLeft) {
        return new SolveLimits(
                SHARE_OF_TIME * secondsLeft, Math.max(LEAST_GAP, SEARCH_SHARE_OF_GAP * limits.relativeGap()));
    }

    private static double since(long started) {
        return (System.nanoTime() - started) / 1e9;
    }

    /** Dogs of a group split its part of the pot by their needs. */
    private static Map<DogNeed, Double> shares(
            Grouped grouped, RationModel model, Solution solution, Map<DogNeed, Double> before) {
        Map<DogNeed, Double> fromPot = new LinkedHashMap<>(before);
        double all = 0;
        for (Map.Entry<DogNeed, List<DogNeed>> entry : grouped.members().entrySet()) {
            DogNeed together = entry.getKey();
            double kcal = together.kcalPerBatch() - model.additionKcal(together, solution);
            all += kcal;
            entry.getValue().forEach(dog -> fromPot.put(dog, kcal * dog.kcalPerBatch() / together.kcalPerBatch()));
        }
        double sum = all;
        fromPot.replaceAll((dog, kcal) -> kcal / sum);
        return fromPot;
    }

    private Map<DogNeed, Map<PantryItem, Integer>> doses(
            Grouped grouped, RationModel model, Solution weighed, Map<DogNeed, Double> shares) {
        Set<String> additions = model.bowlChoices().stream()
                .filter(choice -> weighed.value(choice) > CHOSEN)
                .map(Variable::name)
                .collect(Collectors.toUnmodifiableSet());
        Map<PantryItem, Double> pot = model.pot(weighed);
        Map<DogNeed, Map<PantryItem, Integer>> doses = new LinkedHashMap<>();
        grouped.members().values().stream().flatMap(List::stream).toList().parallelStream()
                .map(dog -> Map.entry(
                        dog,
                        OneBowl.doses(
                                household, knowledge, solver, pot, dog, shares.getOrDefault(dog, 0.0), additions)))
                .toList()
                .forEach(entry -> entry.getValue().ifPresent(given -> doses.put(entry.getKey(), given)));
        return doses;
    }

    /** Amounts with the packs that all doses together take; null where these break what is wished of the whole batch. */
    private @Nullable Amounts amounts(
            Grouped grouped,
            RationModel model,
            Solution weighed,
            Map<DogNeed, Map<PantryItem, Integer>> doses,
            Map<DogNeed, Double> shares,
            double bound,
            SolveLimits limits,
            double seconds) {
        Map<DogNeed, Map<PantryItem, Integer>> sums = new LinkedHashMap<>();
        grouped.members().forEach((together, dogs) -> {
            Map<PantryItem, Integer> sum = new LinkedHashMap<>();
            dogs.forEach(dog ->
                    doses.getOrDefault(dog, Map.of()).forEach((item, count) -> sum.merge(item, count, Integer::sum)));
            sums.put(together, sum);
        });
        LinearModel<Wish> rest = model.with(weighed, sums);
        Solution priced = solver.solve(rest, limits);
        if (!priced.hasValues()) {
            return null;
        }
        double cost = priced.objective();
        return new Amounts(
                shares,
                model.pot(weighed),
                doses,
                cost,
                bound,
                cost - bound <= limits.relativeGap() * Math.abs(cost),
                seconds);
    }
}
