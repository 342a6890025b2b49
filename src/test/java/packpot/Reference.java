package packpot;

import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;

/** Published values that tests compare with, from src/test/resources/reference. */
public final class Reference {

    /** A row by column name. */
    public record Line(Map<String, String> cells) {

        public String text(String column) {
            return Objects.requireNonNull(cells.get(column), () -> "no column " + column);
        }

        public double number(String column) {
            return Double.parseDouble(text(column));
        }

        public OptionalDouble optional(String column) {
            return text(column).isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(number(column));
        }

        /** A cell of name=figure pairs parted by semicolons; a single figure goes by the name "value". */
        public Map<String, Double> figures(String column) {
            Map<String, Double> figures = new LinkedHashMap<>();
            for (String pair : text(column).split(";")) {
                int equals = pair.indexOf('=');
                figures.put(
                        equals < 0 ? "value" : pair.substring(0, equals),
                        Double.parseDouble(pair.substring(equals + 1)));
            }
            return figures;
        }

        @Override
        public String toString() {
            return cells.values().stream().limit(2).toList().toString();
        }
    }

    private Reference() {}

    /** The rows of a file of this folder. */
    public static List<Line> table(String name) {
        return read("/reference/" + name);
    }

    /** The rows of a file of models/, read past the program's own reader. */
    public static List<Line> models(String name) {
        return read("/models/" + name);
    }

    private static List<Line> read(String resource) {
        try (InputStream in = Objects.requireNonNull(Reference.class.getResourceAsStream(resource), resource);
                MappingIterator<Map<String, String>> rows = new CsvMapper()
                        .readerForMapOf(String.class)
                        .with(CsvSchema.emptySchema().withHeader())
                        .readValues(in)) {
            return rows.readAll().stream().map(Line::new).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
