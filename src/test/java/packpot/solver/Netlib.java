package packpot.solver;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import packpot.Reference;
import packpot.Reference.Line;
import packpot.solver.LinearModel.Variable;

/** The small instances of the NETLIB library of linear programs, as the tests of the second Java solver bring them. */
public final class Netlib {
    /** Rows as the file has them: kind, terms, side. */
    private static final class Row {
        private final String kind;
        private final Expression sum = new Expression();
        private double side;
        private double range = Double.NaN;

        Row(String kind) {
            this.kind = kind;
        }
    }

    private final Map<String, Row> rows = new LinkedHashMap<>();
    private final Map<String, Map<String, Double>> columns = new LinkedHashMap<>();
    private final Map<String, double[]> bounds = new HashMap<>();

    private Netlib() {}

    /** The instances whose optimum is published. */
    public static Stream<Line> instances() {
        return Reference.table("lp_reference_optima.csv").stream()
                .filter(line -> line.text("source").equals("S-NETLIB"));
    }

    public static LinearModel<String> model(String instance) {
        String file = instance.equals("RECIPE") ? "RECIPELP" : instance;
        String resource = "/optimisation/netlib/" + file + ".SIF";
        try (InputStream in = Objects.requireNonNull(Netlib.class.getResourceAsStream(resource), resource)) {
            Netlib read = new Netlib();
            String section = "";
            for (String line : new BufferedReader(new InputStreamReader(in, StandardCharsets.US_ASCII))
                    .lines()
                    .toList()) {
                String[] words = line.strip().split("\\s+");
                if (line.isBlank() || line.startsWith("*")) {
                    continue;
                }
                if (line.startsWith(" ")) {
                    read.entry(section, words);
                } else {
                    section = words[0];
                }
            }
            return read.model();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void entry(String section, String[] words) {
        switch (section) {
            case "ROWS" -> rows.put(words[1], new Row(words[0]));
            case "COLUMNS" -> {
                Map<String, Double> column = columns.computeIfAbsent(words[0], key -> new LinkedHashMap<>());
                for (int k = 1; k + 1 < words.length; k += 2) {
                    column.put(words[k], Double.parseDouble(words[k + 1]));
                }
            }
            case "RHS", "RANGES" -> {
                // The name of the vector may be left out.
                for (int k = words.length % 2; k + 1 < words.length; k += 2) {
                    Row row = Objects.requireNonNull(rows.get(words[k]), words[k]);
                    double value = Double.parseDouble(words[k + 1]);
                    if (section.equals("RHS")) {
                        row.side = value;
                    } else {
                        row.range = value;
                    }
                }
            }
            case "BOUNDS" -> bound(words);
            default -> throw new IllegalArgumentException("a section " + section);
        }
    }

    private void bound(String[] words) {
        double[] room = bounds.computeIfAbsent(words[2], key -> new double[] {0, Double.POSITIVE_INFINITY});
        double value = words.length > 3 ? Double.parseDouble(words[3]) : 0;
        switch (words[0]) {
            case "UP" -> room[1] = value;
            case "LO" -> room[0] = value;
            case "FX" -> room[0] = room[1] = value;
            case "FR" -> room[0] = Double.NEGATIVE_INFINITY;
            case "MI" -> room[0] = Double.NEGATIVE_INFINITY;
            case "PL" -> room[1] = Double.POSITIVE_INFINITY;
            default -> throw new IllegalArgumentException("a bound " + words[0]);
        }
    }

    private LinearModel<String> model() {
        LinearModel<String> model = new LinearModel<>();
        columns.forEach((name, terms) -> {
            double[] room = bounds.getOrDefault(name, new double[] {0, Double.POSITIVE_INFINITY});
            Variable variable = model.variable(name, room[0], room[1]);
            terms.forEach((row, value) ->
                    Objects.requireNonNull(rows.get(row), row).sum.add(value, variable));
        });
        List<Row> free =
                rows.values().stream().filter(row -> row.kind.equals("N")).toList();
        model.objective().add(1, free.get(0).sum);
        rows.forEach((name, row) -> {
            double width = Double.isNaN(row.range) ? Double.POSITIVE_INFINITY : Math.abs(row.range);
            switch (row.kind) {
                case "N" -> {}
                case "G" -> model.row(name, row.sum, row.side, row.side + width, null);
                case "L" -> model.row(name, row.sum, row.side - width, row.side, null);
                case "E" -> {
                    double low = Double.isNaN(row.range) ? row.side : Math.min(row.side, row.side + row.range);
                    double high = Double.isNaN(row.range) ? row.side : Math.max(row.side, row.side + row.range);
                    model.row(name, row.sum, low, high, null);
                }
                default -> throw new IllegalArgumentException("a row of kind " + row.kind);
            }
        });
        return model;
    }
}
