package packpot.explain;

import java.util.Locale;

/** When a change comes: it decides what of the old plan can still be undone. */
public enum Mode {
    /** Nothing is bought; everything is open. */
    BEFORE,
    /** What the old plan buys is bought: it is in the house and paid for, whatever comes. */
    BOUGHT,
    /** The old batch is cooked; it is fed first, and a new one is planned for the days that it leaves. */
    COOKED;

    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
