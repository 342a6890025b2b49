package packpot.search;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import packpot.search.Draft.Line;
import packpot.search.Draft.Reach;

/**
 * Drops rows that cannot be broken and draws bounds, limits and the coefficients of choices close. After M. W. P. Savelsbergh,
 * Preprocessing and probing techniques for mixed integer programming problems (1994).
 */
final class Tightening {
    private static final int MOST_ROUNDS = 6;
    /** Of a variable's room; less is not worth another round. */
    private static final double WORTH = 1e-3;

    private static final double CLEARLY = 1e3 * Draft.TOLERANCE;

    private final Draft draft;

    private Tightening(Draft draft) {
        this.draft = draft;
    }

    static void apply(Draft draft) {
        Tightening tightening = new Tightening(draft);
        boolean moved = true;
        for (int round = 0; moved && round < MOST_ROUNDS && !draft.impossible; round++) {
            moved = false;
            for (Line line : draft.lines) {
                moved |= tightening.tighten(line);
            }
            moved |= tightening.withoutDoubles();
            draft.lines.removeIf(line -> line.gone);
        }
    }

    private boolean tighten(Line line) {
        draft.takeOutFixed(line);
        Reach reach = draft.reach(line);
        double slack = Draft.TOLERANCE * (1 + Math.max(Draft.size(line.lower), Draft.size(line.upper)));
        if (reach.least() > line.upper + 1e3 * slack || reach.most() < line.lower - 1e3 * slack) {
            draft.impossible = true;
            return false;
        }
        if (reach.least() >= line.lower - slack) {
            line.lower = Double.NEGATIVE_INFINITY;
        }
        if (reach.most() <= line.upper + slack) {
            line.upper = Double.POSITIVE_INFINITY;
        }
        if (Double.isInfinite(line.lower) && Double.isInfinite(line.upper)) {
            line.gone = true;
            return false;
        }
        boolean moved = bounds(line, reach);
        return choices(line, draft.reach(line)) || moved;
    }

    /** What a row leaves to each of its variables, given the bounds of the others. */
    private boolean bounds(Line line, Reach reach) {
        boolean moved = false;
        for (int k = 0; k < line.index.length; k++) {
            double a = line.value[k];
            int v = line.index[k];
            double from = (line.lower - reach.mostWithout(draft.high(a, v))) / a;
            double to = (line.upper - reach.leastWithout(draft.low(a, v))) / a;
            moved |= narrow(v, a > 0 ? from : to, a > 0 ? to : from);
        }
        return moved;
    }

    private boolean narrow(int v, double from, double to) {
        double[] lower = draft.lower;
        double[] upper = draft.upper;
        boolean whole = draft.whole[v];
        double low = whole ? Math.ceil(from - Draft.WHOLE) : from - Draft.TOLERANCE * (1 + Math.abs(from));
        double high = whole ? Math.floor(to + Draft.WHOLE) : to + Draft.TOLERANCE * (1 + Math.abs(to));
        double room = Double.isInfinite(upper[v] - lower[v]) ? 0 : WORTH * (upper[v] - lower[v]);
        boolean moved = false;
        if (low > lower[v] + room && low < Double.POSITIVE_INFINITY) {
            lower[v] = low;
            moved = true;
        }
        if (high < upper[v] - room && high > Double.NEGATIVE_INFINITY) {
            upper[v] = high;
            moved = true;
        }
        if (lower[v] > upper[v]) {
            if (whole || lower[v] - upper[v] > CLEARLY * (1 + Math.abs(lower[v]))) {
                draft.impossible = true;
            } else {
                lower[v] = upper[v];
            }
        }
        return moved;
    }

    /** A choice's coefficient is no larger than it need be: a row that one side of the choice leaves slack is drawn close. */
    private boolean choices(Line line, Reach reach) {
        boolean atMost = Double.isInfinite(line.lower) && !Double.isInfinite(line.upper);
        boolean atLeast = Double.isInfinite(line.upper) && !Double.isInfinite(line.lower);
        double most = atMost ? reach.most() : -reach.least();
        if (atMost == atLeast || Double.isInfinite(most)) {
            return false;
        }
        double sign = atMost ? 1 : -1;
        double limit = atMost ? line.upper : -line.lower;
        boolean moved = false;
        for (int k = 0; k < line.index.length; k++) {
            int v = line.index[k];
            if (!draft.whole[v] || draft.lower[v] != 0 || draft.upper[v] != 1) {
                continue;
            }
            double b = sign * line.value[k];
            double others = most - Math.max(b, 0);
            double slack = limit - Math.min(b, 0) - others;
            if (slack > Draft.WHOLE * (1 + Math.abs(limit) + Math.abs(b)) && slack < Math.abs(b)) {
                if (b > 0) {
                    limit -= slack;
                    most -= slack;
                }
                line.value[k] = sign * (b > 0 ? b - slack : b + slack);
                moved = true;
            }
        }
        if (atMost) {
            line.upper = limit;
        } else {
            line.lower = -limit;
        }
        return moved;
    }

    /** Of rows that are multiples of each other one stays, with the tighter limits. */
    private boolean withoutDoubles() {
        Map<Integer, Line> seen = new HashMap<>();
        boolean moved = false;
        for (Line line : draft.lines) {
            if (line.gone || line.index.length == 0) {
                continue;
            }
            Line other = seen.putIfAbsent(hash(line), line);
            if (other != null && areMultiples(line, other)) {
                double factor = other.value[0] / line.value[0];
                other.lower = Math.max(other.lower, (factor > 0 ? line.lower : line.upper) * factor);
                other.upper = Math.min(other.upper, (factor > 0 ? line.upper : line.lower) * factor);
                line.gone = true;
                moved = true;
            }
        }
        return moved;
    }

    private static int hash(Line line) {
        int hash = Arrays.hashCode(line.index);
        for (double a : line.value) {
            hash = 31 * hash + Float.hashCode((float) (a / line.value[0]));
        }
        return hash;
    }

    private static boolean areMultiples(Line a, Line b) {
        if (!Arrays.equals(a.index, b.index)) {
            return false;
        }
        for (int k = 0; k < a.index.length; k++) {
            double one = a.value[k] / a.value[0];
            double two = b.value[k] / b.value[0];
            if (Math.abs(one - two) > 1e-12 * Math.max(1, Math.abs(one))) {
                return false;
            }
        }
        return true;
    }
}
