package packpot.household;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * One change to a scenario in the words of whoever asks, "SUBJECT: WHAT": {@code "Moss: weight 23 lb"}, {@code "chicken
 * liver: out of stock"}, {@code "days: 10"}. What the words mean is known only beside a scenario; see
 * {@link ScenarioChanges}.
 */
public final class Change {
    private static final Pattern FROM_FILE =
            Pattern.compile("\\s*(.+?)\\s*:\\s*comes\\s+from\\s+(.+?)\\s*", Pattern.CASE_INSENSITIVE);

    private final String words;
    private final @Nullable ObjectNode dog;

    private Change(String words, @Nullable ObjectNode dog) {
        this.words = words;
        this.dog = dog;
    }

    /** A change in words. A dog that "comes from FILE" is read from that file. */
    public static Change of(String words) throws ScenarioException {
        Matcher fromFile = FROM_FILE.matcher(words);
        if (fromFile.matches()) {
            String file = fromFile.group(2);
            JsonNode dog = JsonText.tree(file, ScenarioReader.text(path(file)), "scenario");
            if (!(dog instanceof ObjectNode object)) {
                throw new ScenarioException(
                        file, List.of(new Fault("", "expected one dog in braces, as under \"dogs\" of a scenario")));
            }
            return comes(object.deepCopy().put("name", fromFile.group(1)));
        }
        return new Change(words.strip(), null);
    }

    private static Path path(String file) throws ScenarioException {
        try {
            return Path.of(file);
        } catch (InvalidPathException e) {
            throw new ScenarioException(
                    file, List.of(new Fault("", "is no name that a file can have here; check its letters")));
        }
    }

    private static Change comes(ObjectNode dog) {
        return new Change(dog.path("name").asText() + ": comes", dog);
    }

    /** A set of changes that go together, and what it is called. */
    public record Question(String name, List<Change> changes) {
        public Question {
            changes = List.copyOf(changes);
        }
    }

    /**
     * Reads a file of changes: {@code {"changes": [...]}} for one new plan, {@code {"alternatives": [{"name": "...",
     * "changes": [...]}]}} for several. A change is a text, or {@code {"comes": {a dog}}}. What stands under "changes"
     * beside "alternatives" holds for each of them.
     */
    public static List<Question> read(Path file) throws ScenarioException {
        List<Fault> faults = new ArrayList<>();
        Fields root = new Fields(JsonText.tree(file.toString(), ScenarioReader.text(file), "scenario"), "", faults);
        List<Change> common = list(root, faults);
        List<Question> questions = new ArrayList<>();
        for (Fields alternative : root.objects("alternatives")) {
            List<Change> changes = new ArrayList<>(common);
            List<Change> own = list(alternative, faults);
            if (own.isEmpty()) {
                alternative.fault("changes", "is empty; expected texts such as \"days: 10\"");
            }
            changes.addAll(own);
            String name = alternative.text("name");
            questions.add(new Question(name == null ? words(own) : name, changes));
            alternative.end();
        }
        if (questions.isEmpty()) {
            if (common.isEmpty()) {
                root.fault("changes", "is empty; expected texts such as \"days: 10\"");
            }
            questions.add(new Question(words(common), common));
        }
        root.end();
        if (!faults.isEmpty()) {
            throw new ScenarioException(file.toString(), faults);
        }
        return questions;
    }

    private static List<Change> list(Fields fields, List<Fault> faults) throws ScenarioException {
        List<Change> changes = new ArrayList<>();
        if (!fields.has("changes")) {
            return changes;
        }
        if (!fields.raw("changes").isArray()) {
            fields.fault("changes", "expected a list in square brackets");
            return changes;
        }
        for (JsonNode node : fields.raw("changes")) {
            if (node.isTextual()) {
                changes.add(of(node.textValue()));
            } else if (node.path("comes") instanceof ObjectNode dog && node.size() == 1) {
                changes.add(comes(dog.deepCopy()));
            } else {
                faults.add(new Fault(
                        fields.pathOf("changes"),
                        "read " + node + ", expected a text such as \"days: 10\", or {\"comes\": {a dog}}"));
            }
        }
        return changes;
    }

    /** Several changes in one line. */
    public static String words(List<Change> changes) {
        return String.join("; ", changes.stream().map(Change::words).toList());
    }

    public String words() {
        return words;
    }

    /** The dog that comes, where the change holds it whole. */
    @Nullable
    ObjectNode dog() {
        return dog;
    }

    @Override
    public String toString() {
        return words;
    }
}
