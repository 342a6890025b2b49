package packpot.solver;

/** The solver failed or lied; its answer must not be used. */
public final class SolverException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public SolverException(String message) {
        super(message);
    }

    public SolverException(String message, Throwable cause) {
        super(message, cause);
    }
}
