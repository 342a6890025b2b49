package packpot.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ContainerNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Good input made bad in the ways of people, programs and attackers; the same for the same draws. */
final class Mutations {
    private static final JsonMapper JSON = new JsonMapper();
    private static final Pattern FIGURE = Pattern.compile("\\d+(\\.\\d+)?");
    private static final List<String> FIGURES = List.of(
            "0",
            "1",
            "-1",
            "0.0001",
            "1/3",
            "1/0",
            "1e9",
            "1e308",
            "1e-308",
            "999999999",
            "2147483648",
            "NaN",
            "Infinity",
            "9".repeat(400),
            "0x10",
            "1,5",
            "1.000.000",
            "٣",
            "½",
            "--1",
            "1e",
            ".5",
            "5.");
    private static final List<String> UNITS = List.of(
            "lb", "kg", "g", "mg", "oz", "cup", "tsp", "l", "qt", "gallon", "cu ft", "kcal", "%", "tablets", "drops",
            "large", "years", "months", "weeks", "days", "$", "€", "USD", "/lb", "/kg", "kg kg", "lbs", "K");
    private static final List<String> WORDS = List.of(
            "",
            " ",
            "null",
            "\u0000",
            "\n",
            "\u202e",
            "\u200d",
            "\ud800",
            "🐕‍🦺",
            "كلب",
            "कुत्ता",
            "木の葉",
            "e\u0301\u0301\u0301",
            "%s%n",
            "${7*7}",
            "../../etc/passwd",
            "\"'<&>",
            ":",
            "::",
            "all",
            "all ",
            "comes from ",
            "x".repeat(81),
            "x".repeat(5000),
            "2026-02-30",
            "0000-00-00",
            "+999999999-12-31",
            "2026-03-07",
            "9999-12-31",
            "de-DE",
            "xx-XX-x-posix",
            "(".repeat(30),
            "a{9999}");

    private final Random random;
    private final List<JsonNode> values = new ArrayList<>();
    private final List<String> names;

    /** Draws from a random sequence, and from what these files hold. */
    Mutations(Random random, List<Path> files) {
        this.random = random;
        TreeSet<String> known = new TreeSet<>();
        for (Path file : files) {
            gather(tree(bytes(file)), known);
        }
        names = List.copyOf(known);
    }

    private void gather(JsonNode node, TreeSet<String> known) {
        values.add(node);
        node.properties().forEach(field -> known.add(field.getKey()));
        node.forEach(child -> gather(child, known));
    }

    static byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static JsonNode tree(byte[] text) {
        try {
            return JSON.readTree(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static List<Path> jsonFiles(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".json"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    <T> T one(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    /** A tree with one to four of its nodes changed, as text; now and then the text is changed too. */
    byte[] changed(byte[] text) {
        JsonNode tree = tree(text);
        for (int n = 1 + random.nextInt(4); n > 0; n--) {
            changeOne(tree);
        }
        String changed = tree.toString();
        return random.nextInt(8) == 0 ? torn(changed) : changed.getBytes(StandardCharsets.UTF_8);
    }

    private void changeOne(JsonNode tree) {
        List<ContainerNode<?>> containers = new ArrayList<>();
        containers(tree, containers);
        if (containers.isEmpty()) {
            return;
        }
        ContainerNode<?> container = one(containers);
        if (container instanceof ObjectNode object) {
            List<String> fields =
                    new ArrayList<>(object.propertyStream().map(f -> f.getKey()).toList());
            if (fields.isEmpty() || random.nextInt(5) == 0) {
                object.set(random.nextInt(4) == 0 ? one(WORDS) : one(names), value());
            } else {
                String field = one(fields);
                if (random.nextInt(6) == 0) {
                    object.remove(field);
                } else {
                    object.set(field, other(object.get(field)));
                }
            }
        } else if (container instanceof ArrayNode array && !array.isEmpty()) {
            int at = random.nextInt(array.size());
            switch (random.nextInt(4)) {
                case 0 -> array.remove(at);
                case 1 ->
                    array.insert(at, array.get(random.nextInt(array.size())).deepCopy());
                case 2 -> array.set(at, value());
                default -> array.set(at, other(array.get(at)));
            }
        }
    }

    private static void containers(JsonNode node, List<ContainerNode<?>> found) {
        if (node instanceof ContainerNode<?> container) {
            found.add(container);
            node.forEach(child -> containers(child, found));
        }
    }

    /** Something near a value, or something else altogether. */
    private JsonNode other(JsonNode value) {
        if (random.nextInt(4) == 0 || value.isContainerNode()) {
            return value();
        }
        JsonNodeFactory make = JsonNodeFactory.instance;
        if (value.isTextual()) {
            return make.textNode(text(value.textValue()));
        }
        return value.isNumber() ? number() : make.booleanNode(random.nextBoolean());
    }

    private JsonNode number() {
        JsonNodeFactory make = JsonNodeFactory.instance;
        return switch (random.nextInt(5)) {
            case 0 -> make.numberNode(random.nextInt(40) - 5);
            case 1 -> make.numberNode(Integer.MAX_VALUE + random.nextInt(3) * 1L);
            case 2 -> make.numberNode(new java.math.BigDecimal("1e" + (random.nextInt(700) - 350)));
            case 3 -> make.numberNode(random.nextDouble() * 100);
            default -> make.numberNode(new java.math.BigInteger("9".repeat(1 + random.nextInt(300))));
        };
    }

    private JsonNode value() {
        JsonNodeFactory make = JsonNodeFactory.instance;
        return switch (random.nextInt(9)) {
            case 0 -> make.nullNode();
            case 1 -> make.objectNode();
            case 2 -> make.arrayNode();
            case 3 -> make.booleanNode(random.nextBoolean());
            case 4 -> number();
            case 5 -> make.textNode(one(WORDS));
            case 6 -> make.textNode(one(FIGURES) + " " + one(UNITS));
            default -> one(values).deepCopy();
        };
    }

    /** A text with a figure, a unit or a few letters changed. */
    String text(String text) {
        return switch (random.nextInt(6)) {
            case 0, 1 -> figure(text);
            case 2 -> text.replaceFirst("[a-z/ ]+$", Matcher.quoteReplacement(" " + one(UNITS)));
            case 3 -> text + one(WORDS);
            case 4 -> {
                int at = random.nextInt(text.length() + 1);
                yield text.substring(0, at) + one(WORDS) + text.substring(at);
            }
            default ->
                text.isEmpty()
                        ? one(WORDS)
                        : new StringBuilder(text)
                                .deleteCharAt(random.nextInt(text.length()))
                                .toString();
        };
    }

    /** Another figure in the place of one: a little other, or far off. */
    private String figure(String text) {
        List<MatchResult> figures = FIGURE.matcher(text).results().toList();
        if (figures.isEmpty()) {
            return text + " " + one(FIGURES);
        }
        MatchResult old = one(figures);
        String other = random.nextInt(3) == 0
                ? one(FIGURES)
                : String.valueOf((int) (100 * Double.parseDouble(old.group()) * 2 * random.nextDouble()) / 100.0);
        return text.substring(0, old.start()) + other + text.substring(old.end());
    }

    /** Text with bytes lost, doubled or turned. */
    byte[] torn(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        if (bytes.length == 0) {
            return bytes;
        }
        for (int n = 1 + random.nextInt(3); n > 0; n--) {
            int at = random.nextInt(bytes.length);
            switch (random.nextInt(3)) {
                case 0 -> bytes[at] = (byte) random.nextInt(256);
                case 1 -> bytes[at] = (byte) "{}[]\",:0-e\\".charAt(random.nextInt(11));
                default -> bytes = java.util.Arrays.copyOf(bytes, Math.max(1, at));
            }
        }
        return bytes;
    }
}
