package packpot.spread;

import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/** One figure for each constituent that is asked for; plain numbers, since draws ask for them millions of times. */
final class Figures {
    private final double[] values;

    private Figures(double[] values) {
        this.values = values;
    }

    static Figures of(int constituents, IntToDoubleFunction value) {
        return new Figures(IntStream.range(0, constituents).mapToDouble(value).toArray());
    }

    double at(int constituent) {
        return values[constituent];
    }

    /** A copy to work with. */
    double[] copy() {
        return values.clone();
    }
}
