package packpot.ration;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import packpot.household.Wish;
import packpot.solver.Expression;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;
import packpot.solver.Solution;

/**
 * The foods and additions that a ration has, without amounts: what two households that differ little have in common.
 *
 * @param foods in the pot, as models call the choice of each
 * @param additions to the bowls, the same
 */
record Chosen(Set<String> foods, Set<String> additions) {
    private static final double MADE = 0.5;
    /** A food that is gone may take more than one other to stand in for it. */
    private static final int MORE_STAND_INS = 1;

    Chosen {
        foods = Set.copyOf(foods);
        additions = Set.copyOf(additions);
    }

    static Chosen of(RationModel model, Solution solution) {
        return new Chosen(made(model.potChoices().values(), solution), made(model.bowlChoices(), solution));
    }

    private static Set<String> made(Collection<Variable> choices, Solution solution) {
        return choices.stream()
                .filter(choice -> solution.value(choice) > MADE)
                .map(Variable::name)
                .collect(Collectors.toUnmodifiableSet());
    }

    /**
     * A model with these choices, in whatever amounts, doses and packs. Where foods are not to be had, the other foods stay
     * and few more are open, with all additions.
     */
    LinearModel<Wish> in(RationModel model) {
        Map<Integer, Double> fixed = new HashMap<>();
        Set<String> gone = new HashSet<>(foods);
        Expression others = new Expression();
        model.potChoices().forEach((item, choice) -> {
            boolean toBeHad = !item.outOfStock() || item.onHandGrams() > 0;
            boolean made = toBeHad && gone.remove(choice.name());
            fixed.put(choice.index(), made ? 1.0 : 0.0);
            others.add(made ? 0 : 1, choice);
        });
        model.bowlChoices().forEach(choice -> fixed.put(choice.index(), additions.contains(choice.name()) ? 1.0 : 0.0));
        if (gone.isEmpty()) {
            return model.linearModel().withFixed(fixed);
        }
        fixed.values().removeIf(value -> value == 0);
        model.bowlChoices().forEach(choice -> fixed.remove(choice.index()));
        LinearModel<Wish> near = model.linearModel().withFixed(fixed);
        near.atMost("stand-ins", others, gone.size() + MORE_STAND_INS, null);
        return near;
    }
}
