package packpot.report;

import java.util.Comparator;
import java.util.List;
import packpot.plan.Plan;

/** The foods that make up most of a pot. */
final class MainFoods {
    private static final int MANY = 4;

    private MainFoods() {}

    /** The largest first; what is stirred in is no food. */
    static List<Plan.Ingredient> of(Plan plan) {
        return plan.pot().stream()
                .filter(food -> !food.stirredIn())
                .sorted(Comparator.comparingDouble(Plan.Ingredient::shareOfCookedMass)
                        .reversed())
                .limit(MANY)
                .toList();
    }
}
