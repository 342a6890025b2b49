package packpot.explain;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import packpot.dog.Dog;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.needs.Needs;
import packpot.ration.RationPlanner;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/**
 * What pots of one cook day cost at least. Pots share packs, so each is reckoned by itself with all food at its price by
 * weight and all of the kitchen for itself. What is in the house is free for all pots together: for any share s of its price,
 * pots cost at least what they cost when a gram costs s, less s times what is there, since a gram beyond that costs all of its
 * price. The share that gives the highest bound is taken (a Lagrange multiplier, sought among a few).
 */
final class PotBounds {
    private static final List<Double> SHARES = List.of(1.0, 0.75, 0.5, 0.25, 0.1);

    private final Household household;
    private final Knowledge knowledge;
    private final RationPlanner planner;
    private final Map<Pot, Double> quick = new ConcurrentHashMap<>();
    private final Map<Pot, Close> close = new HashMap<>();

    PotBounds(Household household, Knowledge knowledge, Solver solver) {
        this.household = household;
        this.knowledge = knowledge;
        this.planner = new RationPlanner(knowledge, solver);
    }

    /**
     * A bound, and the share of the price of what is in the house that it comes from.
     *
     * @param cost infinite where a group has no ration
     */
    record Bound(double cost, double share) {}

    /** A pot as it is reckoned for a bound. */
    private record Pot(List<Dog> dogs, double share) {}

    private record Close(double bound, RationPlanner.Outcome.@Nullable Found ration) {}

    /** No pots for these groups cost less; whole numbers are taken for fractions. */
    Bound quick(List<List<Dog>> groups, SolveLimits limits) {
        return shares().map(share -> new Bound(
                        cost(share, groups, group -> quick.computeIfAbsent(group, pot -> relaxed(pot, limits))), share))
                .max(Comparator.comparingDouble(Bound::cost))
                .orElseThrow();
    }

    private Stream<Double> shares() {
        return inTheHouse(1) > 0 ? SHARES.stream() : Stream.of(1.0);
    }

    /** The same with whole numbers, which takes a search for each group that is new. */
    Bound close(List<List<Dog>> groups, Bound quick, SolveLimits limits) {
        double cost = cost(
                quick.share(),
                groups,
                group -> close.computeIfAbsent(group, pot -> searched(pot, limits))
                        .bound());
        return new Bound(Math.max(cost, quick.cost()), quick.share());
    }

    /** A ration from which the search for a plan of one group can begin; null where none is known. */
    RationPlanner.Outcome.@Nullable Found ration(List<Dog> group, Bound bound) {
        Close known = close.get(new Pot(group, bound.share()));
        return known == null ? null : known.ration();
    }

    private double cost(double share, List<List<Dog>> groups, ToDoubleFunction<Pot> each) {
        double sum = groups.stream()
                .mapToDouble(group -> each.applyAsDouble(new Pot(group, share)))
                .sum();
        return Math.max(0, sum - inTheHouse(share));
    }

    private double inTheHouse(double share) {
        return household.pantry().stream()
                .filter(item -> !item.outOfStock())
                .mapToDouble(item -> share * item.onHandGrams() * item.pricePerGram())
                .sum();
    }

    private Household byWeight(Pot pot) {
        // What all pots must use together need not all go into one of them.
        return household
                .withDogs(pot.dogs())
                .withBudget(null)
                .withPantry(household.pantry().stream()
                        .map(item -> item.outOfStock()
                                ? item.withMustUse(0)
                                : item.byWeight(item.onHandGrams() > 0 ? pot.share() : 1)
                                        .withMustUse(0))
                        .toList());
    }

    private double relaxed(Pot pot, SolveLimits limits) {
        Household some = byWeight(pot);
        return planner.costsAtLeast(some, Needs.of(some, knowledge), limits) - freeSupplements(some);
    }

    private Close searched(Pot pot, SolveLimits limits) {
        double atLeast = quick.computeIfAbsent(pot, one -> relaxed(one, limits));
        if (Double.isInfinite(atLeast)) {
            return new Close(atLeast, null);
        }
        Household some = byWeight(pot);
        RationPlanner.Outcome outcome = planner.plan(some, Needs.of(some, knowledge), limits);
        if (outcome instanceof RationPlanner.Outcome.Found found) {
            return new Close(Math.max(atLeast, found.amounts().bound() - freeSupplements(some)), found);
        }
        boolean impossible = ((RationPlanner.Outcome.None) outcome).provedImpossible();
        return new Close(impossible ? Double.POSITIVE_INFINITY : atLeast, null);
    }

    /** A supplement that costs nothing counts in a model as much as the cheapest food. */
    private static double freeSupplements(Household some) {
        return some.cheapestFoodPerGram()
                * some.pantry().stream()
                        .filter(item -> item.food().isSupplement())
                        .mapToDouble(PantryItem::onHandGrams)
                        .sum();
    }
}
