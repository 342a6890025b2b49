package packpot;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/** Small households drawn at random, the same ones for the same seed. */
final class RandomHouseholds {
    private static final List<String> NAMES = List.of("Ash", "Elm", "Oak");
    private static final List<String> ACTIVITIES = List.of("low", "moderate", "high");
    /** Label, and about what a kilogram costs. */
    private static final List<Object[]> MEATS = List.of(
            new Object[] {"ground turkey, 93 % lean", 9.0},
            new Object[] {"chicken thigh, skinless", 6.0},
            new Object[] {"ground beef, 90 % lean", 13.0},
            new Object[] {"pork loin, lean", 7.0});

    private static final List<Object[]> STARCHES = List.of(
            new Object[] {"white rice, enriched, dry", 2.0},
            new Object[] {"rolled oats, dry", 3.0},
            new Object[] {"potato", 2.0},
            new Object[] {"sweet potato", 3.0});
    private static final List<Object[]> VEGETABLES = List.of(
            new Object[] {"carrots", 2.0},
            new Object[] {"green beans, frozen", 4.0},
            new Object[] {"green peas, frozen", 4.0},
            new Object[] {"spinach, frozen", 4.0});
    private static final List<String> ALWAYS = List.of(
            "{\"food\": \"chicken liver\", \"pack\": \"500 g\", \"price\": \"$2.60\"}",
            "{\"food\": \"egg, whole\", \"price\": \"$5.00/kg\"}",
            "{\"food\": \"canola oil\", \"pack\": \"500 g\", \"price\": \"$3.00\"}",
            "{\"food\": \"calcium carbonate\", \"pack\": \"250 g\", \"price\": \"$6.00\"}",
            "{\"food\": \"potassium chloride\", \"pack\": \"250 g\", \"price\": \"$7.00\"}",
            "{\"food\": \"salt, iodised, 45 ug per g\", \"pack\": \"500 g\", \"price\": \"$1.00\"}",
            "{\"food\": \"kelp tablet, 150 ug iodine\", \"pack\": \"200 tablets\", \"price\": \"$9.00\"}",
            "{\"food\": \"zinc gluconate\", \"pack\": \"100 tablets\", \"price\": \"$7.00\"}",
            "{\"food\": \"copper gluconate\", \"pack\": \"100 tablets\", \"price\": \"$6.00\"}",
            "{\"food\": \"manganese gluconate\", \"pack\": \"100 tablets\", \"price\": \"$7.00\"}",
            "{\"food\": \"vitamin e oil\", \"pack\": \"50 g\", \"price\": \"$9.00\"}",
            "{\"food\": \"vitamin d3 drops\", \"pack\": \"300 drops\", \"price\": \"$8.00\"}");

    private RandomHouseholds() {}

    /** The scenario of a seed, a valid one. */
    static String scenario(int seed) {
        Random random = new Random(seed);
        int days = 5 + random.nextInt(10);
        List<String> dogs = new ArrayList<>();
        for (String name : NAMES.subList(0, 1 + random.nextInt(3))) {
            dogs.add(String.format(
                    Locale.ROOT,
                    "{\"name\": \"%s\", \"weight\": \"%.1f kg\", \"age\": \"%d years\", \"activity\": \"%s\"}",
                    name,
                    Math.exp(Math.log(3) + random.nextDouble() * Math.log(12)),
                    2 + random.nextInt(9),
                    ACTIVITIES.get(random.nextInt(3))));
        }
        List<String> pantry = new ArrayList<>(ALWAYS);
        List.of(MEATS, STARCHES, VEGETABLES).forEach(group -> pantry.addAll(some(group, random)));
        Collections.shuffle(pantry, random);
        return String.format(
                Locale.ROOT,
                "{\"packpot\": 1, \"name\": \"Household %d\", \"units\": \"metric\", \"profile\": \"aafco-2016\","
                        + " \"dogs\": [%s], \"kitchen\": {\"days\": %d, \"bag\": \"1 l\"}, \"pantry\": [%s]}",
                seed,
                String.join(", ", dogs),
                days,
                String.join(",\n", pantry));
    }

    private static List<String> some(List<Object[]> group, Random random) {
        List<Object[]> drawn = new ArrayList<>(group);
        Collections.shuffle(drawn, random);
        return drawn.subList(0, 2).stream()
                .map(food -> {
                    double price = (double) food[1] * (0.7 + 0.6 * random.nextDouble());
                    boolean loose = random.nextBoolean();
                    double pack = 0.5 + 0.25 * random.nextInt(7);
                    return loose
                            ? String.format(Locale.ROOT, "{\"food\": \"%s\", \"price\": \"$%.2f/kg\"}", food[0], price)
                            : String.format(
                                    Locale.ROOT,
                                    "{\"food\": \"%s\", \"pack\": \"%.2f kg\", \"price\": \"$%.2f\"}",
                                    food[0],
                                    pack,
                                    price * pack);
                })
                .toList();
    }
}
