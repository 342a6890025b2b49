package packpot.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class UnitTest {

    @Test
    void noSpellingStandsForTwoUnits() {
        List<String> spellings = Arrays.stream(Unit.values())
                .flatMap(unit -> unit.spellings().stream()
                        .map(spelling -> spelling.toLowerCase(Locale.ROOT))
                        .distinct())
                .toList();
        assertThat(spellings).doesNotHaveDuplicates();
    }

    @Test
    void householdMeasuresNestAsTheirDefinitionsSay() {
        assertThat(Unit.POUND.inBaseUnit()).isCloseTo(16 * Unit.OUNCE.inBaseUnit(), within(1e-9));
        assertThat(Unit.GALLON.inBaseUnit()).isCloseTo(4 * Unit.QUART.inBaseUnit(), within(1e-9));
        assertThat(Unit.QUART.inBaseUnit()).isCloseTo(2 * Unit.PINT.inBaseUnit(), within(1e-9));
        assertThat(Unit.PINT.inBaseUnit()).isCloseTo(2 * Unit.CUP.inBaseUnit(), within(1e-9));
        assertThat(Unit.CUP.inBaseUnit()).isCloseTo(16 * Unit.TABLESPOON.inBaseUnit(), within(1e-9));
        assertThat(Unit.TABLESPOON.inBaseUnit()).isCloseTo(3 * Unit.TEASPOON.inBaseUnit(), within(1e-9));
        assertThat(Unit.CUP.inBaseUnit()).isCloseTo(8 * Unit.FLUID_OUNCE.inBaseUnit(), within(1e-9));
        double inchMl = Math.pow(2.54, 3);
        assertThat(Unit.GALLON.inBaseUnit()).isCloseTo(231 * inchMl, within(1e-6));
        assertThat(Unit.CUBIC_FOOT.inBaseUnit()).isCloseTo(1728 * inchMl, within(1e-6));
    }
}
