package packpot.household;

import com.fasterxml.jackson.databind.JsonNode;
import packpot.data.ModelDataException;
import packpot.data.ModelFiles;

/** The figures of kitchen, fridge and freezer in models/kitchen.json. */
public final class KitchenFigures {
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
}
