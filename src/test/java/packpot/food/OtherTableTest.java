package packpot.food;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Reference;
import packpot.Reference.Line;

/** Two countries' food tables agree on the whole, and nowhere differ as a misplaced decimal would make them. */
class OtherTableTest {
    private static final FoodCatalogue FOODS = FoodCatalogue.load();

    static Stream<Line> bands() {
        return Reference.table("ifct_bands.csv").stream();
    }

    @ParameterizedTest
    @MethodSource("bands")
    void anotherCountrysTableAgrees(Line band) {
        List<Double> ratios = new ArrayList<>();
        for (Line other : Reference.table("ifct_check.csv")) {
            OptionalDouble theirs = other.optional(band.text("column"));
            OptionalDouble ours = ours(other.text("food_id"), band.text("column"));
            if (theirs.isPresent()
                    && ours.isPresent()
                    && Math.min(theirs.getAsDouble(), ours.getAsDouble()) >= band.number("floor")) {
                double ratio = theirs.getAsDouble() / ours.getAsDouble();
                ratios.add(ratio);
                assertThat(Math.max(ratio, 1 / ratio))
                        .as("%s: %s and %s", other.text("food_id"), theirs, ours)
                        .isLessThan(band.number("cell_factor"));
            }
        }
        assertThat(ratios).hasSizeGreaterThanOrEqualTo(15);
        ratios.sort(null);
        assertThat(ratios.get(ratios.size() / 2))
                .as("median")
                .isBetween(band.number("median_low"), band.number("median_high"));
    }

    private static OptionalDouble ours(String id, String column) {
        Food food = FOODS.find(id);
        assertThat(food).as(id).isNotNull();
        Constituent constituent = Constituent.ofColumn(column);
        if (constituent == null) {
            return Reference.models("foods.csv").stream()
                    .filter(row -> row.text("id").equals(id))
                    .findFirst()
                    .orElseThrow()
                    .optional(column);
        }
        return food.composition().knows(constituent)
                ? OptionalDouble.of(100 * food.composition().perGram(constituent))
                : OptionalDouble.empty();
    }
}
