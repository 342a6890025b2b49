package packpot.ration;

import static packpot.ration.MovedRow.lever;

import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Demo;
import packpot.household.Household;
import packpot.household.Shape;

/** A limit of the recipe's shape, of a bowl, of a dog's energy or of the kitchen that is moved in the model. */
class ShapeLeverTest {

    /** Words of the wish, where it stands, its unit, a step that loosens it, and the same household with one unit more. */
    static Stream<Arguments> limits() {
        String ofMass = "% of cooked mass";
        return Stream.of(
                limit("meat, fish and egg at least 35 %", 35, ofMass, -1, band("meat", 0.36, 0.65)),
                limit("meat, fish and egg at most 65 %", 65, ofMass, 1, band("meat", 0.35, 0.66)),
                limit("white rice, enriched, dry at most 50 %", 50, ofMass, 1, shape(s -> s.withOneFoodMost(0.51))),
                limit("at most 10 foods", 10, "", 1, shape(s -> s.withMostFoods(11))),
                limit("at least 5 foods", 5, "", -1, shape(s -> s.withFewestFoods(6))),
                limit("at most 6 supplements", 6, "", 1, shape(s -> s.withMostStirredIn(7))),
                limit("Ash: at most 3 different additions", 3, "", 1, shape(s -> s.withMostAdditions(4, 5))),
                limit(
                        "Ash: additions at most 5 % of the bowl's mass",
                        5,
                        "% of the bowl's mass",
                        1,
                        shape(s -> additions(s, s.additionsMostMassShare() + 0.01, s.additionsMostEnergyShare()))),
                limit(
                        "Ash: additions at most 5 % of the bowl's energy",
                        5,
                        "% of the bowl's energy",
                        1,
                        shape(s -> additions(s, s.additionsMostMassShare(), s.additionsMostEnergyShare() + 0.01))),
                limit(
                        "kcal a day from the batch",
                        0.4,
                        "% that the model may miss the energy target by",
                        1,
                        h -> h.withRules(h.rules().withEnergyBand(h.rules().energyBand() + 0.01))));
    }

    private static Arguments limit(
            String words, double figure, String unit, double step, UnaryOperator<Household> oneMore) {
        return Arguments.of(words, figure, unit, step, oneMore);
    }

    private static UnaryOperator<Household> shape(UnaryOperator<Shape> other) {
        return household -> household.withShape(other.apply(household.shape()));
    }

    private static UnaryOperator<Household> band(String key, double least, double most) {
        return shape(shape -> shape.withBands(shape.bands().stream()
                .map(band -> band.key().equals(key)
                        ? new Shape.Band(key, band.label(), band.groups(), least, most, false)
                        : band)
                .toList()));
    }

    private static Shape additions(Shape shape, double massShare, double energyShare) {
        return new Shape(
                shape.bands(),
                shape.oneFoodMost(),
                shape.fewestFoods(),
                shape.mostFoods(),
                shape.mostStirredIn(),
                shape.mostAdditions(),
                shape.mostAdditionsSpecialNeeds(),
                massShare,
                energyShare,
                shape.smallestUsefulShare(),
                shape.smallestUsefulShareMinor(),
                shape.minorGroups(),
                shape.usualKcalPerGram());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("limits")
    void oneUnitMore(String words, double figure, String unit, double step, UnaryOperator<Household> oneMore) {
        Household one = Tiny.household(
                "[{\"name\": \"Ash\", \"weight\": \"20 kg\", \"age\": \"4 years\"}]", Tiny.PANTRY, Tiny.KITCHEN, "");
        Build build = Tiny.build(one);
        Lever lever = lever(build, words);
        MovedRow.assertStands(lever, figure, unit, step);
        MovedRow.assertSame(build, lever, lever.figure() + 1, Tiny.build(oneMore.apply(one)));
    }

    /** A percent of the bowl's mass, of which the pot is the dog's part. */
    @Test
    void theMassOfAdditionsMovesByTheDogsOwnBowl() {
        Household two = Tiny.household();
        Household more = two.withShape(additions(two.shape(), 0.06, two.shape().additionsMostEnergyShare()));
        Build build = Tiny.build(two);
        MovedRow.assertSame(build, lever(build, "Ash: additions at most 5 % of the bowl's mass"), 6, Tiny.build(more));
    }

    @Test
    void volumesAreSaidInTheHouseholdsUnits() {
        Build metric = Tiny.build(Tiny.household());
        MovedRow.assertStands(lever(metric, "a pot of"), 10, "l", 1);
        MovedRow.assertStands(lever(metric, "a mixing bin"), 15, "l", 1);
        MovedRow.assertStands(lever(metric, "at most 12 bags"), 12, "", 1);
        Household pounds = Demo.read("""
                {"packpot": 1, "units": "us", "dogs": %s, "pantry": [{"food": "carrots", "price": "$1/lb"}],
                 "kitchen": {"days": 10, "pot": "16 qt", "bin": "5 gal"}}""".formatted(Tiny.DOGS));
        MovedRow.assertStands(lever(Tiny.build(pounds), "a pot of"), 16, "qt", 1);
        MovedRow.assertStands(lever(Tiny.build(pounds), "a mixing bin"), 20, "qt", 1);
    }

    /** 40 l hold so many bags of a litre as are whole; one more is a bag more of the share that is frozen. */
    @Test
    void theFreezerIsSaidInBags() {
        Build build = Tiny.build(Tiny.household());
        Lever lever = lever(build, "bags in the freezer");
        double bags = Math.floor(build.household.kitchen().freezer().freeForFoodMl()
                / build.household.kitchen().bagUsableMl());
        MovedRow.assertStands(lever, bags, "", 1);
    }
}
