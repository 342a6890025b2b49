package packpot.household;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Changes of the kitchen and of what the whole household goes by. */
final class HouseholdChange {
    private static final String NO_LIMIT = "no limit";
    private static final Map<String, String> KITCHEN = Map.of(
            "days", "days",
            "meals", "mealsPerDay",
            "pot", "pot",
            "pot loads", "mostPotLoads",
            "bin", "bin",
            "bag", "bag",
            "bags", "mostBags",
            "fridge days", "fridgeDays");
    private static final List<String> FREEZER_KINDS = List.of("chest", "upright", "top");
    private static final List<String> MAY_HAVE_NO_LIMIT = List.of("pot", "bin", "bags", "freezer", "budget");

    /** What such a change may speak of. */
    static final List<String> SUBJECTS = List.of(
            "days",
            "meals",
            "pot",
            "pot loads",
            "bin",
            "bag",
            "bags",
            "freezer",
            "fridge days",
            "start",
            "profile",
            "margin",
            "budget");

    private HouseholdChange() {}

    static void apply(ObjectNode tree, String subject, String what, Places places) {
        boolean noLimit = what.equalsIgnoreCase(NO_LIMIT);
        if (noLimit && !MAY_HAVE_NO_LIMIT.contains(subject)) {
            places.fault("\"" + subject + "\" cannot be without a limit; that can only: "
                    + String.join(", ", MAY_HAVE_NO_LIMIT));
            return;
        }
        if (subject.equals("freezer")) {
            freezer(kitchen(tree), what, noLimit, places);
            return;
        }
        if (!places.take(subject, "value")) {
            return;
        }
        String field = KITCHEN.get(subject);
        ObjectNode object = field == null ? tree : kitchen(tree);
        String name = field == null ? subject : field;
        if (noLimit) {
            object.remove(name);
        } else {
            put(object, name, what);
        }
    }

    private static void freezer(ObjectNode kitchen, String what, boolean noLimit, Places places) {
        if (noLimit) {
            if (places.take("freezer", Places.ALL)) {
                kitchen.remove("freezer");
            }
            return;
        }
        ObjectNode freezer =
                kitchen.path("freezer") instanceof ObjectNode object ? object : kitchen.putObject("freezer");
        String plain = what.toLowerCase(Locale.ROOT);
        if (plain.startsWith("holds ")) {
            if (places.take("freezer", "holds")) {
                ArrayNode holds = freezer.putArray("holds");
                holds.addObject()
                        .put("volume", what.substring("holds ".length()).strip());
            }
            return;
        }
        if (!places.take("freezer", "volume")) {
            return;
        }
        String volume = what;
        for (String kind : FREEZER_KINDS) {
            if (plain.endsWith(" " + kind)) {
                freezer.put("kind", kind);
                volume = what.substring(0, what.length() - kind.length()).strip();
            }
        }
        freezer.put("volume", volume);
    }

    private static ObjectNode kitchen(ObjectNode tree) {
        return tree.path("kitchen") instanceof ObjectNode kitchen ? kitchen : tree.putObject("kitchen");
    }

    /** Whole numbers stand in a scenario without quotes. */
    static void put(ObjectNode object, String field, String value) {
        if (value.matches("\\d{1,9}")) {
            object.put(field, Integer.parseInt(value));
        } else {
            object.put(field, value);
        }
    }
}
