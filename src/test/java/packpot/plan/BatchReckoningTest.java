package packpot.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.household.Freezer;
import packpot.household.Kitchen;

class BatchReckoningTest {
    private static final double GRAMS_PER_ML = 0.95;

    private static Kitchen kitchen(int days, double bagMl, Integer mostBags, int fridgeDays) {
        return new Kitchen(
                days,
                2,
                null,
                0.8,
                1,
                null,
                "bag",
                bagMl,
                mostBags,
                new Freezer(50_000, 0.65, 3_000, 0.6),
                fridgeDays,
                GRAMS_PER_ML,
                1);
    }

    @Test
    void aBatchFillsAsManyBagsAsItsVolumeAsksFor() {
        assertThat(BatchReckoning.bags(kitchen(14, 750, null, 3), 750 * 9 * GRAMS_PER_ML))
                .isEqualTo(9);
        assertThat(BatchReckoning.bags(kitchen(14, 750, null, 3), 750.1 * 9 * GRAMS_PER_ML))
                .isEqualTo(10);
    }

    @Test
    void noBagHoldsMoreThanIsEatenWhileItKeeps() {
        // 14 days in bags of three days: five, however little is in them.
        assertThat(BatchReckoning.bags(kitchen(14, 3_000, null, 3), 1_000)).isEqualTo(5);
        assertThat(BatchReckoning.bags(kitchen(14, 3_000, null, 0), 1_000)).isEqualTo(14);
        // Unless there are fewer bags.
        assertThat(BatchReckoning.bags(kitchen(14, 3_000, 4, 3), 1_000)).isEqualTo(4);
    }

    @Test
    void bagsTakeTheRoomOfWhatIsInThem() {
        // A litre and a half in 14 bags of three litres, of which the first stays in the fridge: 13/14 of it, 60 %
        // packed.
        Plan.Batch batch = BatchReckoning.batch(kitchen(14, 3_000, null, 1), 1_500 * GRAMS_PER_ML, List.of());
        assertThat(batch.bags()).isEqualTo(14);
        assertThat(batch.bagsFrozen()).isEqualTo(13);
        assertThat(batch.freezerMl()).isCloseTo(1_500 * 13 / 14.0 / 0.6, within(1e-9));
        // 50 l, 65 % of it usable, less 3 l.
        assertThat(batch.freezerFreeMl()).isCloseTo(29_500, within(1e-6));
    }

    /** Nine bags that would not fit if they were full, each with a day's food of two small dogs. */
    @Test
    void manyBagsWithLittleInThemFitASmallFreezer() {
        String scenario = Demo.text(Demo.file("tiny-freezer"))
                .replace("\"days\": 14", "\"days\": 10")
                .replace("\"bag\": \"1 l\"", "\"bag\": \"1.8 l\"")
                .replace("\"fridgeDays\": 3", "\"fridgeDays\": 1");
        Demo.Planned planned = Demo.plan(Demo.read(scenario));
        Plan.Batch batch = planned.plan().batch();
        assertThat(batch.bagsFrozen()).isEqualTo(9);
        Kitchen kitchen = planned.household().kitchen();
        assertThat(9 * kitchen.bagUsableMl())
                .isGreaterThan(Objects.requireNonNull(kitchen.freezer()).freeForFoodMl());
        assertThat(planned.verdict().findings()).isEmpty();
    }
}
