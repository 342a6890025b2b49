package packpot.food;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Reference;
import packpot.Reference.Line;

class SupplementTest {
    private static final FoodCatalogue FOODS = FoodCatalogue.load();
    private static final Pattern ATOM = Pattern.compile("([A-Z][a-z]?)(\\d*)");
    private static final Pattern STRENGTH =
            Pattern.compile("\\b(?:of|\\() ?(\\d+) (mg|ug|IU)(?: (zinc|copper|manganese|iron|iodine|selenium))?");
    private static final Map<String, Double> WEIGHTS = Reference.table("atomic_weights.csv").stream()
            .collect(Collectors.toMap(line -> line.text("element"), line -> line.number("weight")));

    static Stream<Line> salts() {
        return Reference.table("salts.csv").stream();
    }

    /** To a tenth of a per mille of the compound: the table is rounded to a hundredth of a per cent. */
    @ParameterizedTest
    @MethodSource("salts")
    void aPureCompoundHoldsTheShareOfItsFormula(Line salt) {
        Food food = FOODS.find(salt.text("food"));
        assertThat(food).isNotNull();
        Constituent constituent = Constituent.ofColumn(salt.text("column"));
        assertThat(constituent).isNotNull();
        double share = mass(salt.text("part")) / mass(salt.text("formula"));
        assertThat(food.composition().perGram(constituent) / unitsPerGram(constituent))
                .isCloseTo(share, within(1e-4));
    }

    @Test
    void everyCompoundOfTheTableIsChecked() {
        Set<String> checked = salts().map(line -> line.text("food")).collect(Collectors.toSet());
        // A vitamin's salt is counted as the salt, so there is no formula to part.
        checked.add("thiamin-hydrochloride");
        assertThat(checked)
                .containsAll(FOODS.all().stream()
                        .filter(food -> food.source().equals("CHEM"))
                        .map(Food::id)
                        .toList());
    }

    private static double mass(String formula) {
        double mass = 0;
        Matcher atoms = ATOM.matcher(formula.replace(" ", ""));
        while (atoms.find()) {
            mass += WEIGHTS.get(atoms.group(1)) * (atoms.group(2).isEmpty() ? 1 : Integer.parseInt(atoms.group(2)));
        }
        return mass;
    }

    private static double unitsPerGram(Constituent constituent) {
        String column = constituent.column();
        return column.endsWith("_ug") ? 1e6 : column.endsWith("_mg") ? 1e3 : 1;
    }

    static Stream<Food> supplements() {
        return FOODS.all().stream().filter(Food::isSupplement);
    }

    @Test
    void everySupplementOfTheTableIsAFoodAndTheOtherWayRound() {
        assertThat(Reference.models("supplements.csv").stream().map(row -> row.text("food")))
                .containsExactlyInAnyOrderElementsOf(supplements().map(Food::id).toList());
        assertThat(supplements())
                .allMatch(food -> food.group() == FoodGroup.SUPPLEMENT || food.group() == FoodGroup.OIL);
    }

    @ParameterizedTest
    @MethodSource("supplements")
    void aDoseCanBeMeasuredWithWhatAKitchenHas(Food food) {
        Supplement supplement = food.supplement();
        assertThat(supplement).isNotNull();
        assertThat(supplement.smallestPart()).isIn(0.125, 0.25, 0.5, 1.0);
        assertThat(supplement.gramsPerMeasure()).isPositive();
        assertThat(supplement.potStepGrams()).isPositive();
        assertThat(supplement.smallestDoseGrams()).isEqualTo(supplement.smallestPart() * supplement.gramsPerMeasure());
    }

    /** "tablet of 50 mg zinc" weighs what 50 mg of zinc weighs in that salt. */
    @ParameterizedTest
    @MethodSource("supplements")
    void aMeasureThatStatesItsStrengthHoldsIt(Food food) {
        Supplement supplement = food.supplement();
        assertThat(supplement).isNotNull();
        Matcher strength = STRENGTH.matcher(supplement.measureName());
        if (strength.find()) {
            String nutrient = strength.group(3) != null
                    ? strength.group(3) + (Set.of("iodine", "selenium").contains(strength.group(3)) ? "_ug" : "_mg")
                    : strength.group(2).equals("mg")
                            ? "thiamin_mg"
                            : food.id().startsWith("vitamin-d") ? "vitamin_d_iu" : "vitamin_e_mg";
            Constituent constituent = Constituent.ofColumn(nutrient);
            assertThat(constituent).as(nutrient).isNotNull();
            double held = food.composition().perGram(constituent) * supplement.gramsPerMeasure();
            double stated = Double.parseDouble(strength.group(1));
            double inColumn = nutrient.equals("vitamin_e_mg") ? stated / 1.49 : stated;
            // Thiamin is stated as its salt.
            double least = nutrient.equals("thiamin_mg") ? 0.78 : 0.98;
            assertThat(held / inColumn).as(supplement.measureName()).isBetween(least, 1.02);
        }
    }
}
