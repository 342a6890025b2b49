package packpot.household;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import packpot.food.FoodGroup;

/** Reads "shape": how the recipe should look, with the usual shape of models/shape.json where nothing is said. */
final class ShapeReader {
    private final JsonNode usual;

    ShapeReader(JsonNode usual) {
        this.usual = usual;
    }

    Shape read(@Nullable Fields fields) {
        Fields shape = fields == null ? Fields.none("shape") : fields;
        List<Shape.Band> bands = bands(shape);
        Double oneFood = shape.share("oneFoodMost", 1);
        Integer fewest = shape.whole("fewestFoods", 1, 40);
        Integer most = shape.whole("mostFoods", 1, 40);
        Integer stirredIn = shape.whole("mostStirredIn", 0, 20);
        Integer additions = shape.whole("mostAdditions", 0, 20);
        Integer specialNeeds = shape.whole("mostAdditionsSpecialNeeds", 0, 20);
        Double useful = shape.share("smallestUseful", 0.5);
        Double usefulMinor = shape.share("smallestUsefulMinor", 0.5);
        int atLeast = fewest == null ? usual.path("fewestFoods").intValue() : fewest;
        int atMost = most == null ? usual.path("mostFoods").intValue() : most;
        if (atLeast > atMost) {
            shape.fault(
                    "fewestFoods", "is " + atLeast + ", more than \"mostFoods\", which is " + atMost + "; give both");
        }
        shape.end();
        return new Shape(
                bands,
                or(oneFood, "oneFoodMost"),
                atLeast,
                atMost,
                stirredIn == null ? usual.path("mostStirredIn").intValue() : stirredIn,
                additions == null ? usual.path("mostAdditions").intValue() : additions,
                specialNeeds != null
                        ? specialNeeds
                        : additions != null
                                ? additions
                                : usual.path("mostAdditionsSpecialNeeds").intValue(),
                figure("additionsMostMassShare"),
                figure("additionsMostEnergyShare"),
                or(useful, "smallestUsefulShare"),
                usefulMinor != null
                        ? usefulMinor
                        : Math.min(or(useful, "smallestUsefulShareMinor"), figure("smallestUsefulShareMinor")),
                groups(usual.path("minorGroups")),
                figure("usualKcalPerGram"));
    }

    private double or(@Nullable Double given, String key) {
        return given == null ? figure(key) : given;
    }

    private double figure(String key) {
        return usual.path(key).doubleValue();
    }

    private List<Shape.Band> bands(Fields shape) {
        Map<String, double[]> given = new HashMap<>();
        Fields shares = shape.object("shares");
        List<String> keys = new ArrayList<>();
        usual.path("bands").forEach(band -> keys.add(band.path("key").textValue()));
        if (shares != null) {
            for (String key : keys) {
                Fields band = shares.object(key);
                if (band != null) {
                    given.put(key, band(band));
                }
            }
            shares.end();
        }
        List<Shape.Band> bands = new ArrayList<>();
        for (JsonNode band : usual.path("bands")) {
            String key = band.path("key").textValue();
            double[] own = given.get(key);
            double ownLeast = own == null ? Double.NaN : own[0];
            double ownMost = own == null ? Double.NaN : own[1];
            double least = Double.isNaN(ownLeast) ? band.path("least").doubleValue() : ownLeast;
            double most = Double.isNaN(ownMost) ? band.path("most").asDouble(1) : ownMost;
            // What the scenario says of one side moves the usual figure of the other out of its way.
            bands.add(new Shape.Band(
                    key,
                    band.path("label").textValue(),
                    groups(band.path("groups")),
                    Double.isNaN(ownLeast) ? Math.min(least, most) : least,
                    Double.isNaN(ownMost) ? Math.max(least, most) : most,
                    own == null));
        }
        return bands;
    }

    /** Least and most of a band; NaN where the scenario says nothing. */
    private static double[] band(Fields fields) {
        Double least = fields.share("least", 1);
        Double most = fields.share("most", 1);
        if (least != null && most != null && least > most) {
            fields.fault("least", "is more than \"most\"");
        }
        fields.end();
        return new double[] {least == null ? Double.NaN : least, most == null ? Double.NaN : most};
    }

    private static Set<FoodGroup> groups(JsonNode keys) {
        Set<FoodGroup> groups = new HashSet<>();
        keys.forEach(key -> groups.add(FoodGroup.ofKey(key.textValue())));
        return groups;
    }
}
