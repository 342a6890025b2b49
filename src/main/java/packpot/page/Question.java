package packpot.page;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import org.jspecify.annotations.Nullable;

/**
 * What a page asks about.
 *
 * @param name of the scenario's file
 * @param scenario text of it as it stands on the page
 * @param kept text of the scenario whose plan stands beside; null for none
 */
record Question(String name, String scenario, @Nullable String kept) {

    static Question of(byte[] body) throws Refused {
        try {
            JsonNode node = new JsonMapper().readTree(body);
            JsonNode scenario = node.path("scenario");
            if (!scenario.isTextual()) {
                throw new Refused(Refused.BAD_REQUEST, "expected the text of a scenario");
            }
            JsonNode kept = node.path("kept");
            return new Question(
                    node.path("name").asText("the scenario"),
                    scenario.textValue(),
                    kept.isTextual() ? kept.textValue() : null);
        } catch (IOException e) {
            throw new Refused(Refused.BAD_REQUEST, "the request cannot be read as JSON");
        }
    }
}
