package packpot.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import packpot.audit.PlanAudit;
import packpot.audit.Verdict;
import packpot.dog.Dog;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.needs.Needs;
import packpot.plan.Amounts;
import packpot.plan.Plan;
import packpot.plan.PlanBuilder;
import packpot.ration.RationPlanner.Outcome.Found;
import packpot.solver.SolveLimits;

/**
 * Plans the pots of one way to part the dogs. What one pot leaves of bags, freezer, stock and opened packs is the next one's, so
 * the first ones do not know what the later ones could use up: once all are planned, each is planned again as if it were the
 * last one, as long as the whole becomes cheaper.
 */
final class PotPlans {
    private static final double LEAST_GAIN = 1e-4;
    private static final int MOST_ROUNDS = 3;

    private final Household household;
    private final Knowledge knowledge;
    private final Planner planner;
    private final Supplier<SolveLimits> limits;
    private final TimeBudget time;

    /** @param limits of one pot */
    PotPlans(Household household, Knowledge knowledge, Planner planner, Supplier<SolveLimits> limits, TimeBudget time) {
        this.household = household;
        this.knowledge = knowledge;
        this.planner = planner;
        this.limits = limits;
        this.time = time;
    }

    /** A pot and the ration that is cooked in it. */
    private record Pot(List<Dog> dogs, Found ration) {}

    /** Pots in the order in which they are shopped for. */
    private record Shopped(List<Pot> pots, Pots.Way way) {}

    /**
     * The cheapest pots that were found; null where one has no plan that passes its audit.
     *
     * @param byWeight a ration for dogs as if packs could be cut; null for none
     */
    Pots.@Nullable Way plan(List<List<Dog>> groups, Function<List<Dog>, @Nullable Found> byWeight) {
        List<List<Dog>> largestFirst = groups.stream()
                .sorted(Comparator.comparingDouble(group -> -kcal(group)))
                .toList();
        Shopped first = cheaper(oneAfterTheOther(largestFirst, byWeight), asByWeight(largestFirst, byWeight));
        return first == null ? null : improved(first, largestFirst).way();
    }

    private Shopped improved(Shopped first, List<List<Dog>> groups) {
        Shopped best = first;
        for (int round = 0; groups.size() > 1 && round < MOST_ROUNDS; round++) {
            double before = best.way().cost();
            for (List<Dog> group : groups) {
                Shopped other = time.isSpent() ? null : withLast(best, group);
                best = other != null && other.way().cost() < best.way().cost() ? other : best;
            }
            if (best.way().cost() > (1 - LEAST_GAIN) * before) {
                break;
            }
        }
        return best;
    }

    private double kcal(List<Dog> group) {
        return Needs.of(household.withDogs(group), knowledge).kcalPerBatch();
    }

    private static @Nullable Shopped cheaper(@Nullable Shopped one, @Nullable Shopped other) {
        return one == null || (other != null && other.way().cost() < one.way().cost()) ? other : one;
    }

    private @Nullable Shopped oneAfterTheOther(List<List<Dog>> groups, Function<List<Dog>, @Nullable Found> byWeight) {
        List<Pot> pots = new ArrayList<>();
        List<Planner.Result.Planned> plans = new ArrayList<>();
        Household rest = household;
        for (List<Dog> group : groups) {
            Planner.Searched searched = planner.searchFrom(byWeight.apply(group), rest.withDogs(group), limits.get());
            Found ration = searched.found();
            if (ration == null
                    || !(searched.result() instanceof Planner.Result.Planned planned)
                    || !planned.verdict().passed()) {
                return null;
            }
            pots.add(new Pot(group, ration));
            plans.add(planned);
            rest = after(rest, planned.plan());
        }
        return new Shopped(pots, priced(plans));
    }

    private @Nullable Shopped asByWeight(List<List<Dog>> groups, Function<List<Dog>, @Nullable Found> byWeight) {
        List<Pot> pots = new ArrayList<>();
        for (List<Dog> group : groups) {
            Found ration = byWeight.apply(group);
            if (ration == null || groups.size() == 1) {
                return null;
            }
            pots.add(new Pot(group, ration));
        }
        List<Planner.Result.Planned> plans = shopped(pots);
        return plans == null ? null : new Shopped(pots, priced(plans));
    }

    /** The same pots with one of them planned anew, from what all others leave. */
    private @Nullable Shopped withLast(Shopped before, List<Dog> group) {
        List<Pot> others =
                before.pots().stream().filter(pot -> !pot.dogs().equals(group)).toList();
        Found own = before.pots().stream()
                .filter(pot -> pot.dogs().equals(group))
                .map(Pot::ration)
                .findFirst()
                .orElseThrow();
        List<Planner.Result.Planned> plans = shopped(others);
        if (plans == null) {
            return null;
        }
        Household rest = household;
        for (Planner.Result.Planned plan : plans) {
            rest = after(rest, plan.plan());
        }
        Planner.Searched searched = planner.searchFrom(own, rest.withDogs(group), limits.get());
        Found ration = searched.found();
        if (ration == null
                || !(searched.result() instanceof Planner.Result.Planned planned)
                || !planned.verdict().passed()) {
            return null;
        }
        return new Shopped(
                Stream.concat(others.stream(), Stream.of(new Pot(group, ration)))
                        .toList(),
                priced(Stream.concat(plans.stream(), Stream.of(planned)).toList()));
    }

    /** Plans of rations one after the other; null where one does not pass its audit with what is left to it. */
    private @Nullable List<Planner.Result.Planned> shopped(List<Pot> pots) {
        List<Planner.Result.Planned> plans = new ArrayList<>();
        Household rest = household;
        for (Pot pot : pots) {
            Household own = rest.withDogs(pot.dogs());
            Needs needs = Needs.of(own, knowledge);
            Amounts amounts = pot.ration().amounts().of(own.pantry(), needs.dogs());
            Plan plan = unproved(PlanBuilder.build(own, knowledge, needs, amounts));
            Verdict verdict = PlanAudit.check(plan, own, knowledge);
            if (!verdict.passed()) {
                return null;
            }
            plans.add(new Planner.Result.Planned(own, plan, verdict));
            rest = after(rest, plan);
        }
        return plans;
    }

    /** What was proved of a ration was proved with other packs in the house. */
    private static Plan unproved(Plan plan) {
        double cost = plan.cost().ofTheBatch();
        return plan.withProof(new Plan.Proof(false, cost, 0, 1, plan.proof().solveSeconds()));
    }

    /** What is left for the next pot of the day, opened packs included. */
    private static Household after(Household before, Plan plan) {
        Map<String, Double> opened = new HashMap<>();
        plan.shopping().forEach(line -> opened.put(line.food(), line.leftOverGrams()));
        Household rest = Rest.sameDay(before, plan);
        return rest.withPantry(rest.pantry().stream()
                .map(item -> item.withOnHand(
                        item.onHandGrams() + opened.getOrDefault(item.food().id(), 0.0)))
                .toList());
    }

    /** Reckoned from what all pots buy and use together. */
    private Pots.Way priced(List<Planner.Result.Planned> pots) {
        double till = 0;
        Map<String, Double> used = new HashMap<>();
        Map<String, Double> bought = new HashMap<>();
        for (Planner.Result.Planned pot : pots) {
            for (Plan.Purchase line : pot.plan().shopping()) {
                till += line.pays();
                used.merge(line.food(), line.usedGrams(), Double::sum);
                bought.merge(line.food(), line.usedGrams() - line.fromHandGrams() + line.leftOverGrams(), Double::sum);
            }
        }
        double worth = 0;
        for (PantryItem item : household.pantry()) {
            double paidFor = bought.getOrDefault(item.food().id(), 0.0);
            double left =
                    item.onHandGrams() + paidFor - used.getOrDefault(item.food().id(), 0.0);
            worth += Math.min(left, paidFor) * household.rules().leftWorthPerGram(item);
        }
        return new Pots.Way(pots, till, till - worth);
    }
}
