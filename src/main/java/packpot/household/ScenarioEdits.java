package packpot.household;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import packpot.units.Write;

/**
 * What to edit in a scenario to make its household into a changed one. Amounts are written in the household's units and
 * rounded so that the scenario with them is in no limit tighter than the changed household.
 */
public final class ScenarioEdits {

    private ScenarioEdits() {}

    /**
     * The edits, in the order in which they are to be made; empty when the scenario's fields cannot say the change.
     *
     * @param scenario the tree that the old household was read from
     */
    public static Optional<List<Edit>> between(
            ObjectNode scenario, Household old, Household changed, Knowledge knowledge) {
        TreeEditor tree = new TreeEditor(scenario);
        if (!sameButForWhatIsWritten(old, changed)) {
            return Optional.empty();
        }
        money(tree, old, changed);
        if (old.rules().margin() != changed.rules().margin()) {
            tree.put("/margin", Write.share(changed.rules().margin(), RoundingMode.FLOOR));
        }
        boolean written = KitchenEdits.write(tree, old.kitchen(), changed.kitchen(), old.units())
                && new PantryEdits(tree, knowledge, old.currency()).write(old.pantry(), changed.pantry());
        ShapeEdits.write(tree, old, changed);
        return written ? Optional.of(tree.edits()) : Optional.empty();
    }

    private static void money(TreeEditor tree, Household old, Household changed) {
        Double budget = changed.budget();
        if (budget == null) {
            tree.remove("/budget");
        } else if (!budget.equals(old.budget())) {
            tree.put("/budget", Write.money(budget, old.currency(), RoundingMode.CEILING));
        }
    }

    /** Whether nothing is changed but figures that are looked at here. */
    private static boolean sameButForWhatIsWritten(Household old, Household changed) {
        return old.withBudget(changed.budget())
                .withRules(old.rules().withMargin(changed.rules().margin()))
                .withKitchen(KitchenEdits.changed(old.kitchen(), changed.kitchen()))
                .withShape(ShapeEdits.changed(old.shape(), changed.shape()))
                .withPantry(changed.pantry())
                .equals(changed);
    }

    /**
     * A scenario with edits made.
     *
     * @throws ScenarioException when an edit speaks of what the scenario does not have
     */
    public static ObjectNode apply(ObjectNode scenario, List<Edit> edits) throws ScenarioException {
        ObjectNode tree = scenario.deepCopy();
        for (int i = 0; i < edits.size(); i++) {
            String fault = TreeEditor.apply(tree, edits.get(i));
            if (fault != null) {
                throw new ScenarioException("The list of edits", List.of(new Fault("[" + i + "]", fault)));
            }
        }
        return tree;
    }
}
