package packpot.search;

import java.util.Arrays;
import java.util.List;
import packpot.search.Draft.Line;
import packpot.search.Draft.Reach;

/** Puts what an equation defines in the place of a variable that takes fractions. */
final class Substitution {
    /** Of an equation's largest coefficient: less would lose digits. */
    private static final double LEAST_COEFFICIENT = 1e-3;
    /** Bounds that do not follow stay as a row, which costs more than any number of places. */
    private static final int PRICE_OF_A_ROW = 1000;

    private static final double FOLLOWS = 1e-7;

    private final Draft draft;
    private final int[] uses;

    private Substitution(Draft draft) {
        this.draft = draft;
        uses = new int[draft.lower.length];
        draft.lines.forEach(line -> count(line, 1));
    }

    static void apply(Draft draft) {
        Substitution substitution = new Substitution(draft);
        for (Line line : List.copyOf(draft.lines)) {
            draft.takeOutFixed(line);
            int at = line.lower == line.upper ? substitution.best(line) : -1;
            if (at >= 0) {
                substitution.substitute(line, at);
            }
        }
        draft.lines.removeIf(line -> line.gone);
    }

    private void count(Line line, int by) {
        for (int v : line.index) {
            uses[v] += by;
        }
    }

    /** The place of the variable that is best replaced; negative where none is. */
    private int best(Line line) {
        double largest = 0;
        for (double a : line.value) {
            largest = Math.max(largest, Math.abs(a));
        }
        Reach reach = draft.reach(line);
        int best = -1;
        int least = Integer.MAX_VALUE;
        for (int k = 0; k < line.index.length; k++) {
            int v = line.index[k];
            if (!draft.whole[v] && Math.abs(line.value[k]) >= LEAST_COEFFICIENT * largest) {
                int price = uses[v] + (boundsFollow(line, reach, k) ? 0 : PRICE_OF_A_ROW);
                if (price < least) {
                    least = price;
                    best = k;
                }
            }
        }
        return best;
    }

    private boolean boundsFollow(Line line, Reach reach, int k) {
        double a = line.value[k];
        int v = line.index[k];
        double one = (line.lower - reach.mostWithout(draft.high(a, v))) / a;
        double two = (line.lower - reach.leastWithout(draft.low(a, v))) / a;
        double slack = FOLLOWS * (1 + Draft.size(draft.lower[v]) + Draft.size(draft.upper[v]));
        return Math.min(one, two) >= draft.lower[v] - slack && Math.max(one, two) <= draft.upper[v] + slack;
    }

    private void substitute(Line definition, int at) {
        int v = definition.index[at];
        double a = definition.value[at];
        boolean follows = boundsFollow(definition, draft.reach(definition), at);
        int[] index = without(definition.index, at);
        double[] value = new double[index.length];
        for (int k = 0; k < index.length; k++) {
            value[k] = -definition.value[k < at ? k : k + 1] / a;
        }
        double constant = definition.lower / a;
        definition.gone = true;
        draft.definitions.add(new Compact.Defined(v, constant, index, value));
        draft.defined[v] = true;
        draft.offset += draft.cost[v] * constant;
        for (int k = 0; k < index.length; k++) {
            draft.cost[index[k]] += draft.cost[v] * value[k];
        }
        draft.cost[v] = 0;
        for (Line line : draft.lines) {
            int place = line.gone ? -1 : line.at(v);
            if (place >= 0) {
                double b = line.value[place];
                count(line, -1);
                replace(line, v, b, index, value);
                count(line, 1);
                line.lower -= b * constant;
                line.upper -= b * constant;
            }
        }
        if (!follows) {
            Line bounds = new Line(index.clone(), value.clone(), draft.lower[v] - constant, draft.upper[v] - constant);
            count(bounds, 1);
            draft.lines.add(bounds);
        }
    }

    private static int[] without(int[] index, int at) {
        int[] rest = new int[index.length - 1];
        System.arraycopy(index, 0, rest, 0, at);
        System.arraycopy(index, at + 1, rest, at, rest.length - at);
        return rest;
    }

    private static void replace(Line line, int v, double b, int[] index, double[] value) {
        int[] merged = new int[line.index.length + index.length];
        double[] sums = new double[merged.length];
        int at = 0;
        int i = 0;
        int k = 0;
        while (i < line.index.length || k < index.length) {
            int own = i < line.index.length ? line.index[i] : Integer.MAX_VALUE;
            int other = k < index.length ? index[k] : Integer.MAX_VALUE;
            int column = Math.min(own, other);
            double old = own == column ? line.value[i++] : 0;
            double more = other == column ? b * value[k++] : 0;
            double sum = old + more;
            boolean cancelled = Math.abs(sum) <= 1e-14 * (Math.abs(old) + Math.abs(more));
            if (column != v && !cancelled) {
                merged[at] = column;
                sums[at++] = sum;
            }
        }
        line.index = Arrays.copyOf(merged, at);
        line.value = Arrays.copyOf(sums, at);
    }
}
