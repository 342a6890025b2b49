package packpot.explain;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import packpot.household.Wish;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Row;

/**
 * A wish with every row of the model that stands for it. Rows of the same sentence are one wish, and so is the energy
 * of all dogs: they share the pot in fixed parts, so none of them can be fed less alone.
 */
record Demand(Wish wish, List<Row<Wish>> rows) {
    Demand {
        rows = List.copyOf(rows);
    }

    /** The wishes of a model, in the order of its rows. */
    static List<Demand> of(LinearModel<Wish> model) {
        Map<String, List<Row<Wish>>> rows = new LinkedHashMap<>();
        for (Row<Wish> row : model.rows()) {
            Wish wish = row.tag();
            if (wish != null) {
                rows.computeIfAbsent(key(wish), key -> new ArrayList<>()).add(row);
            }
        }
        List<Demand> demands = new ArrayList<>();
        rows.values().forEach(same -> demands.add(new Demand(joined(same), same)));
        return demands;
    }

    /** What tells wishes apart, in this model and in that of a changed household. */
    String key() {
        return key(wish);
    }

    Wish.Kind kind() {
        return wish.kind();
    }

    private static String key(Wish wish) {
        return wish.kind() == Wish.Kind.ENERGY ? "energy" : wish.kind() + " " + wish.sentence();
    }

    private static Wish joined(List<Row<Wish>> rows) {
        List<Wish> wishes = rows.stream().map(Demand::tag).distinct().toList();
        Wish first = wishes.get(0);
        if (wishes.size() == 1 || first.kind() != Wish.Kind.ENERGY) {
            return first;
        }
        return new Wish(
                Wish.Kind.ENERGY,
                "",
                first.what(),
                wishes.stream().map(Wish::sentence).collect(Collectors.joining("; ")),
                wishes.stream().mapToDouble(Wish::size).sum());
    }

    static Wish tag(Row<Wish> row) {
        Wish wish = row.tag();
        if (wish == null) {
            throw new IllegalArgumentException(row.name() + " stands for no wish");
        }
        return wish;
    }
}
