package packpot.profile;

import org.jspecify.annotations.Nullable;

/**
 * One figure of a profile, per 1000 kcal of metabolizable energy, in the nutrient's own unit.
 *
 * @param nutrient key of a nutrient or a ratio
 * @param value g, mg, ug or IU per 1000 kcal; for a ratio a plain number; for a dependent minimum units per unit of
 *     {@code per}
 * @param per for a dependent minimum, the nutrient that it rises with; else null
 * @param threshold for a dependent minimum, units of {@code per} per 1000 kcal above which it rises
 * @param found text, computed or memory
 * @param source keys of models/SOURCES.md
 */
public record Limit(
        String nutrient,
        Kind kind,
        double value,
        @Nullable String per,
        double threshold,
        String found,
        String source,
        String note) {

    /** How a figure binds. */
    public enum Kind {
        MINIMUM,
        MAXIMUM,
        /** On top of the plain minimum, rises with another nutrient. */
        DEPENDENT_MINIMUM
    }

    public boolean fromMemory() {
        return found.equals("memory");
    }
}
