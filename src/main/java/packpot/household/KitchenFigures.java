package packpot.household;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import packpot.data.ModelDataException;
import packpot.data.ModelFiles;

/** The figures of kitchen, fridge and freezer in models/kitchen.json. */
public final class KitchenFigures {
    private static final double DAYS_PER_MONTH = 30;

    private final JsonNode figures;

    private KitchenFigures(JsonNode figures) {
        this.figures = figures;
    }

    public static KitchenFigures load() {
        return new KitchenFigures(ModelFiles.json("kitchen.json"));
    }

    /** A figure by its key, in the unit that stands in the key. */
    public double number(String key) {
        JsonNode value = figures.path(key).path("value");
        if (!value.isNumber()) {
            throw new ModelDataException("models/kitchen.json has no figure " + key);
        }
        return value.doubleValue();
    }

    /** Days that cooked food keeps its quality in the freezer, a month being 30. */
    public double freezerDays() {
        return number("freezerMonthsDefault") * DAYS_PER_MONTH;
    }

    /** One of several figures under a key, such as the most of a range. */
    public double number(String key, String part) {
        JsonNode value = figures.path(key).path("value").path(part);
        if (!value.isNumber()) {
            throw new ModelDataException("models/kitchen.json has no figure " + key + ", " + part);
        }
        return value.doubleValue();
    }

    /**
     * Share of the new food on each day of a change of food, whose last day is the first of the new food alone: the steps
     * of the published ten days, each as long as the others as far as days allow.
     */
    public List<Double> newFoodShares(int days) {
        List<Double> steps = new ArrayList<>();
        for (JsonNode step : figures.path("transitionTenDays").path("value")) {
            double share = step.path("newShare").doubleValue();
            if (share > 0 && share < 1) {
                steps.add(share);
            }
        }
        if (steps.isEmpty()) {
            throw new ModelDataException("models/kitchen.json has no steps in transitionTenDays");
        }
        List<Double> shares = new ArrayList<>();
        for (int day = 1; day < days; day++) {
            shares.add(steps.get((steps.size() * day + days - 2) / (days - 1) - 1));
        }
        shares.add(1.0);
        return List.copyOf(shares);
    }
}
