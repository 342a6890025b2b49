package packpot.household;

import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;

/** Scenarios that differ from a small valid one in one thing. */
final class Scenarios {
    static final Knowledge KNOWLEDGE = Knowledge.load();
    static final LocalDate TODAY = LocalDate.of(2026, 3, 7);
    private static final JsonMapper JSON = new JsonMapper();

    /** One dog, two foods. Single quotes stand for double ones. */
    static final String SMALL = """
            {'dogs': [{'name': 'Moss', 'weight': '21 lb', 'age': '4 years'}],
             'pantry': [{'food': 'ground turkey, 93 % lean', 'price': '$5/lb'},
                        {'food': 'white rice, enriched, dry', 'price': '$4', 'pack': '5 lb'}]}
            """;

    private Scenarios() {}

    static Household read(String json) throws ScenarioException {
        return new ScenarioReader(KNOWLEDGE, TODAY)
                .read("test.json", json.replace('\'', '"').getBytes(StandardCharsets.UTF_8));
    }

    static List<Fault> faults(String json) {
        ScenarioException refused = catchThrowableOfType(ScenarioException.class, () -> read(json));
        return refused == null ? List.of() : refused.faults();
    }

    /** The small scenario with fields of the object at a path, such as "/dogs/0", put in; null takes one out. */
    static String with(String path, String fields) {
        try {
            ObjectNode scenario = (ObjectNode) JSON.readTree(SMALL.replace('\'', '"'));
            JsonNode put = JSON.readTree(("{" + fields + "}").replace('\'', '"'));
            ObjectNode object = (ObjectNode) scenario.at(path);
            put.properties().forEach(field -> {
                if (field.getValue().isNull()) {
                    object.remove(field.getKey());
                } else {
                    object.set(field.getKey(), field.getValue());
                }
            });
            return JSON.writeValueAsString(scenario);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }
}
