package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.search.Programs.INF;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * The first example of V. Chvátal, Linear Programming (1983), chapter 2: maximise 5 x + 4 y + 3 z with 2 x + 3 y + z &le; 5,
 * 4 x + y + 2 z &le; 11 and 3 x + 4 y + 2 z &le; 8. In its last dictionary, with the activities a, b and c of the three rows,
 * x = 2 a - 2 y - c, z = -3 a + y + 2 c, b = 2 a - 5 y and the profit is a + c - 3 y: 13 at x = 2, y = 0, z = 1. All columns
 * are held to 10 here, since a dictionary begins with each at a bound.
 */
class DictionaryTest {
    private static final int A = 3;
    private static final int B = 4;
    private static final int C = 5;

    private static Programs example() {
        return Programs.minimise(-5, -4, -3)
                .upperAll(10)
                .atMost(5, 2, 3, 1)
                .atMost(11, 4, 1, 2)
                .atMost(8, 3, 4, 2);
    }

    private static Dictionary last() {
        Dictionary dictionary = example().withAllRows();
        dictionary.exchange(dictionary.row(A), 0, false);
        dictionary.exchange(dictionary.row(C), 2, false);
        return dictionary;
    }

    @Test
    void beginsWithEachColumnWhereItsCostWantsIt() {
        Dictionary dictionary = example().withAllRows();
        assertThat(dictionary.values()).containsExactly(10, 10, 10);
        assertThat(dictionary.cost()).isEqualTo(-120);
        assertThat(dictionary.isDualFeasible()).isTrue();
        assertThat(IntStream.of(A, B, C).mapToDouble(dictionary::value)).containsExactly(60.0, 70.0, 90.0);
        Programs.check(dictionary);
    }

    /** x = (a - 3 y - z) / 2 makes the cost -5/2 a + 7/2 y - 1/2 z: y goes to nothing, and x is (5 - 0 - 10) / 2. */
    @Test
    void oneStep() {
        Dictionary dictionary = example().withAllRows();
        dictionary.exchange(dictionary.row(A), 0, false);
        assertThat(dictionary.reduced).containsExactly(-2.5, 3.5, -0.5);
        assertThat(dictionary.nonbasic).containsExactly(A, 1, 2);
        assertThat(dictionary.values()).containsExactly(-2.5, 0, 10);
        assertThat(dictionary.value(B)).isEqualTo(4 * -2.5 + 2 * 10);
        assertThat(dictionary.value(C)).isEqualTo(3 * -2.5 + 2 * 10);
        Programs.check(dictionary);
    }

    @Test
    void thePublishedDictionary() {
        Dictionary dictionary = last();
        assertThat(dictionary.nonbasic).containsExactly(A, 1, C);
        assertThat(dictionary.table[dictionary.row(0)]).containsExactly(new double[] {2, -2, -1}, within(1e-12));
        assertThat(dictionary.table[dictionary.row(2)]).containsExactly(new double[] {-3, 1, 2}, within(1e-12));
        assertThat(dictionary.table[dictionary.row(B)]).containsExactly(new double[] {2, -5, 0}, within(1e-12));
        assertThat(dictionary.reduced).containsExactly(new double[] {-1, 3, -1}, within(1e-12));
        assertThat(dictionary.values()).containsExactly(new double[] {2, 0, 1}, within(1e-12));
        assertThat(dictionary.cost()).isCloseTo(-13, within(1e-12));
        assertThat(dictionary.isDualFeasible()).isTrue();
        assertThat(dictionary.isExact(dictionary.values())).isTrue();
        Programs.check(dictionary);
    }

    @Test
    void aRowThatComesLaterIsWrittenInTheNonbasicVariables() {
        Dictionary dictionary = new Dictionary(example().atMost(2, 1, 1, 1).program());
        assertThat(dictionary.addBroken(new double[] {10, 0, 0})).isTrue();
        assertThat(dictionary.count).isEqualTo(4);
        dictionary = new Dictionary(example().atMost(2, 1, 1, 1).program());
        // Keeps to the others, and breaks the third.
        dictionary.addBroken(new double[] {0, 2.5, -2.5});
        assertThat(dictionary.count).isZero();
        assertThat(dictionary.addBroken(new double[] {1, 2, -1})).isTrue();
        assertThat(dictionary.basic[0]).isEqualTo(A);
        dictionary.exchange(0, 0, false);
        assertThat(dictionary.addBroken(new double[] {2.5, 0, 0})).isTrue();
        // x + y + z = (a - y + z) / 2.
        assertThat(dictionary.table[dictionary.row(6)]).containsExactly(0.5, -0.5, 0.5);
        Programs.check(dictionary);
        assertThat(dictionary.addBroken(new double[] {0, 0, 0})).isFalse();
    }

    @Test
    void boundsThatMoveTakeWithThemWhatRestsThere() {
        Dictionary dictionary = last();
        dictionary.bound(1, 0, 1);
        assertThat(dictionary.values()).containsExactly(new double[] {2, 0, 1}, within(1e-12));
        dictionary.bound(1, 0.5, 1);
        // x falls by 2 for one of y, z rises by 1, and it costs 3.
        assertThat(dictionary.values()).containsExactly(new double[] {1, 0.5, 1.5}, within(1e-12));
        assertThat(dictionary.cost()).isCloseTo(-11.5, within(1e-12));
        dictionary.bound(1, 0.5, 0.75);
        dictionary.flip(1);
        assertThat(dictionary.values()).containsExactly(new double[] {0.5, 0.75, 1.75}, within(1e-12));
        assertThat(dictionary.isDualFeasible()).isFalse();
        dictionary.flip(1);
        assertThat(dictionary.isDualFeasible()).isTrue();
        // What is basic stays where it is.
        dictionary.bound(0, 1.5, 2);
        assertThat(dictionary.value(0)).isCloseTo(1, within(1e-12));
        assertThat(dictionary.lower[0]).isEqualTo(1.5);
        assertThat(dictionary.upper[0]).isEqualTo(2);
        Programs.check(dictionary);
    }

    @Test
    void lostDigitsAreSeenAndReckonedAnew() {
        Dictionary dictionary = last();
        double[] values = dictionary.values();
        dictionary.basicValue[dictionary.row(B)] += 1.1e-7 * 11;
        assertThat(dictionary.isExact(values)).isFalse();
        dictionary.basicValue[dictionary.row(B)] -= 0.4e-7 * 11;
        assertThat(dictionary.isExact(values)).isTrue();
        dictionary.basicValue[dictionary.row(B)] -= 2e-7 * 11;
        assertThat(dictionary.isExact(values)).isFalse();
        for (int i = 0; i < 3; i++) {
            dictionary.reduced[i] += 0.01;
            for (int j = 0; j < 3; j++) {
                dictionary.table[i][j] += 0.01 * (i + j);
            }
        }
        dictionary.rebuild();
        assertThat(dictionary.values()).containsExactly(new double[] {2, 0, 1}, within(1e-12));
        assertThat(dictionary.reduced).usingComparatorWithPrecision(1e-12).containsExactlyInAnyOrder(-1.0, 3.0, -1.0);
        // The row that does not bind is left out.
        assertThat(dictionary.count).isEqualTo(2);
        assertThat(dictionary.row(B)).isEqualTo(Integer.MIN_VALUE);
        Programs.check(dictionary);
        assertThat(dictionary.isExact(dictionary.values())).isTrue();
    }

    /** Where terms of a million cancel out, a thousandth part of a millionth of them is what digits may lose. */
    @Test
    void largeTermsMayLoseMore() {
        Dictionary dictionary =
                Programs.minimise(1, 1).upperAll(1e6).row(0, 0, 1, -1).withAllRows();
        double[] large = {1e6, 1e6};
        dictionary.basicValue[0] = 1.9e-3;
        assertThat(dictionary.isExact(large)).isTrue();
        dictionary.basicValue[0] = 2.1e-3;
        assertThat(dictionary.isExact(large)).isFalse();
        dictionary.basicValue[0] = 1.9e-3;
        assertThat(dictionary.isExact(new double[] {1e5, 1e5})).isFalse();
    }

    @Test
    void beginningAgainForgetsTheRowsAndKeepsTheBounds() {
        Dictionary dictionary = last();
        dictionary.bound(0, 0, 7);
        dictionary.begin();
        assertThat(dictionary.count).isZero();
        assertThat(dictionary.values()).containsExactly(7, 10, 10);
        assertThat(dictionary.reduced).containsExactly(-5, -4, -3);
        assertThat(dictionary.isDualFeasible()).isTrue();
        assertThat(dictionary.addBroken(dictionary.values())).isTrue();
        assertThat(dictionary.count).isEqualTo(3);
    }

    @Test
    void aCopyStandsByItself() {
        Dictionary dictionary = last();
        Dictionary copy = dictionary.copy();
        Programs.check(copy);
        assertThat(copy.values()).isEqualTo(dictionary.values());
        copy.bound(1, 1, 2);
        copy.exchange(copy.row(B), 1, true);
        copy.bound(0, 0, 1);
        assertThat(dictionary.values()).containsExactly(new double[] {2, 0, 1}, within(1e-12));
        assertThat(dictionary.upper[0]).isEqualTo(10);
        Programs.check(dictionary);
    }

    /** Without an upper bound nothing holds what pays; what costs a little less than nothing there counts as nothing. */
    @Test
    void withoutABoundOnlyWhatPaysAlmostNothingMayRest() {
        assertThat(new Dictionary(Programs.minimise(-1, 1).program()).isDualFeasible())
                .isFalse();
        assertThat(new Dictionary(Programs.minimise(1, 0).program()).isDualFeasible())
                .isTrue();
        Dictionary little = new Dictionary(Programs.minimise(-0.9e-6, 1).program());
        assertThat(little.isDualFeasible()).isTrue();
        assertThat(little.reduced).containsExactly(0, 1);
        assertThat(new Dictionary(Programs.minimise(-1.1e-6, 1).program()).isDualFeasible())
                .isFalse();
        Dictionary below = new Dictionary(
                Programs.minimise(-1, 1).lower(-INF, -INF).upper(4, 5).program());
        assertThat(below.values()).containsExactly(4, 5);
        assertThat(below.isDualFeasible()).isFalse();
        Dictionary free = new Dictionary(Programs.minimise(0).lower(-INF).program());
        assertThat(free.isDualFeasible()).isFalse();
    }

    @Test
    void whatPaysLessThanDigitsSayStaysWhereItIs() {
        Dictionary tiny =
                new Dictionary(Programs.minimise(-0.9e-9, -1.1e-9).upperAll(3).program());
        assertThat(tiny.values()).containsExactly(0, 3);
        assertThat(tiny.reduced).containsExactly(0, -1.1e-9);
    }

    @Test
    void aShakeMovesEachCostALittleToItsOwnSide() {
        Dictionary dictionary =
                new Dictionary(Programs.minimise(0, 7, -3, 0).upperAll(1).program());
        double[] before = dictionary.reduced.clone();
        dictionary.shake(new Random(2));
        assertThat(dictionary.isDualFeasible()).isTrue();
        for (int j = 0; j < 4; j++) {
            double by = Math.abs(dictionary.reduced[j]) - Math.abs(before[j]);
            double share = by / (1e-7 * (1 + Math.abs(before[j])));
            assertThat(share).isBetween(0.499, 1.501);
        }
        assertThat(dictionary.reduced[0]).isNotEqualTo(dictionary.reduced[3]);
    }
}
