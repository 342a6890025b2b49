package packpot.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import packpot.audit.DogAudit;
import packpot.audit.NutrientLine;
import packpot.audit.RecipeAudit;
import packpot.audit.RecipeVerdict;
import packpot.food.Constituent;
import packpot.food.Food;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.household.Recipe;
import packpot.household.RecipeScenario;
import packpot.household.SwapReader;

/**
 * A recipe before and after foods took the place of others, side by side.
 *
 * @param by what the two foods have in common
 * @param share by which a nutrient must move to be listed
 * @param moved nutrients that moved by more, dog by dog
 */
public record RecipeSwap(
        By by, double share, List<Exchange> exchanges, RecipeVerdict before, RecipeVerdict after, List<Moved> moved) {
    public RecipeSwap {
        exchanges = List.copyOf(exchanges);
        moved = List.copyOf(moved);
    }

    /** What the new food must equal the old one in. */
    public enum By {
        WEIGHT,
        ENERGY,
        PROTEIN;

        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * One food in place of another.
     *
     * @param fromGrams edible, as weighed before cooking
     * @param toGrams edible, as weighed before cooking
     */
    public record Exchange(String from, String to, double fromGrams, double toGrams, String fromGroup, String toGroup) {
        /** Whether the two are of one kind, so that the recipe keeps its look. */
        public boolean sameGroup() {
            return fromGroup.equals(toGroup);
        }
    }

    /**
     * A nutrient that moved.
     *
     * @param unit per 1000 kcal; empty for a ratio
     * @param change relative; infinite where there was nothing before
     * @param now what the move means: "now short", "still short", "now enough", "now over" and so on; empty when it lies
     *     within its limits before and after
     */
    public record Moved(
            String dog,
            String nutrient,
            String unit,
            @Nullable Double minimum,
            double before,
            double after,
            @Nullable Double maximum,
            double change,
            String now) {
        /** The same without the dog, to see which dogs it is the same for. */
        public Moved ofAnyDog() {
            return new Moved("", nutrient, unit, minimum, before, after, maximum, change, now);
        }
    }

    /** Puts foods in the places of others and compares. */
    public static RecipeSwap of(
            RecipeScenario scenario, List<SwapReader.Swap> swaps, By by, double share, Knowledge knowledge) {
        Recipe recipe = scenario.recipe();
        Household household = scenario.household();
        List<Exchange> exchanges = new ArrayList<>();
        List<Recipe.Part> parts = new ArrayList<>(recipe.foods());
        for (SwapReader.Swap swap : swaps) {
            double grams = grams(swap, by, household, knowledge);
            Food from = swap.from().item().food();
            Food to = swap.to().food();
            exchanges.add(new Exchange(
                    from.label(),
                    to.label(),
                    swap.from().grams(),
                    grams,
                    from.group().key(),
                    to.group().key()));
            replace(parts, swap, grams);
        }
        RecipeVerdict before = RecipeAudit.check(recipe, household, knowledge);
        RecipeVerdict after = RecipeAudit.check(recipe.withFoods(parts), household, knowledge);
        return new RecipeSwap(by, share, exchanges, before, after, moved(before, after, share));
    }

    private static void replace(List<Recipe.Part> parts, SwapReader.Swap swap, double grams) {
        int place = parts.indexOf(swap.from());
        parts.remove(place);
        for (int i = 0; i < parts.size(); i++) {
            Recipe.Part other = parts.get(i);
            if (other.item().food().equals(swap.to().food())) {
                parts.set(i, new Recipe.Part(other.item(), other.grams() + grams, other.written() + " and the swap"));
                return;
            }
        }
        parts.add(place, new Recipe.Part(swap.to(), grams, "by the swap"));
    }

    private static double grams(SwapReader.Swap swap, By by, Household household, Knowledge knowledge) {
        PantryItem from = swap.from().item();
        double had;
        double has;
        switch (by) {
            case ENERGY -> {
                had = knowledge.foodEnergy().kcalPerGram(from.food().composition(), household.foodEnergy());
                has = knowledge.foodEnergy().kcalPerGram(swap.to().food().composition(), household.foodEnergy());
            }
            case PROTEIN -> {
                had = protein(from);
                has = protein(swap.to());
            }
            default -> {
                had = 1;
                has = 1;
            }
        }
        if (!(had > 0) || !(has > 0)) {
            throw new NothingInCommonException(
                    (had > 0 ? swap.to() : from).food().label() + " has no " + by.key());
        }
        return swap.from().grams() * had / has;
    }

    private static double protein(PantryItem item) {
        return item.food().composition().perGram(Constituent.PROTEIN_G)
                * item.preparation().retention(Constituent.PROTEIN_G);
    }

    /** Two foods cannot be matched by what one of them has none of. */
    public static final class NothingInCommonException extends RuntimeException {
        private static final long serialVersionUID = 1L;

        NothingInCommonException(String message) {
            super(message);
        }
    }

    private static List<Moved> moved(RecipeVerdict before, RecipeVerdict after, double share) {
        List<Moved> moved = new ArrayList<>();
        for (int i = 0; i < before.dogs().size(); i++) {
            DogAudit was = before.dogs().get(i);
            DogAudit is = after.dogs().get(i);
            for (int n = 0; n < was.nutrients().size(); n++) {
                NutrientLine old = was.nutrients().get(n);
                NutrientLine line = is.nutrients().get(n);
                double change =
                        old.got() > 0 ? line.got() / old.got() - 1 : line.got() > 0 ? Double.POSITIVE_INFINITY : 0;
                if (Math.abs(change) > share) {
                    moved.add(new Moved(
                            was.dog(),
                            line.label(),
                            line.unit(),
                            line.minimum(),
                            old.got(),
                            line.got(),
                            line.maximum(),
                            change,
                            now(old, line)));
                }
            }
        }
        return moved;
    }

    private static String now(NutrientLine old, NutrientLine line) {
        if (line.tooLittle()) {
            return old.tooLittle() ? "still short" : "now short";
        }
        if (line.tooMuch()) {
            return old.tooMuch() ? "still over" : "now over";
        }
        return old.tooLittle() ? "now enough" : old.tooMuch() ? "no longer over" : "";
    }
}
