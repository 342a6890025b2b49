package packpot.dog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Reference;

class GrowthTest {
    private static final Growth GROWTH = Growth.load();

    static Stream<Reference.Line> milestones() {
        return Reference.table("growth_milestones.csv").stream();
    }

    @ParameterizedTest
    @MethodSource("milestones")
    void curvesPassThePublishedMilestones(Reference.Line milestone) {
        Growth.Curve curve = GROWTH.curve(milestone.number("adult_kg"));
        double days = switch (milestone.text("milestone")) {
            case "half" -> ageAt(curve, 0.5);
            case "99 %" -> ageAt(curve, 0.99);
            case "4b+c" -> 4 * curve.tempoDays() + curve.inflectionDays();
            default -> throw new IllegalArgumentException(milestone.text("milestone"));
        };
        assertThat(days).isBetween(milestone.number("from_days"), milestone.number("to_days"));
    }

    /** HAND2010, page 292: from ten weeks on 2-4 g a day for each kg of adult weight; here from then to 99 % of it. */
    @ParameterizedTest
    @CsvSource({"2", "3", "5", "7.5", "12", "17", "25", "30", "45", "60", "90"})
    void gainsAfterTenWeeksAreThePublishedOnes(double adultKg) {
        Growth.Curve curve = GROWTH.curve(adultKg);
        double days = ageAt(curve, 0.99) - 70;
        double grams = 1000 * adultKg * (0.99 - curve.share(70));
        assertThat(grams / days / adultKg).isBetween(2.0, 4.0);
    }

    @Test
    void theCurveIsFastestAtItsInflectionAtThirtySevenPercent() {
        Growth.Curve curve = GROWTH.curve(30);
        double c = curve.inflectionDays();
        assertThat(curve.share(c)).isCloseTo(Math.exp(-1), within(1e-12));
        double fastest = curve.share(c + 0.5) - curve.share(c - 0.5);
        for (double age = 20; age < 500; age += 7) {
            assertThat(curve.share(age + 0.5) - curve.share(age - 0.5)).isLessThanOrEqualTo(fastest + 1e-9);
        }
    }

    @Test
    void fromAPointOfTheCurveThePathIsTheCurve() {
        Growth.Curve curve = GROWTH.curve(24);
        double at70 = 24 * curve.share(70);
        for (int days = 0; days < 400; days += 13) {
            assertThat(Growth.weightAfter(at70, 24, curve.tempoDays(), days))
                    .isCloseTo(24 * curve.share(70 + days), within(1e-9));
        }
    }

    @Test
    void betweenTwoSizesTheCurveLiesBetweenTheirs() {
        Growth.Curve curve = GROWTH.curve(Math.sqrt(30.0 * 60));
        assertThat(curve.tempoDays()).isCloseTo((54 + 71) / 2.0, within(1e-9));
        assertThat(GROWTH.curve(1.2)).isEqualTo(GROWTH.curve(3));
        assertThat(GROWTH.curve(100)).isEqualTo(GROWTH.curve(60));
    }

    @Test
    void whateverItsWeightTodayAPuppyGrowsWithoutPassingItsAdultWeight() {
        Random random = new Random(20260307);
        for (int i = 0; i < 500; i++) {
            double adult = 1 + 99 * random.nextDouble();
            double today = adult * (0.02 + 0.98 * random.nextDouble());
            double tempo = GROWTH.curve(adult).tempoDays();
            double before = today;
            assertThat(Growth.weightAfter(today, adult, tempo, 0)).isCloseTo(today, within(1e-9));
            for (int day = 1; day <= 200; day++) {
                double kg = Growth.weightAfter(today, adult, tempo, day);
                assertThat(kg).isGreaterThanOrEqualTo(before).isLessThanOrEqualTo(adult);
                before = kg;
            }
            assertThat(Growth.weightAfter(today, adult, tempo, 1000)).isCloseTo(adult, within(0.001 * adult));
        }
    }

    @Test
    void aPuppyBehindOneOfItsSizeStaysBehindAndCatchesUpLate() {
        double tempo = GROWTH.curve(30).tempoDays();
        double gap = Double.POSITIVE_INFINITY;
        for (int day = 0; day < 400; day += 10) {
            double ratio = Growth.weightAfter(7, 30, tempo, day) / Growth.weightAfter(5, 30, tempo, day);
            assertThat(ratio).isGreaterThan(1).isLessThan(gap);
            gap = ratio;
        }
        assertThat(gap).isLessThan(1.01);
    }

    /** The age in days at which a curve comes to a share of adult weight, found by halving. */
    private static double ageAt(Growth.Curve curve, double share) {
        double young = 0;
        double old = 3000;
        while (old - young > 1e-6) {
            double middle = (young + old) / 2;
            if (curve.share(middle) < share) {
                young = middle;
            } else {
                old = middle;
            }
        }
        return old;
    }
}
