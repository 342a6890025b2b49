package packpot.food;

/** How often a bowl addition is given. */
public enum Dosing {
    /** The same dose every day. */
    DAILY,
    /** A count of doses spread over the days of the batch; for vitamins that the body stores. */
    SPREAD
}
