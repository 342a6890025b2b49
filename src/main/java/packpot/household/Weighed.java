package packpot.household;

import java.util.Locale;

/** When the food of a recipe is weighed. */
enum Weighed {
    /** Edible, before cooking. */
    RAW,
    /** After cooking. */
    COOKED,
    /** As the shop sells it, with bone, peel or brine. */
    AS_BOUGHT;

    String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
