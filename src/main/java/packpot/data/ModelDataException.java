package packpot.data;

/** A file of models/ is missing or wrong: a fault of the program's own data, not of the user's. */
public final class ModelDataException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public ModelDataException(String message) {
        super(message);
    }

    public ModelDataException(String message, Throwable cause) {
        super(message, cause);
    }
}
