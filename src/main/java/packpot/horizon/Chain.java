package packpot.horizon;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntConsumer;
import packpot.audit.PlanAudit;
import packpot.audit.Verdict;
import packpot.explain.Planner;
import packpot.household.HorizonScenario;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.needs.Needs;
import packpot.plan.Amounts;
import packpot.plan.Plan;
import packpot.plan.PlanBuilder;
import packpot.solver.Solver;

/** One batch after the other, each with what the ones before it left in the house. */
final class Chain {
    private final HorizonScenario scenario;
    private final Household household;
    private final Knowledge knowledge;
    private final SharedPacks packs;
    private final Clock clock;
    private final Planner planner;

    Chain(HorizonScenario scenario, Knowledge knowledge, Solver solver, SharedPacks packs, Clock clock) {
        this.scenario = scenario;
        this.household = scenario.household();
        this.knowledge = knowledge;
        this.packs = packs;
        this.clock = clock;
        this.planner = new Planner(knowledge, solver);
    }

    /** How packs are shared with later batches. */
    private interface Sharing {
        SharedPacks.Best best(Household then, Interval interval);
    }

    /** Batches by weight. */
    Sessions.Answer byWeight(List<Interval> intervals, IntConsumer done) {
        return chain(intervals, (then, interval) -> packs.byWeight(then, clock.next()), done);
    }

    /** Batches by their part of all food. */
    Sessions.Answer byPart(List<Interval> intervals) {
        double all = intervals.stream().mapToDouble(this::kcal).sum();
        return chain(
                intervals, (then, interval) -> packs.byPart(then, kcal(interval) / all, clock.next()), ready -> {});
    }

    private double kcal(Interval interval) {
        return Needs.of(Then.of(household, knowledge, interval), knowledge).kcalPerBatch();
    }

    private Sessions.Answer chain(List<Interval> intervals, Sharing sharing, IntConsumer done) {
        List<HorizonPlan.Session> sessions = new ArrayList<>();
        Stock stock = Stock.of(household);
        for (Interval interval : intervals) {
            Household then = stock.in(Then.of(household, knowledge, interval));
            Planner.Result result = planned(then, sharing.best(then, interval));
            if (result instanceof Planner.Result.NoPlan none) {
                return new Sessions.Answer.NoPlan(interval, none);
            }
            HorizonPlan.Session session = session(interval, (Planner.Result.Planned) result);
            sessions.add(session);
            stock = stock.after(session.household(), session.plan());
            done.accept(sessions.size());
        }
        return new Sessions.Answer.Planned(HorizonPlan.of(scenario, sessions));
    }

    private static HorizonPlan.Session session(Interval interval, Planner.Result.Planned planned) {
        return new HorizonPlan.Session(interval, planned.household(), planned.plan(), planned.verdict());
    }

    /** The batch with shared packs; with packs of its own where what is in the house does not do for that. */
    private Planner.Result planned(Household then, SharedPacks.Best best) {
        Amounts amounts = best.amounts();
        if (amounts != null) {
            Plan plan = PlanBuilder.build(then, knowledge, Needs.of(then, knowledge), amounts);
            Verdict verdict = PlanAudit.check(plan, then, knowledge);
            if (verdict.passed()) {
                return new Planner.Result.Planned(then, plan, verdict);
            }
        }
        return planner.searchFrom(best.ration(), then, clock.next()).result();
    }

    /** The last batch once more, now that it is known what is in the house: nothing is opened for a later one. */
    HorizonPlan lastByPacks(HorizonPlan plan) {
        List<HorizonPlan.Session> sessions = new ArrayList<>(plan.sessions());
        HorizonPlan.Session last = sessions.remove(sessions.size() - 1);
        if (!(planner.searchFrom(packs.latestByWeight(), last.household(), clock.next())
                                .result()
                        instanceof Planner.Result.Planned planned)
                || !planned.verdict().passed()) {
            return plan;
        }
        sessions.add(session(last.interval(), planned));
        HorizonPlan other = HorizonPlan.of(scenario, sessions);
        return other.cost().total() < plan.cost().total() ? other : plan;
    }

    /** The batches once more, each as different as is wished, as long as the money for that lasts. */
    HorizonPlan varied(HorizonPlan cheapest) {
        var wish = scenario.horizon().variety();
        if (!wish.isWished()) {
            return cheapest;
        }
        double extra = cheapest.cost().total() * wish.mostExtraShare();
        double spent = 0;
        List<HorizonPlan.Session> sessions = new ArrayList<>();
        Stock stock = Stock.of(household);
        Varied so = Varied.before(wish);
        for (HorizonPlan.Session old : cheapest.sessions()) {
            Household then = stock.in(Then.of(household, knowledge, old.interval()));
            Household other =
                    so.in(then, kcal(old.interval()), cheapest.sessions().size() - sessions.size());
            SharedPacks.Best plain = packs.byWeight(then, clock.next());
            SharedPacks.Best different = other.equals(then) ? plain : packs.byWeight(other, clock.next());
            double more = different.cost() - plain.cost();
            boolean affordable = spent + more <= extra;
            spent += affordable ? more : 0;
            Planner.Result result = affordable ? planned(other, different) : planned(then, plain);
            if (!(result instanceof Planner.Result.Planned planned)) {
                return cheapest.withNotes(
                        Varied.unmet(wish, cheapest.sessions(), "no other batch was found with what is in the house"));
            }
            HorizonPlan.Session session = session(old.interval(), planned);
            sessions.add(session);
            stock = stock.after(session.household(), session.plan());
            so = so.after(session.household(), session.plan());
        }
        HorizonPlan found =
                HorizonPlan.of(scenario, sessions).withBound(cheapest.cost().noPlanBelow());
        double share = found.cost().total() / cheapest.cost().total() - 1;
        if (share > wish.mostExtraShare()) {
            return cheapest.withNotes(Varied.unmet(
                    wish,
                    cheapest.sessions(),
                    String.format(
                            Locale.ROOT,
                            "batches that differ as wished were found at %.1f %% more, and at most %.1f %% are wished",
                            100 * share,
                            100 * wish.mostExtraShare())));
        }
        List<String> notes = new ArrayList<>();
        notes.add(String.format(
                Locale.ROOT, "batches that differ cost %.1f %% more than the cheapest ones", 100 * Math.max(0, share)));
        notes.addAll(Varied.unmet(wish, sessions, "it would cost more than is wished, or there is no such batch"));
        return found.withNotes(notes);
    }
}
