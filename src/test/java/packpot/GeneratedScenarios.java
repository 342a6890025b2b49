package packpot;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import packpot.food.Food;
import packpot.food.FoodGroup;

/**
 * Scenarios of all kinds drawn at random: one to eight dogs of every stage and size, a part of the catalogue in packs,
 * other shapes and days. The same seed gives the same scenario. Some have no plan. They are written as files, and read as
 * a user's.
 */
public final class GeneratedScenarios {
    static final int COUNT = 200;
    private static final Path FOLDER = Path.of("target", "generated");
    private static final List<String> NAMES = List.of("Ash", "Elm", "Oak", "Fir", "Yew", "Box", "Bay", "Sloe");
    /** How many dogs: large households are rarer, as in life. */
    private static final int[] DOGS = {1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 4, 4, 5, 6, 7, 8};

    /** Least and most foods of a group that a pantry has. */
    private static final Map<FoodGroup, int[]> PANTRY = new EnumMap<>(Map.ofEntries(
            Map.entry(FoodGroup.MEAT, new int[] {2, 5}),
            Map.entry(FoodGroup.FISH, new int[] {0, 2}),
            Map.entry(FoodGroup.EGG, new int[] {1, 2}),
            Map.entry(FoodGroup.ORGAN, new int[] {0, 1}),
            Map.entry(FoodGroup.LIVER, new int[] {1, 2}),
            Map.entry(FoodGroup.SHELLFISH, new int[] {0, 1}),
            Map.entry(FoodGroup.GRAIN, new int[] {1, 3}),
            Map.entry(FoodGroup.POTATO, new int[] {0, 2}),
            Map.entry(FoodGroup.PULSE, new int[] {0, 2}),
            Map.entry(FoodGroup.VEGETABLE, new int[] {2, 5}),
            Map.entry(FoodGroup.OXALATE_GREEN, new int[] {0, 1}),
            Map.entry(FoodGroup.FRUIT, new int[] {0, 1}),
            Map.entry(FoodGroup.DAIRY, new int[] {0, 2}),
            Map.entry(FoodGroup.SEED, new int[] {0, 2}),
            Map.entry(FoodGroup.OIL, new int[] {1, 2})));

    /** What is in nearly every cupboard that feeds dogs; with too little of it there is no plan. */
    private static final List<String> USUAL = List.of(
            "calcium-carbonate",
            "dicalcium-phosphate-anhydrous",
            "potassium-chloride",
            "salt-iodised-45",
            "kelp-tablet-150ug",
            "zinc-gluconate",
            "copper-gluconate",
            "manganese-gluconate",
            "vitamin-e-oil-400iu-per-g",
            "vitamin-d3-drops",
            "fish-oil-180-120");

    /** No kitchen can measure it, and the reader says so. */
    private static final String TOO_STRONG = "potassium-iodide";

    private final Random random;

    private GeneratedScenarios(int seed) {
        random = new Random(seed);
    }

    /** Every scenario, written anew. */
    static Stream<Path> files() {
        return IntStream.rangeClosed(1, COUNT).mapToObj(GeneratedScenarios::file);
    }

    /** The scenario of a seed, written to its file. */
    public static Path file(int seed) {
        Path file = FOLDER.resolve(String.format(Locale.ROOT, "household-%03d.json", seed));
        try {
            Files.createDirectories(FOLDER);
            new ObjectMapper()
                    .writerWithDefaultPrettyPrinter()
                    .writeValue(file.toFile(), new GeneratedScenarios(seed).scenario(seed));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return file;
    }

    private ObjectNode scenario(int seed) {
        ObjectNode scenario = object().put("packpot", 1).put("name", "Household " + seed);
        scenario.put("start", "2026-03-07").put("units", maybe(0.5) ? "us" : "metric");
        scenario.put("profile", oneOf("aafco-2016", "aafco-2016", "fediaf", "nrc-2006"));
        scenario.put("margin", between(0, 8) + " %");
        ArrayNode dogs = scenario.putArray("dogs");
        NAMES.subList(0, DOGS[random.nextInt(DOGS.length)]).forEach(name -> dogs.add(dog(name)));
        ObjectNode kitchen = scenario.putObject("kitchen").put("days", between(3, 21));
        kitchen.put("mealsPerDay", between(1, 4)).put("fridgeDays", between(1, 3));
        kitchen.put("bag", oneOf("pint", "quart", "gallon", "1 l"));
        if (maybe(0.3)) {
            kitchen.put("pot", between(8, 40) + " l").put("mostPotLoads", between(2, 6));
        }
        if (maybe(0.3)) {
            kitchen.putObject("freezer").put("volume", between(60, 400) + " l");
        }
        if (maybe(0.4)) {
            scenario.set("shape", shape());
        }
        scenario.set("pantry", pantry());
        return scenario;
    }

    private ObjectNode dog(String name) {
        double kilograms = Math.exp(Math.log(2.5) + random.nextDouble() * Math.log(26));
        ObjectNode dog = object().put("name", name);
        switch (between(0, 9)) {
            case 0, 1 -> {
                int months = between(2, 10);
                double grown = Math.exp(-Math.exp(-(months - 3.5) / 2.5));
                dog.put("expectedAdultWeight", weight(kilograms)).put("age", months + " months");
                return dog.put("weight", weight(kilograms * grown)).put("sex", "male");
            }
            case 2 -> {
                dog.put("sex", "female").put("neutered", false);
                if (maybe(0.5)) {
                    dog.putObject("gestation").put("week", between(1, 9));
                } else {
                    dog.putObject("lactation").put("week", between(1, 4)).put("puppies", between(1, 7));
                }
            }
            case 3 -> dog.put("goalWeight", weight(kilograms * (maybe(0.7) ? 0.85 : 1.1)));
            default -> dog.put("neutered", maybe(0.7));
        }
        dog.put("weight", weight(kilograms)).put("age", between(2, 12) + " years");
        dog.put("activity", oneOf("low", "moderate", "moderate", "high", "working"));
        if (maybe(0.15)) {
            dog.put("treats", between(5, 40) + " kcal");
        }
        // What every dog avoids has no place in a pantry, so the first dog eats everything.
        if (!name.equals(NAMES.get(0)) && maybe(0.2)) {
            dog.putArray("avoid").add(oneOf("beef", "chicken", "fish", "dairy"));
        }
        return dog;
    }

    private ObjectNode shape() {
        ObjectNode shape = object().put("fewestFoods", between(3, 6)).put("mostFoods", between(7, 12));
        shape.put("mostStirredIn", between(3, 9)).put("mostAdditions", between(2, 5));
        shape.put("mostAdditionsSpecialNeeds", between(5, 7)).put("smallestUseful", between(1, 3) + " %");
        ObjectNode shares = shape.putObject("shares");
        shares.putObject("meat").put("least", between(20, 40) + " %").put("most", between(50, 75) + " %");
        shares.putObject("vegetable").put("least", between(5, 15) + " %").put("most", between(25, 45) + " %");
        return shape;
    }

    private ArrayNode pantry() {
        List<ObjectNode> items = new ArrayList<>();
        PANTRY.forEach((group, room) -> {
            List<Food> foods = foods(group);
            foods.subList(0, Math.min(foods.size(), between(room[0], room[1])))
                    .forEach(food -> items.add(item(food, 1)));
        });
        double usual = maybe(0.15) ? 0.6 : 0.98;
        for (Food food : foods(FoodGroup.SUPPLEMENT)) {
            if (maybe(USUAL.contains(food.id()) ? usual : 0.12)) {
                items.add(item(food, 8));
            }
        }
        Collections.shuffle(items, random);
        return JsonNodeFactory.instance.arrayNode().addAll(items);
    }

    /** Foods of a group as one buys them, in an order drawn anew. */
    private List<Food> foods(FoodGroup group) {
        List<Food> foods = new ArrayList<>(Demo.knowledge().foods().all().stream()
                .filter(food -> food.group() == group && !food.state().equals("cooked"))
                .filter(food -> !food.id().equals(TOO_STRONG))
                .toList());
        Collections.shuffle(foods, random);
        return foods;
    }

    /** A food in a pack of its own, in its usual pack, or loose. */
    private ObjectNode item(Food food, double dearness) {
        ObjectNode item = object().put("food", food.label());
        double perKilogram = dearness * (2 + 10 * random.nextDouble());
        boolean supplement = food.isSupplement();
        boolean usualPack = Demo.knowledge().measures().usualPack(food) != null;
        switch (between(usualPack ? 0 : 1, 2)) {
            case 0 -> item.put("price", money(supplement ? 4 + 8 * random.nextDouble() : 1 + perKilogram / 2));
            case 1 -> {
                double kilograms = supplement ? 0.05 * between(2, 8) : 0.25 * between(1, 10);
                item.put("pack", String.format(Locale.ROOT, "%.2f kg", kilograms));
                item.put("price", money(perKilogram * kilograms));
            }
            default -> item.put("price", money(perKilogram) + "/kg");
        }
        if (!supplement && maybe(0.08)) {
            item.put("onHand", between(1, 8) * 100 + " g").put("mustUse", maybe(0.4));
        } else if (!supplement && maybe(0.05)) {
            item.put("atMost", between(2, 20) * 100 + " g");
        }
        return item;
    }

    private int between(int least, int most) {
        return least + random.nextInt(most - least + 1);
    }

    private boolean maybe(double probability) {
        return random.nextDouble() < probability;
    }

    private String oneOf(String... words) {
        return words[random.nextInt(words.length)];
    }

    private static String weight(double kilograms) {
        return String.format(Locale.ROOT, "%.1f kg", kilograms);
    }

    private static String money(double dollars) {
        return String.format(Locale.ROOT, "$%.2f", dollars);
    }

    private static ObjectNode object() {
        return JsonNodeFactory.instance.objectNode();
    }
}
