package packpot.search;

import java.util.Arrays;
import packpot.search.DualSimplex.End;

/**
 * Chooses the whole number to branch on: the one that drives the cost up most, above all on its cheaper side. What a side
 * costs is taken from what it cost before and from one step of the simplex method; until enough is known of a number, a few
 * steps of either side are tried out. After T. Achterberg, T. Koch and A. Martin, Branching rules revisited (2005).
 */
final class Brancher {
    /** So often a number is tried out. */
    private static final int RELIABLE = 2;

    private static final int MOST_TRIED = 4;
    private static final int TRIAL_STEPS = 12;
    private static final double DEARER_SIDE = 1.0 / 6;

    /**
     * What to do with a column.
     *
     * @param column that is not whole
     * @param floor the whole number below it
     * @param only the side that is left, when the other leads nowhere
     * @param upFirst whether the upper side is the nearer one
     */
    record Choice(int column, double floor, Only only, boolean upFirst) {}

    /** Which sides are left. */
    enum Only {
        BOTH,
        DOWN,
        UP
    }

    private final double[] downSum;
    private final double[] upSum;
    private final int[] times;
    /** The least bound among sides that a trial found too dear. */
    private double leastDear = Double.POSITIVE_INFINITY;

    Brancher(int columns) {
        downSum = new double[columns];
        upSum = new double[columns];
        times = new int[columns];
    }

    double leastDear() {
        return leastDear;
    }

    /**
     * Chooses.
     *
     * @param fractional columns that are not whole; at least one
     * @param dear a cost at which a side is not worth a look
     */
    Choice choose(DualSimplex simplex, int[] fractional, double dear) {
        Dictionary dictionary = simplex.dictionary();
        Candidate[] candidates = new Candidate[fractional.length];
        for (int k = 0; k < fractional.length; k++) {
            candidates[k] = candidate(simplex, fractional[k]);
        }
        Arrays.sort(candidates, (a, b) -> Double.compare(b.score(), a.score()));
        double cost = dictionary.cost();
        Candidate best = candidates[0];
        double most = -1;
        int tried = 0;
        for (Candidate candidate : candidates) {
            int j = candidate.column;
            double score = candidate.score();
            if (times[j] < RELIABLE && tried < MOST_TRIED) {
                tried++;
                double unit = dictionary.program.unit()[j];
                double below = trial(simplex, j, dictionary.lower[j], candidate.floor, cost, dear);
                if (Double.isInfinite(below)) {
                    return new Choice(j, candidate.floor, Only.UP, true);
                }
                double above = trial(simplex, j, candidate.floor + unit, dictionary.upper[j], cost, dear);
                if (Double.isInfinite(above)) {
                    return new Choice(j, candidate.floor, Only.DOWN, false);
                }
                learn(j, candidate.fraction, below, above);
                score = score(below, above);
            } else if (times[j] < RELIABLE) {
                continue;
            }
            if (score > most) {
                most = score;
                best = candidate;
            }
        }
        boolean up = best.up == best.down ? best.fraction >= 0.5 : best.up < best.down;
        return new Choice(best.column, best.floor, Only.BOTH, up);
    }

    /** What either side is thought to cost. */
    private record Candidate(int column, double floor, double fraction, double down, double up) {
        double score() {
            return Brancher.score(down, up);
        }
    }

    /**
     * The dearer side counts too: a food or a dose often costs nothing on one side and much on the other, and a product of
     * the two would leave it for last.
     */
    private static double score(double down, double up) {
        return Math.min(down, up) + DEARER_SIDE * Math.max(down, up);
    }

    private Candidate candidate(DualSimplex simplex, int j) {
        Dictionary dictionary = simplex.dictionary();
        double unit = dictionary.program.unit()[j];
        double whole = Wholes.whole(dictionary, j);
        double floor = Math.floor(whole) * unit;
        double fraction = whole - Math.floor(whole);
        double seen = 1.0 / Math.max(1, times[j]);
        double down = Math.max(simplex.penalty(j, floor), downSum[j] * seen * fraction);
        double up = Math.max(simplex.penalty(j, floor + unit), upSum[j] * seen * (1 - fraction));
        return new Candidate(j, floor, fraction, down, up);
    }

    private void learn(int column, double fraction, double below, double above) {
        downSum[column] += below / Math.max(fraction, 1e-6);
        upSum[column] += above / Math.max(1 - fraction, 1e-6);
        times[column]++;
    }

    /** By how much the cost rises at least on one side; infinite where that leads nowhere. */
    private double trial(DualSimplex simplex, int j, double low, double high, double cost, double dear) {
        DualSimplex copy = simplex.copy();
        copy.dictionary().bound(j, low, high);
        End end = copy.solve(dear, TRIAL_STEPS);
        if (end == End.DEAR) {
            leastDear = Math.min(leastDear, Certificate.bound(copy.dictionary()));
        }
        return end == End.DEAR || end == End.IMPOSSIBLE
                ? Double.POSITIVE_INFINITY
                : Math.max(0, copy.dictionary().cost() - cost);
    }
}
