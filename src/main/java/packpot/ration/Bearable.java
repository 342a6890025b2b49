package packpot.ration;

import packpot.food.Supplement;
import packpot.needs.DogNeed;
import packpot.needs.Requirement;
import packpot.profile.Limit;

/**
 * The most of a supplement that dogs can bear: more would pass the maximum of a nutrient that it is rich in, or its own
 * limit, whatever else is in the bowl. Such a bound makes the choice variables bite.
 */
final class Bearable {
    private static final double ENERGY_SLACK = 1.02;

    private Bearable() {}

    /** Grams of a supplement that one dog gets at most per 1000 kcal, by the supplement's own limit. */
    static double ownLimit(Supplement supplement, DogNeed dog) {
        return dog.energy().stage().builds()
                ? supplement.mostGramsPer1000KcalGrowing()
                : supplement.mostGramsPer1000Kcal();
    }

    /** Grams over the batch that a dog bears in food of this energy. */
    static double grams(Build build, Prepared food, DogNeed dog, double kcal) {
        Supplement supplement = food.item().food().supplement();
        double per1000 = supplement == null ? Double.POSITIVE_INFINITY : ownLimit(supplement, dog);
        for (Requirement requirement : dog.requirements()) {
            String nutrient = requirement.limit().nutrient();
            if (requirement.limit().kind() == Limit.Kind.MAXIMUM
                    && !build.knowledge.nutrients().isRatio(nutrient)) {
                double perGram =
                        food.nutrientPerGram(build.knowledge.nutrients().get(nutrient), true);
                per1000 = perGram > 0 ? Math.min(per1000, requirement.per1000Kcal() / perGram) : per1000;
            }
        }
        return per1000 * kcal * ENERGY_SLACK / 1000;
    }
}
