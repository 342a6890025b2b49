package packpot.solver;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;

/**
 * Writes a model in free-format MPS, an open format that every solver reads. Rows are called R1, R2, … and columns C1,
 * C2, … since the format allows no blanks; a comment line gives the name of each.
 */
public final class MpsWriter {

    private MpsWriter() {}

    /** The text of the model. */
    public static <T> String write(LinearModel<T> model, String name) {
        StringBuilder text = new StringBuilder();
        List<Row<T>> rows = model.rows();
        for (int i = 0; i < rows.size(); i++) {
            text.append("* R")
                    .append(i + 1)
                    .append(' ')
                    .append(plain(rows.get(i).name()))
                    .append('\n');
        }
        model.variables()
                .forEach(v -> text.append("* ")
                        .append(column(v))
                        .append(' ')
                        .append(plain(v.name()))
                        .append('\n'));
        text.append("NAME ").append(name.replaceAll("\\s+", "_")).append("\nROWS\n N COST\n");
        for (int i = 0; i < rows.size(); i++) {
            text.append(' ')
                    .append(kind(rows.get(i)))
                    .append(" R")
                    .append(i + 1)
                    .append('\n');
        }
        columns(text, model, rows);
        text.append("RHS\n");
        for (int i = 0; i < rows.size(); i++) {
            double side = side(rows.get(i));
            if (side != 0) {
                line(text, "RHS", "R" + (i + 1), side);
            }
        }
        ranges(text, rows);
        bounds(text, model.variables());
        return text.append("ENDATA\n").toString();
    }

    private static String plain(String name) {
        return name.replaceAll("[\\r\\n]", " ");
    }

    private static String column(Variable variable) {
        return "C" + (variable.index() + 1);
    }

    private static <T> String kind(Row<T> row) {
        if (row.lower() == row.upper()) {
            return "E";
        }
        return Double.isInfinite(row.lower()) ? "L" : "G";
    }

    private static <T> double side(Row<T> row) {
        return Double.isInfinite(row.lower()) ? row.upper() : row.lower();
    }

    private static <T> void columns(StringBuilder text, LinearModel<T> model, List<Row<T>> rows) {
        List<Map<String, Double>> byColumn = new ArrayList<>();
        model.variables().forEach(v -> byColumn.add(new TreeMap<>()));
        model.objective().forEach((v, coefficient) -> byColumn.get(v.index()).put("COST", coefficient));
        for (int i = 0; i < rows.size(); i++) {
            String row = "R" + (i + 1);
            rows.get(i)
                    .expression()
                    .forEach((v, coefficient) -> byColumn.get(v.index()).put(row, coefficient));
        }
        text.append("COLUMNS\n");
        boolean integers = false;
        for (Variable variable : model.variables()) {
            if (variable.integer() != integers) {
                integers = variable.integer();
                marker(text, integers);
            }
            Map<String, Double> entries = byColumn.get(variable.index());
            if (entries.isEmpty()) {
                line(text, column(variable), "COST", 0);
            }
            entries.forEach((row, coefficient) -> line(text, column(variable), row, coefficient));
        }
        if (integers) {
            marker(text, false);
        }
    }

    private static void marker(StringBuilder text, boolean begins) {
        text.append(" MARKER 'MARKER' ")
                .append(begins ? "'INTORG'" : "'INTEND'")
                .append('\n');
    }

    private static <T> void ranges(StringBuilder text, List<Row<T>> rows) {
        StringBuilder ranges = new StringBuilder();
        for (int i = 0; i < rows.size(); i++) {
            Row<T> row = rows.get(i);
            if (row.lower() != row.upper() && !Double.isInfinite(row.lower()) && !Double.isInfinite(row.upper())) {
                line(ranges, "RANGE", "R" + (i + 1), row.upper() - row.lower());
            }
        }
        if (!ranges.isEmpty()) {
            text.append("RANGES\n").append(ranges);
        }
    }

    private static void bounds(StringBuilder text, List<Variable> variables) {
        text.append("BOUNDS\n");
        for (Variable variable : variables) {
            boolean below = Double.isInfinite(variable.lower());
            boolean above = Double.isInfinite(variable.upper());
            if (below && above) {
                text.append(" FR BND ").append(column(variable)).append('\n');
                continue;
            }
            if (below) {
                text.append(" MI BND ").append(column(variable)).append('\n');
            } else if (variable.lower() != 0) {
                bound(text, "LO", variable, variable.lower());
            }
            if (above && variable.integer()) {
                text.append(" PL BND ").append(column(variable)).append('\n');
            } else if (!above) {
                bound(text, "UP", variable, variable.upper());
            }
        }
    }

    private static void bound(StringBuilder text, String kind, Variable variable, double value) {
        text.append(' ')
                .append(kind)
                .append(" BND ")
                .append(column(variable))
                .append(' ')
                .append(number(value))
                .append('\n');
    }

    private static void line(StringBuilder text, String first, String second, double value) {
        text.append(' ')
                .append(first)
                .append(' ')
                .append(second)
                .append(' ')
                .append(number(value))
                .append('\n');
    }

    private static String number(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e15
                ? String.format(Locale.ROOT, "%.0f", value)
                : Double.toString(value);
    }
}
