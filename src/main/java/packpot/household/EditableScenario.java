package packpot.household;

import com.fasterxml.jackson.databind.node.ObjectNode;

/**
 * A scenario as its file has it, and the household that was read from it.
 *
 * @param tree the fields of the file in their order; nobody changes it, edits are made to copies
 */
public record EditableScenario(ObjectNode tree, Household household) {}
