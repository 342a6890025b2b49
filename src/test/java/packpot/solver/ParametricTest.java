package packpot.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Reference;

/** Ranges of prices, against those worked by hand beside the problems. */
class ParametricTest {
    private static final double TOLERANCE = 0.01;
    private static final double FAR = 1000;

    private static Parametric<String> of(Parametric.Family<String> family) {
        return new Parametric<>(new Corners(), family, TOLERANCE);
    }

    private record Figure(
            String name,
            Parametric.Family<String> family,
            double at,
            double rate,
            double from,
            double to,
            double least) {
        Figure(String name, Parametric.Family<String> family, double at, double rate, double from, double to) {
            this(name, family, at, rate, from, to, -FAR);
        }

        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Arguments> worked() {
        return Stream.of(
                        new Figure(
                                "hours of the second shop",
                                b -> HandWorked.workshop(4, b, 18, 3, 5).model(),
                                12,
                                -1.5,
                                6,
                                18),
                        new Figure(
                                "hours of the third shop",
                                b -> HandWorked.workshop(4, 12, b, 3, 5).model(),
                                18,
                                -1,
                                12,
                                24),
                        new Figure(
                                "hours of the first shop",
                                b -> HandWorked.workshop(b, 12, 18, 3, 5).model(),
                                4,
                                0,
                                2,
                                FAR),
                        new Figure(
                                "profit of x",
                                p -> HandWorked.workshop(4, 12, 18, p, 5).model(),
                                3,
                                -2,
                                0,
                                7.5),
                        new Figure(
                                "profit of y",
                                p -> HandWorked.workshop(4, 12, 18, 3, p).model(),
                                5,
                                -6,
                                2,
                                FAR),
                        new Figure(
                                "need of feed", b -> HandWorked.feed(b, 6, 2, 3).model(), 10, 3, 6, FAR),
                        new Figure(
                                "most of the cheap feed",
                                b -> HandWorked.feed(10, b, 2, 3).model(),
                                6,
                                -1,
                                0,
                                10,
                                0),
                        new Figure(
                                "price of the cheap feed",
                                p -> HandWorked.feed(10, 6, p, 3).model(),
                                2,
                                6,
                                -FAR,
                                3),
                        new Figure(
                                "price of the dear feed",
                                p -> HandWorked.feed(10, 6, 2, p).model(),
                                3,
                                4,
                                2,
                                FAR))
                .map(Arguments::of);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("worked")
    void ratesAndRangesAreThoseWorkedByHand(Figure figure) {
        Parametric<String> parametric = of(figure.family());
        Parametric.Point here = parametric.at(figure.at()).orElseThrow();
        assertThat(here.rate()).isCloseTo(figure.rate(), within(1e-6));
        // A rate of 0 has no share to be off by: there only a cost that does not move at all is on the line.
        double slack = 1e-3 * Math.max(1, Math.abs(figure.to() - figure.at())) + 2 * TOLERANCE * 6;
        assertThat(parametric.end(here, here.rate(), -0.7, figure.least())).isCloseTo(figure.from(), within(slack));
        assertThat(parametric.end(here, here.rate(), 0.7, FAR)).isCloseTo(figure.to(), within(slack));
    }

    /** Where two lines meet, their tangents do: the break is found to the last digits, and not by halving. */
    @ParameterizedTest
    @CsvSource({"12, 1, 18, 4", "12, -1, 6, 4", "12, 0.01, 18, 8", "7, 1, 18, 5", "17.9, -1, 6, 6"})
    void aBreakIsFoundWhereTheTangentsMeet(double at, double step, double end, int mostSolved) {
        int[] solved = {0};
        Parametric<String> hours = of(b -> {
            solved[0]++;
            return HandWorked.workshop(4, b, 18, 3, 5).model();
        });
        Parametric.Point here = hours.at(at).orElseThrow();
        solved[0] = 0;
        assertThat(hours.end(here, here.rate(), step, step > 0 ? FAR : -FAR)).isCloseTo(end, within(1e-6));
        // Each look builds the model twice; halving would look twenty times.
        assertThat(solved[0] / 2).isLessThanOrEqualTo(mostSolved);
        assertThat(hours.end(here, here.rate(), step, (at + end) / 2)).isEqualTo((at + end) / 2);
        assertThat(hours.end(here, here.rate(), step, at + step)).isEqualTo(at + step);
    }

    @Test
    void atABreakEachSideHasItsOwnRate() {
        Parametric<String> need = of(b -> HandWorked.feed(b, 6, 2, 3).model());
        Parametric.Point here = need.at(6).orElseThrow();
        assertThat(here.value()).isCloseTo(12, within(1e-9));
        assertThat(need.end(here, 3, 1, FAR)).isEqualTo(FAR);
        assertThat(need.end(here, 3, -1, -FAR)).isCloseTo(6, within(0.05));
        assertThat(need.end(here, 2, -1, 0)).isEqualTo(0);
        assertThat(need.end(here, 2, 1, FAR)).isCloseTo(6, within(0.05));
    }

    @Test
    void aRangeEndsWhereThereIsNoSolution() {
        Parametric<String> most = of(b -> {
            LinearModel<String> model = HandWorked.feed(10, 6, 2, 3).model();
            model.atMost("dear", new Expression().add(1, model.variables().get(1)), b, null);
            return model;
        });
        // From 4 on the limit costs nothing; below it there is too little feed.
        Parametric.Point here = most.at(5).orElseThrow();
        assertThat(most.at(3.9)).isEmpty();
        assertThat(most.end(here, 0, -1, 0)).isCloseTo(4, within(1e-3));
    }

    /** Published: one more of a nutrient costs its shadow price. Here the price is found by moving and not by duals. */
    @Tag("native")
    @Test
    void movingAMinimumOfStiglersDietCostsItsPublishedPrice() {
        for (Reference.Line minimum : Reference.table("stigler_1945_minimums.csv")) {
            double published = minimum.number("shadow_price_dollars_per_unit");
            double at = minimum.number("daily_minimum");
            Parametric.Family<String> family = figure -> {
                LinearModel<String> model = DietModels.stigler().model();
                Variant<String> variant = new Variant<>(model);
                model.rows().stream()
                        .filter(row -> row.name().equals(minimum.text("nutrient")))
                        .forEach(row -> variant.shift(row, figure - at, 0));
                return variant.model();
            };
            Parametric<String> parametric = new Parametric<>(new OrToolsSolver(), family, TOLERANCE);
            Parametric.Point here = parametric.at(at).orElseThrow();
            Parametric.Point more = parametric.at(at * 1.001).orElseThrow();
            assertThat((more.value() - here.value()) / (at * 0.001))
                    .as(minimum.text("nutrient"))
                    .isCloseTo(published, within(1e-6 * Math.max(1e-3, published)));
            assertThat(here.rate()).isCloseTo(published, within(1e-9));
        }
    }
}
