package packpot.horizon;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import packpot.dog.Course;
import packpot.dog.Dog;
import packpot.dog.DogOverTime;
import packpot.dog.Transition;
import packpot.dog.WeighIn;
import packpot.household.Household;

/**
 * The household as it is for one batch. Each dog is taken as it is in the middle of the days on which it is fed from it:
 * what grows or slims in a nearly straight line over so few days needs on average what it needs in their middle.
 */
final class Then {

    private Then() {}

    /** The household for a batch, with the pantry of the first day. */
    static Household of(Household household, DogOverTime overTime, Interval interval) {
        List<Dog> dogs = new ArrayList<>();
        for (Dog dog : household.allDogs()) {
            dog(dog, overTime, interval).ifPresent(dogs::add);
        }
        return household
                .from(household.start().plusDays(interval.day()), dogs)
                .withKitchen(household.kitchen().withDays(interval.days()));
    }

    private static Optional<Dog> dog(Dog dog, DogOverTime overTime, Interval interval) {
        int first = interval.day();
        while (first < interval.end() && !dog.course().isThere(first)) {
            first++;
        }
        int last = first;
        while (last + 1 < interval.end() && dog.course().isThere(last + 1)) {
            last++;
        }
        return first == interval.end()
                ? Optional.empty()
                : overTime.on(dog, (first + last) / 2)
                        .map(then -> then.withCourse(later(dog.course(), interval.day())));
    }

    /** The same course, its days counted from another first day. */
    private static Course later(Course course, int day) {
        List<WeighIn> weighIns = course.weighIns().stream()
                .map(each -> new WeighIn(each.day() - day, each.kg()))
                .toList();
        Integer comes = course.comesDay();
        Integer leaves = course.leavesDay();
        return new Course(
                weighIns,
                course.fedKcalPerDay(),
                course.weeklyShare(),
                comes == null || comes <= day ? null : (Integer) (comes - day),
                leaves == null ? null : (Integer) (leaves - day),
                course.correction(),
                later(course.transition(), day));
    }

    private static @Nullable Transition later(@Nullable Transition transition, int day) {
        if (transition == null || day >= transition.newShares().size()) {
            return null;
        }
        return new Transition(
                transition.from(),
                transition.newShares().subList(day, transition.newShares().size()));
    }
}
