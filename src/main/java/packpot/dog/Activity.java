package packpot.dog;

import java.util.Locale;

/** How much a dog moves. */
public enum Activity {
    LOW,
    MODERATE,
    HIGH,
    WORKING;

    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
