package packpot.search;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import packpot.search.DualSimplex.End;

/** The whole numbers of a program. */
final class Wholes {
    /** By how much a value may miss a whole number. */
    private static final double WHOLE = 1e-6;

    private Wholes() {}

    /** Columns that should be whole and are not. */
    static int[] fractional(Dictionary dictionary) {
        int[] fractional = new int[dictionary.columns];
        int found = 0;
        for (int j = 0; j < dictionary.columns; j++) {
            if (dictionary.program.whole(j)) {
                double whole = whole(dictionary, j);
                if (Math.abs(whole - Math.rint(whole)) > WHOLE) {
                    fractional[found++] = j;
                }
            }
        }
        return Arrays.copyOf(fractional, found);
    }

    /** The value of a column in whole numbers, between its bounds, which lost digits may have carried it beyond. */
    static double whole(Dictionary dictionary, int column) {
        double value = dictionary.value(column);
        double inside = Math.max(dictionary.lower[column], Math.min(dictionary.upper[column], value));
        return inside / dictionary.program.unit()[column];
    }

    static double rounded(Compact program, int column, double value) {
        return Math.rint(value / program.unit()[column]) * program.unit()[column];
    }

    /** Values of the columns with every whole number whole; null where the rest does not keep to the rows then. */
    static double @Nullable [] solution(DualSimplex simplex) {
        double[] x = rounded(simplex.dictionary());
        if (simplex.dictionary().program.allows(x)) {
            return x;
        }
        DualSimplex copy = simplex.copy();
        for (int j = 0; j < x.length; j++) {
            if (copy.dictionary().program.whole(j)) {
                copy.dictionary().bound(j, x[j], x[j]);
            }
        }
        double @Nullable [] rest = rest(copy);
        if (rest == null) {
            copy.dictionary().begin();
            rest = rest(copy);
        }
        return rest;
    }

    private static double @Nullable [] rest(DualSimplex fixed) {
        if (fixed.solve(Double.POSITIVE_INFINITY, Long.MAX_VALUE / 2) != End.OPTIMAL) {
            return null;
        }
        double[] x = rounded(fixed.dictionary());
        return fixed.dictionary().program.allows(x) ? x : null;
    }

    private static double[] rounded(Dictionary dictionary) {
        double[] x = dictionary.values();
        for (int j = 0; j < x.length; j++) {
            x[j] = dictionary.program.whole(j) ? rounded(dictionary.program, j, x[j]) : x[j];
        }
        return x;
    }
}
