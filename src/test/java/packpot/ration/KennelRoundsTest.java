package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.ByHand.CHALK;
import static packpot.ration.ByHand.RICE;
import static packpot.ration.ByHand.household;
import static packpot.ration.ByHand.least;
import static packpot.ration.ByHand.most;
import static packpot.ration.ByHand.need;

import java.util.Map;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.food.Constituent;
import packpot.food.Dosing;
import packpot.food.FoodGroup;
import packpot.food.Place;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.needs.Needs;
import packpot.ration.RationPlanner.Outcome;
import packpot.solver.SolveLimits;

/** What is asked round by round for a kennel in which a spoon of chalk is too much for small dogs. */
class KennelRoundsTest {
    private static final double GAP = 0.01;

    /** One dog of 100 kcal, for which a spoon a day would be 4 g of calcium per 1000 kcal, and 24 of 1000. */
    private final Needs oneSmall = KennelByHandTest.dogs(
            25, i -> need("Dog " + i, i == 0 ? 100 : 1000, least("calcium", 1), most("calcium", 3)));

    private final Needs alike = KennelByHandTest.dogs(25, i -> need("Dog " + i, 1000, least("calcium", 1)));

    /** 1 kcal and 0.02 g of calcium a gram. */
    private static PantryItem fish(double pricePerGram) {
        return ByHand.loose(
                ByHand.food(
                        "fish",
                        FoodGroup.FISH,
                        Map.of(Constituent.CARBOHYDRATE_G, 25.0, Constituent.CALCIUM_MG, 2000.0)),
                pricePerGram);
    }

    private static Outcome plan(Asked solver, Household household, Needs needs, double seconds, double gap) {
        return new RationPlanner(Demo.knowledge(), solver).plan(household, needs, new SolveLimits(seconds, gap));
    }

    @Test
    void onlyTheSmallestAndTheLargestOfManyStandForThemselves() {
        Needs small = KennelByHandTest.dogs(
                25, i -> need("Dog " + i, i < 4 ? 100 + i : 1000, least("calcium", 1), most("calcium", 3)));
        var found = (Outcome.Found) plan(new Asked(), household(small, RICE, fish(0.01), CHALK), small, 20, GAP);
        // Once the pot has room for the dog of 100 kcal and that of 103, it has for those between.
        assertThat(KennelByHandTest.dogsOf(found.model())).isEqualTo(3);
        assertThat(found.model().linearModel().variables().stream()
                        .map(variable -> variable.name())
                        .filter(name -> name.startsWith("kcal of Dog")))
                .containsExactlyInAnyOrder("kcal of Dog 0", "kcal of Dog 3", "kcal of Dog 1");
        // 21 406 kcal a day.
        assertThat(found.amounts().potGrams().values().stream()
                        .mapToDouble(grams -> grams)
                        .sum())
                .isCloseTo(214_060, within(1e-3));
    }

    /** Two spoons of chalk and one of shell would do for less than three of chalk, but one jar must do for all. */
    @Test
    void dogsGetWhatWasChosenForTheirKind() {
        PantryItem shell = ByHand.loose(
                ByHand.supplement("shell", Map.of(Constituent.CALCIUM_MG, 20_000.0), Dosing.DAILY, Place.BOWL, 12),
                0.0055);
        Household one = household(alike, RICE, CHALK, shell).withShape(ByHand.ANY_SHAPE.withMostAdditions(1, 1));
        var found = (Outcome.Found) plan(new Asked(), one, alike, 20, GAP);
        found.amounts().doses().values().forEach(doses -> assertThat(doses).isEqualTo(Map.of(CHALK, 3)));
    }

    @Test
    void aRoundTakesHalfOfTheTimeAndHalfOfTheGap() {
        for (double gap : new double[] {0.02, 0.004}) {
            Asked solver = new Asked();
            var found = (Outcome.Found) plan(solver, household(alike, RICE, CHALK), alike, 60, gap);
            SolveLimits first = solver.questions.get(0).limits();
            assertThat(first.seconds()).isBetween(25.0, 30.0);
            // A pot nearer than a quarter of a percent is lost in rounding.
            assertThat(first.relativeGap()).isEqualTo(Math.max(0.0025, gap / 2));
            assertThat(found.amounts().solveSeconds()).isBetween(1e-6, 60.0);
        }
    }

    /** All as one have the 2 kg of fish that must be used and some chalk; for the small dog a twentieth must be fish. */
    @Test
    void foodsOfTheRoundBeforeAreKeptWhereTheyCostLittleMore() {
        Asked solver = new Asked();
        Household cheap = household(oneSmall, RICE, fish(0.0016).withMustUse(2000), CHALK);
        var found = (Outcome.Found) plan(solver, cheap, oneSmall, 20, GAP);
        // 12.05 kg of fish at $1.60 and rice, beside 239 kg of rice, 2 kg of fish and $5.10 of chalk.
        assertThat(found.amounts().cost()).isCloseTo(228.95 + 19.28, within(0.01));
        assertThat(found.amounts().bound()).isBetween(246.0, 247.5);
        assertThat(solver.questions.stream()
                        .filter(question -> !question.start().isEmpty()))
                .isEmpty();
        // Where fish costs far more, the pot is searched from there.
        Asked dear = new Asked();
        plan(dear, household(oneSmall, RICE, fish(0.01).withMustUse(2000), CHALK), oneSmall, 20, GAP);
        assertThat(dear.questions.stream().filter(question -> !question.start().isEmpty()))
                .hasSize(1);
    }

    @Test
    void onceTimeIsUpThereIsNoOtherRound() {
        Outcome none = plan(new Asked(), household(oneSmall, RICE, fish(0.01), CHALK), oneSmall, 0, GAP);
        assertThat(none).isInstanceOf(Outcome.None.class);
        assertThat(((Outcome.None) none).provedImpossible()).isFalse();
    }
}
