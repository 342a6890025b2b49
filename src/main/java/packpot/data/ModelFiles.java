package packpot.data;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.RuntimeJsonMappingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Reads the published figures that are packaged with the program. */
public final class ModelFiles {

    private static final ObjectReader TABLES = new CsvMapper()
            .readerForMapOf(String.class)
            .with(CsvSchema.emptySchema().withHeader());

    private ModelFiles() {}

    /** The rows of models/NAME, whose first line names the columns. */
    public static List<Row> table(String name) {
        try (InputStream in = open(name);
                MappingIterator<Map<String, String>> rows = TABLES.readValues(in)) {
            List<Row> table = new ArrayList<>();
            while (rows.hasNext()) {
                table.add(new Row("models/" + name, rows.next()));
            }
            return List.copyOf(table);
        } catch (IOException | RuntimeJsonMappingException e) {
            throw new ModelDataException("models/" + name + " cannot be read: " + e.getMessage(), e);
        }
    }

    /** The tree of models/NAME. */
    public static JsonNode json(String name) {
        try (InputStream in = open(name)) {
            return new JsonMapper().readTree(in);
        } catch (IOException e) {
            throw new ModelDataException("models/" + name + " cannot be read: " + e.getMessage(), e);
        }
    }

    /** The text of models/NAME. */
    public static String text(String name) {
        try (InputStream in = open(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new ModelDataException("models/" + name + " cannot be read: " + e.getMessage(), e);
        }
    }

    private static InputStream open(String name) throws IOException {
        InputStream in = ModelFiles.class.getResourceAsStream("/models/" + name);
        if (in == null) {
            throw new IOException("it is not packaged with the program");
        }
        return in;
    }
}
