package packpot.needs;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import packpot.dog.Dog;
import packpot.dog.EnergyNeed;
import packpot.dog.LifeStage;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.profile.Limit;
import packpot.profile.ProfileStage;

/** What each dog of a household must get, day by day, each figure with its source. */
public record Needs(List<DogNeed> dogs) {
    public Needs {
        dogs = List.copyOf(dogs);
    }

    /** Reckons the needs of every dog that is there on a day of the batch. */
    public static Needs of(Household household, Knowledge knowledge) {
        List<DogNeed> needs = new ArrayList<>();
        for (Dog dog : household.dogs()) {
            int first = 0;
            while (first < household.kitchen().days() && !dog.course().isThere(first)) {
                first++;
            }
            int last = first;
            while (last < household.kitchen().days() && dog.course().isThere(last)) {
                last++;
            }
            if (last > first) {
                needs.add(need(dog, household, knowledge, first, last - first));
            }
        }
        return new Needs(needs);
    }

    /**
     * The needs of the dogs that are there on a day of the plan, each as it is on that day.
     *
     * @param day days from the household's first day, which is 0
     */
    public static Needs on(int day, Household household, Knowledge knowledge) {
        List<DogNeed> needs = new ArrayList<>();
        for (Dog dog : household.allDogs()) {
            knowledge
                    .overTime()
                    .on(dog, day)
                    .ifPresent(then -> needs.add(need(
                            then, household, knowledge, 0, household.kitchen().days())));
        }
        return new Needs(needs);
    }

    private static DogNeed need(Dog dog, Household household, Knowledge knowledge, int firstDay, int days) {
        EnergyNeed energy = knowledge.energy().need(dog, household.maintenance(), household.growth());
        ProfileStage profile = knowledge.profiles().forDog(household.profileOf(dog), dog, energy);
        double raisedBy = raisedBy(dog, energy, profile);
        Map<String, Requirement> requirements = new LinkedHashMap<>();
        profile.limits().forEach(limit -> tighten(requirements, limit, raisedBy));
        knowledge.profiles().ceilings(dog).forEach(limit -> tighten(requirements, limit, 1));
        tighten(requirements, sodiumCeiling(household), 1);
        return new DogNeed(
                1,
                dog,
                energy,
                energy.kcalPerDay() - dog.otherKcalPerDay(),
                firstDay,
                days,
                profile,
                raisedBy,
                new ArrayList<>(requirements.values()));
    }

    /**
     * A profile per 1000 kcal assumes an intake. A dog that eats less needs the same nutrients a day in less food, so
     * its minimums rise in proportion. A dog on its way to a goal weight is reckoned at that weight.
     */
    private static double raisedBy(Dog dog, EnergyNeed energy, ProfileStage profile) {
        Double reference = profile.referenceKcalPerKg075();
        if (reference == null) {
            return 1;
        }
        Double goal = dog.goalKg();
        boolean losing = energy.stage() == LifeStage.WEIGHT_LOSS;
        double weight = losing && goal != null ? goal : dog.weightKg();
        double intake = energy.kcalPerDay() / Dog.metabolicWeight(weight);
        return Math.max(1, reference / intake);
    }

    private static void tighten(Map<String, Requirement> requirements, Limit limit, double raisedBy) {
        boolean raise = limit.kind() == Limit.Kind.MINIMUM && !limit.nutrient().endsWith("-ratio") && raisedBy > 1;
        Requirement requirement = new Requirement(limit, limit.value() * (raise ? raisedBy : 1), raise);
        // A profile has one figure of a kind for a nutrient; what stands beside it are maximums.
        requirements.merge(
                limit.kind() + " " + limit.nutrient(),
                requirement,
                (old, other) -> other.per1000Kcal() < old.per1000Kcal() ? other : old);
    }

    private static Limit sodiumCeiling(Household household) {
        return new Limit(
                "sodium",
                Limit.Kind.MAXIMUM,
                household.rules().sodiumMostGramsPer1000Kcal(),
                null,
                0,
                "memory",
                "TRADE",
                "our own ceiling, below the safe upper limit");
    }

    /** kcal that the whole batch must bring. */
    public double kcalPerBatch() {
        return kcalPerLongDay() * longestDays();
    }

    /** Share of the batch's energy that one dog must get. */
    public double share(DogNeed dog) {
        return partOfDays(dog) * dog.kcalPerDay() / kcalPerLongDay();
    }

    /**
     * Spread over the days of the dog that is there longest. Where all are there on the same days this is the plain sum of
     * a day, to the last digit: a solver may answer a model that differs in the last digit with another plan as good.
     */
    private double kcalPerLongDay() {
        return dogs.stream()
                .mapToDouble(dog -> partOfDays(dog) * dog.kcalPerDay())
                .sum();
    }

    private double partOfDays(DogNeed dog) {
        return (double) dog.days() / longestDays();
    }

    private int longestDays() {
        return dogs.stream().mapToInt(DogNeed::days).max().orElse(0);
    }

    /** kcal that the batch must bring on a day on which all dogs are there. */
    public double kcalPerDay() {
        return dogs.stream().mapToDouble(DogNeed::kcalPerDay).sum();
    }
}
