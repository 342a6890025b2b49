package packpot.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;

class WriteTest {

    @Test
    void amountsStandInTheirUnit() {
        assertThat(Write.grams(455, RoundingMode.CEILING)).isEqualTo("455 g");
        assertThat(Write.volume(18_900, Unit.LITRE, RoundingMode.CEILING)).isEqualTo("18.9 l");
        assertThat(Write.volume(18_900, Unit.QUART, RoundingMode.CEILING)).isEqualTo("19.972 qt");
        assertThat(Write.share(0.025, RoundingMode.FLOOR)).isEqualTo("2.5 %");
        assertThat(Write.share(1, RoundingMode.CEILING)).isEqualTo("100 %");
    }

    @Test
    void whatComesOfBinaryNumbersIsNoReasonToRound() {
        assertThat(Write.share(29 * 0.001, RoundingMode.FLOOR)).isEqualTo("2.9 %");
        assertThat(Write.share(0.1 + 0.2, RoundingMode.CEILING)).isEqualTo("30 %");
        assertThat(Write.money(0.1 + 0.2, "USD", RoundingMode.CEILING)).isEqualTo("$0.30");
    }

    @Test
    void moneyHasTheDecimalsAndTheSignOfItsCurrency() {
        assertThat(Write.money(62.5, "USD", RoundingMode.CEILING)).isEqualTo("$62.50");
        assertThat(Write.money(62.501, "EUR", RoundingMode.CEILING)).isEqualTo("€62.51");
        assertThat(Write.money(6250.5, "JPY", RoundingMode.CEILING)).isEqualTo("¥6251");
        assertThat(Write.money(62.5, "CHF", RoundingMode.CEILING)).isEqualTo("62.50 CHF");
        assertThat(Write.price(8.745, 4, "USD", RoundingMode.FLOOR)).isEqualTo("$8.745");
    }

    @Test
    void whatIsReadBackLiesOnTheSideThatIsAskedFor() throws UnitException {
        Random random = new Random(7);
        for (int i = 0; i < 2000; i++) {
            double figure = Math.exp(random.nextDouble() * 10);
            double up = Quantity.parse(Write.volume(figure, Unit.QUART, RoundingMode.CEILING), Dimension.VOLUME)
                    .inBaseUnits();
            double down = Quantity.parse(Write.grams(figure, RoundingMode.FLOOR), Dimension.MASS)
                    .inBaseUnits();
            double money = Price.parse(Write.money(figure, "CHF", RoundingMode.CEILING), "CHF")
                    .amount();
            assertThat(up).isBetween(figure * (1 - 1e-11), figure + Unit.QUART.inBaseUnit() / 1000);
            assertThat(down).isBetween(figure - 0.001, figure * (1 + 1e-11));
            assertThat(money).isBetween(figure * (1 - 1e-11), figure + 0.01);
        }
    }
}
