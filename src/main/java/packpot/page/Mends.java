package packpot.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import packpot.explain.Mend;
import packpot.explain.MendEdits;
import packpot.explain.RecipeMend;
import packpot.explain.WhyNot;
import packpot.plan.Plan;
import packpot.report.WhyNotReport;
import packpot.units.Show;

/** What pressing the button of a mend does to the scenario. */
final class Mends {

    private Mends() {}

    /** The edits of each mend, in the order of the answer, in the form of a JSON Patch; none for one that has none. */
    static List<Object> edits(WhyNot.Answer.NoPlan answer, MendEdits edits) {
        List<Object> all = new ArrayList<>();
        for (Mend mend : answer.mends()) {
            all.add(edits.of(mend).orElse(List.of()).stream()
                    .map(WhyNotReport::data)
                    .toList());
        }
        return all;
    }

    /** The foods of each mended recipe with their amounts, in the order of the mends; none for a mend that failed. */
    static List<Object> recipes(List<RecipeMend> mends) {
        List<Object> recipes = new ArrayList<>();
        for (RecipeMend mend : mends) {
            recipes.add(
                    mend.outcome() instanceof RecipeMend.Outcome.Planned planned ? recipe(planned.plan()) : Map.of());
        }
        return recipes;
    }

    private static Map<String, Object> recipe(Plan plan) {
        List<Object> foods = new ArrayList<>();
        plan.pot().forEach(each -> foods.add(food(each.label(), each.grams())));
        Map<String, Object> recipe = new LinkedHashMap<>();
        recipe.put("days", plan.days());
        recipe.put("foods", foods);
        List<Object> additions = new ArrayList<>();
        for (Plan.DogPlan dog : plan.dogs()) {
            for (Plan.Addition addition : dog.additions()) {
                Map<String, Object> line = food(addition.label(), addition.gramsInBatch() / dog.daysFed());
                line.put("dog", dog.name());
                additions.add(line);
            }
        }
        if (!additions.isEmpty()) {
            recipe.put("additions", additions);
        }
        return recipe;
    }

    private static Map<String, Object> food(String label, double grams) {
        Map<String, Object> line = new LinkedHashMap<>();
        line.put("food", label);
        line.put("amount", Show.number(grams).replace(",", "") + " g");
        return line;
    }
}
