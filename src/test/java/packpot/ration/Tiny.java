package packpot.ration;

import java.util.List;
import java.util.Map;
import packpot.Demo;
import packpot.food.Constituent;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;

/** A household small enough to reckon the rows of its model by hand. */
final class Tiny {
    static final String DOGS = """
            [{"name": "Ash", "weight": "20 kg", "age": "4 years", "activity": "moderate", "neutered": true},
             {"name": "Elm", "weight": "6 kg", "age": "4 years", "activity": "moderate", "neutered": true,
              "avoid": ["beef", "kelp"]}]""";
    static final String PANTRY = """
            [{"food": "ground turkey, 93 % lean", "pack": "1 kg", "price": "$8.00", "mustUse": "300 g"},
             {"food": "ground beef, 90 % lean", "price": "$12.00/kg"},
             {"food": "chicken liver", "pack": "500 g", "price": "$3.00", "onHand": "200 g", "atMost": "400 g"},
             {"food": "white rice, enriched, dry", "pack": "1 kg", "price": "$2.00"},
             {"food": "carrots", "pack": "1 kg", "price": "$2.00", "wholePacks": true},
             {"food": "canola oil", "pack": "500 g", "price": "$3.00"},
             {"food": "eggshell powder", "onHand": "50 g"},
             {"food": "salt, iodised, 45 ug per g", "pack": "500 g", "price": "$1.00"},
             {"food": "kelp tablet, 150 ug iodine", "pack": "200 tablets", "price": "$9.00"},
             {"food": "vitamin d3 drops", "pack": "300 drops", "price": "$9.00"},
             {"food": "zinc gluconate", "pack": "100 tablets", "price": "$7.00"}]""";
    static final String KITCHEN = """
            {"days": 10, "pot": "10 l", "mostPotLoads": 2, "bin": "15 l", "bag": "1 l", "mostBags": 12, "fridgeDays": 4,
             "freezer": {"volume": "40 l", "kind": "chest"}}""";

    private Tiny() {}

    static Household household() {
        return household(DOGS, PANTRY, KITCHEN, "");
    }

    static Household household(String dogs, String pantry, String kitchen, String more) {
        return Demo.read("{\"packpot\": 1, \"units\": \"metric\", \"dogs\": " + dogs + ", \"pantry\": " + pantry
                + ", \"kitchen\": " + kitchen + more + "}");
    }

    /** A model with all of its families. */
    static Build build(Household household) {
        return whole(start(household));
    }

    /** Adds all families. */
    static Build whole(Build build) {
        PotRows.add(build);
        BowlRows.add(build);
        DogRows.add(build);
        ShapeRows.add(build);
        StockRows.add(build);
        KitchenRows.add(build);
        return build;
    }

    /** A model without rows yet. */
    static Build start(Household household) {
        Needs needs = Needs.of(household, Demo.knowledge());
        return new Build(household, Demo.knowledge(), needs, RationPlanner.sharesByNeed(needs));
    }

    static DogNeed dog(Build build, String name) {
        return build.needs.dogs().stream()
                .filter(need -> need.dog().name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** The one row of that name. */
    static Row<Wish> row(Build build, String name) {
        List<Row<Wish>> rows = build.model.rows().stream()
                .filter(row -> row.name().equals(name))
                .toList();
        if (rows.size() != 1) {
            throw new AssertionError(rows.size() + " rows are called " + name + " among "
                    + build.model.rows().stream().map(Row::name).toList());
        }
        return rows.get(0);
    }

    static boolean hasRow(Build build, String name) {
        return build.model.rows().stream().anyMatch(row -> row.name().equals(name));
    }

    static Variable variable(Build build, String name) {
        return build.model.variables().stream()
                .filter(variable -> variable.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no variable is called " + name));
    }

    static PantryItem item(Build build, String label) {
        return build.household.pantry().stream()
                .filter(item -> item.food().label().equalsIgnoreCase(label))
                .findFirst()
                .orElseThrow(() -> new AssertionError(label + " is not in the pantry"));
    }

    static double coefficient(Build build, String row, String variable) {
        return row(build, row).expression().coefficient(variable(build, variable));
    }

    static Prepared potFood(Build build, String label) {
        return find(build.potGrams, label);
    }

    static <T> Prepared find(Map<Prepared, T> foods, String label) {
        return foods.keySet().stream()
                .filter(food -> food.item().food().label().equalsIgnoreCase(label))
                .findFirst()
                .orElseThrow(() -> new AssertionError(label + " is not among them"));
    }

    /** Of the cooked food, per edible gram weighed before cooking. */
    static double perGram(Build build, String label, Constituent constituent) {
        PantryItem item = item(build, label);
        return item.food().composition().perGram(constituent)
                * item.preparation().retention().getOrDefault(constituent, 1.0);
    }
}
