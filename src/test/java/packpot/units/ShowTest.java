package packpot.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ShowTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            1474.1752 | US     | 3 lb 4 oz
            453.59237 | US     | 1 lb
            100       | US     | 3.5 oz
            446       | US     | 1 lb
            1474.1752 | METRIC | 1.47 kg
            12        | METRIC | 12 g
            2.5       | METRIC | 2.5 g
            1000      | METRIC | 1 kg
            """)
    void weightsSpeakTheHouseholdsSystem(double grams, UnitSystem system, String shown) {
        assertThat(Show.weight(grams, system)).isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource({"18927.05892, US, 20 qt", "1419.5, US, 1.5 qt", "18927.05892, METRIC, 18.9 l", "750, METRIC, 750 ml"})
    void volumesSpeakTheHouseholdsSystem(double ml, UnitSystem system, String shown) {
        assertThat(Show.volume(ml, system)).isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource({"354.9, US, 1 1/2 cup", "29.6, US, 1/8 cup", "14.8, US, 1 tbsp", "354.9, METRIC, 350 ml"})
    void helpingsAreRoundedToWhatAScoopCanMeasure(double ml, UnitSystem system, String shown) {
        assertThat(Show.scoop(ml, system)).isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource({"1.25, 4, 1 1/4", "0.5, 8, 1/2", "2, 4, 2", "0.01, 4, 1/4", "0.9999, 4, 1"})
    void countsAreShownInPartsThatCanBeGiven(double value, int parts, String shown) {
        assertThat(Show.fraction(value, parts)).isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1234.4|1,234",
                "99.95|100",
                "12.34|12.3",
                "1.205|1.21",
                "0.1235|0.124",
                "0.0421|0.0421",
                "0|0",
                "-3.50|-3.5"
            })
    void numbersKeepAsManyDecimalsAsTheirSizeAsksFor(double value, String shown) {
        assertThat(Show.number(value)).isEqualTo(shown);
    }

    @ParameterizedTest
    @ValueSource(doubles = {29, 284, 460, 1234, 9071})
    void aShownWeightReadsBackToWithinHalfAnOunce(double grams) throws UnitException {
        Quantity read = Quantity.parse(Show.weight(grams, UnitSystem.US), Dimension.MASS);
        assertThat(read.inBaseUnits()).isCloseTo(grams, within(14.2));
    }
}
