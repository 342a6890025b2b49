package packpot.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import packpot.household.GuessedPrices;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.Wish;
import packpot.solver.Solver;

/** The search for what would mend a household without a plan, with what it could not do. */
final class MendSearch {
    private static final int FOODS_SHOWN = 5;

    private final Knowledge knowledge;
    private final Solver solver;
    private final Household household;
    private final List<ClashFinder.Found> clashes;
    private final TimeBudget time;
    private final Consumer<String> says;
    private final GuessedPrices guesses;
    private final Repair repair;
    private final Map<String, Mend> found = new LinkedHashMap<>();
    private final List<String> notTried = new ArrayList<>();
    private int foodsTried;

    MendSearch(
            Knowledge knowledge,
            Solver solver,
            Household household,
            List<ClashFinder.Found> clashes,
            TimeBudget time,
            Consumer<String> says) {
        this.knowledge = knowledge;
        this.solver = solver;
        this.household = household;
        this.clashes = clashes;
        this.time = time;
        this.says = says;
        this.guesses = GuessedPrices.load(knowledge);
        this.repair = new Repair(knowledge, solver, new Loosening(guesses), time);
    }

    /** Looks for mends of every kind. */
    void find() {
        List<Supplier<Optional<Mend>>> work = new ArrayList<>();
        loosenings().forEach(attempt -> work.add(() -> repair.mend(attempt)));
        OtherWays ways = new OtherWays(household, knowledge, solver, repair, time);
        work.add(named("additions in pot or bowl", ways::placedEither));
        work.add(named("one more addition", ways::oneMoreAddition));
        work.add(named("a second cook day", ways::secondSession));
        Parallel.map(work, Supplier::get).forEach(mend -> mend.ifPresent(this::add));

        says.accept("Trying the foods of the catalogue");
        List<Mend> foods = foods();
        foods.stream()
                .sorted(Comparator.comparingDouble(Mend::costPerDay))
                .limit(FOODS_SHOWN)
                .forEach(this::add);

        if (household.dogs().size() > Pots.MOST_DOGS) {
            notTried.add("a second pot: more than " + Pots.MOST_DOGS + " dogs to part");
        } else if (household.dogs().size() > 1) {
            says.accept("Parting the dogs over two pots");
            named("a second pot, not every way to part the dogs", ways::secondPot)
                    .get()
                    .ifPresent(this::add);
        }
    }

    private NamedWork named(String what, Supplier<Optional<Mend>> way) {
        return new NamedWork(what, way);
    }

    /** A way to mend that says so when the time ran out. */
    private final class NamedWork implements Supplier<Optional<Mend>> {
        private final String what;
        private final Supplier<Optional<Mend>> way;

        NamedWork(String what, Supplier<Optional<Mend>> way) {
            this.what = what;
            this.way = way;
        }

        @Override
        public Optional<Mend> get() {
            Optional<Mend> mend = time.isSpent() ? Optional.empty() : way.get();
            if (time.isSpent()) {
                synchronized (notTried) {
                    notTried.add(what + ": the time ran out");
                }
            }
            return mend;
        }
    }

    private void add(Mend mend) {
        found.putIfAbsent(String.join("; ", mend.changes()), mend);
    }

    /** One wish of one clash at a time, with whatever the other clashes need beside it. */
    private List<Repair.Attempt> loosenings() {
        List<Repair.Attempt> attempts = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (ClashFinder.Found clash : clashes) {
            Set<String> others = new HashSet<>();
            clashes.stream().filter(other -> !other.equals(clash)).forEach(other -> others.addAll(loosenable(other)));
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
                            Mend.Kind.LOOSEN, household, List.of(), List.of(), mayGive, gave -> true));
                }
            }
        }
        Set<String> all = new HashSet<>();
        clashes.forEach(clash -> all.addAll(loosenable(clash)));
        if (seen.add(marginAsOne(all))) {
            // Where no wish alone will do, several that give a little each may.
            attempts.add(new Repair.Attempt(Mend.Kind.LOOSEN, household, List.of(), List.of(), all, gave -> true));
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

    private List<Mend> foods() {
        Set<String> mayGive = new HashSet<>();
        if (clashes.size() > 1) {
            clashes.forEach(clash -> mayGive.addAll(loosenable(clash)));
        }
        // With several clashes a food is worth it when it makes at least one of them go away.
        Predicate<Set<String>> worth = gave -> clashes.size() < 2
                || clashes.stream()
                        .anyMatch(clash -> clash.demands().stream().noneMatch(demand -> gave.contains(demand.key())));
        FoodMends.Screening screening =
                new FoodMends(household, knowledge, solver, guesses, time).screen(mayGive, worth);
        foodsTried = screening.tried();
        if (screening.left() > 0) {
            notTried.add(screening.left() + " foods of the catalogue: the time ran out");
        }
        List<Supplier<Optional<Mend>>> work = new ArrayList<>();
        screening.attempts().forEach(attempt -> work.add(() -> repair.mend(attempt)));
        List<Mend> mends = new ArrayList<>();
        Parallel.map(work, Supplier::get).forEach(mend -> mend.ifPresent(mends::add));
        return mends;
    }

    /** What was found, the cheapest first. */
    List<Mend> ranked() {
        return found.values().stream()
                .sorted(Comparator.comparingDouble(Mend::costPerDay))
                .toList();
    }

    int foodsTried() {
        return foodsTried;
    }

    /** What was not tried or not to the end, in sentences. */
    List<String> notTried() {
        return notTried;
    }
}
