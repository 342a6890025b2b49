package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Which rows a dictionary takes in, and which it leaves out again. */
class RowsOfADictionaryTest {
    /** Row i says that x + i y is at most i, for i from 1. */
    private static Programs fan(int rows) {
        Programs programs = Programs.minimise(-1, -1).upperAll(100);
        IntStream.rangeClosed(1, rows).forEach(i -> programs.atMost(i, 1, i));
        return programs;
    }

    @Test
    void allThatAreBrokenComeInUpToForty() {
        Dictionary dictionary = new Dictionary(fan(40).program());
        assertThat(dictionary.addBroken(new double[] {5, 0})).isTrue();
        // Of x at most i, those below 5.
        assertThat(dictionary.count).isEqualTo(4);
        assertThat(dictionary.addBroken(new double[] {100, 0})).isTrue();
        assertThat(dictionary.count).isEqualTo(40);
        assertThat(dictionary.addBroken(new double[] {100, 0})).isFalse();
        Programs.check(dictionary);
    }

    @Test
    void ofMoreTheFortyThatAreBrokenMost() {
        Dictionary dictionary = new Dictionary(fan(60).program());
        // x = 100 breaks row i by 100 - i.
        assertThat(dictionary.addBroken(new double[] {100, 0})).isTrue();
        assertThat(dictionary.count).isEqualTo(40);
        assertThat(IntStream.range(0, 40).map(i -> dictionary.basic[i] - 2))
                .containsExactlyElementsOf(IntStream.range(0, 40).boxed().toList());
        assertThat(dictionary.addBroken(new double[] {100, 0})).isTrue();
        assertThat(dictionary.count).isEqualTo(60);
        Programs.check(dictionary);
    }

    @Test
    void aRowIsBrokenBeyondAHundredMillionthOfItself() {
        Compact program = Programs.minimise(1, 1)
                .upperAll(1000)
                .row(99, 199, 1, 1)
                .row(99, 199, 1, 1)
                .program();
        for (double x : new double[] {199 + 1.9e-6, 99 - 0.9e-6, 150}) {
            assertThat(new Dictionary(program).addBroken(new double[] {x, 0})).isFalse();
        }
        for (double x : new double[] {199 + 2.1e-6, 99 - 1.1e-6}) {
            Dictionary dictionary = new Dictionary(program);
            assertThat(dictionary.addBroken(new double[] {x, 0})).isTrue();
            assertThat(dictionary.count).isEqualTo(2);
        }
    }

    @Test
    void whatDoesNotBindIsLeftOutOnceTwentyHaveGathered() {
        Dictionary dictionary = new Dictionary(fan(60).program());
        dictionary.addBroken(new double[] {20, 0});
        assertThat(dictionary.count).isEqualTo(19);
        dictionary.tidy();
        assertThat(dictionary.count).isEqualTo(19);
        dictionary.addBroken(new double[] {22, 0});
        // Twenty-one rows; x comes in for the third, so that the third binds.
        dictionary.exchange(2, 0, false);
        dictionary.tidy();
        assertThat(dictionary.count).isEqualTo(1);
        assertThat(dictionary.basic[0]).isZero();
        Programs.check(dictionary);
        // x = 3 - 3 y, and y costs 2 then.
        assertThat(dictionary.values()).containsExactly(new double[] {3, 0}, within(1e-9));
        // One was kept: with twenty more there are twenty-one.
        dictionary.addBroken(new double[] {21, 0});
        assertThat(dictionary.count).isEqualTo(20);
        dictionary.tidy();
        assertThat(dictionary.count).isEqualTo(20);
        dictionary.addBroken(new double[] {22, 0});
        assertThat(dictionary.count).isEqualTo(21);
        dictionary.tidy();
        assertThat(dictionary.count).isEqualTo(1);
        Programs.check(dictionary);
    }

    @Test
    void whatWasKeptLastIsForgottenWithTheRows() {
        Dictionary dictionary = new Dictionary(fan(60).program());
        dictionary.addBroken(new double[] {30, 0});
        dictionary.exchange(2, 0, false);
        dictionary.tidy();
        Dictionary copy = dictionary.copy();
        copy.addBroken(new double[] {21, 0});
        copy.tidy();
        assertThat(copy.count).isEqualTo(20);
        dictionary.begin();
        dictionary.addBroken(new double[] {21, 0});
        assertThat(dictionary.count).isEqualTo(20);
        dictionary.tidy();
        assertThat(dictionary.count).isZero();
    }
}
