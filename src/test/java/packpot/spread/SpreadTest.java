package packpot.spread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.food.Constituent;
import packpot.food.Food;
import packpot.food.Nutrient;
import packpot.food.Supplement;

/** The published spreads, what is stated instead, and which holds for what. */
class SpreadTest {
    private static final Spread USUAL = Spread.load();

    private static Food food(String id) {
        return Demo.knowledge().foods().all().stream()
                .filter(food -> food.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void everyFigureThatAMinimumIsReckonedFromHasASpread() {
        for (Nutrient nutrient : Demo.knowledge().nutrients().all()) {
            assertThat(USUAL.figures().keySet())
                    .containsAll(nutrient.towardMinimum().keySet());
        }
        assertThat(USUAL.figures().values()).allMatch(share -> share > 0 && share < 0.6);
        assertThat(USUAL.recalled())
                .containsExactlyInAnyOrder(Constituent.CHLORIDE_MG, Constituent.VITAMIN_B12_UG, Constituent.CHOLINE_MG);
    }

    @Test
    void everySupplementOfTheCatalogueHasAMeasure() {
        for (Food food : Demo.knowledge().foods().all()) {
            Supplement supplement = food.supplement();
            if (supplement != null) {
                assertThat(USUAL.ofDose(food, supplement.smallestDoseGrams()))
                        .as(food.id())
                        .isBetween(0.01, 0.1);
            }
        }
    }

    @Test
    void foodsVaryByNutrientPureCompoundsHardlyAndLabelsByTheirTolerance() {
        assertThat(USUAL.ofFigure(food("chicken-ground-raw"), Constituent.ZINC_MG))
                .isEqualTo(0.165);
        assertThat(USUAL.ofFigure(food("calcium-carbonate"), Constituent.CALCIUM_MG))
                .isEqualTo(0.01);
        // A pure compound in a tablet is what the label says of the tablet.
        assertThat(USUAL.ofFigure(food("zinc-gluconate"), Constituent.ZINC_MG)).isEqualTo(0.1);
        assertThat(USUAL.ofFigure(food("eggshell-powder"), Constituent.CALCIUM_MG))
                .isEqualTo(0.1);
    }

    @Test
    void aScaleIsOffInProportionAndByItsStep() {
        assertThat(USUAL.ofWeighing(1e9)).isCloseTo(0.02, within(1e-9));
        // A step of 1 g is off by 1 / sqrt 12 = 0.2887 g.
        assertThat(USUAL.withScale(0, 1).ofWeighing(2)).isCloseTo(0.14434, within(1e-5));
        assertThat(USUAL.withScale(0.03, 1).ofWeighing(10)).isCloseTo(Math.hypot(0.03, 0.028868), within(1e-6));
        assertThat(USUAL.withScale(0, 0).ofWeighing(2)).isZero();
    }

    @Test
    void intoThePotGoesWhatIsFinerAndTabletsEvenEachOtherOut() {
        Food zinc = food("zinc-gluconate");
        Supplement tablet = zinc.supplement();
        assertThat(tablet).isNotNull();
        double one = tablet.gramsPerMeasure();
        assertThat(USUAL.intoPot(zinc, 16 * one)).isCloseTo(0.05 / 4, within(1e-12));
        assertThat(USUAL.ofDose(zinc, one / 2)).isEqualTo(0.05);
        Food shell = food("eggshell-powder");
        assertThat(USUAL.intoPot(shell, 22)).isEqualTo(USUAL.ofWeighing(22)).isLessThan(0.025);
        assertThat(USUAL.ofDose(shell, 5.5 * 4)).isCloseTo(0.05, within(1e-12));
        // "drop from a pierced soft gel" is a drop: the first word that fits counts, and the file puts drops first.
        assertThat(USUAL.measures().keySet())
                .containsExactly("drop", "tsp", "tablet", "capsule", "soft gel", "portion", "gram");
        assertThat(USUAL.withMeasures(0.1).measures().keySet())
                .containsExactlyElementsOf(USUAL.measures().keySet());
        assertThat(USUAL.ofDose(food("vitamin-e-oil-400iu-per-g"), 0.03)).isEqualTo(0.1);
    }

    @Test
    void whatIsStatedWins() {
        Nutrient pair = Demo.knowledge().nutrients().get("methionine-cystine");
        Spread stated = USUAL.withNutrient(pair, 0.25);
        assertThat(stated.figures())
                .containsEntry(Constituent.METHIONINE_G, 0.25)
                .containsEntry(Constituent.CYSTINE_G, 0.25)
                .containsEntry(Constituent.LYSINE_G, USUAL.figures().get(Constituent.LYSINE_G));
        assertThat(USUAL.withNutrient(Demo.knowledge().nutrients().get("vitamin-b12"), 0.3)
                        .recalled())
                .doesNotContain(Constituent.VITAMIN_B12_UG)
                .contains(Constituent.CHOLINE_MG);
        assertThat(USUAL.withFoods(0.07).figures().values()).containsOnly(0.07);
        assertThat(USUAL.withFoods(0.07).recalled()).isEmpty();
        assertThat(USUAL.withSupplements(0.2).ofFigure(food("calcium-carbonate"), Constituent.CALCIUM_MG))
                .isEqualTo(0.2);
        assertThat(USUAL.withSupplements(0.2).ofFigure(food("zinc-gluconate"), Constituent.ZINC_MG))
                .isEqualTo(0.2);
        assertThat(USUAL.withMeasures(0).measures()).isEqualTo(zeros(USUAL.measures()));
    }

    private static Map<String, Double> zeros(Map<String, Double> measures) {
        return measures.keySet().stream().collect(java.util.stream.Collectors.toMap(key -> key, key -> 0.0));
    }
}
