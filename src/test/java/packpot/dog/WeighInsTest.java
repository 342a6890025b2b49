package packpot.dog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is read out of weigh-ins: trends, growth paths, corrections, and which of them cannot be. */
class WeighInsTest {
    private static final WeightFigures FIGURES = WeightFigures.load();
    private static final Growth GROWTH = Growth.load();
    private static final EnergyEquations ENERGY = EnergyEquations.load();
    private static final Plausible PLAUSIBLE = new Plausible(FIGURES);
    private static final Plausible.Kind ADULT = new Plausible.Kind(2000, 365, false);
    private static final Plausible.Kind PUPPY = new Plausible.Kind(90, 365, false);

    private static List<WeighIn> weighIns(double... dayAndKg) {
        List<WeighIn> weighIns = new ArrayList<>();
        for (int i = 0; i < dayAndKg.length; i += 2) {
            weighIns.add(new WeighIn((int) dayAndKg[i], dayAndKg[i + 1]));
        }
        return weighIns;
    }

    /** Days -28, -14, 0 and 10.2, 10.0, 9.8 kg: 0.1 kg a week lost; scatter is the 1 % of 10 kg; sum of squares 392. */
    @Test
    void aTrendIsTheLeastSquaresLineWithItsStandardError() {
        Trend trend = Trend.of(weighIns(-28, 10.2, -14, 10.0, 0, 9.8), FIGURES).orElseThrow();
        assertThat(trend.kgPerWeek()).isCloseTo(-0.1, within(1e-12));
        assertThat(trend.meanKg()).isCloseTo(10, within(1e-12));
        assertThat(trend.standardErrorKgPerWeek()).isCloseTo(7 * 0.1 / Math.sqrt(392), within(1e-12));
    }

    /** 10.6, 9.4, 10.6 kg about a level line of 10.2: squares 0.16 + 0.64 + 0.16, one degree of freedom. */
    @Test
    void aScatterAboveOnePercentIsTakenAsItIs() {
        Trend trend = Trend.of(weighIns(-28, 10.6, -14, 9.4, 0, 10.6), FIGURES).orElseThrow();
        assertThat(trend.kgPerWeek()).isCloseTo(0, within(1e-12));
        assertThat(trend.standardErrorKgPerWeek()).isCloseTo(7 * Math.sqrt(0.96 / 392), within(1e-12));
    }

    /** Days -30, -14, -2: mean day -15.33; a line of 0.02 kg a day about the mean weight. */
    @Test
    void aTrendIsReckonedAboutTheMeanDayAndEndsWithTheLastWeighIn() {
        Trend trend = Trend.of(weighIns(-30, 9.4, -14, 9.72, -2, 9.96), FIGURES).orElseThrow();
        assertThat(trend.kgPerWeek()).isCloseTo(0.14, within(1e-12));
        assertThat(trend.meanKg()).isCloseTo(29.08 / 3, within(1e-12));
        assertThat(trend.days()).isEqualTo(28);
        double xx = 14.6666666666667 * 14.6666666666667
                + 1.3333333333333 * 1.3333333333333
                + 13.3333333333333 * 13.3333333333333;
        assertThat(trend.standardErrorKgPerWeek()).isCloseTo(7 * 0.01 * 29.08 / 3 / Math.sqrt(xx), within(1e-9));
    }

    /** Three off days about a line that climbs: 0.1, -0.2 and 0.1 kg off it, so squares of 0.06, one degree of freedom. */
    @Test
    void scatterIsReckonedAboutTheLineAndNotAboutTheMean() {
        Trend trend =
                Trend.of(weighIns(-29, 10.1, -15, 11.8, -1, 14.1), FIGURES).orElseThrow();
        assertThat(trend.kgPerWeek()).isCloseTo(1, within(1e-12));
        assertThat(trend.standardErrorKgPerWeek()).isCloseTo(7 * Math.sqrt(0.06 / 392), within(1e-9));
    }

    @Test
    void aTrendOfTheLastTwelveWeeksAndOfTwoWeeksAtLeast() {
        assertThat(Trend.of(weighIns(-84, 10, -50, 10, 0, 10), FIGURES)
                        .orElseThrow()
                        .weighIns())
                .isEqualTo(3);
        assertThat(Trend.of(weighIns(-85, 10, -50, 10, 0, 10), FIGURES)).isEmpty();
        assertThat(Trend.of(weighIns(-14, 10, -7, 10, 0, 10), FIGURES)).isPresent();
        assertThat(Trend.of(weighIns(-13, 10, -7, 10, 0, 10), FIGURES)).isEmpty();
    }

    @Test
    void twoWeighInsOrTwelveDaysOrOldOnesAreNoTrend() {
        assertThat(Trend.of(weighIns(-28, 10, 0, 9), FIGURES)).isEmpty();
        assertThat(Trend.of(weighIns(-12, 10, -6, 9.9, 0, 9.8), FIGURES)).isEmpty();
        assertThat(Trend.of(weighIns(-400, 10, -300, 9.9, 0, 9.8), FIGURES)).isEmpty();
        assertThat(Trend.of(weighIns(-70, 10, -60, 9.9, -29, 9.8), FIGURES)).isEmpty();
        assertThat(Trend.of(weighIns(-70, 10, -60, 9.9, -28, 9.8), FIGURES)).isPresent();
    }

    private static Dog fed(double kg, double goalKg, double kcal, List<WeighIn> weighIns) {
        return TestDogs.withGoal(kg, goalKg).withCourse(new Course(weighIns, kcal, null, null, null, null));
    }

    private static EnergyNeed need(Dog dog) {
        return ENERGY.need(dog, EnergyMethod.Maintenance.BY_ACTIVITY, EnergyMethod.Growth.KLEIN);
    }

    private static EnergyCorrection correction(Dog dog) {
        return EnergyCorrection.of(dog, need(dog), FIGURES).orElseThrow();
    }

    /** 10 kg: 110 x 10^0.75 = 618.6 kcal. It ate 619 and lost 0.1 kg a week, so it burns 619 + 0.1 x 7920 / 7 = 732.1. */
    @Test
    void anAdultThatLosesOnItsTargetGetsMoreByATenthAtMost() {
        Dog dog = fed(10, 10, 619, weighIns(-56, 10.8, -42, 10.6, -28, 10.4, -14, 10.2, 0, 10.0));
        EnergyCorrection correction = correction(dog);
        assertThat(correction.foundKcalPerDay()).isCloseTo(619 + 0.1 * 7920 / 7, within(1e-9));
        double error = 7 * 0.01 * 10.4 / Math.sqrt(1960);
        double bound = Math.sqrt(
                Math.pow(2 * error * 7920 / 7, 2) + Math.pow(0.2 * 0.1 * 7920 / 7, 2) + Math.pow(0.05 * 619, 2));
        assertThat(correction.uncertaintyKcalPerDay()).isCloseTo(bound, within(1e-9));
        assertThat(correction.factor()).isEqualTo(1.1);
        EnergyNeed corrected = need(dog.withCourse(dog.course().withCorrection(correction)));
        assertThat(corrected.kcalPerDay()).isCloseTo(1.1 * need(dog).kcalPerDay(), within(1e-9));
        assertThat(corrected.equation().toString()).contains("times 1.10 by its weigh-ins");
        assertThat(corrected.source()).isEqualTo("FEDIAF HAND2010");
    }

    @Test
    void anAdultThatGainsOnItsTargetGetsLess() {
        Dog dog = fed(10, 10, 640, weighIns(-56, 9.2, -42, 9.4, -28, 9.6, -14, 9.8, 0, 10.0));
        assertThat(correction(dog).factor()).isEqualTo(0.9);
    }

    @Test
    void aChangeSmallerThanItsOwnUncertaintyChangesNothing() {
        Dog dog = fed(10, 10, 619, weighIns(-28, 10.1, -14, 10.05, 0, 10.0));
        EnergyCorrection correction = correction(dog);
        assertThat(correction.factor()).isEqualTo(1);
        assertThat(correction.foundKcalPerDay()).isNotCloseTo(need(dog).kcalPerDay(), within(1.0));
        assertThat(need(dog.withCourse(dog.course().withCorrection(correction))))
                .isEqualTo(need(dog));
    }

    /** On 900 kcal 30 kg stay 30 kg; the plan wishes 1 % a week, 0.3 kg, so 900 - 0.3 x 7920 / 7 = 560.6. */
    @Test
    void aDogOnAWeightPlanIsHeldAgainstItsRate() {
        Dog dog = fed(30, 26, 900, weighIns(-56, 30, -42, 30, -28, 30, -14, 30, 0, 30));
        EnergyCorrection correction = correction(dog);
        assertThat(correction.foundKcalPerDay()).isCloseTo(900 - 0.3 * 7920 / 7, within(1e-9));
        assertThat(correction.wishedKgPerWeek()).isCloseTo(-0.3, within(1e-12));
        assertThat(correction.factor()).isBetween(0.9, 0.91);
    }

    @Test
    void inAnotherStageAndUnderAVeterinarianNothingIsCorrected() {
        Dog dog = fed(30, 26, 900, weighIns(-56, 30, -42, 30, -28, 30, -14, 30, 0, 30));
        Dog corrected = dog.withCourse(dog.course().withCorrection(correction(dog)));
        Dog there = corrected.at(dog.ageDays(), 26, null);
        assertThat(need(there).stage()).isEqualTo(LifeStage.ADULT);
        assertThat(need(there).kcalPerDay()).isEqualTo(need(TestDogs.adult(26)).kcalPerDay());
        Dog puppy = TestDogs.puppy(5, 10, 20.0).withCourse(dog.course());
        assertThat(EnergyCorrection.of(puppy, need(puppy), FIGURES)).isEmpty();
    }

    private static List<WeighIn> grown(double adultKg, double tempo, double kgNow, int weeks, double scatter) {
        return grown(adultKg, tempo, kgNow, weeks, scatter, new Random(7));
    }

    private static List<WeighIn> grown(
            double adultKg, double tempo, double kgNow, int weeks, double scatter, Random random) {
        List<WeighIn> weighIns = new ArrayList<>();
        double start = adultKg * Math.exp(-Math.log(adultKg / kgNow) * Math.exp(7.0 * weeks / tempo));
        for (int week = 0; week <= weeks; week++) {
            double kg = Growth.weightAfter(start, adultKg, tempo, 7 * week);
            weighIns.add(new WeighIn(7 * (week - weeks), kg * (1 + scatter * random.nextGaussian())));
        }
        return weighIns;
    }

    @ParameterizedTest
    @CsvSource({"6, 2.5", "18, 9", "30, 14", "60, 25"})
    void theAdultWeightIsFoundAgainFromExactWeighIns(double adultKg, double kgNow) {
        List<WeighIn> weighIns = grown(adultKg, GROWTH.curve(adultKg).tempoDays(), kgNow, 5, 0);
        GrowthFit fit = GrowthFit.of(weighIns, null, GROWTH, FIGURES).orElseThrow();
        assertThat(fit.adultKg()).isCloseTo(adultKg, within(0.02 * adultKg));
        assertThat(fit.residualShare()).isLessThan(0.003);
        assertThat(adultKg).isBetween(fit.leastAdultKg(), fit.mostAdultKg());
    }

    /** Two standard errors cover 95 of 100 in the long run; the rest is room for chance and for the steps of the search. */
    @Test
    void theRangeOfAnAdultWeightCoversTheTrueOneNineTimesInTen() {
        Random random = new Random(11);
        int covered = 0;
        for (int i = 0; i < 200; i++) {
            List<WeighIn> weighIns = grown(30, GROWTH.curve(30).tempoDays(), 14, 8, 0.02, random);
            GrowthFit fit = GrowthFit.of(weighIns, null, GROWTH, FIGURES).orElseThrow();
            assertThat(fit.leastAdultKg()).isLessThan(fit.mostAdultKg());
            covered += fit.leastAdultKg() <= 30 && 30 <= fit.mostAdultKg() ? 1 : 0;
        }
        assertThat(covered).isBetween(176, 199);
    }

    @Test
    void aTempoOfItsOwnIsFoundAndAPublishedOneIsKept() {
        double published = GROWTH.curve(30).tempoDays();
        GrowthFit slow = GrowthFit.of(grown(30, published * 1.3, 14, 8, 0), 30.0, GROWTH, FIGURES)
                .orElseThrow();
        assertThat(slow.ownTempo()).isTrue();
        assertThat(slow.tempoDays()).isCloseTo(published * 1.3, within(0.01 * published * 1.3));
        assertThat(slow.residualShare()).isLessThan(0.002);
        GrowthFit usual = GrowthFit.of(grown(30, published, 14, 3, 0.01), 30.0, GROWTH, FIGURES)
                .orElseThrow();
        assertThat(usual.ownTempo()).isFalse();
        assertThat(usual.tempoDays()).isEqualTo(published);
    }

    @Test
    void aPuppyThatDoesNotGrowTellsNoAdultWeightBeyondToday() {
        GrowthFit fit = GrowthFit.of(weighIns(-28, 10, -14, 10, 0, 10), null, GROWTH, FIGURES)
                .orElseThrow();
        assertThat(fit.adultKg()).isLessThan(10.5);
        assertThat(GrowthFit.of(weighIns(-14, 2, -7, 4, 0, 8), null, GROWTH, FIGURES))
                .isEmpty();
        assertThat(GrowthFit.of(weighIns(-14, 9, -7, 10, 0, 10.5), 10.5, GROWTH, FIGURES))
                .isEmpty();
        assertThat(GrowthFit.of(weighIns(-14, 9, -7, 10, 0, 11), 10.5, GROWTH, FIGURES))
                .isEmpty();
    }

    @Test
    void tenfoldWeightsAndJumpsAreLeftOutAndOnlyThey() {
        assertThat(PLAUSIBLE.longest(weighIns(-21, 8, -14, 8.1, -7, 82, 0, 8.2), ADULT))
                .containsExactly(true, true, false, true);
        assertThat(PLAUSIBLE.longest(weighIns(-21, 80, -14, 8.1, -7, 8.2, 0, 8.2), ADULT))
                .containsExactly(false, true, true, true);
        assertThat(PLAUSIBLE.longest(weighIns(-21, 5, -14, 6, -7, 7.2, 0, 8.4), PUPPY))
                .containsExactly(true, true, true, true);
        assertThat(PLAUSIBLE.longest(weighIns(-21, 5, -14, 6, -7, 7.2, 0, 8.4), ADULT))
                .isNotEqualTo(new boolean[] {true, true, true, true});
    }

    @Test
    void aBitchMayLoseAFifthInADay() {
        WeighIn before = new WeighIn(-1, 24);
        WeighIn after = new WeighIn(0, 20);
        assertThat(PLAUSIBLE.follows(before, after, new Plausible.Kind(1500, 365, true)))
                .isTrue();
        assertThat(PLAUSIBLE.follows(before, after, ADULT)).isFalse();
    }

    private static boolean follows(double ageDays, int firstDay, double kg, int thenDay, double thenKg) {
        return PLAUSIBLE.follows(
                new WeighIn(firstDay, kg), new WeighIn(thenDay, thenKg), new Plausible.Kind(ageDays, 365, false));
    }

    /** 3 % of the scales; an adult 5 % a week up and down, a puppy 35 % a week to 70 days of age and 25 % from then on. */
    @ParameterizedTest
    @CsvSource({
        "2000, -7, 0, 1.0815",
        "2000, -14, 0, 1.135575",
        "2000, -21, -7, 1.135575",
        "90, -7, 0, 1.2875",
        "77, -7, 0, 1.2875",
        "76, -7, 0, 1.3905",
        "300, -7, 0, 1.2875",
        "365, 0, 0, 1.03",
        "372, -7, 0, 1.0815"
    })
    void aWeightFollowsWithinTheBoundsOfItsAge(double ageDays, int from, int to, double most) {
        assertThat(follows(ageDays, from, 10, to, 10 * (most - 1e-6))).isTrue();
        assertThat(follows(ageDays, from, 10, to, 10 * (most + 1e-6))).isFalse();
        double least = 1 / (1.03 * Math.pow(1.05, (to - from) / 7.0));
        assertThat(follows(ageDays, from, 10, to, 10 * (least + 1e-6))).isTrue();
        assertThat(follows(ageDays, from, 10, to, 10 * (least - 1e-6))).isFalse();
    }

    /** 30 % more for a bitch in whelp or nursing. */
    @Test
    void aBitchMayChangeByThirtyPercentMore() {
        Plausible.Kind bitch = new Plausible.Kind(1500, 365, true);
        double most = 1.03 * 1.3 * 1.05;
        assertThat(PLAUSIBLE.follows(new WeighIn(-7, 10), new WeighIn(0, 10 * most - 1e-6), bitch))
                .isTrue();
        assertThat(PLAUSIBLE.follows(new WeighIn(-7, 10), new WeighIn(0, 10 * most + 1e-6), bitch))
                .isFalse();
    }

    @Test
    void ratesOfAWeightPlanAreThePublishedOnes() {
        WeightFigures figures = WeightFigures.load();
        for (boolean loss : new boolean[] {true, false}) {
            assertThat(figures.leastSharePerWeek(loss)).isEqualTo(0.005);
            assertThat(figures.mostSharePerWeek(loss)).isEqualTo(0.02);
            assertThat(figures.usualSharePerWeek(loss)).isEqualTo(0.01);
        }
    }
}
