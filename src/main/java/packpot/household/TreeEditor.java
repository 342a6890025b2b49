package packpot.household;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Edits a copy of a scenario's tree, and keeps a list of what was done to it. */
final class TreeEditor {
    private final ObjectNode tree;
    private final List<Edit> edits = new ArrayList<>();

    TreeEditor(ObjectNode scenario) {
        tree = scenario.deepCopy();
    }

    ObjectNode tree() {
        return tree;
    }

    List<Edit> edits() {
        return List.copyOf(edits);
    }

    void put(String path, String text) {
        put(path, TextNode.valueOf(text));
    }

    void put(String path, int number) {
        put(path, IntNode.valueOf(number));
    }

    /** Sets a field; objects on the way to it that the scenario does not have yet are made. */
    void put(String path, JsonNode value) {
        JsonPointer place = JsonPointer.compile(path);
        JsonNode parent = tree.at(place.head());
        if (!parent.isContainerNode()) {
            // An object of which nothing is said stands in the file as null, or not at all.
            put(place.head().toString(), JsonNodeFactory.instance.objectNode().set(name(place), value));
        } else if (!tree.at(place).equals(value)) {
            apply(new Edit(tree.at(place).isMissingNode() ? Edit.Op.ADD : Edit.Op.REPLACE, path, value));
        }
    }

    /** Removes a field, if it is there. */
    void remove(String path) {
        if (!tree.at(path).isMissingNode()) {
            apply(new Edit(Edit.Op.REMOVE, path, null));
        }
    }

    /** Adds to the end of a list. */
    void append(String list, JsonNode value) {
        apply(new Edit(Edit.Op.ADD, list + "/-", value));
    }

    private void apply(Edit edit) {
        String fault = apply(tree, edit);
        if (fault != null) {
            throw new IllegalStateException("an edit of its own does not fit the scenario: " + fault);
        }
        edits.add(edit);
    }

    /** Applies one edit to a tree; what is wrong with it, for people, or null when it is done. */
    static @Nullable String apply(ObjectNode tree, Edit edit) {
        JsonPointer place;
        try {
            place = JsonPointer.compile(edit.path());
        } catch (IllegalArgumentException e) {
            return "\"" + edit.path() + "\" is no JSON Pointer; expected one such as \"/kitchen/days\"";
        }
        if (place.matches()) {
            return "the whole scenario cannot be edited at once; expected a path such as \"/kitchen/days\"";
        }
        JsonNode parent = tree.at(place.head());
        JsonNode value = edit.value() == null ? null : edit.value().deepCopy();
        boolean there = !tree.at(place).isMissingNode();
        if (edit.op() != Edit.Op.ADD && !there) {
            return edit.path() + " is not in the scenario; it has changed since the edit was made";
        }
        if (parent instanceof ObjectNode object) {
            if (value == null) {
                object.remove(name(place));
            } else {
                object.set(name(place), value);
            }
            return null;
        }
        if (parent instanceof ArrayNode list) {
            return apply(list, edit, place.last().getMatchingIndex(), value);
        }
        return "the scenario has nothing that " + edit.path()
                + " could stand in; it has changed since the edit was made";
    }

    private static @Nullable String apply(ArrayNode list, Edit edit, int index, @Nullable JsonNode value) {
        boolean atEnd = edit.path().endsWith("/-");
        if (value == null) {
            list.remove(index);
        } else if (edit.op() == Edit.Op.REPLACE) {
            list.set(index, value);
        } else if (atEnd) {
            list.add(value);
        } else if (index >= 0 && index <= list.size()) {
            list.insert(index, value);
        } else {
            return edit.path() + " is no place of a list of " + list.size();
        }
        return null;
    }

    private static String name(JsonPointer place) {
        return place.last().getMatchingProperty();
    }
}
