package packpot.horizon;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.IntConsumer;
import packpot.explain.Planner;
import packpot.household.Horizon;
import packpot.household.HorizonScenario;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/**
 * Plans one batch after the other. What is left of packs that keep is in the house for the next one; with prices that
 * stay the same, nothing is won by buying sooner than on the last shopping day before it is needed, so that a batch need
 * not look ahead. How far that is from the best choice of all batches together is what {@link SharedPacks} bounds.
 */
public final class Sessions {
    /** Where cook days are chosen, so much of the time is kept for planning what is cooked on them. */
    private static final double KEPT_SHARE_OF_TIME = 0.5;

    /** Where cook days are chosen, no batch takes more of the time than this part. */
    private static final double SHARE_OF_TIME = 0.1;

    private final Knowledge knowledge;
    private final Solver solver;

    public Sessions(Knowledge knowledge, Solver solver) {
        this.knowledge = knowledge;
        this.solver = solver;
    }

    /** How planning ended. */
    public sealed interface Answer {

        /** A plan for all days. */
        record Planned(HorizonPlan plan) implements Answer {}

        /**
         * A batch has no plan.
         *
         * @param none of the batch, with its household
         */
        record NoPlan(Interval interval, Planner.Result.NoPlan none) implements Answer {}
    }

    /**
     * Plans.
     *
     * @param limits of the whole search
     * @param done is told how many batches are planned
     */
    public Answer plan(HorizonScenario scenario, SolveLimits limits, IntConsumer done) {
        Household household = scenario.household();
        Horizon horizon = scenario.horizon();
        SharedPacks packs = new SharedPacks(household, knowledge, solver);
        Clock clock = new Clock(limits);
        List<Integer> cookDays = horizon.choice() == Horizon.Choice.FIXED
                ? horizon.cookDays()
                : CookDays.choose(
                        household,
                        horizon,
                        (int) knowledge.kitchen().freezerDays(),
                        interval -> packs.relaxedByWeight(alone(scenario, interval), limits),
                        interval -> byWeight(alone(scenario, interval), packs, clock));
        if (cookDays.isEmpty()) {
            return noCookDays(scenario, packs, limits);
        }
        List<Interval> intervals = Interval.between(cookDays, horizon.days());
        clock.share(2 * packs.different(household, intervals) + 1);
        Chain chain = new Chain(scenario, knowledge, solver, packs, clock);
        CompletableFuture<Answer> byPart = CompletableFuture.supplyAsync(() -> chain.byPart(intervals));
        Answer byWeight = chain.byWeight(intervals, done);
        double bound = bound(scenario, intervals, packs, clock);
        Answer cheaper = cost(byPart.join()) < cost(byWeight) ? byPart.join() : byWeight;
        if (!(cheaper instanceof Answer.Planned planned)) {
            return cheaper;
        }
        HorizonPlan plan = chain.varied(chain.lastByPacks(planned.plan()).withBound(bound));
        List<String> notes = new ArrayList<>(plan.notes());
        notes.addAll(MovingNeeds.notes(scenario, knowledge, plan.sessions()));
        return new Answer.Planned(plan.withNotes(notes));
    }

    /** The household for one batch, which may count on all that keeps and is in the house on the first day. */
    private Household alone(HorizonScenario scenario, Interval interval) {
        Household household = scenario.household();
        Stock stock = Stock.of(household);
        boolean first = interval.day() == scenario.horizon().firstCookDay();
        return (first ? stock : stock.onlyWhatKeeps(household)).in(Then.of(household, knowledge, interval));
    }

    /** What a batch costs at least: closely while there is time, else not. */
    private static double byWeight(Household then, SharedPacks packs, Clock clock) {
        SolveLimits limits = clock.part(SHARE_OF_TIME);
        return clock.leftShare() > KEPT_SHARE_OF_TIME
                ? packs.byWeight(then, limits).bound()
                : packs.relaxedByWeight(then, limits);
    }

    /** Even the batch that ends soonest has no plan: that one is explained. */
    private Answer noCookDays(HorizonScenario scenario, SharedPacks packs, SolveLimits limits) {
        Horizon horizon = scenario.horizon();
        int end = CookDays.allowed(scenario.household(), horizon).stream()
                .skip(1)
                .findFirst()
                .orElse(horizon.days());
        Interval interval = new Interval(horizon.firstCookDay(), end - horizon.firstCookDay());
        Household then = alone(scenario, interval);
        boolean impossible = Double.isInfinite(packs.relaxedByWeight(then, limits));
        return new Answer.NoPlan(interval, new Planner.Result.NoPlan(then, impossible));
    }

    /** No choice of batches costs less; where cook days were chosen, on no other cook days either. */
    private double bound(HorizonScenario scenario, List<Interval> intervals, SharedPacks packs, Clock clock) {
        double sum = -packs.atMostSaved();
        for (Interval interval : intervals) {
            sum += packs.byWeight(alone(scenario, interval), clock.next()).bound();
        }
        return Math.max(0, sum) + scenario.horizon().pricePerSession() * intervals.size();
    }

    private static double cost(Answer answer) {
        return answer instanceof Answer.Planned planned ? planned.plan().cost().total() : Double.POSITIVE_INFINITY;
    }
}
