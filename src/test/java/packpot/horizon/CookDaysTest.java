package packpot.horizon;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.Demo;
import packpot.household.Horizon;
import packpot.household.Household;

/** The choice of cook days against every choice that there is. */
class CookDaysTest {
    private static final int DAYS = 42;
    private static final Household HOUSEHOLD =
            Demo.planned(Demo.file("tiny-freezer")).household();

    private static Horizon horizon(Horizon.Choice choice, double price) {
        return new Horizon(
                DAYS,
                List.of(),
                Set.of(DayOfWeek.SUNDAY, DayOfWeek.WEDNESDAY),
                choice,
                price,
                List.of(),
                Horizon.Variety.NONE);
    }

    /** Days on which one can cook, reckoned here again. */
    private static List<Integer> allowed() {
        List<Integer> days = new ArrayList<>();
        for (int day = 1; day < DAYS; day++) {
            LocalDate date = HOUSEHOLD.start().plusDays(day);
            if (date.getDayOfWeek() == DayOfWeek.SUNDAY || date.getDayOfWeek() == DayOfWeek.WEDNESDAY) {
                days.add(day);
            }
        }
        return days;
    }

    private static double cost(List<Integer> cookDays, Map<Interval, Double> costs, double price) {
        return Interval.between(cookDays, DAYS).stream()
                .mapToDouble(interval -> costs.getOrDefault(interval, Double.POSITIVE_INFINITY) + price)
                .sum();
    }

    private static double least(Map<Interval, Double> costs, double price) {
        List<Integer> allowed = allowed();
        double best = Double.POSITIVE_INFINITY;
        for (int some = 0; some < 1 << allowed.size(); some++) {
            List<Integer> cookDays = new ArrayList<>(List.of(0));
            for (int i = 0; i < allowed.size(); i++) {
                if ((some & (1 << i)) != 0) {
                    cookDays.add(allowed.get(i));
                }
            }
            best = Math.min(best, cost(cookDays, costs, price));
        }
        return best;
    }

    private static Map<Interval, Double> costs(long seed, int leastDays, int mostDays) {
        Random random = new Random(seed);
        Map<Interval, Double> costs = new HashMap<>();
        for (int from = 0; from < DAYS; from++) {
            for (int days = 1; from + days <= DAYS; days++) {
                costs.put(
                        new Interval(from, days),
                        days < leastDays || days > mostDays
                                ? Double.POSITIVE_INFINITY
                                : days * (5 + 3 * random.nextDouble()));
            }
        }
        return costs;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void noOtherChoiceIsCheaper(long seed) {
        noOtherChoiceIsCheaper(costs(seed, 1, 21));
    }

    /** Doses are too coarse for a batch of a few days, and Wednesday and Sunday are three and four days apart. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void batchesThatAreTooSmallHideNoLargerOnes(long seed) {
        Map<Interval, Double> costs = costs(seed, 5, 21);
        assertThat(least(costs, 0)).isFinite();
        noOtherChoiceIsCheaper(costs);
    }

    private static void noOtherChoiceIsCheaper(Map<Interval, Double> costs) {
        for (double price : new double[] {0, 4, 40}) {
            List<Integer> chosen = CookDays.choose(
                    HOUSEHOLD,
                    horizon(Horizon.Choice.CHEAPEST, price),
                    60,
                    interval -> 0.8 * costs.getOrDefault(interval, 0.0),
                    interval -> costs.getOrDefault(interval, 0.0));
            assertThat(cost(chosen, costs, price)).isCloseTo(least(costs, price), within());
        }
    }

    private static org.assertj.core.data.Offset<Double> within() {
        return org.assertj.core.data.Offset.offset(1e-9);
    }

    @Test
    void asFewAsCanBe() {
        Map<Interval, Double> costs = costs(9, 1, 16);
        List<Integer> chosen = CookDays.choose(
                HOUSEHOLD,
                horizon(Horizon.Choice.FEWEST, 0),
                60,
                interval -> costs.getOrDefault(interval, 0.0),
                interval -> costs.getOrDefault(interval, 0.0));
        // 42 days in batches of at most 16.
        assertThat(chosen).hasSize(3).startsWith(0);
    }

    @Test
    void noneWhereNoBatchFits() {
        assertThat(CookDays.choose(
                        HOUSEHOLD,
                        horizon(Horizon.Choice.CHEAPEST, 0),
                        60,
                        interval -> interval.days() > 2 ? Double.POSITIVE_INFINITY : 1,
                        interval -> 1))
                .isEmpty();
    }
}
