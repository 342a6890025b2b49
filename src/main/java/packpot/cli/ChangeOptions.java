package packpot.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import packpot.household.Change;
import packpot.household.ScenarioException;
import picocli.CommandLine.Option;

/** What is to change, in words or from a file, all of it at once or each for itself. */
final class ChangeOptions {
    @Option(
            names = "--change",
            paramLabel = "CHANGE",
            description = "a change, such as \"days: 10\"; give the option again for more, which then hold together")
    private List<String> changes = List.of();

    @Option(
            names = "--changes",
            paramLabel = "FILE",
            description = "changes from a JSON file: {\"changes\": [\"days: 10\"]} or {\"alternatives\": [{\"name\":"
                    + " \"short\", \"changes\": [\"days: 7\"]}]}; those of --change hold beside them")
    private @Nullable Path file;

    @Option(names = "--alternatives", description = "each --change is a plan of its own, not all of them one plan")
    private boolean alternatives;

    boolean isEmpty() {
        return changes.isEmpty() && file == null;
    }

    List<Change.Question> questions() throws ScenarioException {
        List<Change> given = Scenarios.changes(changes);
        List<Change.Question> questions = new ArrayList<>();
        Path changesFile = file;
        if (changesFile != null) {
            for (Change.Question question : Change.read(changesFile)) {
                List<Change> together = new ArrayList<>(question.changes());
                if (!alternatives) {
                    together.addAll(given);
                }
                questions.add(new Change.Question(question.name(), together));
            }
        }
        if (alternatives) {
            given.forEach(change -> questions.add(new Change.Question(change.words(), List.of(change))));
        } else if (changesFile == null) {
            questions.add(new Change.Question(Change.words(given), given));
        }
        return questions;
    }
}
