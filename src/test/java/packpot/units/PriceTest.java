package packpot.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PriceTest {

    @ParameterizedTest
    @CsvSource({"$4.49, USD", "4.49, USD", "4.49 usd, USD", "€4.49, EUR", "4.49 EUR, EUR", "$4.49, AUD", "£ 4.49, GBP"})
    void aPriceWithoutAMeasureIsForOnePack(String text, String currency) throws UnitException {
        Price price = Price.parse(text, currency);
        assertThat(price.amount()).isEqualTo(4.49);
        assertThat(price.per()).isNull();
    }

    @ParameterizedTest
    @CsvSource({
        "$4.49/lb, MASS, 453.59237",
        "$4.49 / 2 lb, MASS, 907.18474",
        "$4.49 per 100 g, MASS, 100",
        "$4.49/l, VOLUME, 1000",
        "4.49 USD per fl oz, VOLUME, 29.5735295625"
    })
    void aPriceByMeasureKeepsWhatItBuys(String text, Dimension dimension, double base) throws UnitException {
        Quantity per = Price.parse(text, "USD").per();
        assertThat(per).isNotNull();
        assertThat(per.dimension()).isEqualTo(dimension);
        assertThat(per.inBaseUnits()).isCloseTo(base, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            cheap     | expected a price such as
            -4        | expected a price such as
            4,49      | expected a price such as
            $         | expected a price such as
            $4.49/day | expected a weight or a volume
            $4.49/box | "box" as what a price is for
            €4.49     | in EUR, but the household's currency is USD
            4.49 GBP  | in GBP, but the household's currency is USD
            """)
    void badPricesAreToldWithWhatWasReadAndWhatWasExpected(String text, String told) {
        assertThatThrownBy(() -> Price.parse(text, "USD"))
                .isInstanceOf(UnitException.class)
                .hasMessageStartingWith("read \"")
                .hasMessageContaining(told);
    }

    @Test
    void moneyIsPrintedWithItsOwnSign() {
        assertThat(Show.money(1234.5, "USD")).isEqualTo("$1,234.50");
        assertThat(Show.money(-2, "EUR")).isEqualTo("-€2.00");
        assertThat(Show.money(3, "CHF")).isEqualTo("CHF 3.00");
        assertThat(Show.money(3, "CAD")).isEqualTo("$3.00");
    }
}
