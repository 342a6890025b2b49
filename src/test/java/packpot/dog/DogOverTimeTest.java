package packpot.dog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import packpot.units.UnitSystem;

class DogOverTimeTest {
    private static final EnergyEquations ENERGY = EnergyEquations.load();
    private static final DogOverTime OVER_TIME = DogOverTime.load(ENERGY);

    private static Dog on(Dog dog, int day) {
        return OVER_TIME.on(dog, day).orElseThrow();
    }

    private static LifeStage stage(Dog dog, int day) {
        return ENERGY.stage(on(dog, day));
    }

    private static List<String> notes(Dog dog, int day) {
        return DogNotes.of(OVER_TIME, dog, 400, UnitSystem.METRIC).stream()
                .filter(note -> note.day() == day)
                .map(note -> note.words().toString())
                .toList();
    }

    private static Course rate(@Nullable Double share) {
        return new Course(List.of(), null, share, null, null, null);
    }

    @Test
    void onTheFirstDayADogIsWhatItIs() {
        for (Dog dog : List.of(
                TestDogs.adult(20),
                TestDogs.puppy(6, 10, 30.0),
                TestDogs.withGoal(20, 17),
                TestDogs.bitch(20, new Reproduction.Gestation(7, 5)),
                TestDogs.bitch(20, new Reproduction.Lactation(3, 5)))) {
            assertThat(on(dog, 0)).isEqualTo(dog);
        }
        assertThatThrownBy(() -> OVER_TIME.on(TestDogs.adult(20), -1)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void anAdultOnlyGrowsOlder() {
        Dog dog = TestDogs.adult(20);
        assertThat(on(dog, 100)).isEqualTo(dog.at(dog.ageDays() + 100, 20, null));
    }

    @Test
    void aPuppyGrowsTowardItsAdultWeightAndIsGrownAtTwelveMonths() {
        Dog dog = TestDogs.puppy(6, 10, 30.0);
        int grown = (int) Math.ceil(365.25 - 70);
        assertThat(on(dog, 70).weightKg()).isCloseTo(30 * Math.exp(-Math.log(5) * Math.exp(-70 / 54.0)), within(1e-9));
        assertThat(stage(dog, grown - 1)).isEqualTo(LifeStage.GROWTH);
        assertThat(stage(dog, grown)).isEqualTo(LifeStage.ADULT);
        assertThat(notes(dog, grown)).anyMatch(note -> note.startsWith("counts as grown"));
        assertThat(on(dog, 600).weightKg()).isBetween(29.99, 30.0);
    }

    @Test
    void aVeryLargePuppyIsGrownAtEighteenMonths() {
        Dog dog = TestDogs.puppy(20, 20, 60.0);
        int grown = (int) Math.ceil(1.5 * 365.25 - 140);
        assertThat(stage(dog, grown - 1)).isEqualTo(LifeStage.GROWTH);
        assertThat(stage(dog, grown)).isEqualTo(LifeStage.ADULT);
    }

    @Test
    void everyPuppyIsGrownOnTheDayThatItsAgeSays() {
        Random random = new Random(9);
        for (int i = 0; i < 2000; i++) {
            Double adult = i % 3 == 0 ? null : (Double) (i % 3 * 30.0);
            double months = adult != null && adult >= 45 ? 18 : 12;
            // Ages as scenarios give them: days, weeks and months, some of them to the hour.
            double days = random.nextInt(300) + (i % 2) * random.nextInt(24) / 24.0 + (i % 5) * 365.25 / 12;
            if (days < months * 365.25 / 12) {
                Dog dog = TestDogs.puppy(5, days / 7, adult);
                int grown = OVER_TIME.grownOn(dog);
                assertThat(stage(dog, grown - 1)).isEqualTo(LifeStage.GROWTH);
                assertThat(stage(dog, grown)).isEqualTo(LifeStage.ADULT);
            }
        }
        assertThat(DogOverTime.load(EnergyEquations.load()).figures()).isNotNull();
    }

    @Test
    void noPuppyShrinksOrPassesItsAdultWeight() {
        Random random = new Random(4);
        for (int i = 0; i < 100; i++) {
            double adult = 2 + 70 * random.nextDouble();
            Dog dog = TestDogs.puppy(adult * (0.05 + 0.9 * random.nextDouble()), 6 + 40 * random.nextDouble(), adult);
            double before = dog.weightKg();
            for (int day = 1; day < 182; day += 3) {
                double kg = on(dog, day).weightKg();
                assertThat(kg).isBetween(before, adult);
                before = kg;
            }
        }
    }

    @Test
    void withoutAnAdultWeightAPuppysWeightIsHeldAndThatIsSaid() {
        Dog dog = TestDogs.puppy(6, 10, null);
        assertThat(on(dog, 60).weightKg()).isEqualTo(6);
        assertThat(notes(dog, 0)).anyMatch(note -> note.contains("its weight is held"));
    }

    @Test
    void weighInsLeadAPuppyWhoseAdultWeightIsNotKnown() {
        Growth growth = Growth.load();
        double tempo = growth.curve(20).tempoDays();
        List<WeighIn> weighIns = List.of(
                new WeighIn(-21, 4),
                new WeighIn(-14, Growth.weightAfter(4, 20, tempo, 7)),
                new WeighIn(-7, Growth.weightAfter(4, 20, tempo, 14)),
                new WeighIn(0, Growth.weightAfter(4, 20, tempo, 21)));
        Dog dog = TestDogs.puppy(weighIns.get(3).kg(), 13, null)
                .withCourse(new Course(weighIns, null, null, null, null, null));
        assertThat(on(dog, 60).weightKg()).isCloseTo(Growth.weightAfter(4, 20, tempo, 81), within(0.5));
        assertThat(notes(dog, 0)).anyMatch(note -> note.contains("weigh-ins speak for"));
    }

    @Test
    void aWeightPlanGoesAtItsRateAndStopsAtTheGoal() {
        Dog dog = TestDogs.withGoal(20, 19).withCourse(rate(0.02));
        assertThat(on(dog, 7).weightKg()).isCloseTo(20 * 0.98, within(1e-9));
        // ln(19 / 20) / ln(0.98) is 2.54 weeks, so the goal is met on day 18.
        assertThat(stage(dog, 17)).isEqualTo(LifeStage.WEIGHT_LOSS);
        assertThat(stage(dog, 18)).isEqualTo(LifeStage.ADULT);
        assertThat(on(dog, 18).weightKg()).isEqualTo(19);
        assertThat(on(dog, 180).weightKg()).isEqualTo(19);
        assertThat(notes(dog, 18)).anyMatch(note -> note.contains("has come to its goal weight"));
        Dog thin = TestDogs.withGoal(19, 20);
        assertThat(on(thin, 7).weightKg()).isCloseTo(19 * 1.01, within(1e-9));
        assertThat(on(thin, 100).weightKg()).isEqualTo(20);
    }

    @Test
    void aGoalOfAGrowingDogIsFollowedOnceItIsGrown() {
        Dog puppy = TestDogs.puppy(19, 50, 20.0);
        Dog dog = new Dog(
                "Moss",
                19,
                350,
                20.0,
                Dog.Sex.FEMALE,
                true,
                Activity.MODERATE,
                null,
                18.0,
                null,
                null,
                0,
                List.of(),
                null);
        assertThat(on(dog, 15).weightKg()).isGreaterThan(19);
        assertThat(stage(dog, 15)).isEqualTo(LifeStage.GROWTH);
        assertThat(stage(dog, 16)).isEqualTo(LifeStage.WEIGHT_LOSS);
        assertThat(on(dog, 150).weightKg()).isEqualTo(18);
        assertThat(on(puppy, 150).weightKg()).isGreaterThan(19.9);
    }

    @ParameterizedTest
    @CsvSource({
        "0, in whelp 7",
        "6, in whelp 7",
        "7, in whelp 8",
        "20, in whelp 9",
        "21, nursing 1",
        "28, nursing 2",
        "42, nursing 4",
        "49, nursing 4",
        "76, nursing 4",
        "77, none",
        "200, none"
    })
    void gestationPassesIntoNursingAndNursingIntoNothing(int day, String what) {
        Dog dog = TestDogs.bitch(20, new Reproduction.Gestation(7, 5));
        Reproduction then = on(dog, day).reproduction();
        String is = then == null
                ? "none"
                : then instanceof Reproduction.Gestation gestation
                        ? "in whelp " + gestation.week()
                        : "nursing " + ((Reproduction.Lactation) then).week();
        assertThat(is).isEqualTo(what);
        if (then instanceof Reproduction.Lactation lactation) {
            assertThat(lactation.puppies()).isEqualTo(5);
        }
    }

    @Test
    void aBitchGainsAFifthLosesMostOfItAtWhelpingAndIsHerselfAgainAtWeaning() {
        Dog dog = TestDogs.bitch(20, new Reproduction.Gestation(5, 5));
        assertThat(on(dog, 7).weightKg()).isEqualTo(20);
        assertThat(on(dog, 34).weightKg()).isCloseTo(20 * (1 + 0.2 * 27 / 28), within(1e-9));
        assertThat(on(dog, 35).weightKg()).isCloseTo(21.5, within(1e-9));
        assertThat(on(dog, 35 + 28).weightKg()).isCloseTo(20 * 1.0375, within(1e-9));
        assertThat(on(dog, 35 + 56).weightKg()).isCloseTo(20, within(1e-9));
        assertThat(stage(dog, 35 + 56)).isEqualTo(LifeStage.ADULT);
        Dog late = TestDogs.bitch(24, new Reproduction.Gestation(9, 5));
        assertThat(on(late, 7).weightKg()).isCloseTo(24 / (1 + 0.2 * 21 / 28) * 1.075, within(1e-9));
    }

    @Test
    void aGoalOfANursingBitchIsFollowedOnceSheHasWeaned() {
        Dog dog = new Dog(
                "Ada",
                20,
                1500,
                null,
                Dog.Sex.FEMALE,
                false,
                Activity.MODERATE,
                null,
                18.0,
                new Reproduction.Lactation(4, 5),
                null,
                0,
                List.of(),
                null);
        double weaned = 20 / (1 + 0.075 * 35 / 56);
        assertThat(on(dog, 34).reproduction()).isEqualTo(new Reproduction.Lactation(4, 5));
        assertThat(on(dog, 35).weightKg()).isCloseTo(weaned, within(1e-9));
        assertThat(stage(dog, 35)).isEqualTo(LifeStage.WEIGHT_LOSS);
        assertThat(on(dog, 42).weightKg()).isCloseTo(weaned * 0.99, within(1e-9));
        assertThat(on(dog, 150).weightKg()).isEqualTo(18);
        assertThat(notes(dog, 35)).anyMatch(note -> note.contains("until it weighs 18.0 kg"));
    }

    @Test
    void withoutTheLittersSizeTheNinthWeekIsHeldAndThatIsSaid() {
        Dog dog = TestDogs.bitch(20, new Reproduction.Gestation(8));
        assertThat(on(dog, 100).reproduction()).isEqualTo(new Reproduction.Gestation(9));
        assertThat(notes(dog, 14)).anyMatch(note -> note.contains("size of the litter is not known"));
    }

    @Test
    void nursingBeyondTheFourthWeekIsSaidToBeHeld() {
        Dog dog = TestDogs.bitch(20, new Reproduction.Lactation(2, 6));
        assertThat(notes(dog, 21)).anyMatch(note -> note.contains("held at the fourth week"));
        assertThat(notes(dog, 49)).anyMatch(note -> note.contains("weaned"));
    }

    @Test
    void aDogIsThereFromTheDayItComesUntilTheDayItLeaves() {
        Dog dog = TestDogs.adult(20).withCourse(new Course(List.of(), null, null, 7, 21, null));
        assertThat(OVER_TIME.on(dog, 6)).isEmpty();
        assertThat(OVER_TIME.on(dog, 7)).isPresent();
        assertThat(OVER_TIME.on(dog, 20)).isPresent();
        assertThat(OVER_TIME.on(dog, 21)).isEmpty();
    }

    @Test
    void aPuppyFarOffItsCurveIsAskedAboutOnceTheCurveIsSure() {
        assertThat(notes(TestDogs.puppy(8, 26, 30.0), 0)).anyMatch(note -> note.contains("check its age"));
        assertThat(notes(TestDogs.puppy(22, 26, 30.0), 0)).noneMatch(note -> note.contains("check its age"));
        assertThat(notes(TestDogs.puppy(6, 9, 30.0), 0)).noneMatch(note -> note.contains("check its age"));
    }
}
