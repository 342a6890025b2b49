package packpot.food;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Reference;
import packpot.Reference.Line;

/** The food table holds together: what was mistyped or misplaced by a column would show. */
class FoodTableTest {
    private static final FoodCatalogue FOODS = FoodCatalogue.load();
    private static final FoodEnergy ENERGY = FoodEnergy.load();
    private static final Map<String, Line> TABLE = Reference.models("foods.csv").stream()
            .collect(Collectors.toMap(row -> row.text("id"), Function.identity()));
    private static final List<Constituent> AMINO_ACIDS = Arrays.stream(Constituent.values())
            .filter(c -> c.compareTo(Constituent.ARGININE_G) >= 0 && c.compareTo(Constituent.VALINE_G) <= 0)
            .toList();

    static Stream<Food> foods() {
        return FOODS.all().stream().filter(food -> food.source().startsWith("SR"));
    }

    @Test
    void theCatalogueHoldsMostFoodsOfAHomeKitchen() {
        assertThat(FOODS.all()).hasSizeGreaterThanOrEqualTo(240);
        assertThat(foods()).hasSizeGreaterThanOrEqualTo(240);
        assertThat(TABLE).hasSameSizeAs(FOODS.all());
    }

    /**
     * The table reckons energy with factors of each food, so it lies between 4-9-4 kcal without fibre and 4-9-4 kcal
     * with fibre counted as carbohydrate, 15 % or 12 kcal more or less.
     */
    @ParameterizedTest
    @MethodSource("foods")
    void energyByThreeFactorsAgreesWithTheTablesOwnEnergy(Food food) {
        double own = TABLE.get(food.id()).number("energy_kcal");
        double withoutFibre = 100 * ENERGY.kcalPerGram(food.composition(), FoodEnergy.Method.ATWATER);
        double withFibre = withoutFibre + 4 * per100(food, Constituent.FIBRE_G);
        Set<String> exceptions = Reference.table("energy_exceptions.csv").stream()
                .map(line -> line.text("food"))
                .collect(Collectors.toSet());
        boolean within = own >= withoutFibre - Math.max(12, 0.15 * own) && own <= withFibre + Math.max(12, 0.15 * own);
        assertThat(within)
                .as("%s: %.0f to %.0f, table %.0f", food.id(), withoutFibre, withFibre, own)
                .isNotEqualTo(exceptions.contains(food.id()));
    }

    @ParameterizedTest
    @MethodSource("foods")
    void waterProteinFatCarbohydrateAndAshMakeUpTheFood(Food food) {
        if (food.composition().knows(Constituent.WATER_G) && food.composition().knows(Constituent.ASH_G)) {
            double sum = per100(food, Constituent.WATER_G)
                    + per100(food, Constituent.PROTEIN_G)
                    + per100(food, Constituent.FAT_G)
                    + per100(food, Constituent.CARBOHYDRATE_G)
                    + per100(food, Constituent.ASH_G);
            assertThat(sum).isCloseTo(100, within(4.0));
        }
    }

    @Test
    void halfOfAllFoodsAddUpToWithinATenthOfAGram() {
        double[] off = foods().filter(food -> food.composition().knows(Constituent.ASH_G))
                .mapToDouble(food -> Math.abs(100
                        - DoubleStream.of(
                                        per100(food, Constituent.WATER_G),
                                        per100(food, Constituent.PROTEIN_G),
                                        per100(food, Constituent.FAT_G),
                                        per100(food, Constituent.CARBOHYDRATE_G),
                                        per100(food, Constituent.ASH_G))
                                .sum()))
                .sorted()
                .toArray();
        assertThat(off[off.length / 2]).isLessThan(0.1);
    }

    @ParameterizedTest
    @MethodSource("foods")
    void partsAreNotMoreThanTheWhole(Food food) {
        double aminoAcids =
                AMINO_ACIDS.stream().mapToDouble(c -> per100(food, c)).sum();
        assertThat(aminoAcids).as("amino acids").isLessThanOrEqualTo(per100(food, Constituent.PROTEIN_G) + 1e-9);
        double fattyAcids = Stream.of(
                        Constituent.LINOLEIC_G,
                        Constituent.ALPHA_LINOLENIC_G,
                        Constituent.ARACHIDONIC_G,
                        Constituent.EPA_G,
                        Constituent.DHA_G)
                .mapToDouble(c -> per100(food, c))
                .sum();
        assertThat(fattyAcids).as("fatty acids").isLessThanOrEqualTo(per100(food, Constituent.FAT_G) + 0.05);
        assertThat(per100(food, Constituent.FIBRE_G))
                .as("fibre")
                .isLessThanOrEqualTo(per100(food, Constituent.CARBOHYDRATE_G) + 0.05);
        if (food.composition().knows(Constituent.VITAMIN_A_RAE_UG)) {
            assertThat(per100(food, Constituent.RETINOL_UG))
                    .as("retinol")
                    .isLessThanOrEqualTo(per100(food, Constituent.VITAMIN_A_RAE_UG) * 1.02 + 1);
        }
    }

    @ParameterizedTest
    @MethodSource("foods")
    void aBlankCellIsUnknownAndAZeroIsKnown(Food food) {
        Line row = TABLE.get(food.id());
        for (Constituent constituent : Constituent.values()) {
            assertThat(food.composition().knows(constituent))
                    .as(constituent.column())
                    .isEqualTo(row.optional(constituent.column()).isPresent());
        }
    }

    @Test
    void noCellIsNegative() {
        for (Food food : FOODS.all()) {
            for (Constituent constituent : Constituent.values()) {
                assertThat(food.composition().perGram(constituent))
                        .as("%s %s", food.id(), constituent.column())
                        .isNotNegative();
            }
        }
    }

    private static double per100(Food food, Constituent constituent) {
        return 100 * food.composition().perGram(constituent);
    }
}
