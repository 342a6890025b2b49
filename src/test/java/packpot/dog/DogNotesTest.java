package packpot.dog;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import packpot.units.UnitSystem;

/** Every sentence that people are told of a dog's later days, as it stands on paper, with its day. */
class DogNotesTest {
    private static final DogOverTime OVER_TIME = DogOverTime.load(EnergyEquations.load());
    private static final Trend LOST = new Trend(-0.1, 0.0354, 10, 3, 28);

    private static List<String> notes(Dog dog, int lastDay) {
        return DogNotes.of(OVER_TIME, dog, lastDay, UnitSystem.METRIC).stream()
                .map(note -> note.day() + ": " + note.of(dog))
                .toList();
    }

    private static List<String> notes(Dog dog) {
        return notes(dog, 400);
    }

    private static Course course(@Nullable Double weeklyShare, @Nullable Integer comes, @Nullable Integer leaves) {
        return new Course(List.of(), null, weeklyShare, comes, leaves, null);
    }

    private static Dog weighed(Dog dog, WeighIn... weighIns) {
        return dog.withCourse(new Course(List.of(weighIns), null, null, null, null, null));
    }

    @Test
    void aDogThatComesAndLeaves() {
        Dog dog = TestDogs.adult(20).withCourse(course(null, 7, 21));
        String comes = "7: Moss comes into the household.";
        String leaves = "21: Moss leaves the household; not fed from this day on.";
        assertThat(notes(dog)).containsExactly(comes, leaves);
        assertThat(notes(dog, 21)).containsExactly(comes, leaves);
        assertThat(notes(dog, 20)).containsExactly(comes);
        assertThat(notes(dog, 7)).containsExactly(comes);
        assertThat(notes(dog, 6)).isEmpty();
        assertThat(notes(TestDogs.adult(20).withCourse(course(null, 0, null)))).isEmpty();
        assertThat(notes(TestDogs.adult(20).withCourse(course(null, 1, null)))).hasSize(1);
    }

    @Test
    void whatComesAfterADogHasLeftIsNotTold() {
        assertThat(notes(TestDogs.withGoal(20, 19).withCourse(course(0.02, null, 10))))
                .containsExactly(
                        "0: Moss is taken to lose 2.0 % of its weight a week until it weighs 19.0 kg; what the scale says"
                                + " comes first.",
                        "10: Moss leaves the household; not fed from this day on.");
    }

    /** ln(19 / 20) / ln(0.98) = 2.54 weeks; ln(20 / 19) / ln(1.01) = 5.15. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "20; 19; 0.02; is taken to lose 2.0 % of its weight a week until it weighs 19.0 kg; 18",
                "20; 18; 0.1; is taken to lose 10 % of its weight a week until it weighs 18.0 kg; 7",
                "20; 19.208; 0.02; is taken to lose 2.0 % of its weight a week until it weighs 19.2 kg; 14",
                "20; 19; ; is taken to lose 1.0 % of its weight a week, the usual rate, until it weighs 19.0 kg; 36",
                "19; 20; ; is taken to gain 1.0 % of its weight a week, the usual rate, until it weighs 20.0 kg; 37",
                "20; 20.808; 0.02; is taken to gain 2.0 % of its weight a week until it weighs 20.8 kg; 14",
                "19; 20; 0.125; is taken to gain 13 % of its weight a week until it weighs 20.0 kg; 4"
            })
    void aWeightPlan(double kg, double goalKg, @Nullable Double rate, String words, int metOn) {
        assertThat(notes(TestDogs.withGoal(kg, goalKg).withCourse(course(rate, null, null))))
                .containsExactly(
                        "0: Moss " + words + "; what the scale says comes first.",
                        metOn + ": Moss has come to its goal weight and is fed as an adult.");
    }

    @Test
    void aWeightPlanInPounds() {
        assertThat(DogNotes.of(OVER_TIME, TestDogs.withGoal(20, 18), 0, UnitSystem.US))
                .singleElement()
                .extracting(note -> note.words().toString())
                .asString()
                .contains("until it weighs 39.7 lb");
    }

    /** Days -28, -14, 0: a slope of 0.1 kg a week, a standard error of 7 x 0.1 / sqrt(392) = 0.035 kg. */
    @Test
    void weighInsOfAnAdultThatNobodyToldTheFoodOf() {
        String loss = "; that changes no energy target without what it ate, \"fedEnergy\".";
        WeighIn middle = new WeighIn(-14, 10.0);
        Dog thinner = weighed(TestDogs.adult(9.8), new WeighIn(-28, 10.2), middle, new WeighIn(0, 9.8));
        assertThat(notes(thinner))
                .containsExactly(
                        "0: Moss was weighed 3 times in 28 days and lost 0.10 kg a week (standard error 0.04)" + loss);
        Dog heavier = weighed(TestDogs.adult(10.2), new WeighIn(-28, 9.8), middle, new WeighIn(0, 10.2));
        assertThat(notes(heavier))
                .containsExactly(
                        "0: Moss was weighed 3 times in 28 days and gained 0.10 kg a week (standard error 0.04)"
                                + loss);
        Dog level = weighed(TestDogs.adult(10), new WeighIn(-28, 10), middle, new WeighIn(0, 10));
        assertThat(notes(level)).singleElement().asString().contains("gained 0.00 kg a week");
        assertThat(DogNotes.of(OVER_TIME, thinner, 0, UnitSystem.US))
                .singleElement()
                .extracting(note -> note.words().toString())
                .asString()
                .startsWith("was weighed 3 times in 28 days and lost 0.22 lb a week (standard error 0.08);");
        assertThat(notes(weighed(TestDogs.adult(9.8), middle, new WeighIn(0, 9.8))))
                .isEmpty();
    }

    @Test
    void weighInsThatChangeAnEnergyTargetOrBearItOut() {
        String ate = "0: Moss was weighed 3 times in 28 days and lost 0.10 kg a week (standard error 0.04); on the"
                + " 1,300 kcal a day that it ate, it should get 1,235, give or take 57: ";
        assertThat(notes(corrected(0.95349)))
                .containsExactly(ate + "its energy target is taken times 0.953, a tenth being the most that is changed"
                        + " at once.");
        assertThat(notes(corrected(1))).containsExactly(ate + "that bears the equation out, and nothing is changed.");
    }

    private static Dog corrected(double factor) {
        EnergyCorrection correction =
                new EnergyCorrection(LifeStage.ADULT, factor, 1234.6, 56.7, 1300.4, 0, LOST, "HAND2010");
        return TestDogs.adult(10).withCourse(Course.NONE.withCorrection(correction));
    }

    private static final String GESTATION = "0: Moss gains weight from the sixth week of gestation on, to 20 % at"
            + " whelping (published: 15 to 25 %); the week given is taken to begin on the first day.";
    private static final String LATE_NURSING =
            "Moss is held at the fourth week of nursing, the last that the equation knows, until weaning.";
    private static final String WEANED =
            "Moss is taken to have weaned her puppies, eight weeks after whelping, at her weight before breeding.";

    @Test
    void aBitchInWhelp() {
        assertThat(notes(TestDogs.bitch(20, new Reproduction.Gestation(7, 5))))
                .containsExactly(
                        GESTATION,
                        "21: Moss is taken to whelp; plan again with the puppies that are born.",
                        "49: " + LATE_NURSING,
                        "77: " + WEANED);
        assertThat(notes(TestDogs.bitch(20, new Reproduction.Gestation(8))))
                .containsExactly(
                        GESTATION,
                        "14: Moss is held in the ninth week of gestation, since the size of the litter is not known; give"
                                + " \"expectedPuppies\", or \"lactation\" once she has whelped.");
    }

    @Test
    void aNursingBitch() {
        assertThat(notes(TestDogs.bitch(20, new Reproduction.Lactation(2, 6))))
                .containsExactly("21: " + LATE_NURSING, "49: " + WEANED);
    }

    /** 20 kg in the fourth week of nursing are 20 / (1 + 0.075 x 35 / 56) = 19.1 kg after weaning; 1 % a week to 18 kg. */
    @Test
    void aNursingBitchWithAGoal() {
        Dog dog = TestDogs.withGoal(20, 18).at(1500, 20, new Reproduction.Lactation(4, 5));
        assertThat(notes(dog))
                .containsExactly(
                        "7: " + LATE_NURSING,
                        "35: " + WEANED,
                        "35: Moss is taken to lose 1.0 % of its weight a week, the usual rate, until it weighs 18.0 kg; what"
                                + " the scale says comes first.",
                        "77: Moss has come to its goal weight and is fed as an adult.");
    }

    private static final String GROWS =
            "0: Moss grows from today's weight along the published curve for its size toward 30.0 kg";
    private static final String GROWN = "296: Moss counts as grown and is fed as an adult";

    @Test
    void aPuppyGrowsAndIsGrown() {
        assertThat(notes(TestDogs.puppy(6, 10, 30.0))).containsExactly(GROWS + ".", GROWN + ".");
        assertThat(notes(TestDogs.puppy(6, 10, null)))
                .containsExactly(
                        "0: Moss is growing, but nothing tells its adult weight, so its weight is held; give"
                                + " \"expectedAdultWeight\", or three \"weighIns\" over two weeks.",
                        GROWN + ".");
    }

    /** The path from 8 kg at 30 weeks is at 27.9 of 30 kg when the dog is grown; from 8 kg at 26 weeks at 28.7. */
    @Test
    void aPuppyThatIsLightWhenItIsGrown() {
        String behind = "; check its age and its expected adult weight.";
        assertThat(notes(TestDogs.puppy(8, 30, 30.0)))
                .containsExactly(
                        GROWS + ".",
                        "0: Moss weighs 69 % less than that curve gives for its age, 25.7 kg" + behind,
                        "156: Moss counts as grown and is fed as an adult, though it weighs only 93 % of its expected"
                                + " adult weight.");
        assertThat(notes(TestDogs.puppy(8, 26, 30.0)))
                .containsExactly(
                        GROWS + ".",
                        "0: Moss weighs 65 % less than that curve gives for its age, 23.2 kg" + behind,
                        "184: Moss counts as grown and is fed as an adult.");
    }

    /** The curve for 30 kg gives 23.16 kg at 26 weeks: 28 kg are 21 % more, 29 kg 25.2 %, 17.5 kg 24.4 % less. */
    @Test
    void aPuppyOffItsCurveByMoreThanAQuarter() {
        assertThat(notes(TestDogs.puppy(28, 26, 30.0))).hasSize(2);
        assertThat(notes(TestDogs.puppy(17.5, 26, 30.0))).hasSize(2);
        assertThat(notes(TestDogs.puppy(29, 26, 30.0)))
                .contains("0: Moss weighs 25 % more than that curve gives for its age, 23.2 kg; check its age and its"
                        + " expected adult weight.");
        // It has come to its adult weight early, or is past it: nothing that an age would explain.
        assertThat(notes(TestDogs.puppy(30, 26, 30.0))).hasSize(2);
        assertThat(notes(TestDogs.puppy(31, 26, 30.0))).hasSize(2);
    }

    /** Grown on day 16 at 20 exp(-ln(20 / 19) exp(-16 / 45.9)) = 19.29 kg; from there 6.9 weeks of 1 % to 18 kg. */
    @Test
    void aGrowingDogWithAGoal() {
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
        assertThat(notes(dog))
                .hasSize(4)
                .contains(
                        "16: Moss counts as grown and is fed as an adult.",
                        "16: Moss is taken to lose 1.0 % of its weight a week, the usual rate, until it weighs 18.0 kg; what"
                                + " the scale says comes first.")
                .last()
                .asString()
                .isEqualTo("65: Moss has come to its goal weight and is fed as an adult.");
    }

    /** Weigh-ins of exactly the curve, of one whose tempo is 1.3 times as long, and of one whose is 0.8 times as long. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "1; 30; GROWS; 5 weigh-ins lie within 0.0 %",
                "1.3; 30; GROWS, 23 % slower than that curve, by its weigh-ins; 5 weigh-ins lie within 0.",
                "0.8; 30; GROWS, 25 % faster than that curve, by its weigh-ins; 5 weigh-ins lie within 0.",
                "1; ; , the adult weight that its weigh-ins speak for (; 5 weigh-ins lie within 0."
            })
    void aPuppyThatWasWeighed(double slower, @Nullable Double expectedKg, String grows, String within) {
        double tempo = slower * Growth.load().curve(30).tempoDays();
        WeighIn[] weighIns = new WeighIn[5];
        for (int week = 0; week < weighIns.length; week++) {
            weighIns[week] = new WeighIn(7 * week - 28, Growth.weightAfter(6, 30, tempo, 7 * week));
        }
        Dog dog = weighed(TestDogs.puppy(weighIns[4].kg(), 14, expectedKg), weighIns);
        String first = notes(dog).get(0);
        assertThat(first).contains(grows.replace("GROWS", GROWS), within);
        assertThat(first).endsWith(" of the path (standard deviation).");
        assertThat(first.contains("faster") || first.contains("slower")).isEqualTo(slower != 1);
        assertThat(first.contains("speak for")).isEqualTo(expectedKg == null);
    }

    @Test
    void aVeterinariansFigureHoldsOnEveryDayOfADogThatChanges() {
        String told = "0: Moss is held to the veterinarian's figure on every day; ask again as it changes.";
        assertThat(notes(TestDogs.withVet(TestDogs.puppy(6, 10, 30.0), 700))).contains(told);
        assertThat(notes(TestDogs.withVet(TestDogs.adult(20), 700))).isEmpty();
        assertThat(notes(TestDogs.puppy(6, 10, 30.0))).doesNotContain(told);
    }
}
