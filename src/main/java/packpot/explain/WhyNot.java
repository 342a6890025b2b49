package packpot.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.Wish;
import packpot.needs.Needs;
import packpot.ration.Goal;
import packpot.ration.RationModel;
import packpot.ration.RationPlanner;
import packpot.solver.LinearModel;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/** Why a household has no plan, and what would mend it. */
public final class WhyNot {
    private static final double REACH_SECONDS = 3;
    private static final double REACH_GAP = 0.005;
    /** Of the whole time, what may go by before the mends begin. */
    private static final double SHARE_FOR_CLASHES = 0.5;

    private final Knowledge knowledge;
    private final Solver solver;

    public WhyNot(Knowledge knowledge, Solver solver) {
        this.knowledge = knowledge;
        this.solver = solver;
    }

    /** The answer. */
    public sealed interface Answer {

        /** There is a plan after all, whatever the audit says of it. */
        record HasPlan(Planner.Result.Planned planned) implements Answer {}

        /** The time ran out before a plan was found or proved impossible. */
        record NotKnown(Household household) implements Answer {}

        /**
         * There is no plan.
         *
         * @param clashes that have nothing in common but that the dogs are to be fed; each alone stands in the way
         * @param allClashes whether there are no others beside them
         * @param mends with which there is a plan, the cheapest first
         * @param foodsTried foods of the catalogue that were tried
         * @param notTried what was not tried or not to the end, in sentences
         */
        record NoPlan(
                Household household,
                List<Clash> clashes,
                boolean allClashes,
                List<Mend> mends,
                int foodsTried,
                List<String> notTried)
                implements Answer {
            public NoPlan {
                clashes = List.copyOf(clashes);
                mends = List.copyOf(mends);
                notTried = List.copyOf(notTried);
            }

            /** The mends that people are told, in the order of their numbers, which begin with 1. */
            public List<Mend> told() {
                return mends.stream().filter(mend -> !isNearDouble(mend)).toList();
            }

            /** Whether another of the mends is so much like this one that people need not be told both. */
            public boolean isNearDouble(Mend mend) {
                return mends.stream().anyMatch(mend::isOutdoneBy);
            }
        }
    }

    /**
     * Explains.
     *
     * @param seconds of wall time, all in all
     * @param says told what is going on, in a few words
     */
    public Answer explain(Household household, double seconds, Consumer<String> says) {
        TimeBudget all = new TimeBudget(seconds);
        TimeBudget timeForClashes = new TimeBudget(seconds * SHARE_FOR_CLASHES);
        says.accept("Looking for a plan");
        Planner.Result result = new Planner(knowledge, solver)
                .plan(household, new SolveLimits(seconds * SHARE_FOR_CLASHES / 2, Repair.PLAN_GAP));
        if (result instanceof Planner.Result.Planned planned) {
            return new Answer.HasPlan(planned);
        }
        says.accept("There is no plan; looking for what clashes");
        boolean proved = ((Planner.Result.NoPlan) result).provedImpossible();
        ClashesFound found = clashes(household, timeForClashes, all);
        return found.clashes().isEmpty() && !proved
                ? new Answer.NotKnown(household)
                : withMends(household, found, all, says);
    }

    /**
     * Explains a household that is proved to have no plan.
     *
     * @param seconds of wall time, all in all
     * @param says told what is going on, in a few words
     */
    public Answer.NoPlan explainNone(Household household, double seconds, Consumer<String> says) {
        TimeBudget all = new TimeBudget(seconds);
        says.accept("There is no plan; looking for what clashes");
        ClashesFound found = clashes(household, new TimeBudget(seconds * SHARE_FOR_CLASHES), all);
        return withMends(household, found, all, says);
    }

    private record ClashesFound(ClashFinder.All all, List<Clash> clashes) {}

    private ClashesFound clashes(Household household, TimeBudget timeForClashes, TimeBudget all) {
        Model model = model(household, null);
        ClashFinder.All found = new ClashFinder(model.linear(), solver, timeForClashes).all();
        return new ClashesFound(found, clashes(model, found.clashes(), all));
    }

    private Answer.NoPlan withMends(Household household, ClashesFound found, TimeBudget time, Consumer<String> says) {
        says.accept("Looking for what would mend it");
        MendSearch mends =
                new MendSearch(knowledge, solver, household, found.all().clashes(), time, says);
        mends.find();
        return new Answer.NoPlan(
                household,
                found.clashes(),
                found.all().complete(),
                mends.ranked(),
                mends.foodsTried(),
                mends.notTried());
    }

    /** The first clash alone, without mends; empty when none is proved in time. */
    public Optional<Clash> firstClash(Household household, double seconds) {
        return firstClash(household, null, seconds);
    }

    /** The same where the pot must also keep to a goal; null for none. */
    Optional<Clash> firstClash(Household household, @Nullable Goal goal, double seconds) {
        TimeBudget time = new TimeBudget(seconds);
        Model model = model(household, goal);
        ClashFinder finder = new ClashFinder(model.linear(), solver, time);
        return finder.first(Demand.of(model.linear()))
                .map(found -> clashes(model, List.of(found), time).get(0));
    }

    private record Model(LinearModel<Wish> linear, Measure measure) {}

    private Model model(Household household, @Nullable Goal goal) {
        Needs needs = Needs.of(household, knowledge);
        return new Model(
                RationModel.withLimitsAsRows(household, knowledge, needs, RationPlanner.sharesByNeed(needs), goal)
                        .linearModel(),
                new Measure(household, knowledge, needs));
    }

    private List<Clash> clashes(Model model, List<ClashFinder.Found> found, TimeBudget time) {
        Trial trial = new Trial(model.linear(), solver);
        List<Clash> clashes = new ArrayList<>();
        for (ClashFinder.Found clash : found) {
            List<Clash.Part> parts = Parallel.map(
                    clash.demands(),
                    demand -> model.measure().part(demand, nearest(trial, clash.demands(), demand, time)));
            clashes.add(new Clash(parts, clash.irreducible()));
        }
        return clashes;
    }

    /** What misses one wish as little as can be while the others of its clash hold; null when the time runs out. */
    private static @Nullable Solution nearest(Trial trial, List<Demand> clash, Demand missed, TimeBudget time) {
        List<Demand> others =
                clash.stream().filter(demand -> !demand.equals(missed)).toList();
        Trial.Outcome outcome = trial.solve(
                others,
                List.of(new Trial.Soft(missed, 1, Double.POSITIVE_INFINITY)),
                true,
                time.limits(REACH_SECONDS, REACH_GAP));
        return outcome.solution().hasValues() ? outcome.solution() : null;
    }
}
