package packpot.report;

import java.util.Locale;
import packpot.audit.DogAudit;
import packpot.audit.RecipeVerdict;
import packpot.explain.RecipeMend;
import packpot.household.Recipe;
import packpot.units.Show;

/** Figures of a checked recipe, as its report prints them. */
final class RecipeFigures {
    /** Changes that no kitchen scale shows. */
    static final double NO_CHANGE = 0.005;

    private RecipeFigures() {}

    /** Small amounts to a tenth, as a mend of a small batch is weighed. */
    static String grams(double grams) {
        double tenths = Math.rint(grams * 10) / 10;
        return String.format(Locale.ROOT, tenths == Math.rint(tenths) ? "%,.0f g" : "%,.1f g", tenths);
    }

    /** An amount of the pot as it is weighed: foods to a tenth of a gram, supplements also by the milligram. */
    static String potGrams(RecipeMend.Change change, double grams) {
        return change.supplement() && grams > 0 ? Show.grams(grams) : grams(grams);
    }

    static String percent(double share) {
        return String.format(Locale.ROOT, share < 0.0995 && share > 0 ? "%.1f %%" : "%.0f %%", 100 * share);
    }

    static String signed(double change) {
        return Double.isInfinite(change) ? "from 0" : String.format(Locale.ROOT, "%+.0f %%", 100 * change);
    }

    /** Money a day for what the recipe uses, by weight, scaled to the energy that is needed. */
    static double costPerDay(Recipe recipe, RecipeVerdict verdict) {
        double pot = recipe.foods().stream()
                .mapToDouble(part -> part.grams() * part.item().pricePerGram())
                .sum();
        double bowls = recipe.additions().stream()
                .mapToDouble(a -> a.gramsPerDay() * a.item().pricePerGram())
                .sum();
        double target =
                verdict.dogs().stream().mapToDouble(DogAudit::targetKcalPerDay).sum();
        double got = verdict.dogs().stream().mapToDouble(DogAudit::kcalPerDay).sum();
        return pot / recipe.days() * target / got + bowls;
    }
}
