package packpot.search;

import java.util.Arrays;
import java.util.Random;

/**
 * A basis of a {@link Compact}: every basic variable as a sum of the nonbasic ones, dense, which suits models of some hundred
 * rows where nearly every food has something of every nutrient. Variables are the columns, then the activities of the rows;
 * nonbasic ones rest at one of their bounds. Rows are left out until they are broken.
 *
 * <p>After V. Chvátal, Linear Programming (1983), chapters 2 and 8.
 */
final class Dictionary {
    static final double FEASIBLE = 1e-8;
    /** Smaller coefficients are taken for lost digits. */
    static final double PIVOT = 1e-7;
    /** Smaller reduced costs are taken for lost digits. */
    static final double DUAL = 1e-9;

    private static final double DUAL_WITHOUT_BOUND = 1e-6;
    private static final double SHAKE = 1e-7;
    private static final double EXACT = 1e-7;
    /** Where large terms cancel out. */
    private static final double EXACT_OF_TERMS = 1e-9;

    private static final int ABSENT = Integer.MIN_VALUE;
    private static final int MOST_NEW_ROWS = 40;
    private static final int MORE_ROOM = 32;
    private static final int MANY_MORE = 20;

    final Compact program;
    final int columns;
    /** Bounds of every variable, as they stand. */
    final double[] lower;

    final double[] upper;
    final boolean[] atUpper;
    final int[] nonbasic;
    /** What a nonbasic variable adds to the cost, by its place. */
    final double[] reduced;

    int[] basic = new int[0];
    double[] basicValue = new double[0];
    double[][] table = new double[0][];
    /** How many variables are basic. */
    int count;
    /** How many were kept when rows were last left out. */
    private int keptLast;

    /** Row of a basic variable; the complement of its place for a nonbasic one. */
    private final int[] place;

    /** A dictionary without a row, every column at a bound. */
    Dictionary(Compact program) {
        this.program = program;
        columns = program.columns();
        int all = columns + program.rows();
        lower = Arrays.copyOf(program.lower(), all);
        upper = Arrays.copyOf(program.upper(), all);
        System.arraycopy(program.rowLower(), 0, lower, columns, program.rows());
        System.arraycopy(program.rowUpper(), 0, upper, columns, program.rows());
        atUpper = new boolean[all];
        place = new int[all];
        nonbasic = new int[columns];
        reduced = new double[columns];
        begin();
    }

    private Dictionary(Dictionary other) {
        program = other.program;
        columns = other.columns;
        lower = other.lower.clone();
        upper = other.upper.clone();
        atUpper = other.atUpper.clone();
        place = other.place.clone();
        nonbasic = other.nonbasic.clone();
        reduced = other.reduced.clone();
        basic = other.basic.clone();
        basicValue = other.basicValue.clone();
        table = new double[other.table.length][];
        count = other.count;
        keptLast = other.keptLast;
        for (int i = 0; i < count; i++) {
            table[i] = other.table[i].clone();
        }
    }

    Dictionary copy() {
        return new Dictionary(this);
    }

    private void empty() {
        Arrays.fill(place, ABSENT);
        count = 0;
        for (int j = 0; j < columns; j++) {
            nonbasic[j] = j;
            place[j] = ~j;
        }
    }

    /** Whether every nonbasic variable rests where its reduced cost wants it; the dual method needs that. */
    boolean isDualFeasible() {
        for (int j = 0; j < columns; j++) {
            if (isOnWrongSide(j) || Double.isInfinite(resting(nonbasic[j]))) {
                return false;
            }
        }
        return true;
    }

    private boolean isOnWrongSide(int j) {
        return atUpper[nonbasic[j]] ? reduced[j] > 0 : reduced[j] < 0;
    }

    /** The bound that a nonbasic variable rests at. */
    double resting(int variable) {
        return atUpper[variable] ? upper[variable] : lower[variable];
    }

    /**
     * Puts every nonbasic variable to the bound that its reduced cost wants. What is a little on the wrong side of nothing, as
     * after a step of no length, is taken for nothing: bounds of the cost are reckoned without it.
     */
    private void settleSides() {
        for (int j = 0; j < columns; j++) {
            if (isOnWrongSide(j)) {
                int v = nonbasic[j];
                boolean free = !Double.isInfinite(atUpper[v] ? lower[v] : upper[v]);
                if (Math.abs(reduced[j]) < DUAL || (!free && Math.abs(reduced[j]) < DUAL_WITHOUT_BOUND)) {
                    reduced[j] = 0;
                } else if (free) {
                    flip(j);
                }
            }
        }
    }

    /** Moves the bounds of a column. */
    void bound(int column, double low, double high) {
        if (lower[column] == low && upper[column] == high) {
            return;
        }
        if (place[column] >= 0) {
            lower[column] = low;
            upper[column] = high;
            return;
        }
        double before = resting(column);
        lower[column] = low;
        upper[column] = high;
        shift(~place[column], resting(column) - before);
    }

    /** Takes a nonbasic variable to its other bound. */
    void flip(int j) {
        int v = nonbasic[j];
        double before = resting(v);
        atUpper[v] = !atUpper[v];
        shift(j, resting(v) - before);
    }

    private void shift(int j, double by) {
        if (by != 0) {
            for (int i = 0; i < count; i++) {
                basicValue[i] += table[i][j] * by;
            }
        }
    }

    double value(int column) {
        return place[column] >= 0 ? basicValue[place[column]] : resting(column);
    }

    /** Values of the columns. */
    double[] values() {
        double[] x = new double[columns];
        for (int v = 0; v < columns; v++) {
            x[v] = value(v);
        }
        return x;
    }

    /** The row of a basic variable. */
    int row(int variable) {
        return place[variable];
    }

    double cost() {
        double sum = program.offset();
        for (int v = 0; v < columns; v++) {
            sum += program.cost()[v] * value(v);
        }
        return sum;
    }

    /**
     * Moves reduced costs a little, each by its own, where steps gain nothing and might go in circles; bounds of the cost are
     * reckoned without it.
     */
    void shake(Random random) {
        for (int j = 0; j < columns; j++) {
            double by = SHAKE * (1 + Math.abs(reduced[j])) * (0.5 + random.nextDouble());
            reduced[j] += atUpper[nonbasic[j]] ? -by : by;
        }
    }

    /** Whether rows have the activities that the program's own coefficients give them. */
    boolean isExact(double[] x) {
        for (int i = 0; i < program.rows(); i++) {
            int v = columns + i;
            if (place[v] != ABSENT) {
                double off = Math.abs(program.activity(i, x) - value(v));
                if (off > EXACT * (1 + Math.abs(value(v))) && off > EXACT_OF_TERMS * program.size(i, x)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Takes in those of the rows left out that are broken most; says whether any was broken. */
    boolean addBroken(double[] x) {
        double[] broken = new double[program.rows()];
        int found = 0;
        for (int i = 0; i < broken.length; i++) {
            if (place[columns + i] == ABSENT) {
                double activity = program.activity(i, x);
                double by = Math.max(program.rowLower()[i] - activity, activity - program.rowUpper()[i]);
                if (by > FEASIBLE * (1 + Math.abs(activity))) {
                    broken[i] = by;
                    found++;
                }
            }
        }
        double least = 0;
        if (found > MOST_NEW_ROWS) {
            double[] sorted = broken.clone();
            Arrays.sort(sorted);
            least = sorted[sorted.length - MOST_NEW_ROWS];
        }
        for (int i = 0; i < broken.length; i++) {
            if (broken[i] > 0 && broken[i] >= least) {
                add(i);
            }
        }
        return found > 0;
    }

    private void add(int row) {
        if (count == basic.length) {
            basic = Arrays.copyOf(basic, count + MORE_ROOM);
            table = Arrays.copyOf(table, count + MORE_ROOM);
            basicValue = Arrays.copyOf(basicValue, count + MORE_ROOM);
        }
        double[] line = new double[columns];
        double value = 0;
        int[] index = program.index()[row];
        double[] coefficient = program.value()[row];
        for (int k = 0; k < index.length; k++) {
            int v = index[k];
            if (place[v] >= 0) {
                add(line, coefficient[k], table[place[v]]);
            } else {
                line[~place[v]] += coefficient[k];
            }
            value += coefficient[k] * value(v);
        }
        table[count] = line;
        basic[count] = columns + row;
        basicValue[count] = value;
        place[columns + row] = count++;
    }

    /** Leaves rows out again that do not bind, once many have gathered. */
    void tidy() {
        if (count < keptLast + MANY_MORE) {
            return;
        }
        int kept = 0;
        for (int i = 0; i < count; i++) {
            if (basic[i] < columns) {
                basic[kept] = basic[i];
                table[kept] = table[i];
                basicValue[kept] = basicValue[i];
                place[basic[kept]] = kept;
                kept++;
            } else {
                place[basic[i]] = ABSENT;
            }
        }
        count = kept;
        keptLast = kept;
    }

    private static void add(double[] to, double factor, double[] from) {
        for (int j = 0; j < to.length; j++) {
            to[j] += factor * from[j];
        }
    }

    /** A basic variable leaves for a bound, a nonbasic one comes in its place. */
    void exchange(int row, int enters, boolean toLower) {
        int leaves = basic[row];
        int comes = nonbasic[enters];
        double[] line = table[row];
        double target = toLower ? lower[leaves] : upper[leaves];
        double by = (target - basicValue[row]) / line[enters];
        double entered = resting(comes) + by;
        shift(enters, by);
        basicValue[row] = entered;
        turn(row, enters);
        atUpper[leaves] = !toLower;
        settleSides();
    }

    private void turn(int row, int enters) {
        double[] line = table[row];
        double inverse = 1 / line[enters];
        for (int j = 0; j < columns; j++) {
            line[j] *= -inverse;
        }
        line[enters] = inverse;
        for (int i = 0; i < count; i++) {
            double factor = table[i][enters];
            if (i != row && factor != 0) {
                table[i][enters] = 0;
                add(table[i], factor, line);
            }
        }
        double factor = reduced[enters];
        if (factor != 0) {
            reduced[enters] = 0;
            add(reduced, factor, line);
        }
        int leaves = basic[row];
        basic[row] = nonbasic[enters];
        nonbasic[enters] = leaves;
        place[basic[row]] = row;
        place[leaves] = ~enters;
    }

    /** Begins again without a row, with the bounds as they stand. */
    void begin() {
        empty();
        System.arraycopy(program.cost(), 0, reduced, 0, columns);
        keptLast = 0;
        for (int j = 0; j < columns; j++) {
            atUpper[j] = Double.isInfinite(lower[j]);
        }
        settleSides();
    }

    /** Reckons the dictionary anew from the program, for the same basis; rows that do not bind are left out again. */
    void rebuild() {
        boolean[] wanted = new boolean[columns];
        for (int v = 0; v < columns; v++) {
            wanted[v] = place[v] >= 0;
        }
        boolean[] binds = new boolean[program.rows()];
        for (int i = 0; i < binds.length; i++) {
            int at = place[columns + i];
            binds[i] = at != ABSENT && at < 0;
        }
        empty();
        System.arraycopy(program.cost(), 0, reduced, 0, columns);
        for (int i = 0; i < binds.length; i++) {
            if (binds[i]) {
                add(i);
            }
        }
        turnIn(wanted);
        settleSides();
        for (int i = 0; i < count; i++) {
            double sum = 0;
            for (int j = 0; j < columns; j++) {
                sum += table[i][j] == 0 ? 0 : table[i][j] * resting(nonbasic[j]);
            }
            basicValue[i] = sum;
        }
    }

    private void turnIn(boolean[] wanted) {
        boolean[] done = new boolean[count];
        for (int j = 0; j < columns; j++) {
            int row = -1;
            double most = PIVOT;
            for (int i = 0; i < count && wanted[j]; i++) {
                if (!done[i] && Math.abs(table[i][j]) > most) {
                    most = Math.abs(table[i][j]);
                    row = i;
                }
            }
            if (row >= 0) {
                turn(row, j);
                done[row] = true;
            }
        }
    }
}
