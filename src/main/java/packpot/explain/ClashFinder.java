package packpot.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import packpot.household.Wish;
import packpot.solver.LinearModel;
import packpot.solver.Solution;
import packpot.solver.Solver;

/**
 * Finds wishes that cannot hold together although any one of them could be dropped for the rest to hold.
 *
 * <p>First few candidates: all wishes may be missed, as little as can be; those that are missed must hold from then on;
 * and so on until what must hold cannot. This is done without the whole numbers where these are not to blame, with them
 * otherwise. Then each candidate is left out in turn, for good where the rest still cannot hold, with the whole numbers
 * in.
 */
final class ClashFinder {
    private static final double NOTICEABLE = 1e-6;
    private static final double ONE_TRIAL_SECONDS = 6;
    private static final double ANY_SOLUTION = 1;
    private static final double ROUGH = 0.25;
    private static final double ENERGY_WEIGHT = 50;
    private static final int MOST_CLASHES = 8;
    private static final int OWN = 6;

    private final LinearModel<Wish> model;
    private final Trial trial;
    private final TimeBudget time;

    ClashFinder(LinearModel<Wish> model, Solver solver, TimeBudget time) {
        this.model = model;
        this.trial = new Trial(model, solver);
        this.time = time;
    }

    /**
     * A clash.
     *
     * @param irreducible whether it is proved that the rest holds without any one of them
     */
    record Found(List<Demand> demands, boolean irreducible) {
        Found {
            demands = List.copyOf(demands);
        }
    }

    /**
     * Clashes that have nothing in common but that the dogs are to be fed.
     *
     * @param complete whether the wishes outside of the clashes are proved to hold together
     */
    record All(List<Found> clashes, boolean complete) {
        All {
            clashes = List.copyOf(clashes);
        }
    }

    /** All clashes that do not overlap; each of them alone keeps the plan from being. */
    All all() {
        List<Demand> left = new ArrayList<>(Demand.of(model));
        List<Found> clashes = new ArrayList<>();
        while (clashes.size() < MOST_CLASHES && !time.isSpent()) {
            Optional<Found> found = first(left);
            if (found.isEmpty()) {
                return new All(clashes, holds(left) == Answer.YES);
            }
            clashes.add(found.get());
            left.removeIf(demand ->
                    demand.kind() != Wish.Kind.ENERGY && found.get().demands().contains(demand));
        }
        return new All(clashes, false);
    }

    /** A clash among these wishes; empty when they hold together or the time runs out before a proof. */
    Optional<Found> first(List<Demand> among) {
        boolean integers = !cannotHold(among, false);
        if (integers && !cannotHold(among, true)) {
            return Optional.empty();
        }
        List<Demand> few = new ArrayList<>(candidates(among, integers));
        // Where the dogs' energy will do as the other side of a clash, no other wish is needed for it.
        among.stream()
                .filter(demand -> demand.kind() == Wish.Kind.ENERGY && !few.contains(demand))
                .forEach(few::add);
        Found found = shrink(integers ? few : shrink(few, false).demands(), true);
        return simpler(among, found).or(() -> Optional.of(found));
    }

    /** Where several of the household's own wishes clash, one of them alone may clash with the rest just as well. */
    private Optional<Found> simpler(List<Demand> among, Found found) {
        List<Demand> own = found.demands().stream()
                .filter(demand -> telling(demand.kind()) == OWN)
                .toList();
        if (own.size() < 2) {
            return Optional.empty();
        }
        for (Demand kept : own) {
            List<Demand> rest = new ArrayList<>(among);
            rest.removeIf(demand -> own.contains(demand) && !demand.equals(kept));
            if (cannotHold(rest, true)) {
                return first(rest);
            }
        }
        return Optional.empty();
    }

    private List<Demand> candidates(List<Demand> among, boolean integers) {
        List<Demand> hard = new ArrayList<>();
        List<Demand> soft = new ArrayList<>(among);
        while (!soft.isEmpty()) {
            Trial.Outcome outcome = trial.solve(
                    hard,
                    soft.stream()
                            .map(each -> new Trial.Soft(each, weight(each), Double.POSITIVE_INFINITY))
                            .toList(),
                    integers,
                    time.limits(ONE_TRIAL_SECONDS, ROUGH));
            if (outcome.solution().status() == Solution.Status.INFEASIBLE) {
                return hard;
            }
            List<Demand> missed = soft.stream()
                    .filter(each -> outcome.missed(each) > NOTICEABLE)
                    .toList();
            if (missed.isEmpty()) {
                return among;
            }
            hard.addAll(missed);
            soft.removeAll(missed);
        }
        return hard;
    }

    private static double weight(Demand demand) {
        return demand.kind() == Wish.Kind.ENERGY ? ENERGY_WEIGHT : 1;
    }

    /** Leaves out what is not needed for the clash, several at a time while that works. */
    private Found shrink(List<Demand> among, boolean integers) {
        List<Demand> kept = new ArrayList<>(among);
        kept.sort(Comparator.comparingInt(demand -> telling(demand.kind())));
        boolean proved = true;
        int size = kept.size() > 8 ? kept.size() / 4 : 1;
        int from = 0;
        while (from < kept.size()) {
            int to = Math.min(kept.size(), from + size);
            List<Demand> rest = new ArrayList<>(kept.subList(0, from));
            rest.addAll(kept.subList(to, kept.size()));
            Answer answer = integers ? holds(rest) : relaxed(rest);
            if (answer == Answer.NO) {
                kept = rest;
            } else if (to - from > 1) {
                size = Math.max(1, (to - from) / 2);
            } else {
                proved &= answer == Answer.YES;
                from++;
            }
        }
        return new Found(kept, proved);
    }

    private enum Answer {
        YES,
        NO,
        NOT_KNOWN
    }

    private boolean cannotHold(List<Demand> demands, boolean integers) {
        return (integers ? holds(demands) : relaxed(demands)) == Answer.NO;
    }

    private Answer holds(List<Demand> demands) {
        return relaxed(demands) == Answer.NO
                ? Answer.NO
                : answer(trial.holds(demands, true, time.limits(ONE_TRIAL_SECONDS, ANY_SOLUTION)));
    }

    private Answer relaxed(List<Demand> demands) {
        return answer(trial.holds(demands, false, time.limits(ONE_TRIAL_SECONDS, ANY_SOLUTION)));
    }

    private static Answer answer(Solution solution) {
        return solution.hasValues()
                ? Answer.YES
                : solution.status() == Solution.Status.INFEASIBLE ? Answer.NO : Answer.NOT_KNOWN;
    }

    /** Wishes that say least to a household are left out first, its own wishes last. */
    private static int telling(Wish.Kind kind) {
        return switch (kind) {
            case SHAPE -> 0;
            case ADDITIONS -> 1;
            case INGREDIENTS -> 2;
            case RATIO, NUTRIENT_MAXIMUM -> 3;
            case NUTRIENT_MINIMUM -> 4;
            case FOOD_LIMIT -> 5;
            case POT, BIN, BAGS, FREEZER, BUDGET, STOCK, MUST_USE, AVOID, RECIPE -> OWN;
            case ENERGY -> OWN + 1;
        };
    }
}
