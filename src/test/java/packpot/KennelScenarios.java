package packpot;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import packpot.food.Food;

/** Kennels of grown dogs and a large kitchen: the pantry of a demo, and more foods of the catalogue in packs. */
public final class KennelScenarios {
    private static final Path FOLDER = Path.of("target", "generated");
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String[] ACTIVITIES = {"low", "moderate", "high"};

    private KennelScenarios() {}

    /**
     * A kennel, written to its file. The same figures give the same kennel.
     *
     * @param dogs from 3 to 45 kg
     * @param foods in the pantry, supplements among them
     */
    public static Path file(int dogs, int foods) {
        Path file = FOLDER.resolve("kennel-" + dogs + "-" + foods + ".json");
        try {
            Files.createDirectories(FOLDER);
            JSON.writerWithDefaultPrettyPrinter().writeValue(file.toFile(), scenario(dogs, foods));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return file;
    }

    private static ObjectNode scenario(int dogs, int foods) throws IOException {
        Random random = new Random(7);
        ObjectNode scenario = (ObjectNode) JSON.readTree(Demo.text(Demo.file("three-adults")));
        scenario.put("name", "Kennel of " + dogs).remove(List.of("budget", "horizon", "shape"));
        ArrayNode all = scenario.putArray("dogs");
        for (int i = 1; i <= dogs; i++) {
            all.addObject()
                    .put("name", "Dog " + i)
                    .put("weight", String.format(Locale.ROOT, "%.1f kg", 3 + 42 * random.nextDouble()))
                    .put("age", 2 + random.nextInt(9) + " years")
                    .put("neutered", true)
                    .put("activity", ACTIVITIES[random.nextInt(ACTIVITIES.length)]);
        }
        scenario.putObject("kitchen").put("days", 7).put("mealsPerDay", 2).put("bag", "gallon");
        more((ArrayNode) scenario.get("pantry"), foods, random);
        return scenario;
    }

    private static void more(ArrayNode pantry, int foods, Random random) {
        Set<String> known = new HashSet<>();
        for (var item : pantry) {
            ((ObjectNode) item).remove(List.of("mustUse", "atMost", "onHand"));
            known.add(item.get("food").asText());
            if (!item.has("price")) {
                ((ObjectNode) item).put("onHand", "60 kg");
            }
        }
        List<Food> others = new ArrayList<>(Demo.knowledge().foods().all().stream()
                .filter(food -> !food.isSupplement() && food.state().equals("raw") && !known.contains(food.label()))
                .toList());
        Collections.shuffle(others, random);
        for (Food food : others.subList(0, Math.max(0, Math.min(others.size(), foods - pantry.size())))) {
            pantry.addObject()
                    .put("food", food.label())
                    .put("pack", (1 + random.nextInt(4)) * 500 + " g")
                    .put("price", String.format(Locale.ROOT, "$%.2f", 2 + 10 * random.nextDouble()));
        }
    }
}
