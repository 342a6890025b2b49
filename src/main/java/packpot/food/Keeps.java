package packpot.food;

import java.util.Locale;

/** What is left of a pack after the cook day: whether the next cook can still use it. */
public enum Keeps {
    PERISHABLE,
    FROZEN,
    SHELF;

    public static Keeps ofKey(String key) {
        return valueOf(key.toUpperCase(Locale.ROOT));
    }
}
