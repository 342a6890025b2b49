package packpot.horizon;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
 * not look ahead. How far that is from the best choice of all batches together is what {@link SharedPacks} bounds.
 */
public final class Sessions {

    /** No batch takes more of the time than this part, where cook days are chosen. */
    private static final double SHARE_OF_TIME = 10;

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
        SharedPacks packs = new SharedPacks(household, knowledge, solver);
        Clock clock = new Clock(limits, 0);
        List<Integer> cookDays = horizon.choice() == Horizon.Choice.FIXED
                ? horizon.cookDays()
                : CookDays.choose(
                        household,
                        horizon,
                        interval -> packs.relaxedByWeight(later(household, horizon, interval), limits),
                        interval -> byWeight(later(household, horizon, interval), packs, limits));
        if (cookDays.isEmpty()) {
            return noCookDays(household, horizon, packs, limits);
        }
        List<Interval> intervals = Interval.between(cookDays, horizon.days());
        return planned(household, horizon, intervals, packs, clock.forParts(2 * intervals.size() + 1), done);
    }

    /** The household for a batch, counting on nothing that an earlier one has used; nothing that is known holds only for it. */
    private Household later(Household household, Horizon horizon, Interval interval) {
        Stock stock = Stock.of(household);
        Household then = Then.of(household, knowledge, interval);
        return (interval.day() == horizon.firstCookDay() ? stock : stock.onlyWhatKeeps(household)).in(then);
    }

    private static double byWeight(Household then, SharedPacks packs, SolveLimits limits) {
        return packs.byWeight(then, new SolveLimits(limits.seconds() / SHARE_OF_TIME, limits.relativeGap()))
                .bound();
    }

    /** Even the batch that ends soonest has no plan: that one is explained. */
    private Answer noCookDays(Household household, Horizon horizon, SharedPacks packs, SolveLimits limits) {
        int first = horizon.firstCookDay();
        int days = 1;
        while (first + days < horizon.days()
                && !horizon.cookOn()
                        .contains(
                                household.start().plusDays(first + (long) days).getDayOfWeek())) {
            days++;
        }
        Interval interval = new Interval(first, days);
        boolean impossible = Double.isInfinite(packs.relaxedByWeight(later(household, horizon, interval), limits));
        return new Answer.NoPlan(interval, new Planner.Result.NoPlan(later(household, horizon, interval), impossible));
    }

    private Answer planned(
            Household household,
            Horizon horizon,
            List<Interval> intervals,
            SharedPacks packs,
            Clock clock,
            IntConsumer done) {
        CompletableFuture<Answer> byPart = CompletableFuture.supplyAsync(
                () -> fold(household, horizon, intervals, new Fold(packs, false, clock), ready -> {}));
        Answer one = fold(household, horizon, intervals, new Fold(packs, true, clock), done);
        double least =
                bound(household, horizon, intervals, packs, clock) + horizon.pricePerSession() * intervals.size();
        Answer other = byPart.join();
        Answer better = cost(other) < cost(one) ? other : one;
        if (!(better instanceof Answer.Planned planned)) {
            return better;
        }
        HorizonPlan cheapest = lastByPacks(planned.plan(), clock).withBound(least);
        return new Answer.Planned(horizon.variety().isWished() ? varied(cheapest, packs, limitsOf(clock)) : cheapest);
    }

    /** The batches once more, each as different as is wished, as long as the money for that lasts. */
    private HorizonPlan varied(HorizonPlan cheapest, SharedPacks packs, SolveLimits limits) {
        Household household = cheapest.household();
        Horizon horizon = cheapest.horizon();
        Horizon.Variety wish = horizon.variety();
        double most = cheapest.cost().total() * (1 + wish.mostExtraShare());
        List<HorizonPlan.Session> sessions = new ArrayList<>();
        Stock stock = Stock.of(household);
        Varied so = Varied.before(wish);
        double extra = 0;
        for (HorizonPlan.Session old : cheapest.sessions()) {
            int left = cheapest.sessions().size() - sessions.size();
            Household then = stock.in(Then.of(household, knowledge, old.interval()));
            Household other = so.in(then, kcal(then), left);
            double plainCost = costByWeight(then, packs, limits);
            double otherCost = other.equals(then) ? plainCost : costByWeight(other, packs, limits);
            boolean affordable =
                    extra + otherCost - plainCost <= most - cheapest.cost().total();
            Household chosen = affordable ? other : then;
            Planner.Result result = ahead(chosen, 1, new Fold(packs, true, new Clock(limits, 1)));
            if (!(result instanceof Planner.Result.Planned planned)) {
                return cheapest.withNotes(
                        Varied.unmet(wish, cheapest.sessions(), "no other batch was found with what is in the house"));
            }
            extra += affordable ? otherCost - plainCost : 0;
            sessions.add(new HorizonPlan.Session(old.interval(), chosen, planned.plan(), planned.verdict()));
            stock = stock.after(then, planned.plan());
            so = so.after(then, planned.plan());
        }
        HorizonPlan.Cost cost = cost(household, horizon, sessions, stock);
        HorizonPlan found = new HorizonPlan(household, horizon, sessions, cost, List.of())
                .withBound(cheapest.cost().noPlanBelow());
        if (cost.total() > most) {
            return cheapest.withNotes(Varied.unmet(
                    wish,
                    cheapest.sessions(),
                    String.format(
                            Locale.ROOT,
                            "batches that differ as wished were found at %.1f %% more, and at most %.1f %% are wished",
                            100 * (cost.total() / cheapest.cost().total() - 1),
                            100 * wish.mostExtraShare())));
        }
        List<String> notes = new ArrayList<>();
        notes.add(String.format(
                Locale.ROOT,
                "batches that differ cost %.1f %% more than the cheapest ones",
                100 * Math.max(0, cost.total() / cheapest.cost().total() - 1)));
        notes.addAll(Varied.unmet(wish, sessions, "it would cost more than is wished, or there is no such batch"));
        return found.withNotes(notes);
    }

    private static double costByWeight(Household then, SharedPacks packs, SolveLimits limits) {
        Amounts amounts = packs.byWeight(then, limits).amounts();
        return amounts == null ? Double.POSITIVE_INFINITY : amounts.cost();
    }

    private static SolveLimits limitsOf(Clock clock) {
        return clock.forParts(1).next();
    }

    /** The last batch once more, now that it is known what is in the house: nothing is opened for a later one. */
    private HorizonPlan lastByPacks(HorizonPlan plan, Clock clock) {
        List<HorizonPlan.Session> sessions = new ArrayList<>(plan.sessions());
        HorizonPlan.Session last = sessions.remove(sessions.size() - 1);
        if (!(planner.plan(last.household(), clock.next()) instanceof Planner.Result.Planned planned)
                || !planned.verdict().passed()) {
            return plan;
        }
        sessions.add(new HorizonPlan.Session(last.interval(), last.household(), planned.plan(), planned.verdict()));
        Stock stock = Stock.of(plan.household());
        for (HorizonPlan.Session session : sessions) {
            stock = stock.after(session.household(), session.plan());
        }
        HorizonPlan other = new HorizonPlan(
                plan.household(),
                plan.horizon(),
                sessions,
                cost(plan.household(), plan.horizon(), sessions, stock),
                plan.notes());
        return other.cost().total() < plan.cost().total() ? other : plan;
    }

    private static double cost(Answer answer) {
        return answer instanceof Answer.Planned planned ? planned.plan().cost().total() : Double.POSITIVE_INFINITY;
    }

    /**
     * One way through all batches.
     *
     * @param byWeight how packs are shared with later batches, by weight or by part
     */
    private record Fold(SharedPacks packs, boolean byWeight, Clock clock) {}

    private Answer fold(Household household, Horizon horizon, List<Interval> intervals, Fold fold, IntConsumer done) {
        List<HorizonPlan.Session> sessions = new ArrayList<>();
        List<Double> kcal = intervals.stream()
                .map(interval -> kcal(Then.of(household, knowledge, interval)))
                .toList();
        double all = kcal.stream().mapToDouble(Double::doubleValue).sum();
        Stock stock = Stock.of(household);
        for (Interval interval : intervals) {
            Household then = stock.in(Then.of(household, knowledge, interval));
            boolean last = interval.end() == horizon.days();
            Planner.Result result =
                    last ? planner.plan(then, fold.clock().next()) : ahead(then, kcal.get(sessions.size()) / all, fold);
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

    private double kcal(Household then) {
        return Needs.of(then, knowledge).kcalPerBatch();
    }

    /** A batch that shares packs with later ones; by packs of its own where what is in the house does not do for that. */
    private Planner.Result ahead(Household then, double part, Fold fold) {
        SolveLimits limits = fold.clock().next();
        SharedPacks.Best best = fold.byWeight()
                ? fold.packs().byWeight(then, limits)
                : fold.packs().byPart(then, part, limits);
        Amounts amounts = best.amounts();
        if (amounts != null) {
            Plan plan = PlanBuilder.build(then, knowledge, Needs.of(then, knowledge), amounts);
            Verdict verdict = PlanAudit.check(plan, then, knowledge);
            if (verdict.passed()) {
                return new Planner.Result.Planned(then, plan, verdict);
            }
        }
        return planner.plan(then, fold.clock().next());
    }

    private double bound(
            Household household, Horizon horizon, List<Interval> intervals, SharedPacks packs, Clock clock) {
        double sum = -packs.atMostSaved();
        for (Interval interval : intervals) {
            sum += packs.byWeight(later(household, horizon, interval), clock.next())
                    .bound();
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
