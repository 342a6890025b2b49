package packpot.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
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
                List<WayOut> mends,
                int foodsTried,
                List<String> notTried)
                implements Answer {
            public NoPlan {
                clashes = List.copyOf(clashes);
                mends = List.copyOf(mends);
                notTried = List.copyOf(notTried);
            }

            /** Whether another of the mends is so much like this one that people need not be told both. */
            public boolean isNearDouble(WayOut mend) {
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
        Deadline all = new Deadline(seconds);
        Deadline forClashes = new Deadline(seconds * SHARE_FOR_CLASHES);
        says.accept("Looking for a plan");
        Planner.Result result = new Planner(knowledge, solver)
                .plan(household, new SolveLimits(seconds * SHARE_FOR_CLASHES / 2, Repair.PLAN_GAP));
        if (result instanceof Planner.Result.Planned planned) {
            return new Answer.HasPlan(planned);
        }
        says.accept("There is no plan; looking for what clashes");
        Answer.NoPlan none = none(household, forClashes, all, says);
        return none.clashes().isEmpty() && !((Planner.Result.NoPlan) result).provedImpossible()
                ? new Answer.NotKnown(household)
                : none;
    }

    /**
     * Explains a household that is proved to have no plan.
     *
     * @param seconds of wall time, all in all
     * @param says told what is going on, in a few words
     */
    public Answer.NoPlan explainNone(Household household, double seconds, Consumer<String> says) {
        return none(household, new Deadline(seconds * SHARE_FOR_CLASHES), new Deadline(seconds), says);
    }

    private Answer.NoPlan none(Household household, Deadline forClashes, Deadline all, Consumer<String> says) {
        try (Workers workers = new Workers()) {
            Model model = model(household, null);
            ClashFinder.All found = new ClashFinder(model.linear(), solver, forClashes).all();
            List<Clash> clashes = clashes(model, found.clashes(), workers, all);
            says.accept("Looking for what would mend it");
            MendSearch mends = new MendSearch(knowledge, solver, household, found.clashes(), all, workers, says);
            mends.find();
            return new Answer.NoPlan(
                    household, clashes, found.complete(), mends.ranked(), mends.foodsTried(), mends.notTried());
        }
    }

    /** The first clash alone, without mends; empty when none is proved in time. */
    public Optional<Clash> firstClash(Household household, double seconds) {
        return firstClash(household, null, seconds);
    }

    /** The same where the pot must also keep to a goal; null for none. */
    Optional<Clash> firstClash(Household household, @Nullable Goal goal, double seconds) {
        Deadline deadline = new Deadline(seconds);
        Model model = model(household, goal);
        ClashFinder finder = new ClashFinder(model.linear(), solver, deadline);
        return finder.first(Demand.of(model.linear())).map(found -> {
            try (Workers workers = new Workers()) {
                return clashes(model, List.of(found), workers, deadline).get(0);
            }
        });
    }

    private record Model(LinearModel<Wish> linear, Measure measure) {}

    private Model model(Household household, @Nullable Goal goal) {
        Needs needs = Needs.of(household, knowledge);
        return new Model(
                RationModel.withLimitsAsRows(household, knowledge, needs, RationPlanner.sharesByNeed(needs), goal)
                        .linearModel(),
                new Measure(household, knowledge, needs));
    }

    private List<Clash> clashes(Model model, List<ClashFinder.Found> found, Workers workers, Deadline deadline) {
        Trial trial = new Trial(model.linear(), solver);
        List<Clash> clashes = new ArrayList<>();
        for (ClashFinder.Found clash : found) {
            List<Callable<Clash.Part>> parts = new ArrayList<>();
            for (Demand demand : clash.demands()) {
                parts.add(() -> model.measure().part(demand, nearest(trial, clash.demands(), demand, deadline)));
            }
            clashes.add(new Clash(workers.all(parts), clash.irreducible()));
        }
        return clashes;
    }

    /** What misses one wish as little as can be while the others of its clash hold; null when the time runs out. */
    private static @Nullable Solution nearest(Trial trial, List<Demand> clash, Demand missed, Deadline deadline) {
        List<Demand> others =
                clash.stream().filter(demand -> !demand.equals(missed)).toList();
        Trial.Outcome outcome = trial.solve(
                others,
                List.of(new Trial.Soft(missed, 1, Double.POSITIVE_INFINITY)),
                true,
                deadline.limits(REACH_SECONDS, REACH_GAP));
        return outcome.solution().hasValues() ? outcome.solution() : null;
    }
}
