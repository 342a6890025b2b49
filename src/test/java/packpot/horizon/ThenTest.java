package packpot.horizon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.dog.Dog;
import packpot.dog.EnergyNeed;
import packpot.dog.LifeStage;
import packpot.household.Household;

/** The household as it is for one batch. */
class ThenTest {
    private static final Household HOUSEHOLD =
            Demo.planned(Demo.file("growing-puppy")).household();
    private static final Dog PUPPY = HOUSEHOLD.dogs().get(0);

    private static EnergyNeed need(Dog dog) {
        return Demo.knowledge().energy().need(dog, HOUSEHOLD.maintenance(), HOUSEHOLD.growth());
    }

    private static Dog on(int day) {
        return Demo.knowledge().overTime().on(PUPPY, day).orElseThrow();
    }

    private static Dog then(Interval interval) {
        return Then.of(HOUSEHOLD, Demo.knowledge(), interval).dogs().get(0);
    }

    @Test
    void aPuppyIsTakenInTheMiddleAndGetsTheAverage() {
        Dog then = then(new Interval(20, 9));
        assertThat(then.weightKg()).isEqualTo(on(24).weightKg());
        double average = IntStream.range(20, 29)
                        .mapToDouble(day -> need(on(day)).kcalPerDay())
                        .sum()
                / 9;
        assertThat(need(then).kcalPerDay()).isCloseTo(average, within(1e-9));
        assertThat(Then.of(HOUSEHOLD, Demo.knowledge(), new Interval(20, 9)).start())
                .isEqualTo(HOUSEHOLD.start().plusDays(20));
    }

    /** A dog must not be fed as an adult before it is one. */
    @Test
    void whereItComesToBeGrownItIsStillFedAsAPuppy() {
        int grown = IntStream.range(0, 1000)
                .filter(day -> need(on(day)).stage() == LifeStage.ADULT)
                .findFirst()
                .orElseThrow();
        assertThat(need(then(new Interval(grown - 2, 10))).stage()).isEqualTo(LifeStage.GROWTH);
        assertThat(need(then(new Interval(grown, 10))).stage()).isEqualTo(LifeStage.ADULT);
    }
}
