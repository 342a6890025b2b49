package packpot.dog;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** Dogs that differ from a plain adult in one thing. */
public final class TestDogs {
    private static final double FIVE_YEARS = 5 * 365.25;

    private TestDogs() {}

    public static Dog adult(double kg) {
        return adult(kg, Activity.MODERATE);
    }

    public static Dog adult(double kg, Activity activity) {
        return dog(kg, FIVE_YEARS, null, activity, true, null, null);
    }

    public static Dog intact(double kg) {
        return dog(kg, FIVE_YEARS, null, Activity.MODERATE, false, null, null);
    }

    public static Dog aged(double kg, double days) {
        return dog(kg, days, null, Activity.MODERATE, true, null, null);
    }

    public static Dog puppy(double kg, double weeks, @Nullable Double adultKg) {
        return dog(kg, weeks * 7, adultKg, Activity.MODERATE, false, null, null);
    }

    public static Dog bitch(double kg, Reproduction reproduction) {
        return dog(kg, FIVE_YEARS, null, Activity.MODERATE, false, null, reproduction);
    }

    public static Dog withGoal(double kg, double goalKg) {
        return dog(kg, FIVE_YEARS, null, Activity.MODERATE, true, goalKg, null);
    }

    /** The same dog, which must not get a food. */
    public static Dog avoiding(Dog dog, String food) {
        return like(dog, dog.weightKg(), List.of(food), dog.profile());
    }

    /** The same dog with another weight, other foods to avoid and another profile. */
    public static Dog like(Dog dog, double kg, List<String> avoids, @Nullable String profile) {
        return new Dog(
                dog.name(),
                kg,
                dog.ageDays(),
                dog.expectedAdultKg(),
                dog.sex(),
                dog.neutered(),
                dog.activity(),
                dog.conditionScore(),
                dog.goalKg(),
                dog.reproduction(),
                dog.vetKcalPerDay(),
                dog.otherKcalPerDay(),
                avoids,
                profile,
                dog.course());
    }

    /** The same dog with a veterinarian's figure. */
    public static Dog withVet(Dog dog, double kcalPerDay) {
        return new Dog(
                dog.name(),
                dog.weightKg(),
                dog.ageDays(),
                dog.expectedAdultKg(),
                dog.sex(),
                dog.neutered(),
                dog.activity(),
                dog.conditionScore(),
                dog.goalKg(),
                dog.reproduction(),
                kcalPerDay,
                dog.otherKcalPerDay(),
                dog.avoids(),
                dog.profile(),
                dog.course());
    }

    private static Dog dog(
            double kg,
            double days,
            @Nullable Double adultKg,
            Activity activity,
            boolean neutered,
            @Nullable Double goal,
            @Nullable Reproduction reproduction) {
        return new Dog(
                "Moss",
                kg,
                days,
                adultKg,
                Dog.Sex.FEMALE,
                neutered,
                activity,
                null,
                goal,
                reproduction,
                null,
                0,
                List.of(),
                null);
    }
}
