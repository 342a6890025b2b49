package packpot.ration;

import java.util.List;
import packpot.food.Supplement;
import packpot.needs.Requirement;
import packpot.profile.Limit;

/**
 * The most of a supplement that dogs can bear: more would pass the maximum of a nutrient that it is rich in, or its own
 * limit, whatever else is in the bowl. Such a bound makes the choice variables bite.
 */
final class Bearable {
    private static final double ENERGY_SLACK = 1.02;

    private Bearable() {}

    /** Grams over the batch for dogs that get this energy from it. */
    static double grams(Build build, Prepared food, List<Requirement> requirements, double kcal) {
        Supplement supplement = food.item().food().supplement();
        double per1000 = supplement == null ? Double.POSITIVE_INFINITY : supplement.mostGramsPer1000Kcal();
        for (Requirement requirement : requirements) {
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
