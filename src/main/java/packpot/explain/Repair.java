package packpot.explain;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.Wish;
import packpot.needs.Needs;
import packpot.ration.RationModel;
import packpot.ration.RationPlanner;
import packpot.solver.LinearModel.Row;
import packpot.solver.Solution;
import packpot.solver.Solver;

/** Makes a few wishes of a household as little weaker as can be, until there is a plan that passes the audit. */
final class Repair {
    private static final double NOTICEABLE = 1e-5;
    private static final double LOOSEN_SECONDS = 6;
    private static final double LOOSEN_GAP = 0.01;
    private static final double PLAN_SECONDS = 5;
    /** Mends are compared, not cooked: the price of each is proved to within this. */
    static final double PLAN_GAP = 0.02;

    private static final List<Double> WIDER = List.of(0.0, 0.01, 0.04);

    private final Knowledge knowledge;
    private final Solver solver;
    private final Loosening loosening;
    private final TimeBudget time;

    Repair(Knowledge knowledge, Solver solver, Loosening loosening, TimeBudget time) {
        this.knowledge = knowledge;
        this.solver = solver;
        this.loosening = loosening;
        this.time = time;
    }

    /** An audited plan of a household; empty when there is none or none in time. */
    Optional<Planner.Result.Planned> plan(Household household) {
        if (time.isSpent()) {
            return Optional.empty();
        }
        Planner.Result result = new Planner(knowledge, solver).plan(household, time.limits(PLAN_SECONDS, PLAN_GAP));
        return result instanceof Planner.Result.Planned planned
                        && planned.verdict().passed()
                ? Optional.of(planned)
                : Optional.empty();
    }

    /**
     * What is tried.
     *
     * @param base the household, with a food added or as it is
     * @param changes that made the base, in sentences
     * @param mayGive keys of the wishes that may be loosened; none when the base itself should have a plan
     * @param worth whether it is worth to show, told the keys of the wishes that had to give
     */
    record Attempt(
            Mend.Kind kind,
            Household base,
            List<String> changes,
            List<String> notes,
            Collection<String> mayGive,
            Predicate<Set<String>> worth) {}

    /** The smallest change with which there is a plan; empty when there is none or the time ran out. */
    Optional<Mend> mend(Attempt attempt) {
        if (time.isSpent()) {
            return Optional.empty();
        }
        if (attempt.mayGive().isEmpty()) {
            return plan(attempt.base()).map(planned -> mend(attempt, planned, Set.of(), List.of(), List.of(), true));
        }
        Household base = attempt.base();
        Needs needs = Needs.of(base, knowledge);
        var model = RationModel.withLimitsAsRows(base, knowledge, needs, RationPlanner.sharesByNeed(needs))
                .linearModel();
        List<Demand> hard = new ArrayList<>();
        List<Trial.Soft> soft = new ArrayList<>();
        split(Demand.of(model), attempt, hard, soft);
        if (soft.isEmpty()) {
            return Optional.empty();
        }
        Trial.Outcome nearest =
                new Trial(model, solver).solve(hard, soft, true, time.limits(LOOSEN_SECONDS, LOOSEN_GAP));
        if (!nearest.solution().hasValues()) {
            return Optional.empty();
        }
        List<Demand> gave = soft.stream()
                .map(Trial.Soft::demand)
                .filter(demand -> nearest.missed(demand) > NOTICEABLE)
                .toList();
        Set<String> keys = new HashSet<>();
        gave.forEach(demand -> demand.rows().forEach(row -> keys.add(new Demand(Demand.tag(row), List.of()).key())));
        if (!attempt.worth().test(keys)) {
            return Optional.empty();
        }
        Measure measure = new Measure(base, knowledge, needs);
        for (double wider : WIDER) {
            Optional<Mend> mend = loosened(attempt, gave, nearest, measure, wider);
            if (mend.isPresent()) {
                return mend;
            }
        }
        return Optional.empty();
    }

    private static void split(List<Demand> all, Attempt attempt, List<Demand> hard, List<Trial.Soft> soft) {
        boolean margin = all.stream()
                .anyMatch(demand -> demand.kind() == Wish.Kind.NUTRIENT_MINIMUM
                        && attempt.mayGive().contains(demand.key())
                        && Loosening.possible(demand, attempt.base()));
        List<Row<Wish>> minimums = new ArrayList<>();
        for (Demand demand : all) {
            if (margin && demand.kind() == Wish.Kind.NUTRIENT_MINIMUM) {
                minimums.addAll(demand.rows());
            } else if (attempt.mayGive().contains(demand.key()) && Loosening.possible(demand, attempt.base())) {
                soft.add(new Trial.Soft(demand, 1, Double.POSITIVE_INFINITY));
            } else {
                hard.add(demand);
            }
        }
        if (margin) {
            // The margin is one for all minimums: they give way together, and never below what is published.
            soft.add(new Trial.Soft(
                    new Demand(Demand.tag(minimums.get(0)), minimums),
                    1,
                    attempt.base().rules().margin()));
        }
    }

    private Optional<Mend> loosened(
            Attempt attempt, List<Demand> gave, Trial.Outcome nearest, Measure measure, double wider) {
        Household household = attempt.base();
        List<String> changes = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        Set<String> gaveWay = new HashSet<>();
        for (Demand demand : gave) {
            gaveWay.add(whatGives(demand.wish()));
            var asked = measure.asked(demand).orElse(null);
            double reached = asked == null ? 0 : measure.reached(demand, asked, nearest.solution());
            var change = loosening.loosen(household, demand, asked, reached, nearest.missed(demand), wider);
            if (change.isEmpty()) {
                return Optional.empty();
            }
            household = change.get().household();
            changes.add(change.get().sentence());
            if (!change.get().note().isEmpty()) {
                notes.add(change.get().note());
            }
        }
        boolean smallest = wider == 0 && nearest.solution().status() == Solution.Status.OPTIMAL;
        return plan(household).map(planned -> mend(attempt, planned, gaveWay, changes, notes, smallest));
    }

    /** All minimums share one margin. */
    private static String whatGives(Wish wish) {
        return wish.kind() == Wish.Kind.NUTRIENT_MINIMUM
                ? "margin"
                : wish.kind() + " " + wish.who() + " " + wish.what();
    }

    private static Mend mend(
            Attempt attempt,
            Planner.Result.Planned planned,
            Set<String> gaveWay,
            List<String> moreChanges,
            List<String> moreNotes,
            boolean smallest) {
        List<String> changes = new ArrayList<>(attempt.changes());
        changes.addAll(moreChanges);
        List<String> notes = new ArrayList<>(attempt.notes());
        notes.addAll(moreNotes);
        return Mend.of(
                attempt.kind(),
                changes,
                gaveWay,
                notes,
                List.of(planned),
                smallest,
                planned.plan().days());
    }
}
