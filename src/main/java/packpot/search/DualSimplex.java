package packpot.search;

import java.util.Random;

/**
 * The dual simplex method: reduced costs stay right while broken bounds are mended one by one, so that few steps suffice after
 * a bound was moved. A step passes by the breakpoints at which a variable can go to its other bound. After A. Koberstein, The
 * dual simplex method, techniques for a fast and stable implementation (2005), chapters 3 and 6.
 */
final class DualSimplex {
    /** How a solve ended. */
    enum End {
        OPTIMAL,
        /** There is no solution: reckoned from the program itself. */
        IMPOSSIBLE,
        /** No solution costs less than the figure that was given: reckoned from the program itself. */
        DEAR,
        /** The steps that were granted are used up. */
        LIMIT,
        /** Digits were lost that could not be won back. */
        LOST
    }

    /** Steps without gain, after which they might be going in circles. */
    private static final int MOST_IDLE_STEPS = 300;

    private static final int MOST_SHAKES = 10;
    private static final long SEED = 1;

    private static final int MOST_REBUILDS = 4;
    /** A bound that lies so far below the cost of its own solution, as a share, has lost digits. */
    static final double WEAK = 1e-4;

    /** A coefficient that is taken where there is none larger. */
    private static final double LAST_RESORT = 1e-10;

    private static final double SMALL_PIVOT = 1e-4;
    private static final double FIRMER = 100;

    private final Dictionary dictionary;
    private final int[] candidates;
    private final double[] ratios;
    private final Random random = new Random(SEED);
    private final Work work;
    private long steps;
    /** The row that nothing mends. */
    private int stuck;

    DualSimplex(Dictionary dictionary, Work work) {
        this.dictionary = dictionary;
        this.work = work;
        candidates = new int[dictionary.columns];
        ratios = new double[dictionary.columns];
    }

    Dictionary dictionary() {
        return dictionary;
    }

    /**
     * Solves from where the dictionary stands.
     *
     * @param dear a cost at which nobody wants to know more
     */
    End solve(double dear, long mostSteps) {
        long last = steps + mostSteps;
        double limit = dear;
        int rebuilds = 0;
        boolean begun = false;
        while (true) {
            End end = mend(limit, last);
            boolean doubtful = switch (end) {
                case IMPOSSIBLE -> !Certificate.provesImpossible(dictionary, stuck);
                case DEAR -> Certificate.bound(dictionary) < dear;
                case OPTIMAL -> !dictionary.isExact(dictionary.values());
                case LIMIT -> false;
                case LOST -> true;
            };
            if (doubtful) {
                double missing = end == End.DEAR ? dictionary.cost() - Certificate.bound(dictionary) : 0;
                if (end == End.DEAR && missing < WEAK * Math.abs(dear) && limit < dear + missing) {
                    // Its costs are not quite the program's: a little farther the bound is there too.
                    limit = dear + 2 * missing;
                } else if (end != End.LOST && rebuilds++ < MOST_REBUILDS) {
                    dictionary.rebuild();
                } else if (end == End.DEAR) {
                    limit = Double.POSITIVE_INFINITY;
                } else if (!begun) {
                    // Another way to the same place may lose fewer digits.
                    dictionary.begin();
                    begun = true;
                } else {
                    return End.LOST;
                }
            } else if (end != End.OPTIMAL || !dictionary.addBroken(dictionary.values())) {
                return end;
            }
        }
    }

    private End mend(double dear, long last) {
        double highest = Double.NEGATIVE_INFINITY;
        int idle = 0;
        int shaken = 0;
        while (true) {
            int row = mostBroken();
            if (row < 0) {
                return End.OPTIMAL;
            }
            double cost = dictionary.cost();
            if (cost >= dear) {
                return End.DEAR;
            }
            idle = cost > highest ? 0 : idle + 1;
            highest = Math.max(highest, cost);
            if (idle == MOST_IDLE_STEPS) {
                if (++shaken > MOST_SHAKES) {
                    return End.LOST;
                }
                dictionary.shake(random);
                idle = 0;
            }
            if (steps >= last) {
                return End.LIMIT;
            }
            boolean rises = dictionary.basicValue[row] < dictionary.lower[dictionary.basic[row]];
            int enters = entering(row, rises);
            if (enters < 0) {
                stuck = row;
                return End.IMPOSSIBLE;
            }
            dictionary.exchange(row, enters, rises);
            steps++;
            work.add((long) dictionary.count * dictionary.columns);
        }
    }

    private double broken(int row) {
        int v = dictionary.basic[row];
        double value = dictionary.basicValue[row];
        return Math.max(dictionary.lower[v] - value, value - dictionary.upper[v]);
    }

    /** The basic variable that is farthest beyond a bound, in the length of its row; negative where none is. */
    private int mostBroken() {
        int best = -1;
        double most = 0;
        for (int i = 0; i < dictionary.count; i++) {
            double by = broken(i);
            if (by > Dictionary.FEASIBLE * (1 + Math.abs(dictionary.basicValue[i]))) {
                double length = 1;
                for (double a : dictionary.table[i]) {
                    length += a * a;
                }
                double score = by * by / length;
                if (score > most) {
                    most = score;
                    best = i;
                }
            }
        }
        return best;
    }

    /** Whether a nonbasic variable can move so that a row rises, or falls. */
    private boolean helps(int j, double coefficient, boolean rises, double least) {
        int v = dictionary.nonbasic[j];
        double a = rises ? coefficient : -coefficient;
        return Math.abs(a) >= least
                && dictionary.lower[v] < dictionary.upper[v]
                && (dictionary.atUpper[v] ? a < 0 : a > 0);
    }

    /** The place of the variable that enters; on the way, others go to their other bound. Negative where none can. */
    private int entering(int row, boolean rises) {
        int enters = entering(row, rises, Dictionary.PIVOT);
        return enters < 0 ? entering(row, rises, LAST_RESORT) : enters;
    }

    private int entering(int row, boolean rises, double least) {
        double[] line = dictionary.table[row];
        int found = candidates(line, rises, least);
        double distance = broken(row);
        double left = distance;
        for (int passed = 0; passed < found; passed++) {
            // The nearest breakpoint is sought each time: few are passed.
            int nearest = passed;
            for (int k = passed + 1; k < found; k++) {
                nearest = ratios[k] < ratios[nearest] ? k : nearest;
            }
            swap(passed, nearest);
            int j = candidates[passed];
            int v = dictionary.nonbasic[j];
            double room = Math.abs(line[j]) * (dictionary.upper[v] - dictionary.lower[v]);
            if (left - room <= Dictionary.FEASIBLE * (1 + distance)) {
                return choose(line, passed, found);
            }
            left -= room;
        }
        return -1;
    }

    private int candidates(double[] line, boolean rises, double least) {
        int found = 0;
        for (int j = 0; j < line.length; j++) {
            if (helps(j, line[j], rises, least)) {
                candidates[found] = j;
                ratios[found++] = Math.abs(dictionary.reduced[j] / line[j]);
            }
        }
        return found;
    }

    private void swap(int a, int b) {
        int candidate = candidates[a];
        candidates[a] = candidates[b];
        candidates[b] = candidate;
        double ratio = ratios[a];
        ratios[a] = ratios[b];
        ratios[b] = ratio;
    }

    /** Of those at about the same breakpoint the one that stands firmest. */
    private int choose(double[] line, int passed, int found) {
        int best = passed;
        for (int k = passed; k < found; k++) {
            boolean near = ratios[k] <= ratios[passed] + Dictionary.DUAL;
            best = near && firmness(line, k) > firmness(line, best) ? k : best;
        }
        int flips = passed;
        if (firmness(line, best) < SMALL_PIVOT) {
            // Rather one that is passed, if it stands firmer; then no more than what comes before it is flipped.
            for (int k = passed - 1; k >= 0; k--) {
                if (firmness(line, k) >= FIRMER * firmness(line, best)) {
                    best = k;
                    flips = k;
                    break;
                }
            }
        }
        for (int k = 0; k < flips; k++) {
            dictionary.flip(candidates[k]);
        }
        return candidates[best];
    }

    private double firmness(double[] line, int candidate) {
        return Math.abs(line[candidates[candidate]]);
    }

    /**
     * By how much the cost rises at least when a basic column is driven to a value, seen from a single step; infinite where it
     * cannot go there. After N. J. Driebeek, An algorithm for the solution of mixed integer programming problems (1966).
     */
    double penalty(int column, double to) {
        int row = dictionary.row(column);
        double distance = to - dictionary.basicValue[row];
        double[] line = dictionary.table[row];
        double least = Double.POSITIVE_INFINITY;
        for (int j = 0; j < line.length; j++) {
            if (helps(j, line[j], distance > 0, Dictionary.PIVOT)) {
                least = Math.min(least, Math.abs(dictionary.reduced[j] / line[j]));
            }
        }
        return least * Math.abs(distance);
    }

    /** A solver of its own from where this one stands. */
    DualSimplex copy() {
        return new DualSimplex(dictionary.copy(), work);
    }
}
