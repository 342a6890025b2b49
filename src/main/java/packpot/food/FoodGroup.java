package packpot.food;

import java.util.Locale;

/** The part that a food plays in a pot; the shape of a recipe is set in shares of these. */
public enum FoodGroup {
    MEAT,
    FISH,
    EGG,
    ORGAN,
    LIVER,
    SHELLFISH,
    GRAIN,
    POTATO,
    PULSE,
    VEGETABLE,
    OXALATE_GREEN,
    FRUIT,
    DAIRY,
    SEED,
    OIL,
    OTHER,
    SUPPLEMENT;

    /** The name in data files and scenarios, such as "oxalate-green". */
    public String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static FoodGroup ofKey(String key) {
        return valueOf(key.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    /** Meat, fish, eggs and what else comes from animals and is cooked through. */
    public boolean isAnimal() {
        return switch (this) {
            case MEAT, FISH, EGG, ORGAN, LIVER, SHELLFISH -> true;
            case GRAIN, POTATO, PULSE, VEGETABLE, OXALATE_GREEN, FRUIT, DAIRY, SEED, OIL, OTHER, SUPPLEMENT -> false;
        };
    }
}
