package packpot.horizon;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.IntConsumer;
import packpot.audit.PlanAudit;
import packpot.audit.Verdict;
import packpot.explain.Planner;
import packpot.household.Horizon;
import packpot.household.HorizonScenario;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.needs.Needs;
import packpot.plan.Amounts;
import packpot.plan.Plan;
import packpot.plan.PlanBuilder;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/**
 * Plans one batch after the other. What is left of packs that keep is in the house for the next one; with prices that
 * stay the same, nothing is won by buying sooner than on the last shopping day before it is needed, so that a batch need
 * not look ahead. How far that is from the best choice of all batches together is what {@link ByWeight} bounds.
 */
public final class Sessions {

    private final Knowledge knowledge;
    private final Solver solver;
    private final Planner planner;

    public Sessions(Knowledge knowledge, Solver solver) {
        this.knowledge = knowledge;
        this.solver = solver;
        this.planner = new Planner(knowledge, solver);
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
        List<Interval> intervals = Interval.between(horizon.cookDays(), horizon.days());
        return planned(household, horizon, intervals, limits, done);
    }

    private Answer planned(
            Household household, Horizon horizon, List<Interval> intervals, SolveLimits limits, IntConsumer done) {
        Clock clock = new Clock(limits, 2 * intervals.size());
        ByWeight byWeight = new ByWeight(household, knowledge, solver);
        // By weight nothing is opened that a later batch cannot use; by packs nothing is opened that need not be.
        CompletableFuture<Answer> byPacks = CompletableFuture.supplyAsync(
                () -> fold(household, horizon, intervals, new Fold(byWeight, false, clock), ready -> {}));
        Answer one = fold(household, horizon, intervals, new Fold(byWeight, true, clock), done);
        Answer other = byPacks.join();
        double least = bound(household, intervals, byWeight, clock) + horizon.pricePerSession() * intervals.size();
        Answer better = cost(other) < cost(one) ? other : one;
        return better instanceof Answer.Planned planned
                ? new Answer.Planned(planned.plan().withBound(least))
                : better;
    }

    private static double cost(Answer answer) {
        return answer instanceof Answer.Planned planned ? planned.plan().cost().total() : Double.POSITIVE_INFINITY;
    }

    private record Fold(ByWeight byWeight, boolean ahead, Clock clock) {}

    private Answer fold(Household household, Horizon horizon, List<Interval> intervals, Fold fold, IntConsumer done) {
        List<HorizonPlan.Session> sessions = new ArrayList<>();
        Stock stock = Stock.of(household);
        for (Interval interval : intervals) {
            Household then = stock.in(Then.of(household, knowledge.overTime(), interval));
            boolean last = interval.end() == horizon.days();
            Planner.Result result = fold.ahead() && !last
                    ? ahead(then, fold)
                    : planner.plan(then, fold.clock().next());
            if (result instanceof Planner.Result.NoPlan none) {
                return new Answer.NoPlan(interval, none);
            }
            Planner.Result.Planned planned = (Planner.Result.Planned) result;
            sessions.add(new HorizonPlan.Session(interval, then, planned.plan(), planned.verdict()));
            stock = stock.after(then, planned.plan());
            done.accept(sessions.size());
        }
        return new Answer.Planned(
                new HorizonPlan(household, horizon, sessions, cost(household, horizon, sessions, stock), List.of()));
    }

    /** A batch by weight, as far as it can be had by packs too. */
    private Planner.Result ahead(Household then, Fold fold) {
        Amounts amounts = fold.byWeight().of(then, fold.clock().next()).amounts();
        if (amounts != null) {
            Plan plan = PlanBuilder.build(then, knowledge, Needs.of(then, knowledge), amounts);
            Verdict verdict = PlanAudit.check(plan, then, knowledge);
            if (verdict.passed()) {
                return new Planner.Result.Planned(then, plan, verdict);
            }
        }
        return planner.plan(then, fold.clock().next());
    }

    private double bound(Household household, List<Interval> intervals, ByWeight byWeight, Clock clock) {
        double sum = -byWeight.atMostSaved();
        Stock first = Stock.of(household);
        for (Interval interval : intervals) {
            Household then = Then.of(household, knowledge.overTime(), interval);
            Stock most = interval.equals(intervals.get(0)) ? first : first.onlyWhatKeeps(household);
            sum += byWeight.of(most.in(then), clock.next()).bound();
        }
        return Math.max(0, sum);
    }

    private static HorizonPlan.Cost cost(
            Household household, Horizon horizon, List<HorizonPlan.Session> sessions, Stock stock) {
        double till = sessions.stream()
                .mapToDouble(session -> session.plan().cost().atTheTill())
                .sum();
        double worth = stock.worth(household);
        double cookDays = horizon.pricePerSession() * sessions.size();
        return new HorizonPlan.Cost(till, worth, cookDays, till - worth + cookDays, 0);
    }
}
