package packpot.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.plan.Plan;

/** Every figure that a plan states is let pass as long as rounding explains it, and found a little further off. */
class StatedFiguresTest {
    private static final double CENT = 0.005;
    private static final double HUNDREDTH_GRAM = 0.01;

    static Stream<Arguments> figures() {
        List<Arguments> figures = new ArrayList<>();
        for (String mass : List.of("cookedGrams", "millilitres", "spareGrams", "gramsPerBag")) {
            double stated = TinyPlan.number("batch." + mass);
            String what = switch (mass) {
                case "cookedGrams" -> "cooked mass in g";
                case "millilitres" -> "volume in ml";
                case "spareGrams" -> "spare grams";
                default -> "grams per bag";
            };
            figures.add(figure(
                    "batch." + mass, HUNDREDTH_GRAM + 1e-6 * stated, what + ": is %1$.2f, the plan says %2$.2f"));
        }
        figures.add(figure("batch.freezerMl", 1, "freezer: 13 bags take 15767 ml, free are 16500 ml"));
        figures.add(figure("batch.freezerFreeMl", 1, "freezer: free are 16500 ml, the plan says another figure"));
        figures.add(figure("cost.atTheTill", CENT, "cost: at the till is %1$.2f, the plan says %2$.2f"));
        figures.add(figure("cost.ofTheBatch", CENT, "cost: of the batch is %1$.2f, the plan says %2$.2f"));
        figures.add(figure("cost.perDay", CENT, "cost: a day is %1$.2f, the plan says %2$.2f"));
        figures.add(figure("proof.gapShare", 1e-9, "proof: the gap is 0.0928 %%, the plan says "));
        for (int i = 0; i < TinyPlan.PLAN.dogs().size(); i++) {
            String dog = "dogs[" + i + "].";
            Plan.DogPlan bowls = TinyPlan.PLAN.dogs().get(i);
            String energy = String.format(
                    Locale.ROOT,
                    "%s: the plan states another weight or energy than %.1f kg and %.1f kcal a day",
                    bowls.name(),
                    bowls.weightKg(),
                    bowls.batchKcalPerDay());
            for (String part : List.of("weightKg", "energyNeedKcalPerDay", "otherFoodKcalPerDay", "batchKcalPerDay")) {
                figures.add(figure(dog + part, 1e-6 * Math.max(1, TinyPlan.number(dog + part)), energy));
            }
            figures.add(figure(
                    dog + "minimumsRaisedBy",
                    1e-6,
                    bowls.name() + ": minimums are raised by 1.0000, the plan says %2$.4f"));
            figures.add(figure(
                    "cost.perDogPerDay[" + i + "].perDay",
                    CENT,
                    "cost: of all dogs a day is 3.82, the plan says %3$.2f"));
        }
        for (int i = 0; i < TinyPlan.PLAN.pot().size(); i++) {
            String label = TinyPlan.PLAN.pot().get(i).label() + ": ";
            figures.add(
                    figure("pot[" + i + "].cookedGrams", 1e-3, label + "cooks to %1$.1f g, the plan says %2$.1f g"));
            figures.add(figure(
                    "pot[" + i + "].shareOfCookedMass",
                    1e-6,
                    label + "is %4$.4f %% of cooked mass, the plan says %5$.4f %%"));
        }
        for (int i = 0; i < TinyPlan.PLAN.shopping().size(); i++) {
            Plan.Purchase line = TinyPlan.PLAN.shopping().get(i);
            String told = String.format(
                    Locale.ROOT,
                    "%s: the shopping list does not add up: %.1f g used, %.1f g left of packs, %.2f to pay",
                    line.label(),
                    line.usedGrams(),
                    line.leftOverGrams(),
                    line.pays());
            figures.add(figure("shopping[" + i + "].pays", CENT, told));
            for (String part : List.of("usedGrams", "fromHandGrams", "leftOverGrams")) {
                figures.add(figure("shopping[" + i + "]." + part, HUNDREDTH_GRAM, told));
            }
            if (line.packs() != null) {
                figures.add(figure("shopping[" + i + "].buyGramsAsBought", HUNDREDTH_GRAM, told));
            }
        }
        return figures.stream();
    }

    /** Words with the right figure as the first and the stated one as the second. */
    private static Arguments figure(String place, double tolerance, String told) {
        return Arguments.of(place, tolerance, told);
    }

    @ParameterizedTest
    @MethodSource("figures")
    void aFigureOffByMoreThanRoundingIsFound(String place, double tolerance, String told) {
        double right = TinyPlan.number(place);
        for (int sign : new int[] {-1, 1}) {
            assertThat(TinyPlan.findings(TinyPlan.plan(place, right + sign * 0.5 * tolerance)))
                    .isEmpty();
            double stated = right + sign * 1.5 * tolerance;
            double perDay = TinyPlan.number("cost.perDay") + stated - right;
            String expected = String.format(Locale.ROOT, told, right, stated, perDay, 100 * right, 100 * stated);
            assertThat(TinyPlan.findings(TinyPlan.plan(place, stated)))
                    .anyMatch(finding -> finding.startsWith(expected));
        }
    }

    @Test
    void aPlanWhoseBoundIsAboveItsCostHasNoGap() {
        Plan.Proof proof = TinyPlan.PLAN.proof();
        assertThat(TinyPlan.findings(TinyPlan.PLAN.withProof(
                        new Plan.Proof(true, proof.cost(), proof.cost() * 1.0001, 0, proof.solveSeconds()))))
                .isEmpty();
        assertThat(TinyPlan.findings(
                        TinyPlan.PLAN.withProof(new Plan.Proof(true, proof.cost(), 0, 1, proof.solveSeconds()))))
                .isEmpty();
    }

    @Test
    void mealsMakeTheDay() {
        assertThat(TinyPlan.findings(TinyPlan.plan("dogs[0].potGramsPerMeal", List.of(269, 267))))
                .containsExactly("Clover: meals of 536 g in all do not make the day's 537 g");
        assertThat(TinyPlan.findings(TinyPlan.plan("dogs[0].potGramsPerMeal", List.of(537))))
                .containsExactly("Clover: meals of 537 g in all do not make the day's 537 g");
        assertThat(TinyPlan.findings(TinyPlan.plan("dogs[0].potGramsPerMeal", List.of(537, 0))))
                .isEmpty();
    }
}
