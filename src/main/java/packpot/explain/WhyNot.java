package packpot.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import packpot.household.GuessedPrices;
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
    private static final int FOODS_SHOWN = 5;
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
            Mends mends = new Mends(household, found.clashes(), all, workers, says);
            mends.find();
            return new Answer.NoPlan(
                    household, clashes, found.complete(), mends.ranked(), mends.foodsTried, mends.notTried);
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

    /** The search for mends, with what it could not do. */
    private final class Mends {
        private final Household household;
        private final List<ClashFinder.Found> clashes;
        private final Deadline deadline;
        private final Workers workers;
        private final Consumer<String> says;
        private final GuessedPrices guesses = GuessedPrices.load(knowledge);
        private final Repair repair;
        private final Map<String, WayOut> found = new LinkedHashMap<>();
        private final List<String> notTried = new ArrayList<>();
        private int foodsTried;

        Mends(
                Household household,
                List<ClashFinder.Found> clashes,
                Deadline deadline,
                Workers workers,
                Consumer<String> says) {
            this.household = household;
            this.clashes = clashes;
            this.deadline = deadline;
            this.workers = workers;
            this.says = says;
            this.repair = new Repair(knowledge, solver, new Loosening(guesses), deadline);
        }

        void find() {
            List<Callable<Optional<WayOut>>> work = new ArrayList<>();
            loosenings().forEach(attempt -> work.add(() -> repair.mend(attempt)));
            OtherWays ways = new OtherWays(household, knowledge, solver, repair, deadline);
            work.add(named("additions in pot or bowl", ways::placedEither));
            work.add(named("one more addition", ways::oneMoreAddition));
            work.add(named("a second cook day", ways::secondSession));
            workers.all(work).forEach(mend -> mend.ifPresent(this::add));

            says.accept("Trying the foods of the catalogue");
            List<WayOut> foods = foods();
            foods.stream()
                    .sorted(Comparator.comparingDouble(WayOut::costPerDay))
                    .limit(FOODS_SHOWN)
                    .forEach(this::add);

            if (household.dogs().size() > OtherWays.MOST_DOGS_PARTED) {
                notTried.add("a second pot: more than " + OtherWays.MOST_DOGS_PARTED + " dogs to part");
            } else if (household.dogs().size() > 1) {
                says.accept("Parting the dogs over two pots");
                named("a second pot, not every way to part the dogs", ways::secondPot)
                        .get()
                        .ifPresent(this::add);
            }
        }

        private NamedWork named(String what, Supplier<Optional<WayOut>> way) {
            return new NamedWork(what, way);
        }

        /** A way to mend that says so when the time ran out. */
        private final class NamedWork implements Callable<Optional<WayOut>>, Supplier<Optional<WayOut>> {
            private final String what;
            private final Supplier<Optional<WayOut>> way;

            NamedWork(String what, Supplier<Optional<WayOut>> way) {
                this.what = what;
                this.way = way;
            }

            @Override
            public Optional<WayOut> call() {
                return get();
            }

            @Override
            public Optional<WayOut> get() {
                Optional<WayOut> mend = deadline.passed() ? Optional.empty() : way.get();
                if (deadline.passed()) {
                    synchronized (notTried) {
                        notTried.add(what + ": the time ran out");
                    }
                }
                return mend;
            }
        }

        private void add(WayOut mend) {
            found.putIfAbsent(String.join("; ", mend.changes()), mend);
        }

        /** One wish of one clash at a time, with whatever the other clashes need beside it. */
        private List<Repair.Attempt> loosenings() {
            List<Repair.Attempt> attempts = new ArrayList<>();
            Set<String> seen = new HashSet<>();
            for (ClashFinder.Found clash : clashes) {
                Set<String> others = new HashSet<>();
                clashes.stream()
                        .filter(other -> !other.equals(clash))
                        .forEach(other -> others.addAll(loosenable(other)));
                boolean marginTried = false;
                for (Demand demand : clash.demands()) {
                    boolean minimum = demand.kind() == Wish.Kind.NUTRIENT_MINIMUM;
                    if (!Loosening.possible(demand, household) || (minimum && marginTried)) {
                        continue;
                    }
                    // All minimums share one margin.
                    marginTried |= minimum;
                    Set<String> mayGive = new HashSet<>(others);
                    mayGive.add(demand.key());
                    if (seen.add(marginAsOne(mayGive))) {
                        attempts.add(new Repair.Attempt(
                                WayOut.Kind.LOOSEN, household, List.of(), List.of(), mayGive, gave -> true));
                    }
                }
            }
            Set<String> all = new HashSet<>();
            clashes.forEach(clash -> all.addAll(loosenable(clash)));
            if (seen.add(marginAsOne(all))) {
                // Where no wish alone will do, several that give a little each may.
                attempts.add(
                        new Repair.Attempt(WayOut.Kind.LOOSEN, household, List.of(), List.of(), all, gave -> true));
            }
            return attempts;
        }

        /** All minimums have one margin, so whichever of them may give way it is the same attempt. */
        private String marginAsOne(Set<String> mayGive) {
            String minimum = Wish.Kind.NUTRIENT_MINIMUM.name();
            return mayGive.stream()
                    .map(key -> key.startsWith(minimum) ? minimum : key)
                    .distinct()
                    .sorted()
                    .collect(Collectors.joining("; "));
        }

        private Set<String> loosenable(ClashFinder.Found clash) {
            Set<String> keys = new HashSet<>();
            clash.demands().stream()
                    .filter(demand -> Loosening.possible(demand, household))
                    .forEach(demand -> keys.add(demand.key()));
            return keys;
        }

        private List<WayOut> foods() {
            Set<String> mayGive = new HashSet<>();
            if (clashes.size() > 1) {
                clashes.forEach(clash -> mayGive.addAll(loosenable(clash)));
            }
            // With several clashes a food is worth it when it makes at least one of them go away.
            Predicate<Set<String>> worth = gave -> clashes.size() < 2
                    || clashes.stream()
                            .anyMatch(
                                    clash -> clash.demands().stream().noneMatch(demand -> gave.contains(demand.key())));
            FoodMends.Screening screening =
                    new FoodMends(household, knowledge, solver, guesses, deadline).screen(workers, mayGive, worth);
            foodsTried = screening.tried();
            if (screening.left() > 0) {
                notTried.add(screening.left() + " foods of the catalogue: the time ran out");
            }
            List<Callable<Optional<WayOut>>> work = new ArrayList<>();
            screening.attempts().forEach(attempt -> work.add(() -> repair.mend(attempt)));
            List<WayOut> mends = new ArrayList<>();
            workers.all(work).forEach(mend -> mend.ifPresent(mends::add));
            return mends;
        }

        List<WayOut> ranked() {
            return found.values().stream()
                    .sorted(Comparator.comparingDouble(WayOut::costPerDay))
                    .toList();
        }
    }
}
