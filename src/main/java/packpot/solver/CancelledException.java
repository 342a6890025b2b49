package packpot.solver;

/** The solver was told to stop, since nobody waits for the answer any more. */
public final class CancelledException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public CancelledException() {
        super("the search was cancelled");
    }
}
