package packpot.explain;

import packpot.solver.SolveLimits;

/** When work with several solves must end. */
final class Deadline {
    private final long end;

    Deadline(double seconds) {
        this.end = System.nanoTime() + (long) (seconds * 1e9);
    }

    boolean passed() {
        return secondsLeft() <= 0;
    }

    double secondsLeft() {
        return (end - System.nanoTime()) / 1e9;
    }

    /** Limits of one solve: so many seconds, or what is left of them. */
    SolveLimits limits(double seconds, double gap) {
        return new SolveLimits(Math.max(0.05, Math.min(seconds, secondsLeft())), gap);
    }
}
