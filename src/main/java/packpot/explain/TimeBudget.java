package packpot.explain;

import packpot.solver.SolveLimits;

/** Wall time that several solves share. */
final class TimeBudget {
    private static final double LEAST_SECONDS = 0.05;

    private final long end;

    TimeBudget(double seconds) {
        this.end = System.nanoTime() + (long) (seconds * 1e9);
    }

    boolean isSpent() {
        return secondsLeft() <= 0;
    }

    double secondsLeft() {
        return (end - System.nanoTime()) / 1e9;
    }

    /** At most so many seconds of what is left for one solve. */
    SolveLimits limits(double seconds, double gap) {
        return new SolveLimits(Math.max(LEAST_SECONDS, Math.min(seconds, secondsLeft())), gap);
    }
}
