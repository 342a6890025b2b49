package packpot.horizon;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import packpot.dog.Dog;
import packpot.dog.EnergyNeed;
import packpot.household.Household;
import packpot.household.Knowledge;

/**
 * The household as it is for one batch. A dog that changes gets on each day what it needs on average over the days on
 * which it is fed from the batch. It is taken as it is in their middle; but where it comes to be grown in between, or to
 * its goal weight, as it is on the first of them, since a growing dog must not be fed as an adult too soon.
 */
final class Then {
    private static final double NO_CHANGE_SHARE = 1e-9;

    private final Household household;
    private final Knowledge knowledge;

    private Then(Household household, Knowledge knowledge) {
        this.household = household;
        this.knowledge = knowledge;
    }

    /** The household for a batch, with the pantry of the first day. */
    static Household of(Household household, Knowledge knowledge, Interval interval) {
        Then then = new Then(household, knowledge);
        List<Dog> dogs = new ArrayList<>();
        for (Dog dog : household.allDogs()) {
            then.dog(dog, interval).ifPresent(dogs::add);
        }
        return household
                .from(household.start().plusDays(interval.day()), dogs)
                .withKitchen(household.kitchen().withDays(interval.days()));
    }

    private Optional<Dog> dog(Dog dog, Interval interval) {
        List<Dog> days = new ArrayList<>();
        for (int day = interval.day(); day < interval.end(); day++) {
            knowledge.overTime().on(dog, day).ifPresent(days::add);
        }
        if (days.isEmpty()) {
            return Optional.empty();
        }
        Dog first = days.get(0);
        Dog middle = days.get((days.size() - 1) / 2);
        boolean oneStage =
                need(first).stage() == need(days.get(days.size() - 1)).stage();
        Dog then = oneStage ? middle : first;
        double average = days.stream()
                .mapToDouble(each -> need(each).kcalPerDay())
                .average()
                .orElseThrow();
        boolean changes =
                days.stream().anyMatch(each -> Math.abs(need(each).kcalPerDay() - average) > NO_CHANGE_SHARE * average);
        return Optional.of(
                then.withCourse(dog.course().from(interval.day()).withAverage(changes ? (Double) average : null)));
    }

    private EnergyNeed need(Dog dog) {
        return knowledge.energy().need(dog, household.maintenance(), household.growth());
    }
}
