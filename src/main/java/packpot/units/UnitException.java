package packpot.units;

/** A quantity or price could not be read; the message says what was read and what was expected. */
public final class UnitException extends Exception {
    private static final long serialVersionUID = 1L;

    public UnitException(String message) {
        super(message);
    }
}
