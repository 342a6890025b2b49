package packpot.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import packpot.explain.MendEdits;
import packpot.household.Change;
import packpot.household.EditableScenario;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioChanges;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;

/** Reads scenario files for commands. */
final class Scenarios {

    private Scenarios() {}

    static Household read(Knowledge knowledge, Path file) throws ScenarioException {
        return reader(knowledge).read(file);
    }

    /** A scenario that is to be changed. */
    static ScenarioChanges changes(Knowledge knowledge, Path file) throws ScenarioException {
        return new ScenarioChanges(knowledge, reader(knowledge), file.toString(), ScenarioReader.text(file));
    }

    /** How mends of a scenario, after changes that hold together, are taken over into it. */
    static MendEdits edits(Knowledge knowledge, EditableScenario scenario) {
        return new MendEdits(knowledge, reader(knowledge), scenario);
    }

    /** Changes in words. */
    static List<Change> changes(List<String> words) throws ScenarioException {
        List<Change> changes = new ArrayList<>();
        for (String each : words) {
            changes.add(Change.of(each));
        }
        return changes;
    }

    static ScenarioReader reader(Knowledge knowledge) {
        return new ScenarioReader(knowledge, LocalDate.now(ZoneId.systemDefault()));
    }
}
