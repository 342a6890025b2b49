package packpot.explain;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import packpot.food.Keeps;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.plan.Plan;
import packpot.ration.Near;
import packpot.solver.SolveLimits;

/** The plan that is nearest to an old one at a given cost, and of equally near ones the cheapest. */
final class NearPlan {
    /** So far a distance may be from the least one; distances are shown in whole percent. */
    private static final double DISTANCE_GAP = 0.02;

    /** Half a percent of the pot: what a distance is shown to, and what weighing in whole steps may take. */
    private static final double NO_FARTHER = 0.005;

    /** A hundredth of the old shopping that spoils counts as much as a tenth of the pot exchanged: waste goes first. */
    private static final double WASTE_OVER_NEARNESS = 10;

    private final Planner planner;
    private final SolveLimits limits;
    private final Plan old;
    private final boolean bought;

    /**
     * A search on one planner.
     *
     * @param bought whether what the old plan buys is in the house, and spoils where it is not used
     */
    NearPlan(Planner planner, SolveLimits limits, Plan old, boolean bought) {
        this.planner = planner;
        this.limits = limits;
        this.old = old;
        this.bought = bought;
    }

    /** The nearest audited plan; null when none was found in time. */
    Planner.Result.@Nullable Planned of(Planner.Result.Planned cheapest, double mostCost) {
        Map<String, Double> recipe = new HashMap<>();
        old.pot().forEach(ingredient -> recipe.put(ingredient.food(), ingredient.shareOfCookedMass()));
        double noPlanBelow = cheapest.plan().proof().noPlanBelow();
        Map<String, Near.Spoils> spoils = bought ? spoils(cheapest.household()) : Map.of();
        Near near = new Near(recipe, mostCost, noPlanBelow, spoils, null);
        Planner.Result.Planned nearest = planned(
                cheapest.household(),
                new SolveLimits(limits.seconds(), Math.max(DISTANCE_GAP, limits.relativeGap())),
                near);
        if (nearest == null || bought) {
            return nearest;
        }
        // Nearness knows no money: it takes a needless pack, and doses that nobody needs.
        Planner.Result.Planned saving =
                planned(cheapest.household(), limits, near.within(distance(nearest.plan()) + NO_FARTHER));
        return saving == null
                        || saving.plan().proof().cost()
                                >= nearest.plan().proof().cost()
                ? nearest
                : new Planner.Result.Planned(
                        saving.household(),
                        saving.plan().withProof(proof(nearest, saving, noPlanBelow)),
                        saving.verdict());
    }

    /** What is proved of the nearest holds; the bound is the one that was found without regard to the old recipe. */
    private static Plan.Proof proof(Planner.Result.Planned nearest, Planner.Result.Planned saving, double noPlanBelow) {
        Plan.Proof proof = saving.plan().proof();
        return new Plan.Proof(
                nearest.plan().proof().provedOptimal(),
                proof.cost(),
                noPlanBelow,
                Math.max(0, proof.cost() - noPlanBelow) / Math.max(1e-9, proof.cost()),
                nearest.plan().proof().solveSeconds() + proof.solveSeconds());
    }

    private Planner.Result.@Nullable Planned planned(Household household, SolveLimits within, Near near) {
        return planner.plan(household, within, near) instanceof Planner.Result.Planned planned
                        && planned.verdict().passed()
                ? planned
                : null;
    }

    /** What the old plan uses of bought food that spoils: what it leaves over itself is no waste of the new one. */
    private Map<String, Near.Spoils> spoils(Household now) {
        double paid = Math.max(1e-9, old.cost().atTheTill());
        Map<String, Near.Spoils> spoils = new HashMap<>();
        for (Plan.Purchase line : old.shopping()) {
            now.pantry().stream()
                    .filter(item -> item.food().id().equals(line.food()) && perishable(item) && line.pays() > 0)
                    .forEach(item -> spoils.put(
                            line.food(),
                            new Near.Spoils(
                                    Math.min(line.usedGrams(), item.onHandGrams()),
                                    WASTE_OVER_NEARNESS * item.pricePerGram() / paid)));
        }
        return spoils;
    }

    private static boolean perishable(PantryItem item) {
        return !item.food().isSupplement() && item.food().kitchen().keeps() == Keeps.PERISHABLE;
    }

    private double distance(Plan other) {
        return PlanComparer.distance(old, other);
    }

    /** Whether a plan is the old one: the same dogs and days, the same recipe and additions, and nothing more to buy. */
    boolean stands(Plan other) {
        return other.days() == old.days()
                && other.cost().atTheTill() <= 0
                && distance(other) < NO_FARTHER
                && bowls(other).equals(bowls(old));
    }

    private static Map<String, Set<String>> bowls(Plan plan) {
        return plan.dogs().stream()
                .collect(Collectors.toMap(
                        Plan.DogPlan::name,
                        dog -> dog.additions().stream()
                                .map(addition -> addition.food() + " " + addition.dose() + " " + addition.onDays())
                                .collect(Collectors.toSet())));
    }
}
