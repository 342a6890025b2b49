package packpot.horizon;

import packpot.solver.SolveLimits;

/** Shares out the time of a whole search over its parts; what one part leaves the next ones have. */
final class Clock {
    private static final double LEAST_SECONDS = 0.5;

    private final long started = System.nanoTime();
    private final SolveLimits whole;
    private int parts;

    /**
     * A clock.
     *
     * @param parts solves that are to come, about
     */
    Clock(SolveLimits whole, int parts) {
        this.whole = whole;
        this.parts = parts;
    }

    /** The same clock for so many solves that are to come. */
    synchronized Clock forParts(int toCome) {
        parts = toCome;
        return this;
    }

    /** Limits of the next solve. */
    synchronized SolveLimits next() {
        double left = whole.seconds() - (System.nanoTime() - started) / 1e9;
        double share = left / Math.max(1, parts);
        parts--;
        return new SolveLimits(Math.max(LEAST_SECONDS, share), whole.relativeGap());
    }
}
