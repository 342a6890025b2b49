package packpot.explain;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import packpot.audit.PlanAudit;
import packpot.household.Edit;
import packpot.household.EditableScenario;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioEdits;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;
import packpot.household.ScenarioText;

/**
 * How mends are taken over into the scenario. Edits are given only where the scenario with them, as it would be written, is
 * read without a fault and the mend's plan passes the audit against what is read.
 */
public final class MendEdits {
    private final Knowledge knowledge;
    private final ScenarioReader reader;
    private final EditableScenario scenario;

    /**
     * Edits of one scenario.
     *
     * @param scenario that has no plan
     */
    public MendEdits(Knowledge knowledge, ScenarioReader reader, EditableScenario scenario) {
        this.knowledge = knowledge;
        this.reader = reader;
        this.scenario = scenario;
    }

    /** The edits; empty for a mend that is no change of one scenario. Of two cook days, those for the first. */
    public Optional<List<Edit>> of(Mend mend) {
        if (mend.kind() == Mend.Kind.SECOND_POT || mend.planned().isEmpty()) {
            return Optional.empty();
        }
        Planner.Result.Planned planned = mend.planned().get(0);
        return ScenarioEdits.between(scenario.tree(), scenario.household(), planned.household(), knowledge)
                .filter(edits -> !edits.isEmpty() && holds(edits, planned));
    }

    private boolean holds(List<Edit> edits, Planner.Result.Planned planned) {
        try {
            Household read = reader.read("the mended scenario", text(edits).getBytes(StandardCharsets.UTF_8));
            return PlanAudit.check(planned.plan(), read, knowledge).passed();
        } catch (ScenarioException e) {
            return false;
        }
    }

    /**
     * The text of the scenario with edits made.
     *
     * @throws ScenarioException when they are edits of another scenario
     */
    public String text(List<Edit> edits) throws ScenarioException {
        ObjectNode mended = ScenarioEdits.apply(scenario.tree(), edits);
        return ScenarioText.of(mended);
    }
}
