package packpot.dog;

import com.fasterxml.jackson.databind.JsonNode;
import packpot.data.ModelDataException;
import packpot.data.ModelFiles;

/** The figures of models/weight_change.json. */
public final class WeightFigures {
    private final JsonNode tree;

    private WeightFigures(JsonNode tree) {
        this.tree = tree;
    }

    public static WeightFigures load() {
        return new WeightFigures(ModelFiles.json("weight_change.json"));
    }

    double number(String group, String name) {
        JsonNode figure = tree.path(group).path(name);
        if (!figure.isNumber()) {
            throw new ModelDataException("models/weight_change.json has no figure " + group + "." + name);
        }
        return figure.doubleValue();
    }

    String source(String group) {
        return tree.path(group).path("source").asText();
    }

    private static String plan(boolean loss) {
        return loss ? "weightLoss" : "weightGain";
    }

    /** The slowest rate of a weight plan, as a share of body weight a week. */
    public double leastSharePerWeek(boolean loss) {
        return number(plan(loss), "leastSharePerWeek");
    }

    /** The fastest safe rate of a weight plan, as a share of body weight a week. */
    public double mostSharePerWeek(boolean loss) {
        return number(plan(loss), "mostSharePerWeek");
    }

    /** The rate of a weight plan that names none, as a share of body weight a week. */
    public double usualSharePerWeek(boolean loss) {
        return number(plan(loss), "usualSharePerWeek");
    }
}
