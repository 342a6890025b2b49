package packpot.household;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import packpot.food.Food;
import packpot.food.Place;

class ScenarioEditsTest {
    private static final Knowledge KNOWLEDGE = Scenarios.KNOWLEDGE;
    private static final GuessedPrices GUESSES = GuessedPrices.load(KNOWLEDGE);

    private static ObjectNode tree(String json) {
        try {
            return (ObjectNode) new JsonMapper().readTree(json.replace('\'', '"'));
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException(e);
        }
    }

    /** Edits in short: "add /kitchen {...}". */
    private static List<String> edits(String json, UnaryOperator<Household> change) throws ScenarioException {
        Household old = Scenarios.read(json);
        return ScenarioEdits.between(tree(json), old, change.apply(old), KNOWLEDGE).orElseThrow().stream()
                .map(edit -> edit.op().key() + " " + edit.path() + (edit.value() == null ? "" : " " + edit.value()))
                .toList();
    }

    /** The household of the edited scenario's text. */
    private static Household edited(String json, UnaryOperator<Household> change) throws ScenarioException {
        Household old = Scenarios.read(json);
        List<Edit> edits = ScenarioEdits.between(tree(json), old, change.apply(old), KNOWLEDGE)
                .orElseThrow();
        String text = ScenarioText.of(ScenarioEdits.apply(tree(json), edits));
        return new ScenarioReader(KNOWLEDGE, Scenarios.TODAY)
                .read("edited.json", text.getBytes(StandardCharsets.UTF_8));
    }

    private static UnaryOperator<Household> kitchen(UnaryOperator<Kitchen> change) {
        return household -> household.withKitchen(change.apply(household.kitchen()));
    }

    private static UnaryOperator<Household> shape(UnaryOperator<Shape> change) {
        return household -> household.withShape(change.apply(household.shape()));
    }

    private static UnaryOperator<Household> item(int index, UnaryOperator<PantryItem> change) {
        return household -> {
            List<PantryItem> pantry = new ArrayList<>(household.pantry());
            pantry.set(index, change.apply(pantry.get(index)));
            return household.withPantry(pantry);
        };
    }

    private static Food food(String name) {
        Food food = KNOWLEDGE.foods().find(name);
        if (food == null) {
            throw new IllegalArgumentException(name);
        }
        return food;
    }

    private static UnaryOperator<Household> added(String name) {
        return household -> {
            List<PantryItem> pantry = new ArrayList<>(household.pantry());
            Food food = food(name);
            pantry.add(GUESSES.item(food, KNOWLEDGE.preparations().usual(food), Place.POT));
            return household.withPantry(pantry);
        };
    }

    @Test
    void whatStandsInNoObjectYetBringsTheObjectWithIt() throws ScenarioException {
        assertThat(edits(Scenarios.SMALL, kitchen(kitchen -> kitchen.withDays(7).withBinMl(20_000.0))))
                .containsExactly("add /kitchen {\"days\":7}", "add /kitchen/bin \"21.134 qt\"");
        assertThat(edits(
                        Scenarios.with("", "'kitchen': {'days': 9}, 'units': 'metric', 'budget': '$9'"),
                        household -> kitchen(kitchen -> kitchen.withDays(7).withBinMl(20_000.0))
                                .apply(household.withBudget(12.501))))
                .containsExactly("replace /budget \"$12.51\"", "replace /kitchen/days 7", "add /kitchen/bin \"20 l\"");
    }

    @Test
    void aFoodIsFoundByAnyOfItsNames() throws ScenarioException {
        Food turkey = food("ground turkey, 93 % lean");
        for (String name : List.of(turkey.id(), turkey.name(), " Ground  turkey, 93 % lean")) {
            String json = Scenarios.with("/pantry/0", "'food': '" + name + "', 'atMost': '100 g'");
            assertThat(edits(json, item(0, item -> item.withAtMost(455.0))))
                    .containsExactly("replace /pantry/0/atMost \"455 g\"");
        }
    }

    @Test
    void aNewFoodIsCalledSoThatTheHouseholdsOwnFoodIsNotMeant() throws ScenarioException {
        assertThat(edits(Scenarios.SMALL, added("carrots")))
                .contains("add /pantry/- {\"food\":\"carrots\",\"price\":\"$1.90\"}");
        String own = Scenarios.with(
                "",
                "'ownFoods': [{'name': 'Carrots', 'group': 'vegetable', 'per': '1 g', 'holds': {'protein_g': 0.0}}]");
        Household mended = edited(own, added("carrots"));
        assertThat(mended.pantry().get(2).food()).isEqualTo(food("carrots"));
    }

    @Test
    void aGuessedPriceAndPackAreReadBackAsTheyWereGuessed() throws ScenarioException {
        for (String name : List.of("carrots", "chicken thigh, with skin", "beef liver")) {
            Household old = Scenarios.read(Scenarios.SMALL);
            assertThat(edited(Scenarios.SMALL, added(name)).pantry())
                    .isEqualTo(added(name).apply(old).pantry());
        }
        String json = Scenarios.with("/pantry/1", "'price': null, 'pack': null, 'onHand': '1 lb', 'wholePacks': true");
        UnaryOperator<Household> bought = item(
                1,
                item -> GUESSES.item(item.food(), item.preparation(), item.place())
                        .withOnHand(item.onHandGrams()));
        assertThat(edits(json, bought)).contains("remove /pantry/1/wholePacks");
        assertThat(edited(json, bought).pantry())
                .isEqualTo(bought.apply(Scenarios.read(json)).pantry());
    }

    @Test
    void wishesOfOneFoodAreLoosened() throws ScenarioException {
        String json = Scenarios.with(
                "/pantry/1",
                "'outOfStock': true, 'wholePacks': true, 'onHand': '2 lb', 'mustUse': true, 'where': 'pot'");
        assertThat(edits(json, item(1, item -> item.inStock().withOpenPacks().withMustUse(455.0004))))
                .containsExactly(
                        "remove /pantry/1/outOfStock",
                        "remove /pantry/1/wholePacks",
                        "replace /pantry/1/mustUse \"455 g\"");
        assertThat(edits(json, item(1, item -> item.withMustUse(0)))).containsExactly("remove /pantry/1/mustUse");
    }

    @Test
    void aFreezerIsFreedOfWhatTakesMost() throws ScenarioException {
        String json = Scenarios.with(
                "",
                "'units': 'metric', 'kitchen': {'freezer': {'volume': '140 l', 'kind': 'chest', 'holds':"
                        + " [{'what': 'peas', 'volume': '3 l'}, {'what': 'soup', 'bags': 10},"
                        + " {'what': 'bread', 'volume': '9 l'}]}}");
        Freezer old = Scenarios.read(json).kitchen().freezer();
        assertThat(old).isNotNull();
        for (double freed : new double[] {0.5, 5_000, 14_000, 20_000, old.takenMl()}) {
            double taken = old.takenMl() - freed;
            Freezer read = edited(
                            json,
                            kitchen(kitchen -> kitchen.withFreezer(
                                    new Freezer(old.ratedMl(), old.usableShare(), taken, old.packingShare()))))
                    .kitchen()
                    .freezer();
            assertThat(read).isNotNull();
            assertThat(read.takenMl()).isBetween(Math.max(0, taken - 1), taken + 1e-6);
        }
        assertThat(edited(
                                json,
                                kitchen(kitchen -> kitchen.withFreezer(
                                        new Freezer(150_001, old.usableShare(), old.takenMl(), old.packingShare()))))
                        .kitchen()
                        .freezer())
                .isEqualTo(new Freezer(150_001, old.usableShare(), old.takenMl(), old.packingShare()));
    }

    @Test
    void limitsOfTheShapeAreReadBackAsTheyAre() throws ScenarioException {
        List<UnaryOperator<Household>> changes = List.of(
                shape(shape -> shape.withOneFoodMost(0.605)),
                shape(shape -> shape.withMostFoods(12).withMostStirredIn(8)),
                shape(shape -> shape.withMostAdditions(4, 6)),
                shape(shape -> shape.withMostAdditions(3, 7)),
                shape(shape -> shape.withSmallestUseful(0.015, 0.003)),
                shape(shape -> shape.withSmallestUseful(0.02, 0.0015)),
                shape(shape -> shape.withSmallestUseful(0.001, 0.001)));
        for (UnaryOperator<Household> change : changes) {
            Shape wanted = change.apply(Scenarios.read(Scenarios.SMALL)).shape();
            assertThat(edited(Scenarios.SMALL, change).shape()).isEqualTo(wanted);
        }
    }

    @Test
    void aBandThatMovedItsOtherSideOutOfTheWayGoesOnHoldingIt() throws ScenarioException {
        String json = Scenarios.with("", "'shape': {'shares': {'meat': {'least': '70 %'}}}");
        UnaryOperator<Household> change = shape(shape -> shape.withBands(shape.bands().stream()
                .map(band -> band.key().equals("meat")
                        ? new Shape.Band(band.key(), band.label(), band.groups(), 0.5, band.most(), false)
                        : band)
                .toList()));
        assertThat(edited(json, change).shape())
                .isEqualTo(change.apply(Scenarios.read(json)).shape());
    }

    @Test
    void fewerFoodsThanUsualAreStillEnoughWithOneMore() throws ScenarioException {
        assertThat(Scenarios.read(Scenarios.SMALL).shape().fewestFoods()).isEqualTo(2);
        assertThat(edited(Scenarios.SMALL, added("carrots")).shape().fewestFoods())
                .isEqualTo(2);
    }

    @Test
    void whatTheScenarioHasNoFieldForHasNoEdits() throws ScenarioException {
        Household old = Scenarios.read(Scenarios.SMALL);
        assertThat(ScenarioEdits.between(tree(Scenarios.SMALL), old, old.withDogs(List.of()), KNOWLEDGE))
                .isEmpty();
        assertThat(ScenarioEdits.between(
                        tree(Scenarios.SMALL), old, old.withRules(old.rules().withEnergyBand(0.1)), KNOWLEDGE))
                .isEmpty();
        assertThat(ScenarioEdits.between(tree(Scenarios.SMALL), old, old, KNOWLEDGE))
                .contains(List.of());
    }

    @Test
    void anEditOfWhatIsNotThereIsTold() {
        for (String path : List.of("/kitchen/days", "/pantry/9", "days", "", "/pantry/0/food/x")) {
            Edit edit = new Edit(Edit.Op.REPLACE, path, TextNode.valueOf("9"));
            assertThatThrownBy(() -> ScenarioEdits.apply(tree(Scenarios.SMALL), List.of(edit)))
                    .as(path)
                    .isInstanceOf(ScenarioException.class)
                    .hasMessageStartingWith("The list of edits has a fault:\n  [0]: ");
        }
    }

    @Test
    void theTextKeepsFieldsOrderAndFigures() throws ScenarioException {
        String text = """
                {
                  "note": "cooked on Sundays",
                  "dogs": [{"name": "Moss", "weight": "21 lb", "age": "4 years"}],
                  "pantry": [
                    {"food": "ground turkey, 93 % lean", "price": "$5/lb", "note": "of the shop round the corner, mornings"},
                    {"food": "broth", "price": "$4", "pack": "5 lb"}
                  ],
                  "ownFoods": [{"name": "broth", "group": "other", "per": "1 g", "holds": {"protein_g": 0.10, "fat_g": 0}}]
                }
                """;
        assertThat(ScenarioText.of(
                        (ObjectNode) JsonText.tree("a.json", text.getBytes(StandardCharsets.UTF_8), "scenario")))
                .isEqualTo(text);
    }
}
