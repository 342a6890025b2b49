package packpot.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import packpot.food.FoodGroup;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.household.Shape;
import packpot.units.Show;

/** Which wishes about the shape of the pot hold the plan back, so that a cook knows what to loosen. */
final class AtTheirLimit {
    private static final double NEAR = 0.01;

    private AtTheirLimit() {}

    static List<String> of(Household household, List<Plan.Ingredient> pot, Plan.Batch batch) {
        Map<String, PantryItem> items = new HashMap<>();
        household.pantry().forEach(item -> items.put(item.food().id(), item));
        Map<FoodGroup, Double> byGroup = new HashMap<>();
        List<String> sentences = new ArrayList<>();
        Shape shape = household.shape();
        for (Plan.Ingredient ingredient : pot) {
            PantryItem item = items.get(ingredient.food());
            if (item == null) {
                continue;
            }
            byGroup.merge(item.food().group(), ingredient.shareOfCookedMass(), Double::sum);
            double most = Math.min(shape.oneFoodMost(), item.food().kitchen().mostShare());
            if (!item.food().isSupplement() && near(ingredient.shareOfCookedMass(), most)) {
                String reason = most < shape.oneFoodMost()
                        ? " (" + item.food().kitchen().mostShareReason() + ")"
                        : "";
                sentences.add(ingredient.label() + " at most " + percent(most) + reason);
            }
        }
        for (Shape.Band band : shape.bands()) {
            double share = band.groups().stream()
                    .mapToDouble(group -> byGroup.getOrDefault(group, 0.0))
                    .sum();
            String whose = band.usual() ? "" : ", as the scenario asks";
            if (band.least() > 0 && near(share, band.least())) {
                sentences.add(band.label() + " at least " + percent(band.least()) + whose);
            }
            if (band.most() < 1 && near(share, band.most())) {
                sentences.add(band.label() + " at most " + percent(band.most()) + whose);
            }
        }
        long stirredIn = pot.stream().filter(Plan.Ingredient::stirredIn).count();
        if (pot.size() - stirredIn >= shape.mostFoods()) {
            sentences.add("at most " + shape.mostFoods() + " foods in the pot");
        }
        if (stirredIn >= shape.mostStirredIn()) {
            sentences.add("at most " + shape.mostStirredIn() + " supplements stirred in");
        }
        kitchen(household, batch, sentences);
        return sentences;
    }

    private static void kitchen(Household household, Plan.Batch batch, List<String> sentences) {
        Integer bags = household.kitchen().mostBags();
        if (bags != null && batch.bags() >= bags) {
            sentences.add("at most " + bags + " bags");
        }
        Double free = batch.freezerFreeMl();
        Double taken = batch.freezerMl();
        if (free != null && taken != null && near(taken, free)) {
            sentences.add("free space in the freezer, " + Show.volume(free, household.units()));
        }
    }

    private static boolean near(double value, double limit) {
        return Math.abs(value - limit) <= NEAR * Math.abs(limit);
    }

    private static String percent(double share) {
        return Show.number(share * 100) + " %";
    }
}
