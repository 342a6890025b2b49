package packpot.solver;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import packpot.Reference;
import packpot.Reference.Line;
import packpot.solver.LinearModel.Variable;

/** The published diet problems as models of ours. */
final class DietModels {

    /** A model with the variable of each food. */
    record Diet(LinearModel<String> model, Map<String, Variable> foods) {}

    private DietModels() {}

    /** Stigler's table: dollars a day spent on each food, which cost what they are. */
    static Diet stigler() {
        LinearModel<String> model = new LinearModel<>();
        List<Line> table = Reference.table("stigler_1945.csv");
        Map<String, Variable> foods = new LinkedHashMap<>();
        for (Line food : table) {
            Variable dollars = model.variable(food.text("food"), 0, Double.POSITIVE_INFINITY);
            model.objective().add(1, dollars);
            foods.put(food.text("food"), dollars);
        }
        for (Line minimum : Reference.table("stigler_1945_minimums.csv")) {
            String nutrient = minimum.text("nutrient");
            Expression sum = new Expression();
            table.forEach(food -> sum.add(food.number(nutrient + "_per_dollar"), foods.get(food.text("food"))));
            model.atLeast(nutrient, sum, minimum.number("daily_minimum"), nutrient);
        }
        return new Diet(model, foods);
    }

    /** Six foods with bounds of their own. */
    static Diet diet6() {
        return small("diet6", true);
    }

    /** Nine foods whose nutrients lie in ranges. */
    static Diet diet9() {
        return small("diet9", false);
    }

    private static Diet small(String name, boolean bounded) {
        LinearModel<String> model = new LinearModel<>();
        List<Line> table = Reference.table(name + ".csv");
        Map<String, Variable> foods = new LinkedHashMap<>();
        for (Line food : table) {
            double least = bounded ? food.number("min_amount") : 0;
            double most =
                    bounded ? food.optional("max_amount").orElse(Double.POSITIVE_INFINITY) : Double.POSITIVE_INFINITY;
            Variable amount = model.variable(food.text("food"), least, most);
            model.objective().add(food.number("cost"), amount);
            foods.put(food.text("food"), amount);
        }
        for (Line row : rows(name)) {
            Expression sum = new Expression();
            table.forEach(food -> sum.add(food.number(row.text("nutrient")), foods.get(food.text("food"))));
            model.row(
                    row.text("nutrient"),
                    sum,
                    row.optional("least").orElse(Double.NEGATIVE_INFINITY),
                    row.optional("most").orElse(Double.POSITIVE_INFINITY),
                    name);
        }
        return new Diet(model, foods);
    }

    static double publishedOptimum(String name) {
        return rows(name).get(0).number("optimum");
    }

    private static List<Line> rows(String name) {
        return Reference.table("diet_rows.csv").stream()
                .filter(row -> row.text("instance").equals(name))
                .toList();
    }
}
