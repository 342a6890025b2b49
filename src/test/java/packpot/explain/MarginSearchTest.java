package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.SharedSolver;
import packpot.explain.MarginSearch.Answer;
import packpot.explain.MarginSearch.End;
import packpot.explain.MarginSearch.Tried;
import packpot.household.Household;
import packpot.solver.SolveLimits;
import packpot.spread.Odds;
import packpot.spread.Spread;

/** Which margin is enough, over plans that are made anew. */
class MarginSearchTest {
    private static final SolveLimits LIMITS = new SolveLimits(60, 0.005);
    private static final Household HOUSEHOLD = Demo.planned("tiny-freezer").household();
    private static final double WISHED = 0.95;

    private static MarginSearch search(Spread spread, int largestPercent) {
        return new MarginSearch(
                Demo.knowledge(),
                new SharedSolver(),
                LIMITS,
                new MarginSearch.Question(spread, 4000, 1, WISHED, largestPercent));
    }

    private static Answer answer(Household household, Spread spread, int largestPercent, List<String> told) {
        MarginSearch search = search(spread, largestPercent);
        Planner.Searched own = search.plan(household);
        return search.from(own, (Planner.Result.Planned) own.result(), told::add);
    }

    @Test
    void theSmallestMarginThatWasTriedAndIsEnoughIsNamed() {
        List<String> told = new ArrayList<>();
        Answer answer = answer(HOUSEHOLD, Spread.load(), 30, told);
        Tried enough = answer.enough();
        assertThat(enough).isNotNull();
        assertThat(answer.tried()).hasSize(told.size() + 1).hasSizeLessThanOrEqualTo(8);
        assertThat(answer.tried().get(0).margin()).isEqualTo(0.05);
        assertThat(answer.tried().get(0).odds()).isEqualTo(answer.odds());
        for (int i = 1; i < answer.tried().size(); i++) {
            assertThat(answer.tried().get(i).margin())
                    .isGreaterThan(answer.tried().get(i - 1).margin());
        }
        // The one below it was tried too, and was too little.
        int at = answer.tried().indexOf(enough);
        Tried below = answer.tried().get(at - 1);
        assertThat(Math.round(100 * (enough.margin() - below.margin()))).isEqualTo(1);
        for (Tried tried : answer.tried()) {
            Odds odds = tried.odds();
            assertThat(odds).isNotNull();
            boolean each = odds.dogs().stream()
                    .flatMap(dog -> dog.minimums().stream())
                    .allMatch(minimum -> minimum.met() >= WISHED * 4000);
            assertThat(tried.end()).isEqualTo(each ? End.ENOUGH : End.TOO_LITTLE);
            assertThat(tried.margin() >= enough.margin()).isEqualTo(each);
        }
        // Certainty is paid for, and every minimum of the plan keeps its margin.
        assertThat(enough.perDay()).isGreaterThan(answer.base().plan().cost().perDay());
        assertThat(enough.odds()).isNotNull();
        assertThat(enough.odds().dogs().get(0).minimums())
                .allMatch(minimum -> minimum.mean() >= 1 + enough.margin() - 0.01);
    }

    @Test
    void whatIsSureNeedsNoOtherPlan() {
        Spread sure = Spread.load()
                .withFoods(0.001)
                .withSupplements(0.001)
                .withScale(0, 0)
                .withMeasures(0);
        List<String> told = new ArrayList<>();
        Answer answer = answer(HOUSEHOLD, sure, 30, told);
        assertThat(told).isEmpty();
        assertThat(answer.tried()).hasSize(1);
        assertThat(answer.enough()).isEqualTo(answer.tried().get(0));
    }

    @Test
    void noMarginIsEnoughWhereTheSpreadIsTooLarge() {
        List<String> told = new ArrayList<>();
        Answer answer = answer(HOUSEHOLD, Spread.load().withFoods(0.7).withSupplements(0.7), 20, told);
        assertThat(answer.enough()).isNull();
        // The largest is asked first, and that it is too little is enough to know.
        assertThat(answer.tried()).extracting(Tried::margin).containsExactly(0.05, 0.2);
        assertThat(answer.tried()).extracting(Tried::end).containsOnly(End.TOO_LITTLE);
        assertThat(answer(HOUSEHOLD, Spread.load().withFoods(0.7), 5, told).tried())
                .hasSize(1);
    }

    @Test
    void aMarginThatLeavesNoPlanBoundsTheSearch() {
        // The plan takes 5.4 g of kelp and 12 g of iodised salt, and no other food of the pantry brings much iodine.
        Map<String, Double> most = Map.of("kelp-tablet-150ug", 5.8, "salt-iodised-45", 13.0);
        Household poor = HOUSEHOLD.withPantry(HOUSEHOLD.pantry().stream()
                .map(item -> item.withAtMost(most.getOrDefault(item.food().id(), item.atMostGrams())))
                .toList());
        Answer answer = answer(poor, Spread.load(), 30, new ArrayList<>());
        assertThat(answer.tried()).extracting(Tried::end).contains(End.NO_PLAN);
        for (Tried tried : answer.tried()) {
            assertThat(tried.perDay() == null).isEqualTo(tried.end() == End.NO_PLAN);
        }
        assertThat(answer.enough()).isNull();
        List<Tried> tried = answer.tried();
        for (int i = 1; i < tried.size(); i++) {
            if (tried.get(i - 1).end() == End.NO_PLAN) {
                assertThat(tried.get(i).end()).isEqualTo(End.NO_PLAN);
            }
        }
    }

    @Test
    void aloneMakesNoOtherPlan() {
        MarginSearch search = search(Spread.load(), 30);
        Planner.Result.Planned base =
                (Planner.Result.Planned) search.plan(HOUSEHOLD).result();
        Answer alone = search.alone(base);
        assertThat(alone.tried()).hasSize(1);
        assertThat(alone.enough()).isNull();
        assertThat(alone.odds().allMet()).isLessThan(4000);
    }
}
