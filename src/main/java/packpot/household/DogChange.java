package packpot.household;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import packpot.dog.Activity;
import packpot.units.Dimension;
import packpot.units.Quantity;
import packpot.units.UnitException;

/** Changes of one dog: it comes, leaves, or is not what it was. */
final class DogChange {
    private static final Pattern COMES = Pattern.compile("comes(?:\\s*,\\s*(.*))?", Pattern.CASE_INSENSITIVE);
    private static final Pattern IN_WHELP =
            Pattern.compile("in whelp,?\\s+week\\s+(\\d{1,3})", Pattern.CASE_INSENSITIVE);
    private static final Pattern NURSING = Pattern.compile(
            "nursing,?\\s+week\\s+(\\d{1,3}),?\\s+(?:with\\s+)?(\\d{1,3})\\s+pupp(?:y|ies)", Pattern.CASE_INSENSITIVE);
    private static final String LIFE_STAGE = "life stage";
    private static final String COMING = "comes";
    private static final Map<String, String> FIELDS = fields();
    /** Fields that a dog can be without. */
    private static final List<String> OPTIONAL = List.of(
            "goalWeight",
            "expectedAdultWeight",
            "vetEnergy",
            "treats",
            "otherFood",
            "conditionScore",
            "profile",
            "avoid");

    private static final String KNOWN = "leaves, weight 23 lb, goal weight 20 lb, adult weight 60 lb, age 5 years,"
            + " activity high, condition 6, treats 50 kcal, other food 100 kcal, vet energy 600 kcal, profile NAME,"
            + " avoids beef, in whelp week 5, nursing week 2 with 5 puppies, no longer in whelp, no longer nursing";

    private DogChange() {}

    private static Map<String, String> fields() {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("weight", "weight");
        fields.put("weighs", "weight");
        fields.put("goal weight", "goalWeight");
        fields.put("adult weight", "expectedAdultWeight");
        fields.put("age", "age");
        fields.put("activity", "activity");
        fields.put("condition", "conditionScore");
        fields.put("treats", "treats");
        fields.put("other food", "otherFood");
        fields.put("vet energy", "vetEnergy");
        fields.put("profile", "profile");
        fields.put("avoids", "avoid");
        return fields;
    }

    static boolean comes(String what) {
        return COMES.matcher(what).matches();
    }

    static boolean leaves(String what) {
        return what.equalsIgnoreCase("leaves");
    }

    /** A dog comes, given whole or as "comes, 30 lb, 3 years, high activity, female, intact". */
    static void come(ObjectNode tree, String name, String what, @Nullable ObjectNode whole, Places places) {
        if (ScenarioChanges.dog(tree, name) != null) {
            places.fault("a dog called \"" + name + "\" is in the scenario already; give the one that comes another"
                    + " name");
            return;
        }
        ObjectNode dog = whole == null ? tree.objectNode().put("name", name) : whole;
        Matcher matcher = COMES.matcher(what);
        String details = matcher.matches() && matcher.group(1) != null ? matcher.group(1) : "";
        if (whole == null && details.isBlank()) {
            places.fault("expected its weight and age, such as \"" + name + ": comes, 30 lb, 3 years\", or its file,"
                    + " \"" + name + ": comes from dog.json\"");
            return;
        }
        for (String part : details.split(",", -1)) {
            if (!part.isBlank() && !describe(dog, part.strip())) {
                places.fault("\"" + part.strip() + "\" does not describe a dog; expected a weight, an age, and if you"
                        + " like: low, moderate, high or working activity, male or female, intact");
                return;
            }
        }
        // A dog that comes can be spoken of, but cannot leave as well.
        if (places.take(name, COMING)) {
            ArrayNode dogs = tree.path("dogs") instanceof ArrayNode array ? array : tree.putArray("dogs");
            dogs.add(dog);
        }
    }

    private static boolean describe(ObjectNode dog, String part) {
        String plain = part.toLowerCase(Locale.ROOT);
        String activity = plain.replaceAll("\\s*activity\\s*", "");
        if (is(part, Dimension.MASS)) {
            dog.put("weight", part);
        } else if (is(plain.replaceAll("\\s+old$", ""), Dimension.TIME)) {
            dog.put("age", plain.replaceAll("\\s+old$", ""));
        } else if (plain.equals("male") || plain.equals("female")) {
            dog.put("sex", plain);
        } else if (plain.equals("intact")) {
            dog.put("neutered", false);
        } else if (List.of(Activity.values()).stream().anyMatch(a -> a.key().equals(activity))) {
            dog.put("activity", activity);
        } else {
            return false;
        }
        return true;
    }

    private static boolean is(String text, Dimension dimension) {
        try {
            Quantity.parse(text, dimension);
            return true;
        } catch (UnitException e) {
            return false;
        }
    }

    static void apply(ObjectNode tree, ObjectNode dog, String what, Places places) {
        String plain = what.toLowerCase(Locale.ROOT);
        String name = dog.path("name").asText();
        Matcher whelp = IN_WHELP.matcher(what);
        Matcher nursing = NURSING.matcher(what);
        if (leaves(what)) {
            if (places.take(name, Places.ALL)) {
                remove(tree, name);
            }
        } else if (whelp.matches()
                || nursing.matches()
                || plain.equals("no longer in whelp")
                || plain.equals("no longer nursing")) {
            if (places.take(name, LIFE_STAGE)) {
                dog.remove(List.of("gestation", "lactation"));
                if (whelp.matches()) {
                    dog.putObject("gestation").put("week", Integer.parseInt(whelp.group(1)));
                } else if (nursing.matches()) {
                    dog.putObject("lactation")
                            .put("week", Integer.parseInt(nursing.group(1)))
                            .put("puppies", Integer.parseInt(nursing.group(2)));
                }
            }
        } else {
            field(dog, name, what, places);
        }
    }

    private static void field(ObjectNode dog, String name, String what, Places places) {
        for (Map.Entry<String, String> each : FIELDS.entrySet()) {
            String start = each.getKey() + " ";
            if (what.toLowerCase(Locale.ROOT).startsWith(start)) {
                String value = what.substring(start.length()).strip();
                // A dog may come to avoid several foods; any other field can have but one value.
                String place = each.getValue().equals("avoid") ? "avoid " + value : each.getValue();
                if (places.take(name, place)) {
                    set(dog, each.getValue(), value);
                }
                return;
            }
        }
        places.fault("\"" + what + "\" is nothing that is known of a dog"
                + Nearest.advice(what.split("\\s+", -1)[0], FIELDS.keySet(), 1) + "; known: " + KNOWN);
    }

    private static void set(ObjectNode dog, String field, String value) {
        if (value.equalsIgnoreCase("none") && OPTIONAL.contains(field)) {
            dog.remove(field);
        } else if (field.equals("avoid")) {
            ArrayNode avoid = dog.path("avoid") instanceof ArrayNode array ? array : dog.putArray("avoid");
            avoid.add(value);
        } else if (field.equals("conditionScore")) {
            HouseholdChange.put(dog, field, value);
        } else {
            if (field.equals("age")) {
                dog.remove("born");
            }
            if (field.equals("weight")) {
                // What it weighed before would be held against the weight that is supposed.
                dog.remove(List.of("weighIns", "fedEnergy"));
            }
            dog.put(field, value);
        }
    }

    private static void remove(ObjectNode tree, String name) {
        if (tree.path("dogs") instanceof ArrayNode dogs) {
            dogs.removeIf(dog -> dog.path("name").asText().equals(name));
        }
    }
}
