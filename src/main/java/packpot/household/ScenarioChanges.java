package packpot.household;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import packpot.food.UnsafeFoods;

/**
 * One scenario and what becomes of it when things change. A change is an edit of the scenario's own text, which is then
 * read like any other, so that a changed household is as valid as one from a file and faults sound the same.
 */
public final class ScenarioChanges {
    private static final JsonMapper JSON = new JsonMapper();

    private final Knowledge knowledge;
    private final ScenarioReader reader;
    private final String file;
    private final byte[] text;

    /**
     * A scenario to change.
     *
     * @param file what faults call it
     */
    public ScenarioChanges(Knowledge knowledge, ScenarioReader reader, String file, byte[] text) {
        this.knowledge = knowledge;
        this.reader = reader;
        this.file = file;
        this.text = text.clone();
    }

    /** The household as it stands. */
    public Household unchanged() throws ScenarioException {
        return reader.read(file, text);
    }

    /**
     * The household after changes.
     *
     * @param asked by people; two of them that contradict each other are a fault
     * @param following what follows from them, and is put over them
     * @throws ScenarioException when a change cannot be understood, names nothing of the scenario, contradicts another,
     *     or leads to a scenario with faults
     */
    public Household with(List<Change> asked, List<Change> following) throws ScenarioException {
        return scenario(asked, following).household();
    }

    /** The same with the file's fields, to be edited further; without changes, the scenario as it stands. */
    public EditableScenario scenario(List<Change> asked, List<Change> following) throws ScenarioException {
        if (!(JsonText.tree(file, text, "scenario") instanceof ObjectNode tree)) {
            throw new ScenarioException(file, List.of(new Fault("", "expected a scenario in braces")));
        }
        List<Fault> faults = new ArrayList<>();
        apply(asked, tree, faults);
        apply(following, tree, faults);
        if (!faults.isEmpty()) {
            throw new ScenarioException("What is asked", faults);
        }
        if (asked.isEmpty() && following.isEmpty()) {
            return new EditableScenario(tree, unchanged());
        }
        try {
            return new EditableScenario(
                    tree, reader.read(file + " with \"" + Change.words(asked) + "\"", JSON.writeValueAsBytes(tree)));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("the changed scenario cannot be written: " + e.getOriginalMessage(), e);
        }
    }

    private void apply(List<Change> changes, ObjectNode tree, List<Fault> faults) {
        Places places = new Places(faults);
        // Dogs that come are there first and dogs that leave go last, so that other changes may speak of them.
        List<Change> ordered = new ArrayList<>(changes);
        ordered.sort(Comparator.comparingInt(ScenarioChanges::turn));
        ordered.forEach(change -> one(change, tree, places));
    }

    private static int turn(Change change) {
        List<Words> readings = readings(change.words());
        return readings.stream().anyMatch(words -> DogChange.comes(words.what()))
                ? 0
                : readings.stream().anyMatch(words -> DogChange.leaves(words.what())) ? 2 : 1;
    }

    /** A change parted at one of its colons. */
    private record Words(String subject, String what) {}

    /** All ways to part a change, the one with the longest subject first: names may hold colons. */
    private static List<Words> readings(String words) {
        List<Words> readings = new ArrayList<>();
        for (int colon = words.lastIndexOf(':'); colon > 0; colon = words.lastIndexOf(':', colon - 1)) {
            String subject = words.substring(0, colon).strip();
            String what = words.substring(colon + 1).strip();
            if (!subject.isEmpty() && !what.isEmpty()) {
                readings.add(new Words(subject, what));
            }
        }
        return readings;
    }

    /** The reading with the longest name that the scenario knows; the one up to the first colon where it knows none. */
    private Words meant(List<Words> readings, ObjectNode tree) {
        PantryWords pantry = new PantryWords(tree, knowledge);
        return readings.stream()
                .filter(words -> DogChange.comes(words.what())
                        || dog(tree, words.subject()) != null
                        || pantry.isExact(words.subject()))
                .findFirst()
                .orElse(readings.get(readings.size() - 1));
    }

    private void one(Change change, ObjectNode tree, Places places) {
        places.begin(change);
        List<Words> readings = readings(change.words());
        if (readings.isEmpty()) {
            places.fault("expected SUBJECT: WHAT, such as \"Moss: weight 23 lb\", \"carrots: out of stock\" or"
                    + " \"days: 10\"");
            return;
        }
        Words words = meant(readings, tree);
        String subject = words.subject();
        String what = words.what();
        if (DogChange.comes(what)) {
            DogChange.come(tree, subject, what, change.dog(), places);
            return;
        }
        ObjectNode dog = dog(tree, subject);
        PantryWords pantry = new PantryWords(tree, knowledge);
        List<ObjectNode> foods = pantry.meantBy(subject);
        boolean household = HouseholdChange.SUBJECTS.contains(subject.toLowerCase(Locale.ROOT));
        boolean named = dog != null || household;
        if (named && !pantry.isExact(subject)) {
            // A dog or a part of the kitchen is meant by its whole name; a food that only holds the word is not.
            foods = List.of();
        }
        if ((dog != null && household) || (named && !foods.isEmpty())) {
            places.fault("\"" + subject + "\" is the name of two things in this scenario; rename the dog or food");
        } else if (dog != null) {
            DogChange.apply(tree, dog, what, places);
        } else if (household) {
            HouseholdChange.apply(tree, subject.toLowerCase(Locale.ROOT), what, places);
        } else if (foods.isEmpty() && !poison(subject).isEmpty()) {
            places.fault("\"" + subject + "\" is not for dogs: " + poison(subject) + "; it goes into no plan");
        } else if (foods.isEmpty()) {
            places.fault("\"" + subject + "\" is no dog, food or part of the kitchen of this scenario"
                    + Nearest.advice(subject, known(tree, pantry), 3));
        } else if (foods.size() > 1 && !PantryWords.speaksOfAll(subject)) {
            places.fault("\"" + subject + "\" may be any of "
                    + String.join(
                            ", ",
                            foods.stream()
                                    .map(f -> "\"" + PantryWords.name(f) + "\"")
                                    .toList())
                    + "; name one, or all of them by \"all " + subject + "\"");
        } else {
            foods.forEach(food -> FoodChange.apply(food, what, places));
        }
    }

    /** Why a food that is spoken of is in no plan; empty where no such thing is known of it. */
    private String poison(String subject) {
        return knowledge.unsafeFoods().inName(subject).stream()
                .filter(unsafe -> unsafe.rule() == UnsafeFoods.Rule.BLOCK)
                .map(UnsafeFoods.UnsafeFood::why)
                .findFirst()
                .orElse("");
    }

    private static List<String> known(ObjectNode tree, PantryWords pantry) {
        List<String> names = new ArrayList<>(pantry.names());
        tree.path("dogs").forEach(dog -> names.add(dog.path("name").asText()));
        names.addAll(HouseholdChange.SUBJECTS);
        return names;
    }

    static @Nullable ObjectNode dog(ObjectNode tree, String name) {
        for (JsonNode node : tree.path("dogs")) {
            if (node instanceof ObjectNode dog
                    && dog.path("name").asText().strip().equalsIgnoreCase(name)) {
                return dog;
            }
        }
        return null;
    }
}
