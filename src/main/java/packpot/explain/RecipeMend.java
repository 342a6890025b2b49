package packpot.explain;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import packpot.audit.Verdict;
import packpot.plan.Plan;

/** One way to mend a recipe, and how it came out. */
public record RecipeMend(Way way, Outcome outcome) {

    /** What a mend leaves as it is. */
    public enum Way {
        /** The proportions of the pot. */
        ADDITIONS_ONLY,
        /** As much of the amounts as can be. */
        SMALLEST_CHANGE,
        /** The foods, and about their shares. */
        CHEAPEST_ALIKE;

        public String key() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** How it came out. */
    public sealed interface Outcome {

        /**
         * A plan that passed the audit.
         *
         * @param scale cooked foods of the plan over those of the recipe; of the smallest change, what the recipe was
         *     multiplied with before its changes were counted
         * @param distance the foods' relative changes after scaling, summed with each food's share of the cooked pot as
         *     its weight; a new food counts by its share
         * @param foods of the pot, the recipe's own first
         * @param guessed prices that were guessed, in sentences
         * @param left limits of the household's shape that do not hold here, in sentences
         * @param costPerDay money for all that is used, by weight
         */
        record Planned(
                Plan plan,
                Verdict verdict,
                double scale,
                double distance,
                List<Change> foods,
                List<String> guessed,
                List<String> left,
                double costPerDay)
                implements Outcome {
            public Planned {
                foods = List.copyOf(foods);
                guessed = List.copyOf(guessed);
                left = List.copyOf(left);
            }
        }

        /**
         * No plan this way.
         *
         * @param reason in a sentence
         * @param clash that stands in the way, others may too; null when none was looked for or proved in time
         */
        record None(String reason, @Nullable Clash clash) implements Outcome {}
    }

    /**
     * What becomes of one food in the pot.
     *
     * @param recipeGrams edible, as weighed before cooking, as the recipe has it
     * @param scaledGrams the same after scaling
     * @param grams in the plan
     */
    public record Change(
            String food, String label, boolean supplement, double recipeGrams, double scaledGrams, double grams) {
        /** Change beyond scaling, as a share; a food that is new has an infinite one. */
        public double relative() {
            return scaledGrams > 0 ? grams / scaledGrams - 1 : grams > 0 ? Double.POSITIVE_INFINITY : 0;
        }
    }
}
