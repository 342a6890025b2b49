package packpot.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class QuantityTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            21 lb             | MASS   | 9525.43977
            9.5kg             | MASS   | 9500
            9.5 KG            | MASS   | 9500
            .5 lb             | MASS   | 226.796185
            3 lb 4 oz         | MASS   | 1474.1752025
            3 lb. 4 oz.       | MASS   | 1474.1752025
            1 1/2 lb          | MASS   | 680.388555
            250 mg            | MASS   | 0.25
            0 g               | MASS   | 0
            1 cup             | VOLUME | 236.5882365
            1 1/2 cups        | VOLUME | 354.88235475
            1/4 tsp           | VOLUME | 1.23223
            8 fl oz           | VOLUME | 236.5882365
            8 fl  oz          | VOLUME | 236.5882365
            5 cu ft           | VOLUME | 141584.23296
            20 qt             | VOLUME | 18927.05892
            2 l               | VOLUME | 2000
            650 kcal          | ENERGY | 650
            4.184 MJ          | ENERGY | 1000
            418.4 kJ          | ENERGY | 100
            2 weeks           | TIME   | 14
            1 year 6 months   | TIME   | 547.875
            """)
    void textBecomesBaseUnits(String text, Dimension dimension, double base) throws UnitException {
        Quantity read = Quantity.parse(text, dimension);
        assertThat(read.dimension()).isEqualTo(dimension);
        assertThat(read.inBaseUnits()).isCloseTo(base, within(1e-4));
    }

    @ParameterizedTest
    @EnumSource(Unit.class)
    void everySpellingOfAUnitIsReadAndConvertsBack(Unit unit) throws UnitException {
        for (String spelling : unit.spellings()) {
            Quantity read = Quantity.parse("7.25 " + spelling, unit.dimension());
            assertThat(read.inBaseUnits() / unit.inBaseUnit()).as(spelling).isCloseTo(7.25, within(1e-12));
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            21        | MASS   | expected a weight with its unit
            lb        | MASS   | expected a weight with its unit
            ''        | MASS   | expected a weight with its unit
            -3 lb     | MASS   | expected a weight with its unit
            3 lb of   | MASS   | expected a weight
            21 stone  | MASS   | "stone" is not a unit known here
            21 stone  | MASS   | one of: g, kg, mg, lb, oz
            2 cup     | MASS   | which is a volume; expected a weight
            2 lb      | VOLUME | which is a weight; expected a volume
            4 years   | ENERGY | which is a length of time; expected an energy
            1/0 lb    | MASS   | "1/0" is not a number
            1e999 kg  | MASS   | is not a number
            1,5 kg    | MASS   | expected a weight with its unit
            """)
    void badTextIsToldWithWhatWasReadAndWhatWasExpected(String text, Dimension dimension, String told) {
        assertThatThrownBy(() -> Quantity.parse(text, dimension))
                .isInstanceOf(UnitException.class)
                .hasMessageStartingWith("read \"" + text + "\"")
                .hasMessageContaining(told);
    }
}
