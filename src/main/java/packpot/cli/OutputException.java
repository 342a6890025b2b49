package packpot.cli;

/** A result could not be written; the message is for people. */
final class OutputException extends Exception {
    private static final long serialVersionUID = 1L;

    OutputException(String message) {
        super(message);
    }

    OutputException(String message, Throwable cause) {
        super(message, cause);
    }
}
