package packpot.food;

/** Where a food may go. */
public enum Place {
    POT,
    BOWL,
    EITHER,
    /** Catalogued for reference, but no kitchen can measure it. */
    NONE;

    public boolean pot() {
        return this == POT || this == EITHER;
    }

    public boolean bowl() {
        return this == BOWL || this == EITHER;
    }
}
