package packpot.sheets;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import packpot.data.ModelFiles;
import packpot.data.Row;
import packpot.food.Food;
import packpot.food.Keeps;
import packpot.food.UnsafeFoods;
import packpot.plan.Plan;

/**
 * The work of a cook day.
 *
 * @param cooked foods that are cooked, that first which cooks longest
 * @param after what is stirred in once the batch is done
 * @param soak what is soaked the day before
 * @param thaw foods that are taken out of the freezer the day before
 * @param loads how many times the pot is filled
 * @param never foods that never go into it
 */
public record CookDay(
        List<Step> cooked, List<Step> after, List<Step> soak, List<Food> thaw, int loads, List<String> never) {
    /** Nothing to be weighed. */
    private static final double NOTHING_GRAMS = 0.5;

    /**
     * One food.
     *
     * @param index of it in the plan's pot
     * @param apart whether it is cooked in a pan of its own, whose water is poured away
     * @param minutes that it usually cooks once the pot boils
     * @param waterGrams that it takes up; 0 for a food that takes up none, or whose water is poured away
     * @param celsius that its middle reaches; empty where none is published
     */
    public record Step(
            int index, Plan.Ingredient food, boolean apart, int minutes, double waterGrams, OptionalDouble celsius) {}

    public CookDay {
        cooked = List.copyOf(cooked);
        after = List.copyOf(after);
        soak = List.copyOf(soak);
        thaw = List.copyOf(thaw);
        never = List.copyOf(never);
    }

    /** The work of a plan. */
    public static CookDay of(SheetSource source) {
        List<Row> minutes = ModelFiles.table("cook_minutes.csv");
        List<Row> temperatures = ModelFiles.table("cook_temperatures.csv");
        List<Step> cooked = new ArrayList<>();
        List<Step> after = new ArrayList<>();
        List<Food> thaw = new ArrayList<>();
        List<Plan.Ingredient> pot = source.plan().pot();
        for (int i = 0; i < pot.size(); i++) {
            Plan.Ingredient ingredient = pot.get(i);
            Food food = source.item(ingredient.food()).food();
            String family = food.kitchen().cookFamily();
            int time = (int) row(minutes, "family", "words", family, food)
                    .map(row -> row.number("minutes"))
                    .orElse(0.0)
                    .doubleValue();
            boolean apart = ingredient.method().equals("drained");
            double water = apart ? 0 : Math.max(0, ingredient.cookedGrams() - ingredient.grams());
            Step step = new Step(
                    i, ingredient, apart, time, water < NOTHING_GRAMS ? 0 : water, temperature(temperatures, food));
            (ingredient.method().equals("as-is") ? after : cooked).add(step);
            if (food.kitchen().keeps() == Keeps.FROZEN && food.group().isAnimal()) {
                thaw.add(food);
            }
        }
        cooked.sort(Comparator.comparingInt((Step step) -> -step.minutes()).thenComparingInt(Step::index));
        Integer loads = source.plan().batch().potLoads();
        return new CookDay(
                cooked,
                after,
                cooked.stream()
                        .filter(step -> step.food().preparation().startsWith("soaked"))
                        .toList(),
                thaw,
                loads == null ? 1 : loads,
                source.knowledge().unsafeFoods().all().stream()
                        .filter(food -> food.rule() == UnsafeFoods.Rule.BLOCK)
                        .map(UnsafeFoods.UnsafeFood::food)
                        .toList());
    }

    /** The row of a family whose words the food's name holds, or else that of the family without words. */
    private static java.util.Optional<Row> row(
            List<Row> table, String familyColumn, String wordsColumn, String family, Food food) {
        String name = (food.label() + " " + food.name()).toLowerCase(Locale.ROOT);
        return table.stream()
                .filter(row -> row.list(familyColumn).contains(family))
                .filter(row -> row.text(wordsColumn).isEmpty()
                        || row.list(wordsColumn).stream().anyMatch(name::contains))
                .max(Comparator.comparingInt(row -> row.text(wordsColumn).length()));
    }

    /** The highest that is published for food of this family: whether meat is ground its name may not say. */
    private static OptionalDouble temperature(List<Row> table, Food food) {
        String family = food.kitchen().cookFamily();
        String name = food.label().toLowerCase(Locale.ROOT);
        boolean poultry = name.contains("chicken") || name.contains("turkey") || name.contains("duck");
        String asked = poultry && food.group().isAnimal() && !family.equals("egg") ? "poultry" : family;
        return table.stream()
                .filter(row -> row.list("families").contains(asked))
                .flatMapToDouble(row -> row.optionalNumber("min_celsius").stream())
                .max();
    }
}
