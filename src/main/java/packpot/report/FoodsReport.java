package packpot.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import packpot.food.Constituent;
import packpot.food.Food;
import packpot.food.FoodEnergy;
import packpot.food.Supplement;
import packpot.food.UnsafeFoods;
import packpot.household.Knowledge;
import packpot.household.Nearest;
import packpot.units.Show;

/** Foods of the catalogue. */
public final class FoodsReport {

    private FoodsReport() {}

    /** For people. */
    public static String text(List<String> words, List<Food> found, Knowledge knowledge, boolean details) {
        String asked = String.join(" ", words);
        StringBuilder text = new StringBuilder();
        for (UnsafeFoods.UnsafeFood unsafe : knowledge.unsafeFoods().inName(asked)) {
            if (unsafe.rule() == UnsafeFoods.Rule.BLOCK) {
                text.append("\"")
                        .append(asked)
                        .append("\" is never planned: ")
                        .append(unsafe.food())
                        .append(" harms dogs (")
                        .append(unsafe.why())
                        .append(").\n");
            }
        }
        if (found.isEmpty()) {
            List<String> labels =
                    knowledge.foods().all().stream().map(Food::label).toList();
            return text.append("No food is called ")
                    .append('"')
                    .append(asked)
                    .append('"')
                    .append(Nearest.advice(asked, labels, 5))
                    .append('\n')
                    .toString();
        }
        TextTable table = new TextTable("lllr").row("food", "group", "figures for", "kcal per 100 g");
        for (Food food : found) {
            table.row(food.label(), food.group().key(), food.state(), kcal(food, knowledge));
        }
        text.append(table.render("", TextReport.WIDTH));
        if (details) {
            found.forEach(food -> text.append('\n').append(details(food, knowledge)));
        }
        return text.toString();
    }

    private static String kcal(Food food, Knowledge knowledge) {
        double kcal = 100 * knowledge.foodEnergy().kcalPerGram(food.composition(), FoodEnergy.Method.ATWATER);
        return String.format(Locale.ROOT, "%.0f", kcal);
    }

    private static String details(Food food, Knowledge knowledge) {
        StringBuilder text = new StringBuilder(food.label() + " (" + food.id() + ")\n");
        text.append(Wrap.item(food.name() + "; " + food.source() + ", " + food.found(), "  ", TextReport.WIDTH));
        text.append(Wrap.item(
                "cooked: " + String.join(", ", knowledge.preparations().methods(food)), "  ", TextReport.WIDTH));
        Supplement supplement = food.supplement();
        if (supplement != null) {
            text.append(Wrap.item(
                    supplement.form() + "; " + supplement.activeShare() + "; 1 " + supplement.measureName() + " is "
                            + Show.number(supplement.gramsPerMeasure()) + " g",
                    "  ",
                    TextReport.WIDTH));
        }
        if (food.kitchen().mostShare() < 1) {
            text.append(Wrap.item(
                    "at most " + Show.number(100 * food.kitchen().mostShare()) + " % of a pot: "
                            + food.kitchen().mostShareReason(),
                    "  ",
                    TextReport.WIDTH));
        }
        TextTable table = new TextTable("lr");
        for (Constituent constituent : Constituent.values()) {
            boolean known = food.composition().knows(constituent);
            table.row(
                    constituent.column(),
                    known ? Show.number(100 * food.composition().perGram(constituent)) : "not known");
        }
        return text.append("  per 100 g\n")
                .append(table.render("    ", TextReport.WIDTH))
                .toString();
    }

    /** For programs. */
    public static Object data(List<Food> found, Knowledge knowledge) {
        List<Object> foods = new ArrayList<>();
        for (Food food : found) {
            Map<String, Object> figures = new LinkedHashMap<>();
            for (Constituent constituent : Constituent.values()) {
                figures.put(
                        constituent.column(),
                        food.composition().knows(constituent)
                                ? 100 * food.composition().perGram(constituent)
                                : null);
            }
            Map<String, Object> line = new LinkedHashMap<>();
            line.put("id", food.id());
            line.put("label", food.label());
            line.put("name", food.name());
            line.put("group", food.group().key());
            line.put("state", food.state());
            line.put("source", food.source());
            line.put("found", food.found());
            line.put("cookingMethods", knowledge.preparations().methods(food));
            line.put("per100Grams", figures);
            foods.add(line);
        }
        return Map.of("packpotFoods", JsonReport.FORMAT, "foods", foods);
    }
}
