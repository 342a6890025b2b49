package packpot.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;

/** Reads scenario files for commands. */
final class Scenarios {

    private Scenarios() {}

    static Household read(Knowledge knowledge, Path file) throws ScenarioException {
        return new ScenarioReader(knowledge, LocalDate.now(ZoneId.systemDefault())).read(file);
    }
}
