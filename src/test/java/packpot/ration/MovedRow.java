package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import packpot.household.Wish;
import packpot.solver.LinearModel.Row;
import packpot.solver.Variant;

/** A limit that its lever moves, against the same row of a model that was built with the other limit. */
final class MovedRow {
    private MovedRow() {}

    static void assertSame(Build build, Lever lever, double to, Build other) {
        List<Row<Wish>> rows = build.model.rows();
        int index = rows.indexOf(lever.row());
        List<Row<Wish>> moved =
                lever.moved(new Variant<>(build.model), to).model().rows();
        Row<Wish> mine = moved.get(index);
        Row<Wish> theirs = other.model.rows().get(index);
        Row<Wish> before = lever.row();
        assertThat(near(mine, before)).as("moved at all: " + mine.name()).isFalse();
        assertThat(near(mine, theirs))
                .as(mine.name() + ": " + terms(mine) + " up to " + mine.upper() + ", not " + terms(theirs) + " up to "
                        + theirs.upper())
                .isTrue();
        for (int i = 0; i < moved.size(); i++) {
            if (i != index) {
                assertSame(moved.get(i), rows.get(i));
            }
        }
    }

    /** Of one model and its variant, which have the same variables. */
    private static void assertSame(Row<Wish> a, Row<Wish> b) {
        boolean[] same = {
            a.lower() == b.lower()
                    && a.upper() == b.upper()
                    && a.expression().size() == b.expression().size()
        };
        a.expression()
                .forEach((v, coefficient) ->
                        same[0] &= coefficient == b.expression().coefficient(v));
        assertThat(same[0]).as("left alone: " + a.name()).isTrue();
    }

    private static boolean near(Row<Wish> a, Row<Wish> b) {
        Map<String, Double> mine = terms(a);
        Map<String, Double> theirs = terms(b);
        return near(a.lower(), b.lower())
                && near(a.upper(), b.upper())
                && mine.keySet().equals(theirs.keySet())
                && mine.entrySet().stream().allMatch(term -> near(term.getValue(), theirs.get(term.getKey())));
    }

    private static boolean near(double a, double b) {
        return a == b || Math.abs(a - b) <= 1e-9 * Math.max(1e-6, Math.abs(a));
    }

    private static Map<String, Double> terms(Row<Wish> row) {
        Map<String, Double> terms = new TreeMap<>();
        row.expression().forEach((variable, coefficient) -> terms.put(variable.name(), coefficient));
        return terms;
    }

    /** The lever of the wish whose sentence has these words, and what is said of it. */
    static Lever lever(Build build, String words) {
        List<Lever> levers = build.levers.stream()
                .filter(lever -> lever.wish().sentence().contains(words))
                .toList();
        assertThat(levers).as(words).hasSize(1);
        return levers.get(0);
    }

    static void assertStands(Lever lever, double figure, String unit, double step) {
        assertThat(lever.figure()).as(lever.wish().sentence()).isCloseTo(figure, within(1e-9));
        assertThat(lever.unit()).as(lever.wish().sentence()).isEqualTo(unit);
        assertThat(lever.step()).as(lever.wish().sentence()).isCloseTo(step, within(1e-9));
    }
}
