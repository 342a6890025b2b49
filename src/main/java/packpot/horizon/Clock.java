package packpot.horizon;

import packpot.solver.SolveLimits;

/** Shares out the time of a whole search over its parts; what one part leaves the next ones have. */
final class Clock {
    private static final double LEAST_SECONDS = 0.5;

    private final long started = System.nanoTime();
    private final SolveLimits whole;
    private int parts = 1;

    Clock(SolveLimits whole) {
        this.whole = whole;
    }

    /** Shares what is left out over so many solves that are to come, about. */
    synchronized void share(int toCome) {
        parts = toCome;
    }

    /** Limits of the next solve. */
    synchronized SolveLimits next() {
        double seconds = left() / Math.max(1, parts);
        parts--;
        return limits(seconds);
    }

    /** Limits of a solve that takes no more than a part of the whole time. */
    SolveLimits part(double share) {
        return limits(Math.min(left(), share * whole.seconds()));
    }

    /** What is left of the time, as a share of the whole. */
    double leftShare() {
        return left() / whole.seconds();
    }

    private double left() {
        return whole.seconds() - (System.nanoTime() - started) / 1e9;
    }

    private SolveLimits limits(double seconds) {
        return new SolveLimits(Math.max(LEAST_SECONDS, seconds), whole.relativeGap());
    }
}
