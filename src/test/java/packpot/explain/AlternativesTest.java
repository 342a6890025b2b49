package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.household.Household;
import packpot.plan.Plan;
import packpot.search.Search;
import packpot.solver.SolveLimits;

/** Plans that differ at nearly the same cost. */
class AlternativesTest {
    private static final Household HOUSEHOLD = Demo.read(Demo.text(Demo.file("tiny-freezer")));
    private static final double WITHIN = 0.05;

    private static Alternatives.Found found;

    @BeforeAll
    static void search() {
        found = search(WITHIN, 4, 120);
    }

    private static Alternatives.Found search(double within, int plans, double seconds) {
        Alternatives.Result result = new Alternatives(Demo.knowledge(), new Search())
                .find(HOUSEHOLD, within, plans, SolveLimits.USUAL, seconds);
        return ((Alternatives.Result.Several) result).found();
    }

    @Test
    void asManyAsAskedForAreFoundAndEveryOnePassedTheAudit() {
        assertThat(found.plans()).hasSize(4);
        assertThat(found.reason()).isEmpty();
        assertThat(found.plans()).allMatch(plan -> plan.planned().verdict().passed());
    }

    @Test
    void noneCostsMoreThanTheShare() {
        double cheapest = found.plans().get(0).planned().plan().cost().ofTheBatch();
        for (Alternatives.Alternative plan : found.plans()) {
            double cost = plan.planned().plan().cost().ofTheBatch();
            assertThat(cost).isLessThanOrEqualTo((1 + WITHIN) * cheapest);
            assertThat(plan.costsMoreShare()).isCloseTo(cost / cheapest - 1, within(1e-9));
        }
    }

    @Test
    void eachDiffersFromAllBeforeItInWhichFoodsItHas() {
        List<Plan> plans =
                found.plans().stream().map(each -> each.planned().plan()).toList();
        assertThat(plans.stream()
                        .map(plan -> plan.pot().stream()
                                .filter(food -> !food.stirredIn())
                                .map(Plan.Ingredient::food)
                                .collect(Collectors.toSet()))
                        .distinct())
                .hasSameSizeAs(plans);
        for (int i = 1; i < plans.size(); i++) {
            Plan mine = plans.get(i);
            double nearest = plans.subList(0, i).stream()
                    .mapToDouble(other -> Alternatives.distance(other, mine))
                    .min()
                    .orElseThrow();
            assertThat(found.plans().get(i).nearest()).isCloseTo(nearest, within(1e-12));
            assertThat(nearest).isGreaterThan(0.05);
        }
    }

    /** What it is for: without the search for distance, plans near the cheapest hardly differ from it. */
    @Test
    void moreRoomForCostGivesPlansThatDifferMore() {
        double tight = search(0.01, 2, 60).plans().stream()
                .skip(1)
                .mapToDouble(Alternatives.Alternative::nearest)
                .findFirst()
                .orElse(0);
        assertThat(found.plans().get(1).nearest()).isGreaterThan(tight);
    }

    @Test
    void distanceIsZeroForTheSamePotAndLargerTheMoreDiffers() {
        Plan first = found.plans().get(0).planned().plan();
        assertThat(Alternatives.distance(first, first)).isZero();
        Plan other = found.plans().get(1).planned().plan();
        assertThat(Alternatives.distance(first, other)).isBetween(0.0, 1.0);
        assertThat(Alternatives.distance(first, other)).isCloseTo(Alternatives.distance(other, first), within(1e-12));
    }

    @Test
    void whenTheTimeRunsOutItSaysSo() {
        Alternatives.Found hurried = search(WITHIN, 5, 1e-3);
        assertThat(hurried.plans()).hasSize(1);
        assertThat(hurried.reason()).contains("time ran out");
    }
}
