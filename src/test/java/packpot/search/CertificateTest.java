package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static packpot.search.Programs.INF;

import org.junit.jupiter.api.Test;

/**
 * What prices of the rows prove. At least 10 of x at 2 and y at 3, of x up to 6 and of y up to 20: 6 and 4, for 24. With a
 * price p of the row nothing costs less than 10 p + the least of (2 - p) x + (3 - p) y.
 */
class CertificateTest {
    private static final int NEED = 2;

    private static Programs feeds() {
        return Programs.minimise(2, 3).upper(6, 20).atLeast(10, 1, 1);
    }

    /** With the row nonbasic, and its price as it is claimed. */
    private static Dictionary priced(Programs programs, double price) {
        Dictionary dictionary = programs.withAllRows();
        dictionary.exchange(0, 1, true);
        assertThat(dictionary.nonbasic[1]).isEqualTo(NEED);
        dictionary.reduced[1] = price;
        return dictionary;
    }

    @Test
    void theRightPriceProvesTheOptimum() {
        Dictionary dictionary = feeds().withAllRows();
        dictionary.exchange(0, 1, true);
        double[] reduced = new double[2];
        assertThat(Certificate.bound(dictionary, reduced)).isEqualTo(24);
        assertThat(reduced).containsExactly(-1, 0);
        assertThat(Certificate.bound(dictionary)).isEqualTo(24);
        assertThat(dictionary.cost()).isEqualTo(24);
    }

    @Test
    void aWrongPriceProvesLess() {
        assertThat(Certificate.bound(priced(feeds(), 2))).isEqualTo(20);
        assertThat(Certificate.bound(priced(feeds(), 2.5))).isEqualTo(25 - 0.5 * 6);
        assertThat(Certificate.bound(priced(feeds(), 5))).isEqualTo(50 - 3 * 6 - 2 * 20);
        assertThat(Certificate.bound(priced(feeds(), 0))).isZero();
        assertThat(Certificate.bound(priced(feeds().offset(100), 2))).isEqualTo(120);
        // A price on having no more than any amount.
        assertThat(Certificate.bound(priced(feeds(), -1))).isZero();
    }

    /** What the dictionary says of the columns themselves does not matter. */
    @Test
    void onlyPricesOfRowsAreTaken() {
        Dictionary dictionary = priced(feeds(), 2);
        dictionary.reduced[0] = 77;
        dictionary.basicValue[0] = 123;
        dictionary.table[0][0] = 5;
        assertThat(Certificate.bound(dictionary)).isEqualTo(20);
    }

    @Test
    void boundsAsTheyStandCount() {
        Dictionary dictionary = priced(feeds(), 3);
        dictionary.bound(0, 1, 5);
        assertThat(Certificate.bound(dictionary)).isEqualTo(25);
        dictionary.bound(1, 6, 20);
        assertThat(Certificate.bound(dictionary)).isEqualTo(25);
        dictionary.reduced[1] = 2;
        assertThat(Certificate.bound(dictionary)).isEqualTo(20 + 6);
    }

    @Test
    void limitsOfBothSides() {
        Programs programs = Programs.minimise(-2, -3).upper(6, 20).row(-4, 10, 1, 1);
        assertThat(Certificate.bound(priced(programs, -3))).isEqualTo(-30);
        assertThat(Certificate.bound(priced(programs, -2))).isEqualTo(-20 - 20);
        assertThat(Certificate.bound(priced(programs, 1))).isEqualTo(-4 - 3 * 6 - 4 * 20);
    }

    @Test
    void withoutABoundNothingIsProved() {
        Programs open = Programs.minimise(2, 3).upper(6, INF).atLeast(10, 1, 1);
        assertThat(Certificate.bound(priced(open, 3))).isEqualTo(24);
        assertThat(Certificate.bound(priced(open, 3.5))).isEqualTo(-INF);
        Programs opposite =
                Programs.minimise(2, 3, -1).lower(0, 0, -INF).upper(6, INF, INF).atLeast(10, 1, 1, 0);
        assertThat(Certificate.bound(opposite.withAllRows())).isEqualTo(-INF);
        Programs both = Programs.minimise(0, -1).lower(-INF, 3).upper(INF, INF);
        assertThat(Certificate.bound(new Dictionary(both.program()))).isEqualTo(-INF);
    }

    /** x at most 4 and y at most 5 are at most 9. */
    @Test
    void whatIsImpossibleIsProvedByARowAlone() {
        for (double need : new double[] {9.01, 9, 8.9}) {
            Dictionary dictionary =
                    Programs.minimise(0, 0).upper(4, 5).atLeast(need, 1, 1).withAllRows();
            assertThat(Certificate.provesImpossible(dictionary, 0)).isEqualTo(need > 9);
        }
        for (double most : new double[] {-9.01, -9, -8.9}) {
            Dictionary dictionary =
                    Programs.minimise(0, 0).upper(4, 5).atMost(most, -1, -1).withAllRows();
            dictionary.flip(0);
            dictionary.flip(1);
            assertThat(Certificate.provesImpossible(dictionary, 0)).isEqualTo(most < -9);
        }
    }

    /** What is missing counts once it is more than a thousandth part of a millionth of the figures: 1 + 9, here. */
    @Test
    void digitsProveNothing() {
        for (double more : new double[] {0.9e-8, 1.1e-8}) {
            Dictionary dictionary =
                    Programs.minimise(0, 0).upper(4, 5).atLeast(9 + more, 1, 1).withAllRows();
            assertThat(Certificate.provesImpossible(dictionary, 0)).isEqualTo(more > 1e-8);
        }
        for (double more : new double[] {0.9e-8, 1.1e-8}) {
            Dictionary dictionary = Programs.minimise(0, 0)
                    .upper(4, 5)
                    .atMost(-9 - more, -1, -1)
                    .withAllRows();
            dictionary.flip(0);
            dictionary.flip(1);
            assertThat(Certificate.provesImpossible(dictionary, 0)).isEqualTo(more > 1e-8);
        }
    }

    /** x + y at most 2, and 2 x + y at least 4.5 with x at most 2: the second less the first is x at least 2.5. */
    private static Dictionary twoRows(double need) {
        Dictionary dictionary = Programs.minimise(0, 0)
                .upper(2, 9)
                .atMost(2, 1, 1)
                .atLeast(need, 2, 1)
                .withAllRows();
        dictionary.exchange(0, 1, false);
        dictionary.flip(0);
        return dictionary;
    }

    @Test
    void twoRowsTogetherAreImpossible() {
        assertThat(Certificate.provesImpossible(twoRows(4.5), 1)).isTrue();
        assertThat(Certificate.provesImpossible(twoRows(4), 1)).isFalse();
        // A column may be what cannot be kept: y is 2 - x, and should be at least 2.1 with x from nothing on.
        Dictionary dictionary = twoRows(4.5);
        dictionary.bound(1, 2.1, 9);
        assertThat(Certificate.provesImpossible(dictionary, 0)).isTrue();
        dictionary.bound(1, 1.9, 9);
        assertThat(Certificate.provesImpossible(dictionary, 0)).isFalse();
        // y at most -0.1 needs x at least 2.1.
        Programs equal = Programs.minimise(0, 0).upper(2, 9).row(2, 2, 1, 1);
        Dictionary above = equal.withAllRows();
        above.exchange(0, 1, false);
        above.flip(0);
        above.bound(1, -3, -0.1);
        assertThat(Certificate.provesImpossible(above, 0)).isTrue();
        above.bound(1, -3, 0);
        assertThat(Certificate.provesImpossible(above, 0)).isFalse();
    }

    @Test
    void wrongMultipliersProveNothing() {
        for (double multiplier : new double[] {0, 0.5, 3, -1}) {
            Dictionary dictionary = twoRows(4.5);
            assertThat(dictionary.nonbasic[1]).isEqualTo(NEED);
            dictionary.table[1][1] = multiplier;
            assertThat(Certificate.provesImpossible(dictionary, 1)).isFalse();
        }
        // A little wrong is right enough: 0.99 x - 0.01 y should be at least 4.5 - 2.02, and is at most 1.98. Twice the
        // first
        // row will do as well: 2 x + y is at most 4, since y is at least nothing.
        for (double multiplier : new double[] {1.01, 2}) {
            Dictionary dictionary = twoRows(4.5);
            dictionary.table[1][1] = multiplier;
            assertThat(Certificate.provesImpossible(dictionary, 1)).isTrue();
        }
    }

    /** What a row asks of its price alone, without a limit on that side, is left out. */
    @Test
    void aLimitThatIsNotThereProvesNothing() {
        Dictionary dictionary = Programs.minimise(0, 0)
                .upper(2, 9)
                .atLeast(2, 1, 1)
                .atLeast(4.5, 2, 1)
                .withAllRows();
        dictionary.exchange(0, 1, true);
        dictionary.flip(0);
        dictionary.bound(0, 0, 2);
        assertThat(Certificate.provesImpossible(dictionary, 1)).isFalse();
        assertThat(Certificate.bound(dictionary)).isZero();
    }
}
