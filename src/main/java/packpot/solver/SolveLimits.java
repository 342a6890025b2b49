package packpot.solver;

/**
 * When a solver may stop.
 *
 * @param seconds wall time
 * @param relativeGap between the best solution and the bound
 */
public record SolveLimits(double seconds, double relativeGap) {
    public static final SolveLimits USUAL = new SolveLimits(20, 0.001);
}
