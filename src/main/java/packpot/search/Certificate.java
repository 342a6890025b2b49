package packpot.search;

/**
 * What a dictionary says of cost and of impossibility, reckoned anew from the program's own costs and coefficients: it holds
 * whatever digits were lost on the way. After A. Neumaier and O. Shcherbina, Safe bounds in linear and mixed-integer linear
 * programming (2004).
 */
final class Certificate {
    /** Of the figures that are added up. */
    private static final double CLEARLY = 1e-9;

    private Certificate() {}

    /** No solution within the bounds as they stand costs less. */
    static double bound(Dictionary dictionary) {
        return bound(dictionary, new double[dictionary.columns]);
    }

    /**
     * No solution within the bounds as they stand costs less.
     *
     * @param reduced takes the columns' reduced costs that go with the bound
     */
    static double bound(Dictionary dictionary, double[] reduced) {
        Compact program = dictionary.program;
        double[] prices = new double[program.rows()];
        for (int j = 0; j < dictionary.columns; j++) {
            int v = dictionary.nonbasic[j];
            if (v >= dictionary.columns) {
                prices[v - dictionary.columns] = known(dictionary, v, dictionary.reduced[j]);
            }
        }
        System.arraycopy(program.cost(), 0, reduced, 0, reduced.length);
        double bound = program.offset() + least(dictionary, prices, reduced);
        return Double.isNaN(bound) ? Double.NEGATIVE_INFINITY : bound;
    }

    /** Whether a row that nothing mends really cannot be kept. */
    static boolean provesImpossible(Dictionary dictionary, int row) {
        Compact program = dictionary.program;
        int v = dictionary.basic[row];
        double sign = dictionary.basicValue[row] < dictionary.lower[v] ? 1 : -1;
        double[] prices = new double[program.rows()];
        if (v >= dictionary.columns) {
            prices[v - dictionary.columns] = sign;
        }
        for (int j = 0; j < dictionary.columns; j++) {
            int other = dictionary.nonbasic[j];
            if (other >= dictionary.columns) {
                prices[other - dictionary.columns] = known(dictionary, other, -sign * dictionary.table[row][j]);
            }
        }
        double size = 1;
        for (int i = 0; i < prices.length; i++) {
            double limit = prices[i] > 0 ? program.rowLower()[i] : program.rowUpper()[i];
            size += prices[i] == 0 ? 0 : Math.abs(prices[i] * limit);
        }
        // With these prices, nothing would cost more than nothing.
        return least(dictionary, prices, new double[dictionary.columns]) > CLEARLY * size;
    }

    /** A price that asks for a limit which the row does not have is none. */
    private static double known(Dictionary dictionary, int row, double price) {
        double limit = price > 0 ? dictionary.lower[row] : dictionary.upper[row];
        return Double.isInfinite(limit) ? 0 : price;
    }

    /**
     * The least of costs times columns, given prices of the rows.
     *
     * @param costs of the columns; becomes what the prices leave of them
     */
    private static double least(Dictionary dictionary, double[] prices, double[] costs) {
        Compact program = dictionary.program;
        double sum = 0;
        for (int i = 0; i < prices.length; i++) {
            double price = prices[i];
            if (price != 0) {
                sum += price * (price > 0 ? program.rowLower()[i] : program.rowUpper()[i]);
                int[] index = program.index()[i];
                double[] value = program.value()[i];
                for (int k = 0; k < index.length; k++) {
                    costs[index[k]] -= price * value[k];
                }
            }
        }
        for (int v = 0; v < costs.length; v++) {
            if (costs[v] != 0) {
                sum += costs[v] * (costs[v] > 0 ? dictionary.lower[v] : dictionary.upper[v]);
            }
        }
        return sum;
    }
}
