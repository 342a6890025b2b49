package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Demo;
import packpot.household.Household;
import packpot.household.Shape;
import packpot.household.Wish;
import packpot.solver.Expression;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;
import packpot.solver.Variant;

/** Moving a limit in the model is the same as wishing another limit and building the model anew. */
class LeverTest {

    static Stream<Arguments> wishes() {
        return Stream.of(
                moved("at most 12 bags", 1, kitchen("\"mostBags\": 12", "\"mostBags\": 13")),
                moved("a mixing bin", 2, kitchen("\"bin\": \"15 l\"", "\"bin\": \"17 l\"")),
                moved("a pot of", -1, kitchen("\"pot\": \"10 l\"", "\"pot\": \"9 l\"")),
                moved("foods in the pot", 2, LeverTest::twoMoreFoods),
                moved("use at least 300 g", -60, pantry("\"300 g\"", "\"240 g\"")),
                moved("at most 400 g of", 50, pantry("\"400 g\"", "\"450 g\"")),
                moved("spend at most", 5, ignored -> budget(45)));
    }

    private static Arguments moved(String wish, double change, UnaryOperator<Household> same) {
        return Arguments.of(wish, change, same);
    }

    private static UnaryOperator<Household> kitchen(String old, String other) {
        return base ->
                Tiny.household(Tiny.DOGS, Tiny.PANTRY, Tiny.KITCHEN.replace(old, other), ", \"budget\": \"$40\"");
    }

    private static UnaryOperator<Household> pantry(String old, String other) {
        return base ->
                Tiny.household(Tiny.DOGS, Tiny.PANTRY.replace(old, other), Tiny.KITCHEN, ", \"budget\": \"$40\"");
    }

    private static Household twoMoreFoods(Household base) {
        Shape shape = base.shape();
        return base.withShape(new Shape(
                shape.bands(),
                shape.oneFoodMost(),
                shape.fewestFoods(),
                shape.mostFoods() + 2,
                shape.mostStirredIn(),
                shape.mostAdditions(),
                shape.mostAdditionsSpecialNeeds(),
                shape.additionsMostMassShare(),
                shape.additionsMostEnergyShare(),
                shape.smallestUsefulShare(),
                shape.smallestUsefulShareMinor(),
                shape.minorGroups(),
                shape.usualKcalPerGram()));
    }

    private static Household budget(int dollars) {
        return Tiny.household(Tiny.DOGS, Tiny.PANTRY, Tiny.KITCHEN, ", \"budget\": \"$" + dollars + "\"");
    }

    @ParameterizedTest(name = "{0} by {1}")
    @MethodSource("wishes")
    void aMovedLimitIsTheModelOfTheOtherWish(String words, double change, UnaryOperator<Household> same) {
        Build build = Tiny.build(budget(40));
        Lever lever = lever(build, words);
        LinearModel<Wish> moved =
                lever.moved(new Variant<>(build.model), lever.figure() + change).model();
        assertSame(moved, Tiny.build(same.apply(budget(40))).model);
    }

    @Test
    void unmovedTheModelStays() {
        Build build = Tiny.build(budget(40));
        Variant<Wish> variant = new Variant<>(build.model);
        build.levers.forEach(
                lever -> assertThat(lever.moved(variant, lever.figure())).isSameAs(variant));
        assertSame(variant.model(), build.model);
    }

    /** What a step up does to the row of a limit loosens an upper limit and tightens a lower one, whatever the kind. */
    @Test
    void aStepLoosensEveryLimit() {
        Build build = Tiny.build(budget(40));
        // A batch in proportion: 1000 kcal of the pot, and everything else 1 of its unit.
        double[] values = build.model.variables().stream().mapToDouble(v -> 1).toArray();
        for (Lever lever : build.levers) {
            Row<Wish> before = lever.row();
            int index = build.model.rows().indexOf(before);
            Row<Wish> after = lever.moved(new Variant<>(build.model), lever.figure() + lever.step())
                    .model()
                    .rows()
                    .get(index);
            double expression =
                    after.expression().value(values) - before.expression().value(values);
            if (!Double.isInfinite(before.upper())) {
                assertThat(after.upper() - before.upper() - expression)
                        .as("room below " + before.name())
                        .isPositive();
            }
            if (!Double.isInfinite(before.lower()) && Double.isInfinite(before.upper())) {
                // Where foods bring nothing of what a dependent minimum rises with, there is nothing to loosen.
                assertThat(before.lower() - after.lower() + expression)
                        .as("room above " + before.name())
                        .isGreaterThanOrEqualTo(0);
            }
        }
    }

    @Test
    void everyWishOfTheModelCanBeMoved() {
        Build build = Tiny.build(budget(40));
        List<Row<Wish>> movable = build.levers.stream().map(Lever::row).toList();
        for (Row<Wish> row : build.model.rows()) {
            if (row.tag() != null) {
                assertThat(movable).as(row.name()).contains(row);
            }
        }
    }

    @Test
    void theCostsOfTheFoodsAddUpToTheObjective() {
        Build build = Tiny.build(Tiny.household());
        RationModel model = RationModel.of(build.household, Demo.knowledge(), build.needs, build.shares);
        var sum = new Expression();
        build.household.pantry().forEach(item -> sum.add(1, model.costOf(item)));
        for (Variable v : model.linearModel().variables()) {
            if (!v.name().endsWith("from hand")) {
                assertThat(sum.coefficient(v))
                        .as(v.name())
                        .isCloseTo(model.linearModel().objective().coefficient(v), within(1e-12));
            }
        }
    }

    @Test
    void anotherPriceIsTheModelOfThatPrice() {
        Household household = budget(40);
        Build build = Tiny.build(household);
        RationModel model = RationModel.of(household, Demo.knowledge(), build.needs, build.shares);
        var turkey = Tiny.item(build, "ground turkey, 93 % lean");
        LinearModel<Wish> dearer =
                model.atPrice(new Variant<>(model.linearModel()), turkey, 1.5).model();
        Household other = Tiny.household(
                Tiny.DOGS, Tiny.PANTRY.replace("$8.00", "$12.00"), Tiny.KITCHEN, ", \"budget\": \"$40\"");
        assertSame(dearer, Tiny.build(other).model);
    }

    private static Lever lever(Build build, String words) {
        List<Lever> levers = build.levers.stream()
                .filter(lever -> lever.wish().sentence().contains(words))
                .filter(lever ->
                        !words.startsWith("foods in") || lever.wish().sentence().startsWith("at most"))
                .toList();
        assertThat(levers).as(words).hasSize(1);
        return levers.get(0);
    }

    private static void assertSame(LinearModel<Wish> a, LinearModel<Wish> b) {
        assertThat(a.rows()).hasSameSizeAs(b.rows());
        assertThat(a.variables()).hasSameSizeAs(b.variables());
        for (int i = 0; i < a.rows().size(); i++) {
            Row<Wish> mine = a.rows().get(i);
            Row<Wish> theirs = b.rows().get(i);
            assertThat(mine.lower()).as(mine.name()).isCloseTo(theirs.lower(), within(near(theirs.lower())));
            assertThat(mine.upper()).as(mine.name()).isCloseTo(theirs.upper(), within(near(theirs.upper())));
            for (Variable v : b.variables()) {
                double expected = theirs.expression().coefficient(v);
                assertThat(mine.expression().coefficient(v))
                        .as(mine.name() + ", " + v.name())
                        .isCloseTo(expected, within(near(expected)));
            }
        }
        for (Variable v : b.variables()) {
            Variable mine = a.variables().get(v.index());
            assertThat(mine.upper()).as(v.name()).isCloseTo(v.upper(), within(near(v.upper())));
            assertThat(mine.integer()).isEqualTo(v.integer());
            double cost = b.objective().coefficient(v);
            assertThat(a.objective().coefficient(v)).as("cost of " + v.name()).isCloseTo(cost, within(near(cost)));
        }
    }

    private static double near(double value) {
        return Double.isInfinite(value) ? 0 : 1e-9 * Math.max(1, Math.abs(value));
    }
}
