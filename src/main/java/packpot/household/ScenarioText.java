package packpot.household;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayList;
import java.util.List;

/** A scenario's tree as the text of a file that people go on editing: what fits on a line stands on one. */
public final class ScenarioText {
    private static final int WIDTH = 120;
    private static final String INDENT = "  ";

    private ScenarioText() {}

    public static String of(ObjectNode scenario) {
        return broken(scenario, "") + "\n";
    }

    private static String node(JsonNode node, String indent, int before) {
        String line = line(node);
        return node.isContainerNode() && indent.length() + before + line.length() > WIDTH ? broken(node, indent) : line;
    }

    private static String broken(JsonNode node, String indent) {
        String inner = indent + INDENT;
        List<String> parts = new ArrayList<>();
        if (node.isObject()) {
            node.properties().forEach(field -> {
                String key = line(TextNode.valueOf(field.getKey())) + ": ";
                parts.add(inner + key + node(field.getValue(), inner, key.length() + 1));
            });
        } else {
            node.forEach(each -> parts.add(inner + node(each, inner, 1)));
        }
        String ends = node.isObject() ? "{}" : "[]";
        return ends.charAt(0) + "\n" + String.join(",\n", parts) + "\n" + indent + ends.charAt(1);
    }

    private static String line(JsonNode node) {
        List<String> parts = new ArrayList<>();
        if (node.isObject()) {
            node.properties()
                    .forEach(
                            field -> parts.add(line(TextNode.valueOf(field.getKey())) + ": " + line(field.getValue())));
            return "{" + String.join(", ", parts) + "}";
        }
        if (node.isArray()) {
            node.forEach(each -> parts.add(line(each)));
            return "[" + String.join(", ", parts) + "]";
        }
        return node.toString();
    }
}
