package packpot.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import packpot.audit.DogAudit;
import packpot.audit.NutrientLine;
import packpot.explain.PlanComparison;
import packpot.explain.Planner;
import packpot.units.Show;

/** Nutrients that a change of plan moves far, dogs with the same figures on one line. */
final class MovedNutrientsText {

    private MovedNutrientsText() {}

    static void write(Page page, List<PlansBeside.Column> columns) {
        Map<String, PlanComparison.NutrientMove> moved = new LinkedHashMap<>();
        columns.forEach(column -> column.plan()
                .comparison()
                .nutrients()
                .forEach(move -> moved.putIfAbsent(move.nutrient() + "/" + move.dog(), move)));
        if (moved.isEmpty()) {
            page.raw("\nNo nutrient of any dog moved far.\n");
            return;
        }
        // Dogs that share a pot mostly share the figures too, and then a line.
        Map<List<String>, List<String>> dogsOfLine = new LinkedHashMap<>();
        moved.values()
                .forEach(move -> dogsOfLine
                        .computeIfAbsent(nutrientCells(move, columns), cells -> new ArrayList<>())
                        .add(move.dog()));
        page.title("Nutrients that moved far, per 1000 kcal");
        TextTable table = PlansBeside.table(columns);
        dogsOfLine.forEach((cells, dogs) -> {
            String[] row = cells.toArray(new String[0]);
            row[row.length - 1] = String.join(", ", dogs) + ": " + row[row.length - 1];
            table.row(row);
        });
        page.table(table);
    }

    private static List<String> nutrientCells(PlanComparison.NutrientMove move, List<PlansBeside.Column> columns) {
        List<String> cells = new ArrayList<>();
        cells.add(Show.number(move.before()));
        columns.forEach(column -> cells.add(got(column.plan().planned(), move)));
        cells.add(move.label() + (move.unit().isEmpty() ? "" : ", " + move.unit()) + limits(move));
        return cells;
    }

    private static String limits(PlanComparison.NutrientMove move) {
        Double minimum = move.minimum();
        Double maximum = move.maximum();
        String least = minimum == null ? "" : "at least " + Show.number(minimum);
        String most = maximum == null ? "" : "at most " + Show.number(maximum);
        return least.isEmpty() && most.isEmpty()
                ? ""
                : " (" + least + (least.isEmpty() || most.isEmpty() ? "" : ", ") + most + ")";
    }

    private static String got(Planner.Result.Planned planned, PlanComparison.NutrientMove move) {
        for (DogAudit dog : planned.verdict().dogs()) {
            for (NutrientLine line : dog.nutrients()) {
                if (dog.dog().equals(move.dog()) && line.key().equals(move.nutrient())) {
                    return Show.number(line.got());
                }
            }
        }
        return PlansBeside.NONE;
    }
}
