package packpot.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import packpot.search.Draft.Line;
import packpot.solver.LinearModel;

/**
 * Makes a model small before it is searched: what follows from other variables is put in their place, rows that cannot be
 * broken and variables that cannot move are left out, bounds and the coefficients of choices are drawn close. No solution is
 * lost, and none is added.
 */
final class Reducer {
    private static final int SCALINGS = 4;
    private static final double BROKEN = 1e-6;

    private Reducer() {}

    /** A model made small; empty where it is seen to have no solution. */
    static Optional<Compact> reduce(LinearModel<?> model) {
        Draft draft = new Draft(model);
        Tightening.apply(draft);
        if (draft.impossible) {
            return Optional.empty();
        }
        Substitution.apply(draft);
        Tightening.apply(draft);
        draft.lines.forEach(draft::takeOutFixed);
        for (Line line : draft.lines) {
            line.gone = line.index.length == 0;
            draft.impossible |= line.gone && (line.lower > BROKEN || line.upper < -BROKEN);
        }
        draft.lines.removeIf(line -> line.gone);
        return draft.impossible ? Optional.empty() : Optional.of(compact(draft));
    }

    private static Compact compact(Draft draft) {
        int n = draft.lower.length;
        int[] column = new int[n];
        double[] fixed = new double[n];
        int columns = 0;
        for (int v = 0; v < n; v++) {
            column[v] = -1;
            if (!draft.defined[v] && draft.lower[v] == draft.upper[v]) {
                fixed[v] = draft.lower[v];
                draft.offset += draft.cost[v] * fixed[v];
            } else if (!draft.defined[v]) {
                column[v] = columns++;
            }
        }
        int rows = draft.lines.size();
        int[][] index = new int[rows][];
        double[][] value = new double[rows][];
        double[] rowLower = new double[rows];
        double[] rowUpper = new double[rows];
        for (int i = 0; i < rows; i++) {
            Line line = draft.lines.get(i);
            index[i] = Arrays.stream(line.index).map(v -> column[v]).toArray();
            value[i] = line.value.clone();
            rowLower[i] = line.lower;
            rowUpper[i] = line.upper;
        }
        double[] scales = Scaling.of(columns, index, value, rowLower, rowUpper, SCALINGS);
        double[] scale = new double[n];
        double[] cost = new double[columns];
        double[] lower = new double[columns];
        double[] upper = new double[columns];
        double[] unit = new double[columns];
        for (int v = 0; v < n; v++) {
            int j = column[v];
            if (j >= 0) {
                scale[v] = scales[j];
                cost[j] = draft.cost[v] * scales[j];
                lower[j] = draft.lower[v] / scales[j];
                upper[j] = draft.upper[v] / scales[j];
                unit[j] = draft.whole[v] ? 1 / scales[j] : 0;
            }
        }
        List<Compact.Defined> order = new ArrayList<>(draft.definitions);
        Collections.reverse(order);
        Compact.Way way = new Compact.Way(column, scale, fixed, List.copyOf(order));
        return new Compact(cost, lower, upper, unit, index, value, rowLower, rowUpper, draft.offset, way);
    }
}
