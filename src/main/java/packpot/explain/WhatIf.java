package packpot.explain;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntConsumer;
import org.jspecify.annotations.Nullable;
import packpot.dog.Dog;
import packpot.household.Change;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioChanges;
import packpot.household.ScenarioException;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/** What becomes of a plan when things change: the old and each new plan side by side. */
public final class WhatIf {
    /** For the clash of a household that a change leaves without a plan. */
    private static final double CLASH_SECONDS = 10;

    /** Where so small a part of the old cost is still to pay, plans are told apart by waste and nearness. */
    private static final double NO_MATTER_SHARE = 0.02;

    private final Knowledge knowledge;
    private final Solver solver;
    private final SolveLimits limits;
    private final Planner planner;

    /**
     * What-if on one solver, which is used from several threads at once.
     *
     * @param limits of each plan
     */
    public WhatIf(Knowledge knowledge, Solver solver, SolveLimits limits) {
        this.knowledge = knowledge;
        this.solver = solver;
        this.limits = limits;
        this.planner = new Planner(knowledge, solver);
    }

    /**
     * How the question is meant.
     *
     * @param fedDays days that were fed from the old batch already; counts in mode COOKED alone
     * @param near what a new plan may cost more than the cheapest one to stay near the old recipe; null for the cheapest
     * @param movedShare from where on a nutrient has moved
     */
    public record Terms(Mode mode, int fedDays, @Nullable Extra near, double movedShare) {}

    /**
     * Cost beyond the least that is possible.
     *
     * @param share of the least
     * @param money on top of it
     */
    public record Extra(double share, double money) {
        double over(double least) {
            return least + share * Math.abs(least) + money;
        }
    }

    /** The answer. */
    public sealed interface Answer {

        /** The old plan, and what becomes of it. */
        record Compared(Mode mode, Planner.Result.Planned base, List<Alternative> alternatives) implements Answer {
            public Compared {
                alternatives = List.copyOf(alternatives);
            }
        }

        /** The scenario has no plan as it stands, so that there is nothing to compare with. */
        record NoBase(Planner.Result.NoPlan base) implements Answer {}
    }

    /**
     * One set of changes and its outcome.
     *
     * @param carried what the old plan leaves to the new one; null when everything is open
     */
    public record Alternative(
            String name, List<String> changes, @Nullable Carried carried, Outcome outcome) {
        public Alternative {
            changes = List.copyOf(changes);
        }
    }

    /** What a set of changes leads to. */
    public sealed interface Outcome {

        /** A new plan. */
        record NewPlan(
                Planner.Result.Planned planned,
                PlanComparison comparison,
                @Nullable Nearness nearness) implements Outcome {}

        /**
         * No plan.
         *
         * @param provedImpossible false when the time ran out before anything was found
         * @param clash that stands in the way, others may too; null when none was proved in time
         */
        record NoPlan(boolean provedImpossible, @Nullable Clash clash) implements Outcome {}

        /** What is cooked lasts; nothing is cooked or bought. */
        record NothingToCook() implements Outcome {}
    }

    /**
     * A plan that was chosen for being near the old one.
     *
     * @param cheapest what the cheapest new plan costs
     * @param mostCost what the nearer one may cost
     * @param found false when no nearer plan was found, so that the cheapest stands
     * @param proved whether it is proved that none is nearer at that cost
     * @param oldPlanStands whether it is the old recipe with the old additions, and nothing more is bought
     */
    public record Nearness(double cheapest, double mostCost, boolean found, boolean proved, boolean oldPlanStands) {}

    /** One set of changes on its way. */
    private record Task(
            Change.Question question,
            Household household,
            @Nullable Carried carried) {}

    /**
     * Answers. Where one plan is asked for, it is searched for beside the old one; several begin with the old one.
     *
     * @param done is told how many plans are ready
     * @throws ScenarioException when the scenario or a change has faults; before anything is solved
     */
    public Answer ask(ScenarioChanges scenario, List<Change.Question> questions, Terms terms, IntConsumer done)
            throws ScenarioException {
        Household base = scenario.unchanged();
        List<Task> tasks = tasks(scenario, questions);
        if (terms.mode() != Mode.BEFORE || tasks.size() > 1) {
            Planner.Searched old = planner.search(base, limits);
            done.accept(1);
            return answer(old, scenario, tasks, terms, ready -> done.accept(ready + 1));
        }
        List<Planner.Searched> both =
                Parallel.map(List.of(base, tasks.get(0).household()), one -> planner.search(one, limits), done);
        return both.get(0).result() instanceof Planner.Result.Planned old
                ? compared(old, tasks, List.of(both.get(1).result()), terms)
                : new Answer.NoBase((Planner.Result.NoPlan) both.get(0).result());
    }

    /**
     * Answers about a scenario that was planned already, which saves that and makes each new search shorter.
     *
     * @param old what {@link Planner#search} gave for the unchanged scenario
     * @param done is told how many plans are ready
     * @throws ScenarioException when the scenario or a change has faults; before anything is solved
     */
    public Answer askFrom(
            Planner.Searched old,
            ScenarioChanges scenario,
            List<Change.Question> questions,
            Terms terms,
            IntConsumer done)
            throws ScenarioException {
        return answer(old, scenario, tasks(scenario, questions), terms, done);
    }

    private static List<Task> tasks(ScenarioChanges scenario, List<Change.Question> questions)
            throws ScenarioException {
        List<Task> tasks = new ArrayList<>();
        for (Change.Question question : questions) {
            tasks.add(new Task(question, scenario.with(question.changes(), List.of()), null));
        }
        return tasks;
    }

    private Answer answer(
            Planner.Searched old, ScenarioChanges scenario, List<Task> asked, Terms terms, IntConsumer done)
            throws ScenarioException {
        if (old.result() instanceof Planner.Result.NoPlan none) {
            return new Answer.NoBase(none);
        }
        Planner.Result.Planned planned = (Planner.Result.Planned) old.result();
        List<Task> tasks = terms.mode() == Mode.BEFORE ? asked : carriedOver(scenario, asked, planned, terms);
        List<Task> toCook = tasks.stream().filter(WhatIf::cooks).toList();
        List<Planner.Result> cooked = new ArrayList<>(Parallel.map(
                toCook,
                task -> planner.searchFrom(old, task.household(), limits).result(),
                done));
        List<Planner.Result> results = new ArrayList<>();
        for (Task task : tasks) {
            // A household that has food enough keeps the old plan.
            results.add(cooks(task) ? cooked.remove(0) : planned);
        }
        return compared(planned, tasks, results, terms);
    }

    private Answer compared(Planner.Result.Planned old, List<Task> tasks, List<Planner.Result> results, Terms terms) {
        List<Integer> numbers = new ArrayList<>();
        for (int i = 0; i < tasks.size(); i++) {
            numbers.add(i);
        }
        return new Answer.Compared(
                terms.mode(),
                old,
                Parallel.map(numbers, number -> alternative(tasks.get(number), old, results.get(number), terms)));
    }

    private static boolean cooks(Task task) {
        Carried carried = task.carried();
        return carried == null || carried.daysToCook() > 0;
    }

    /** Each household with what the old plan leaves to it. */
    private List<Task> carriedOver(ScenarioChanges scenario, List<Task> tasks, Planner.Result.Planned old, Terms terms)
            throws ScenarioException {
        List<Task> carriedOver = new ArrayList<>();
        for (Task task : tasks) {
            if (terms.mode() == Mode.BOUGHT) {
                carriedOver.add(new Task(
                        task.question(),
                        Carried.afterBuying(task.household(), old.plan()),
                        Carried.bought(old.plan())));
                continue;
            }
            Carried carried = Carried.cooked(old, task.household(), knowledge, terms.fedDays());
            Household next = task.household();
            if (carried.daysToCook() > 0) {
                List<Change> later = new ArrayList<>(List.of(
                        Change.of("start: " + carried.cookAgain()), Change.of("days: " + carried.daysToCook())));
                for (Dog dog : goneBy(carried.cookAgain(), next)) {
                    later.add(Change.of(dog.name() + ": leaves"));
                }
                next = scenario.with(task.question().changes(), later);
            }
            carriedOver.add(new Task(task.question(), Carried.afterCooking(next, old.plan()), carried));
        }
        return carriedOver;
    }

    private static List<Dog> goneBy(LocalDate date, Household household) {
        long day = ChronoUnit.DAYS.between(household.start(), date);
        return household.dogs().stream()
                .filter(dog -> {
                    Integer leaves = dog.course().leavesDay();
                    return leaves != null && leaves <= day;
                })
                .toList();
    }

    private Alternative alternative(Task task, Planner.Result.Planned old, Planner.Result result, Terms terms) {
        List<String> words =
                task.question().changes().stream().map(Change::words).toList();
        String name = task.question().name();
        Carried carried = task.carried();
        if (!cooks(task) && carried != null) {
            Carried whole = carried.withWaste(old.plan(), task.household(), null);
            return new Alternative(name, words, whole, new Outcome.NothingToCook());
        }
        if (result instanceof Planner.Result.NoPlan none) {
            return new Alternative(name, words, carried, new Outcome.NoPlan(none.provedImpossible(), clash(none)));
        }
        Planner.Result.Planned planned = (Planner.Result.Planned) result;
        Nearness nearness = null;
        Extra extra = terms.near();
        // What is bought costs nothing more, so that many plans are equally cheap: the nearest of them is meant.
        boolean ties = extra == null
                && terms.mode() == Mode.BOUGHT
                && planned.plan().proof().cost()
                        < NO_MATTER_SHARE * old.plan().proof().cost();
        if (extra != null || ties) {
            double cheapest = planned.plan().proof().cost();
            double most = extra == null
                    ? cheapest + limits.relativeGap() * old.plan().proof().cost()
                    : extra.over(cheapest);
            NearPlan near = new NearPlan(planner, limits, old.plan(), terms.mode() == Mode.BOUGHT);
            Planner.Result.Planned nearest = near.of(planned, most);
            boolean found = nearest != null;
            planned = nearest != null ? nearest : planned;
            nearness = new Nearness(
                    cheapest,
                    most,
                    found,
                    found && planned.plan().proof().provedOptimal(),
                    found && near.stands(planned.plan()));
        }
        PlanComparison comparison = PlanComparison.of(old, planned, terms.mode() == Mode.BEFORE, terms.movedShare());
        return new Alternative(
                name,
                words,
                carried == null ? null : carried.withWaste(old.plan(), task.household(), planned.plan()),
                new Outcome.NewPlan(planned, comparison, nearness));
    }

    private @Nullable Clash clash(Planner.Result.NoPlan none) {
        return none.provedImpossible()
                ? new WhyNot(knowledge, solver)
                        .firstClash(none.household(), CLASH_SECONDS)
                        .orElse(null)
                : null;
    }
}
