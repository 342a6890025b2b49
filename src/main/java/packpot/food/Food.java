package packpot.food;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A food of the catalogue or of the household's own.
 *
 * @param id the key in models/foods.csv
 * @param label a short name for people
 * @param name the source's full name
 * @param state raw, cooked, canned, dry or supplement: the state that the figures are for
 * @param composition per gram of the edible food in that state
 * @param supplement how it is measured, when it is a supplement
 * @param source key of models/SOURCES.md
 * @param found how the figures were come by: data, derived, memory or label
 */
public record Food(
        String id,
        String label,
        String name,
        String state,
        FoodGroup group,
        Composition composition,
        Kitchen kitchen,
        @Nullable Supplement supplement,
        List<String> aliases,
        String source,
        String found) {

    /**
     * How a food behaves in shop and kitchen.
     *
     * @param section where it stands in the shop
     * @param keeps what becomes of a left-over part
     * @param cookFamily which preparations it can have
     * @param edibleShare edible grams per gram as bought
     * @param densityGramsPerMl for a household measure by volume, air between the pieces included
     * @param mostShare most of it that a sensible pot holds, as a share of cooked mass; 1 when there is no such limit
     * @param mostShareReason why, in words
     */
    public record Kitchen(
            String section,
            Keeps keeps,
            String cookFamily,
            double edibleShare,
            double densityGramsPerMl,
            double mostShare,
            String mostShareReason) {}

    public Food {
        aliases = List.copyOf(aliases);
    }

    public boolean isSupplement() {
        return supplement != null;
    }
}
