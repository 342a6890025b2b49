package packpot.dog;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One dog on one day: the first of a plan, or a later one as {@link DogOverTime} reckons it.
 *
 * @param name unique in the household
 * @param weightKg body weight
 * @param ageDays age; an adult of unknown age is given as the default of the household reader
 * @param expectedAdultKg for a growing dog, when known
 * @param neutered neutered or spayed
 * @param conditionScore body condition on the 9-point scale, when known
 * @param goalKg weight that it should come to, when that is not today's
 * @param vetKcalPerDay a veterinarian's own figure, which overrides the equations
 * @param otherKcalPerDay treats and other food, taken off before the batch is planned
 * @param avoids foods, food groups or words of food names that this dog must not get
 * @param profile name of the nutrient profile it is held to; null for the household's
 * @param course what is known beyond the first day
 */
public record Dog(
        String name,
        double weightKg,
        double ageDays,
        @Nullable Double expectedAdultKg,
        Sex sex,
        boolean neutered,
        Activity activity,
        @Nullable Integer conditionScore,
        @Nullable Double goalKg,
        @Nullable Reproduction reproduction,
        @Nullable Double vetKcalPerDay,
        double otherKcalPerDay,
        List<String> avoids,
        @Nullable String profile,
        Course course) {

    /** Male, female, or not said. */
    public enum Sex {
        MALE,
        FEMALE,
        UNKNOWN
    }

    public Dog {
        if (!(weightKg > 0)) {
            throw new IllegalArgumentException("the weight of " + name + " must be above 0 kg, was " + weightKg);
        }
        avoids = List.copyOf(avoids);
    }

    /** A dog of which nothing is known beyond the first day. */
    public Dog(
            String name,
            double weightKg,
            double ageDays,
            @Nullable Double expectedAdultKg,
            Sex sex,
            boolean neutered,
            Activity activity,
            @Nullable Integer conditionScore,
            @Nullable Double goalKg,
            @Nullable Reproduction reproduction,
            @Nullable Double vetKcalPerDay,
            double otherKcalPerDay,
            List<String> avoids,
            @Nullable String profile) {
        this(
                name,
                weightKg,
                ageDays,
                expectedAdultKg,
                sex,
                neutered,
                activity,
                conditionScore,
                goalKg,
                reproduction,
                vetKcalPerDay,
                otherKcalPerDay,
                avoids,
                profile,
                Course.NONE);
    }

    /** The same dog at another age, with another weight, in or out of whelp. */
    public Dog at(double otherAgeDays, double otherKg, @Nullable Reproduction otherReproduction) {
        return new Dog(
                name,
                otherKg,
                otherAgeDays,
                expectedAdultKg,
                sex,
                neutered,
                activity,
                conditionScore,
                goalKg,
                otherReproduction,
                vetKcalPerDay,
                otherKcalPerDay,
                avoids,
                profile,
                course);
    }

    /** The same dog with another course. */
    public Dog withCourse(Course other) {
        return new Dog(
                name,
                weightKg,
                ageDays,
                expectedAdultKg,
                sex,
                neutered,
                activity,
                conditionScore,
                goalKg,
                reproduction,
                vetKcalPerDay,
                otherKcalPerDay,
                avoids,
                profile,
                other);
    }

    public double ageMonths() {
        return ageDays / (365.25 / 12);
    }

    public double ageWeeks() {
        return ageDays / 7;
    }

    /** Metabolic body weight, kg^0.75. */
    public static double metabolicWeight(double weightKg) {
        return Math.pow(weightKg, 0.75);
    }
}
