package packpot.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.Reference;
import packpot.Reference.Line;
import packpot.solver.DietModels.Diet;

@Tag("native")
class PublishedOptimaTest {
    private static final Solver SOLVER = new OrToolsSolver();
    private static final List<Line> STIGLER = Reference.table("stigler_1945_optima.csv");

    @Test
    void stiglersDietCostsThePublishedOptimum() {
        Solution solution = SOLVER.solve(DietModels.stigler().model(), SolveLimits.USUAL);
        Line optimum = stigler("lp_optimum").get(0);
        assertThat(solution.status()).isEqualTo(Solution.Status.OPTIMAL);
        assertThat(solution.objective() * optimum.number("days_per_year"))
                .isCloseTo(optimum.number("total_annual_dollars"), within(1e-6));
        assertThat(solution.relativeGap()).isZero();
    }

    @Test
    void stiglersDietBuysThePublishedFoodsAndNoOther() {
        Diet diet = DietModels.stigler();
        Solution solution = SOLVER.solve(diet.model(), SolveLimits.USUAL);
        Map<String, Double> published = stigler("lp_optimum").stream()
                .collect(Collectors.toMap(line -> line.text("food"), line -> line.number("daily_dollars")));
        assertThat(diet.foods().keySet()).containsAll(published.keySet());
        diet.foods()
                .forEach((food, dollars) -> assertThat(solution.value(dollars))
                        .as(food)
                        .isCloseTo(published.getOrDefault(food, 0.0), within(1e-8)));
    }

    @Test
    void stiglersDietHoldsThePublishedNutrients() {
        Diet diet = DietModels.stigler();
        Solution solution = SOLVER.solve(diet.model(), SolveLimits.USUAL);
        double[] values =
                solution.values().stream().mapToDouble(Double::doubleValue).toArray();
        for (Line minimum : Reference.table("stigler_1945_minimums.csv")) {
            LinearModel.Row<String> row = diet.model().rows().stream()
                    .filter(r -> r.name().equals(minimum.text("nutrient")))
                    .findFirst()
                    .orElseThrow();
            assertThat(row.expression().value(values))
                    .as(row.name())
                    .isCloseTo(minimum.number("intake_at_optimum"), within(0.006));
        }
    }

    @Test
    void thePublishedShadowPricesAddUpToTheSameCost() {
        double dual = Reference.table("stigler_1945_minimums.csv").stream()
                .mapToDouble(line -> line.number("daily_minimum") * line.number("shadow_price_dollars_per_unit"))
                .sum();
        Solution solution = SOLVER.solve(DietModels.stigler().model(), SolveLimits.USUAL);
        assertThat(solution.objective()).isCloseTo(dual, within(1e-9));
    }

    @Test
    void theHandReckonedDietOf1945IsDearerThanTheOptimum() {
        Line heuristic = stigler("stigler_1945_heuristic").get(0);
        Solution solution = SOLVER.solve(DietModels.stigler().model(), SolveLimits.USUAL);
        assertThat(solution.objective() * heuristic.number("days_per_year"))
                .isLessThan(heuristic.number("total_annual_dollars"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"diet6", "diet9"})
    void smallDietsReachThePublishedOptimumAndAmounts(String name) {
        Diet diet = name.equals("diet6") ? DietModels.diet6() : DietModels.diet9();
        Solution solution = SOLVER.solve(diet.model(), SolveLimits.USUAL);
        assertThat(solution.objective()).isCloseTo(DietModels.publishedOptimum(name), within(1e-7));
        for (Line food : Reference.table(name + ".csv")) {
            assertThat(solution.value(diet.foods().get(food.text("food"))))
                    .as(food.text("food"))
                    .isCloseTo(food.number("optimal_amount"), within(1e-7));
        }
    }

    private static List<Line> stigler(String name) {
        return STIGLER.stream()
                .filter(line -> line.text("solution").equals(name))
                .toList();
    }
}
