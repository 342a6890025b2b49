package packpot.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import packpot.audit.PlanAudit;
import packpot.audit.Verdict;
import packpot.dog.Dog;
import packpot.food.Place;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.household.Shape;
import packpot.needs.Needs;
import packpot.plan.Plan;
import packpot.solver.Solver;

/** Mends that change how the household cooks and feeds: additions, a second cook day, a second pot. */
final class OtherWays {
    /** With two pots there are few ways to part the dogs; a good one is found soon. */
    private static final double POTS_SECONDS = 15;

    private final Household household;
    private final Knowledge knowledge;
    private final Solver solver;
    private final Repair repair;
    private final TimeBudget time;

    OtherWays(Household household, Knowledge knowledge, Solver solver, Repair repair, TimeBudget time) {
        this.household = household;
        this.knowledge = knowledge;
        this.solver = solver;
        this.repair = repair;
        this.time = time;
    }

    /** Supplements may go into the pot or into a bowl, wherever they help. */
    Optional<Mend> placedEither() {
        Household either = household.withPantry(household.pantry().stream()
                .map(item -> item.food().isSupplement() ? item.withPlace(Place.EITHER) : item)
                .toList());
        if (either.equals(household)) {
            return Optional.empty();
        }
        return repair.plan(either).flatMap(planned -> {
            Plan plan = planned.plan();
            List<String> changes = new ArrayList<>();
            List<PantryItem> pantry = new ArrayList<>();
            for (PantryItem item : household.pantry()) {
                boolean toBowl = !item.place().bowl() && inBowls(plan, item);
                boolean toPot = !item.place().pot() && inPot(plan, item);
                if (item.food().isSupplement() && (toBowl || toPot)) {
                    changes.add("let " + item.food().label()
                            + (toBowl
                                    ? " go on top of the bowl of " + whose(plan, item)
                                    : " be stirred into the batch"));
                    pantry.add(item.withPlace(Place.EITHER));
                } else {
                    pantry.add(item);
                }
            }
            // Only what the plan needs is changed, so the plan is checked against that.
            Household changed = household.withPantry(pantry);
            Verdict verdict = PlanAudit.check(plan, changed, knowledge);
            return verdict.passed() && !changes.isEmpty()
                    ? Optional.of(priced(
                            Mend.Kind.ADDITION,
                            changes,
                            List.of(),
                            List.of(new Planner.Result.Planned(changed, plan, verdict))))
                    : Optional.empty();
        });
    }

    /** Each dog may have one more addition. */
    Optional<Mend> oneMoreAddition() {
        Shape shape = household.shape();
        Household more = household.withShape(shape.withMostAdditions(
                shape.mostAdditions() + 1, Math.max(shape.mostAdditions(), shape.mostAdditionsSpecialNeeds()) + 1));
        return repair.plan(more).flatMap(planned -> {
            Needs needs = Needs.of(household, knowledge);
            List<String> changes = new ArrayList<>();
            for (Plan.DogPlan dog : planned.plan().dogs()) {
                needs.dogs().stream()
                        .filter(need -> need.dog().name().equals(dog.name()))
                        .filter(need -> dog.additions().size()
                                > shape.mostAdditions(need.energy().stage()))
                        .forEach(need -> changes.add(dog.name() + " may have "
                                + dog.additions().size() + " additions to the bowl, not "
                                + shape.mostAdditions(need.energy().stage())));
            }
            return changes.isEmpty()
                    ? Optional.empty()
                    : Optional.of(priced(Mend.Kind.ADDITION, changes, List.of(), List.of(planned)));
        });
    }

    private static boolean inPot(Plan plan, PantryItem item) {
        return plan.pot().stream()
                .anyMatch(ingredient -> ingredient.food().equals(item.food().id()));
    }

    private static boolean inBowls(Plan plan, PantryItem item) {
        return !whose(plan, item).isEmpty();
    }

    private static String whose(Plan plan, PantryItem item) {
        return plan.dogs().stream()
                .filter(dog -> dog.additions().stream()
                        .anyMatch(addition -> addition.food().equals(item.food().id())))
                .map(Plan.DogPlan::name)
                .collect(Collectors.joining(" and "));
    }

    /** Half the days now and half of them later. */
    Optional<Mend> secondSession() {
        int days = household.kitchen().days();
        if (days < 2) {
            return Optional.empty();
        }
        int first = (days + 1) / 2;
        List<Dog> laterDogs = from(first, days);
        if (laterDogs.isEmpty()) {
            return Optional.empty();
        }
        return repair.plan(days(household, first))
                .flatMap(now -> repair.plan(
                                days(Rest.laterDay(household, now.plan()).withDogs(laterDogs), days - first))
                        .map(later -> priced(
                                Mend.Kind.SECOND_SESSION,
                                List.of("cook twice, for " + first + " and for " + (days - first) + " days"),
                                List.of("bags for each time, and a freezer that is empty of the first batch by then"),
                                List.of(now, later))));
    }

    /** The dogs that are there from a day of the batch on, their days counted from that. */
    private List<Dog> from(int day, int days) {
        return household.dogs().stream()
                .filter(dog -> IntStream.range(day, days).anyMatch(dog.course()::isThere))
                .map(dog -> dog.withCourse(dog.course().from(day)))
                .toList();
    }

    private static Household days(Household household, int days) {
        return household.withKitchen(household.kitchen().withDays(days));
    }

    /** The cheapest way to part the dogs over two pots that is found in the time. */
    Optional<Mend> secondPot() {
        Household there = household.withDogs(from(0, household.kitchen().days()));
        if (there.dogs().size() < 2 || there.dogs().size() > Pots.MOST_DOGS) {
            return Optional.empty();
        }
        return new Pots(there, knowledge, solver, time.limits(POTS_SECONDS, Repair.PLAN_GAP))
                .exactly(2)
                .map(way -> new Mend(
                        Mend.Kind.SECOND_POT,
                        List.of(way.pots().stream()
                                .map(pot -> "a pot for " + names(pot.household().dogs()))
                                .collect(Collectors.joining(" and "))),
                        Set.of(),
                        List.of(),
                        way.pots(),
                        true,
                        way.cost() / household.kitchen().days(),
                        way.atTheTill()));
    }

    private static String names(List<Dog> dogs) {
        return dogs.stream().map(Dog::name).collect(Collectors.joining(", "));
    }

    private Mend priced(
            Mend.Kind kind, List<String> changes, List<String> notes, List<Planner.Result.Planned> planned) {
        return Mend.of(
                kind,
                changes,
                Set.of(),
                notes,
                planned,
                true,
                household.kitchen().days());
    }
}
