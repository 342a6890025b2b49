package packpot.spread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.spread.HandMade.atLeast;
import static packpot.spread.HandMade.dog;
import static packpot.spread.HandMade.figures;
import static packpot.spread.HandMade.food;
import static packpot.spread.HandMade.plan;
import static packpot.spread.HandMade.ratio;

import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Draws and formula on plans that can be reckoned by hand. Likelihoods are those of a printed table of the normal. */
class DrawsTest {
    private static final int DRAWS = 10_000;
    private static final Figures ONE = figures(1);

    private static Odds.OfMinimum first(Intakes intakes) {
        return Odds.of(intakes, DRAWS, 1, 0.95).dogs().get(0).minimums().get(0);
    }

    /** Each with what it tests, its mean and spread as shares of the minimum, and the likelihood by the table. */
    static Stream<Arguments> byHand() {
        return Stream.of(
                Arguments.of(
                        "one food, a tenth above, spread as much",
                        plan(List.of(food(110, 0, ONE, figures(10 / 110.0))), dog("Ash", 1, 0, atLeast(100, 1))),
                        1.1,
                        0.1,
                        0.8413),
                Arguments.of(
                        "the same below the minimum",
                        plan(List.of(food(90, 0, ONE, figures(10 / 90.0))), dog("Ash", 1, 0, atLeast(100, 1))),
                        0.9,
                        0.1,
                        0.1587),
                Arguments.of(
                        "two foods even each other out",
                        plan(
                                List.of(food(55, 0, ONE, figures(6 / 55.0)), food(55, 0, ONE, figures(8 / 55.0))),
                                dog("Ash", 1, 0, atLeast(100, 1))),
                        1.1,
                        0.1,
                        0.8413),
                Arguments.of(
                        "weighing moves all that a food brings",
                        plan(
                                List.of(food(60, 0.1, figures(1, 1), figures(0, 0))),
                                dog("Ash", 1, 0, atLeast(100, 1, 1))),
                        1.2,
                        0.12,
                        0.9522),
                Arguments.of(
                        "portioning moves the whole pot",
                        plan(
                                List.of(food(40, 0, ONE, figures(0)), food(70, 0, ONE, figures(0))),
                                dog("Ash", 1, 10 / 110.0, atLeast(100, 1))),
                        1.1,
                        0.1,
                        0.8413),
                Arguments.of(
                        "a dose on top, by spoon and by label",
                        plan(
                                List.of(food(70, 0, ONE, figures(0)), food(0, 0, figures(4), figures(0.15))),
                                new Intakes.Eater(
                                        "Ash",
                                        1,
                                        0.5,
                                        List.of(new Intakes.Dose(1, 10, 0.2)),
                                        List.of(new Intakes.Demand(
                                                atLeast(100, 1).line(), figures(1), 100)))),
                        1.1,
                        Math.sqrt(35 * 35 + 6 * 6 + 8 * 8) / 100,
                        0.6082),
                Arguments.of(
                        "what one bottle brings to pot and bowl is off together",
                        plan(
                                List.of(food(60, 0, ONE, figures(0.1))),
                                new Intakes.Eater(
                                        "Ash", 1, 0, List.of(new Intakes.Dose(0, 50, 0)), List.of(atLeast(100, 1)))),
                        1.1,
                        0.11,
                        0.8183),
                Arguments.of(
                        "a ratio of two constituents",
                        plan(
                                List.of(
                                        food(1, 0, figures(110, 80), figures(12 / 110.0, 0.0)),
                                        food(1, 0, figures(0, 20), figures(0, 16 / 20.0 / 1.0))),
                                dog("Ash", 1, 0, ratio(1))),
                        1.1,
                        0.2,
                        0.6915));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("byHand")
    void formulaAndDrawsAgreeWithTheHand(String what, Intakes intakes, double mean, double spread, double likelihood) {
        Odds.OfMinimum found = first(intakes);
        assertThat(found.mean()).as(what).isCloseTo(mean, within(1e-12));
        assertThat(found.spread()).isCloseTo(spread, within(1e-12));
        assertThat(found.formula()).isCloseTo(likelihood, within(1e-4));
        double error = Math.sqrt(likelihood * (1 - likelihood) / DRAWS);
        assertThat(found.share()).isCloseTo(likelihood, within(4 * error));
        assertThat(found.standardError()).isCloseTo(error, within(0.05 * error));
    }

    @Test
    void theMarginNeededIsWhereTheSameSpreadIsPassedByItsScore() {
        // 1 / (1 - 1.6449 * 0.1) - 1, the score being that of 95 % in a printed table.
        ClosedForm form = new ClosedForm(1.1, 0.11);
        assertThat(form.marginFor(0.95)).isCloseTo(0.19687, within(1e-4));
        assertThat(new ClosedForm(1.1, 0).marginFor(0.95)).isZero();
        assertThat(new ClosedForm(1, 0.7).marginFor(0.95)).isInfinite();
        assertThat(new ClosedForm(1, 0).likelihood()).isOne();
        assertThat(new ClosedForm(0.999, 0).likelihood()).isZero();
    }

    @Test
    void dogsOfOnePotAreShortTogetherAndDosesByThemselves() {
        List<Intakes.Source> foods = List.of(food(220, 0, ONE, figures(10 / 110.0)), food(0, 0, ONE, figures(0)));
        Odds pot = Odds.of(
                plan(foods, dog("Ash", 0.5, 0, atLeast(100, 1)), dog("Elm", 0.25, 0, atLeast(50, 1))), DRAWS, 1, 0.95);
        assertThat(pot.dogs()).extracting(Odds.OfDog::allMet).containsOnly(pot.allMet());
        List<Intakes.Dose> dose = List.of(new Intakes.Dose(1, 110, 10 / 110.0));
        Odds bowls = Odds.of(
                plan(
                        foods,
                        new Intakes.Eater("Ash", 0, 0, dose, List.of(atLeast(100, 1))),
                        new Intakes.Eater("Elm", 0, 0, dose, List.of(atLeast(100, 1)))),
                DRAWS,
                1,
                0.95);
        double both = 0.8413 * 0.8413;
        assertThat((double) bowls.allMet() / DRAWS).isCloseTo(both, within(4 * Math.sqrt(both * (1 - both) / DRAWS)));
    }

    @Test
    void allOfADogCountsDrawsWithoutAnyMiss() {
        Odds odds = Odds.of(
                plan(
                        List.of(food(1, 0, figures(110, 110), figures(10 / 110.0, 10 / 110.0))),
                        dog("Ash", 1, 0, atLeast(100, 1, 0), atLeast(100, 0, 1))),
                DRAWS,
                3,
                0.95);
        double both = 0.8413 * 0.8413;
        assertThat((double) odds.dogs().get(0).allMet() / DRAWS)
                .isCloseTo(both, within(4 * Math.sqrt(both * (1 - both) / DRAWS)));
        assertThat(odds.eachAtLeast(0.82)).isTrue();
        assertThat(odds.eachAtLeast(0.86)).isFalse();
    }

    @Test
    void nothingIsDrawnBelowNothing() {
        // Spread as much as the mean: at nothing or below in 15.87 % of the draws, and never less than nothing.
        Intakes.Demand nothing = new Intakes.Demand(atLeast(1, 1).line(), figures(-1), -1e-9);
        Intakes intakes = plan(List.of(food(1, 0, ONE, figures(1))), dog("Ash", 1, 0, nothing));
        double share =
                Odds.of(intakes, DRAWS, 1, 0.95).dogs().get(0).minimums().get(0).share();
        assertThat(share).isCloseTo(0.1587, within(0.015));
        Intakes.Demand notLess = new Intakes.Demand(atLeast(1, 1).line(), figures(1), 0);
        assertThat(first(plan(List.of(food(1, 0, ONE, figures(1))), dog("Ash", 1, 0, notLess)))
                        .met())
                .isEqualTo(DRAWS);
    }

    @Test
    void theSeedAloneDecidesAndNotTheThreads() throws ExecutionException, InterruptedException {
        Intakes intakes = plan(List.of(food(110, 0.02, ONE, figures(0.1))), dog("Ash", 1, 0.01, atLeast(100, 1)));
        Odds usual = Odds.of(intakes, 12_345, 7, 0.95);
        for (int threads : new int[] {1, 3, 8}) {
            ForkJoinPool pool = new ForkJoinPool(threads);
            try {
                assertThat(pool.submit(() -> Odds.of(intakes, 12_345, 7, 0.95)).get())
                        .isEqualTo(usual);
            } finally {
                pool.shutdown();
            }
        }
        assertThat(Odds.of(intakes, 12_345, 8, 0.95)).isNotEqualTo(usual);
    }

    @Test
    void everyDrawIsMadeAlsoWhereTheyFillNoBlock() {
        Intakes sure = plan(List.of(food(110, 0, ONE, figures(0))), dog("Ash", 1, 0, atLeast(100, 1)));
        for (int draws : new int[] {1, 99, 100, 101, 250}) {
            assertThat(Odds.of(sure, draws, 1, 0.95).allMet()).isEqualTo(draws);
        }
    }

    @Test
    void whatIsOnTheMinimumMeetsItHoweverItIsSummedUp() {
        // 0.1 + 0.7 is a little less than 0.8 to a computer.
        Odds.OfMinimum on = first(plan(
                List.of(food(0.1, 0, ONE, figures(0)), food(0.7, 0, ONE, figures(0))),
                dog("Ash", 1, 0, atLeast(0.8, 1))));
        assertThat(on.met()).isEqualTo(DRAWS);
        assertThat(on.formula()).isOne();
        assertThat(on.share()).isOne();
    }
}
