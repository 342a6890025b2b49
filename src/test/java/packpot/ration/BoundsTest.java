package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.ByHand.ANY_SHAPE;
import static packpot.ration.ByHand.CHALK;
import static packpot.ration.ByHand.MEAT;
import static packpot.ration.ByHand.RICE;
import static packpot.ration.ByHand.gone;
import static packpot.ration.ByHand.household;
import static packpot.ration.ByHand.most;
import static packpot.ration.ByHand.need;
import static packpot.ration.ByHand.needs;
import static packpot.ration.ByHand.yielding;
import static packpot.ration.Tiny.coefficient;
import static packpot.ration.Tiny.variable;

import java.util.Map;
import org.junit.jupiter.api.Test;
import packpot.food.Constituent;
import packpot.food.Dosing;
import packpot.food.Food;
import packpot.food.FoodGroup;
import packpot.food.Place;
import packpot.food.Supplement;
import packpot.household.PantryItem;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.needs.Requirement;

/** Bounds that no ration can pass, for a batch of 10 000 kcal: 20 kg at the most, and usually 10 kg. */
class BoundsTest {
    private final Needs ash = needs(need("Ash", 1000));

    private Build build(PantryItem... pantry) {
        return ByHand.build(household(ash, pantry), ash);
    }

    private static double upper(Build build, String variable) {
        return variable(build, variable).upper();
    }

    private static double mostMeat(PantryItem meat, Requirement... requirements) {
        Needs needs = needs(need("Ash", 1000, requirements));
        return upper(ByHand.build(household(needs, meat), needs), "meat g");
    }

    @Test
    void theBatch() {
        Build build = build(MEAT);
        assertThat(upper(build, "kcal of the pot")).isCloseTo(11_000, within(1e-6));
        assertThat(upper(build, "cooked grams")).isCloseTo(20_000, within(1e-6));
        assertThat(upper(build, "kcal of Ash")).isCloseTo(20_000, within(1e-6));
        assertThat(build.days()).isEqualTo(10);
    }

    @Test
    void aFoodThatBringsAllEnergyAlone() {
        assertThat(mostMeat(MEAT)).isCloseTo(10_500, within(1e-6));
        // 9 kcal a gram.
        PantryItem oil = ByHand.loose(ByHand.food("oil", FoodGroup.OIL, Map.of(Constituent.FAT_G, 100.0)), 0.003);
        assertThat(upper(build(MEAT, oil), "oil g")).isCloseTo(10_500 / 9.0, within(1e-6));
    }

    @Test
    void aFoodUpToItsShareOfTheThinnestBatch() {
        Build build = ByHand.build(household(ash, yielding(MEAT, 0.8)).withShape(ANY_SHAPE.withOneFoodMost(0.2)), ash);
        // 4 kg cooked are 5 kg raw.
        assertThat(upper(build, "meat g")).isCloseTo(5000, within(1e-6));
    }

    @Test
    void whatIsWishedAtMostAndWhatIsInTheHouse() {
        assertThat(mostMeat(MEAT.withAtMost(3000.0))).isEqualTo(3000);
        assertThat(mostMeat(gone(MEAT, 700))).isEqualTo(700);
    }

    /** 60 g of protein per 1000 kcal are in 240 g of meat, and 2 % more are left for energy beside its target. */
    @Test
    void whatTheMostSensitiveDogBears() {
        assertThat(mostMeat(MEAT, most("protein", 60))).isCloseTo(2400 * 1.02, within(1e-6));
        assertThat(mostMeat(MEAT, most("protein", 60), ByHand.least("protein", 40)))
                .isCloseTo(2448, within(1e-6));
        // Meat has no calcium, and a ratio sets no bound.
        assertThat(mostMeat(MEAT, most("calcium", 1), most("calcium-phosphorus-ratio", 2)))
                .isCloseTo(10_500, within(1e-6));
        Needs two = needs(need("Ash", 500, most("protein", 60)), need("Elm", 500, most("protein", 50)));
        assertThat(upper(ByHand.build(household(two, MEAT), two), "meat g")).isCloseTo(2040, within(1e-6));
    }

    @Test
    void aFoodThatIsUsedComesInAUsefulAmount() {
        var shape = ANY_SHAPE.withSmallestUseful(0.02, 0.003);
        String row = "meat a useful amount";
        Build cooked = ByHand.build(household(ash, yielding(MEAT, 0.8)).withShape(shape), ash);
        assertThat(coefficient(cooked, row, "meat used")).isCloseTo(-250, within(1e-9));
        // No more than there is.
        Build little = ByHand.build(household(ash, gone(MEAT, 120)).withShape(shape), ash);
        assertThat(coefficient(little, row, "meat used")).isCloseTo(-120, within(1e-9));
    }

    private static PantryItem stirredIn(double stepGrams, double mostGrams, double mostGramsGrowing) {
        Supplement spoon = new Supplement(
                "chalk",
                "",
                "spoon",
                "spoons",
                1,
                1,
                stepGrams,
                Dosing.DAILY,
                Place.EITHER,
                mostGrams,
                mostGramsGrowing,
                12,
                "");
        Food chalk = CHALK.food();
        return ByHand.loose(
                new Food(
                        chalk.id(),
                        chalk.label(),
                        chalk.name(),
                        chalk.state(),
                        chalk.group(),
                        chalk.composition(),
                        chalk.kitchen(),
                        spoon,
                        chalk.aliases(),
                        chalk.source(),
                        chalk.found()),
                0.01);
    }

    private static final double NO_LIMIT = Double.POSITIVE_INFINITY;

    @Test
    void aSupplementByStepsThatAScaleShows() {
        // A tenth of the thinnest batch at the most.
        Build build = build(RICE, stirredIn(4, NO_LIMIT, NO_LIMIT));
        assertThat(upper(build, "chalk g")).isCloseTo(2000, within(1e-6));
        assertThat(upper(build, "chalk steps")).isEqualTo(500);
        assertThat(coefficient(build, "chalk can be weighed", "chalk used")).isEqualTo(-5);
        // Nobody counts more than 2000 steps; a step below a gram is a tablet, and one of them will do.
        Build tablets = build(RICE, stirredIn(0.5, NO_LIMIT, NO_LIMIT));
        assertThat(upper(tablets, "chalk steps")).isEqualTo(2000);
        assertThat(coefficient(tablets, "chalk can be weighed", "chalk used")).isEqualTo(-0.5);
        Build gram = build(RICE, stirredIn(1, NO_LIMIT, NO_LIMIT));
        assertThat(coefficient(gram, "chalk can be weighed", "chalk used")).isEqualTo(-5);
        // Of 3.5 g in the house three whole ones.
        Build few = build(RICE, gone(stirredIn(1, NO_LIMIT, NO_LIMIT), 3.5));
        assertThat(upper(few, "chalk steps")).isEqualTo(3);
        assertThat(coefficient(few, "chalk can be weighed", "chalk used")).isEqualTo(-3);
        // By steps of 2 g there is one.
        Build one = build(RICE, gone(stirredIn(2, NO_LIMIT, NO_LIMIT), 3.5));
        assertThat(coefficient(one, "chalk can be weighed", "chalk used")).isEqualTo(-2);
    }

    @Test
    void dosesOfOneDog() {
        assertThat(upper(build(RICE, CHALK), "chalk for Ash doses")).isEqualTo(12);
        // 2 g of calcium per 1000 kcal are in 5 g of chalk, 51 g over the batch; a dose is 10 g over ten days.
        Needs bears = needs(need("Ash", 1000, most("calcium", 2)));
        assertThat(upper(ByHand.build(household(bears, RICE, CHALK), bears), "chalk for Ash doses"))
                .isEqualTo(5);
        assertThat(upper(build(RICE, gone(CHALK, 25)), "chalk for Ash doses")).isEqualTo(2);
        assertThat(upper(build(RICE, gone(CHALK, 10)), "chalk for Ash doses")).isEqualTo(1);
        assertThat(build(RICE, gone(CHALK, 9)).dosesOf(ash.dogs().get(0))).isEmpty();
        // Two dogs as one.
        Needs together = needs(DogNeed.together(ash.dogs()), need("Elm", 500));
        assertThat(DogNeed.together(together.dogs()).heads()).isEqualTo(2);
        Needs two = needs(DogNeed.together(together.dogs()));
        assertThat(upper(ByHand.build(household(two, RICE, CHALK), two), "chalk for Ash doses"))
                .isEqualTo(24);
    }

    @Test
    void aSupplementsOwnLimit() {
        // 3 g per 1000 kcal: 30.6 g over the batch.
        PantryItem chalk = stirredIn(1, 3, 7);
        Build build = build(RICE, chalk);
        assertThat(upper(build, "chalk for Ash doses")).isEqualTo(3);
        assertThat(upper(build, "chalk g")).isCloseTo(30.6, within(1e-6));
        String row = "Ash: chalk at most 3 g per 1000 kcal";
        assertThat(coefficient(build, row, "kcal of Ash")).isCloseTo(-0.003, within(1e-12));
        Lever lever = MovedRow.lever(build, row);
        MovedRow.assertStands(lever, 3, "g per 1000 kcal", 0.2);
        MovedRow.assertSame(build, lever, 4, build(RICE, stirredIn(1, 4, 7)));
    }

    @Test
    void whatIsBought() {
        // A hundredth more than the thinnest batch, 20.2 kg cooked, is 25.25 kg raw: 17 packs of 1.5 kg.
        Build build = build(ByHand.packs(yielding(MEAT, 0.8), 1500, 6));
        assertThat(upper(build, "meat from packs")).isCloseTo(25_250, within(1e-6));
        assertThat(upper(build, "meat packs")).isEqualTo(17);
    }
}
