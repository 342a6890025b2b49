package packpot.household;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The text of a scenario or recipe file, and the tree that it is read into; what is wrong with it is told in words. */
final class JsonText {
    private static final int MOST_BYTES = 2_000_000;
    private static final int DEEPEST = 50;

    private JsonText() {}

    /**
     * The bytes of a file.
     *
     * @param what it is: a scenario or a recipe
     */
    static byte[] bytes(Path file, String what) throws ScenarioException {
        String name = file.toString();
        try {
            if (Files.isDirectory(file)) {
                throw one(
                        name,
                        "is a folder; expected a " + what + " file"
                                + (what.equals("scenario") ? " such as scenarios/three-adults.json" : ""));
            }
            // One byte more shows that there is more; what is no ordinary file has no size, and may have no end.
            try (InputStream in = Files.newInputStream(file)) {
                byte[] text = in.readNBytes(MOST_BYTES + 1);
                if (text.length > MOST_BYTES) {
                    throw one(name, "is larger than " + MOST_BYTES / 1_000_000 + " MB, which no " + what + " is");
                }
                return text;
            }
        } catch (NoSuchFileException e) {
            throw one(name, "there is no such file; check the name and the folder");
        } catch (AccessDeniedException e) {
            throw one(name, "may not be read; check its permissions");
        } catch (IOException e) {
            throw one(name, "cannot be read: " + e.getMessage());
        }
    }

    private static ScenarioException one(String file, String message) {
        return new ScenarioException(file, List.of(new Fault("", message)));
    }

    /** What a text says; {@code name} is what faults call it. */
    static JsonNode tree(String name, byte[] text, String what) throws ScenarioException {
        JsonFactory json = JsonFactory.builder()
                .streamReadConstraints(
                        StreamReadConstraints.builder().maxNestingDepth(DEEPEST).build())
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .build();
        try (JsonParser parser = json.createParser(text)) {
            // Figures keep their digits, for whoever writes the scenario again.
            JsonNode tree = tree(
                    JsonMapper.builder(json)
                            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
                            .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
                            .build(),
                    parser);
            if (tree == null || tree.isMissingNode()) {
                throw one(
                        name,
                        "is empty; expected a " + what + ", see "
                                + (what.equals("scenario")
                                        ? "scenarios/three-adults.json"
                                        : "models/recipe.schema.json")
                                + " for one");
            }
            if (parser.nextToken() != null) {
                throw one(
                        name,
                        "goes on after the " + what + "'s closing brace, at line "
                                + parser.currentTokenLocation().getLineNr() + "; remove what follows it");
            }
            return tree;
        } catch (JsonProcessingException e) {
            String where = e.getLocation() == null
                    ? ""
                    : "line " + e.getLocation().getLineNr() + ", column "
                            + e.getLocation().getColumnNr() + ": ";
            throw one(name, "is not valid JSON; " + where + JsonFault.words(e.getOriginalMessage()));
        } catch (IOException e) {
            throw one(name, "cannot be read: " + e.getMessage());
        }
    }

    /** A number whose exponent no number can have is told as other faults of the text are; the library does not. */
    private static @Nullable JsonNode tree(JsonMapper mapper, JsonParser parser) throws IOException {
        try {
            return mapper.readTree(parser);
        } catch (NumberFormatException e) {
            throw new JsonParseException(parser, JsonFault.EXPONENT, parser.currentTokenLocation(), e);
        }
    }
}
