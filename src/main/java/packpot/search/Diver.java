package packpot.search;

import org.jspecify.annotations.Nullable;
import packpot.search.DualSimplex.End;

/**
 * Looks for a solution by rounding one whole number after the other: first the one where the wrong side would cost most, to its
 * cheaper side.
 */
final class Diver {
    private static final int MOST_ROUNDED = 400;
    private static final long MOST_STEPS = 2000;

    private Diver() {}

    /** Values of the columns that keep to everything; null where none are found before the cost is known to pass what is dear. */
    static double @Nullable [] dive(DualSimplex from, double dear) {
        DualSimplex simplex = from.copy();
        Dictionary dictionary = simplex.dictionary();
        for (int turn = 0; turn < MOST_ROUNDED; turn++) {
            int[] fractional = Wholes.fractional(dictionary);
            if (fractional.length == 0) {
                return Wholes.solution(simplex);
            }
            int column = -1;
            boolean up = false;
            double most = -1;
            for (int j : fractional) {
                double whole = Wholes.whole(dictionary, j);
                double unit = dictionary.program.unit()[j];
                double below = simplex.penalty(j, Math.floor(whole) * unit);
                double above = simplex.penalty(j, Math.ceil(whole) * unit);
                if (Math.max(below, above) > most) {
                    most = Math.max(below, above);
                    column = j;
                    up = above < below || (above == below && whole - Math.floor(whole) >= 0.5);
                }
            }
            if (column < 0 || !round(simplex, column, up, dear)) {
                return null;
            }
        }
        return null;
    }

    /** Takes one side, or the other where the first leads nowhere. */
    private static boolean round(DualSimplex simplex, int j, boolean up, double dear) {
        Dictionary dictionary = simplex.dictionary();
        double unit = dictionary.program.unit()[j];
        double floor = Math.floor(Wholes.whole(dictionary, j)) * unit;
        double low = dictionary.lower[j];
        double high = dictionary.upper[j];
        dictionary.bound(j, up ? floor + unit : low, up ? high : floor);
        if (simplex.solve(dear, MOST_STEPS) == End.OPTIMAL) {
            return true;
        }
        dictionary.bound(j, up ? low : floor + unit, up ? floor : high);
        return simplex.solve(dear, MOST_STEPS) == End.OPTIMAL;
    }
}
