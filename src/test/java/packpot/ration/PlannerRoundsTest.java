package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.ByHand.MEAT;
import static packpot.ration.ByHand.PASTE;
import static packpot.ration.ByHand.RICE;
import static packpot.ration.ByHand.household;
import static packpot.ration.ByHand.least;
import static packpot.ration.ByHand.need;
import static packpot.ration.ByHand.needs;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.household.Rules;
import packpot.needs.Needs;
import packpot.plan.Amounts;
import packpot.ration.RationPlanner.Outcome;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;

/** What is asked of the solver from the shares of energy on, one question after the other, and when it is content. */
class PlannerRoundsTest {
    private static final double GAP = 0.001;

    private final Needs ash = needs(need("Ash", 1000, least("protein", 50)));
    /** Ash needs nine spoons a day for its calcium, which bring 45 of its 500 kcal. */
    private final Needs two = needs(need("Ash", 500, least("calcium", 1.9)), need("Elm", 500));

    private static Amounts amounts(Asked solver, Household household, Needs needs, double seconds) {
        return ((Outcome.Found) new Rounds(household, Demo.knowledge(), needs, solver, null)
                        .from(RationPlanner.sharesByNeed(needs), new SolveLimits(seconds, GAP), null))
                .amounts();
    }

    /** Energy may lie a tenth beside the target. */
    private static Household lenient(Needs needs, PantryItem... pantry) {
        return household(needs, pantry).withRules(new Rules(0, 0.1, 0, 100, 0.5, 5, 1));
    }

    @Test
    void oneRoundIsOneSearchAndOneWeighing() {
        Asked solver = new Asked();
        amounts(solver, household(ash, MEAT, RICE), ash, 20);
        assertThat(solver.questions).hasSize(2);
        // Seven tenths of the gap for the search, a tenth for the weighing.
        assertThat(solver.questions.get(0).limits().relativeGap()).isCloseTo(0.7 * GAP, within(1e-12));
        assertThat(solver.questions.get(0).limits().seconds()).isEqualTo(20);
        assertThat(solver.questions.get(1).limits().relativeGap()).isCloseTo(0.1 * GAP, within(1e-12));
    }

    /**
     * With 455 of the pot's 955 parts for Ash and 500 for Elm, whom no less than 450 kcal will do, the pot has 859.5
     * kcal a day. Of these Ash gets 409.5; with 9 spoons that is 454.5 kcal, for which 0.864 g of calcium are asked, and
     * 0.9 g given.
     */
    @Test
    void sharesFollowTheEnergyOfAdditions() {
        Asked solver = new Asked();
        Amounts amounts = amounts(solver, lenient(two, RICE, PASTE), two, 20);
        assertThat(amounts.doses().get(two.dogs().get(0))).containsExactly(Map.entry(PASTE, 9));
        assertThat(amounts.shares().get(two.dogs().get(0))).isCloseTo(455.0 / 955, within(1e-9));
        assertThat(amounts.shares().get(two.dogs().get(1))).isCloseTo(500.0 / 955, within(1e-9));
        assertThat(amounts.potGrams().get(RICE)).isCloseTo(8595, within(1e-3));
        // By the shares of energy ten spoons are found, by the shares that leaves nine, and by those of nine, nine
        // again.
        assertThat(searches(solver)).isEqualTo(3);
    }

    /** Where 2 g of calcium are asked, nine spoons leave shares by which ten are needed, and ten such that nine will do. */
    @Test
    void sharesThatNeverSettleAreLeftAfterFiveRounds() {
        Needs never = needs(need("Ash", 500, least("calcium", 2)), need("Elm", 500));
        Asked solver = new Asked();
        amounts(solver, lenient(never, RICE, PASTE), never, 20);
        assertThat(searches(solver)).isEqualTo(5);
    }

    private static long searches(Asked solver) {
        return solver.questions.stream()
                .filter(question -> Math.abs(question.limits().relativeGap() - 0.7 * GAP) < 1e-9)
                .count();
    }

    @Test
    void sharesAreLeftAsTheyAreOnceTimeIsUp() {
        Asked solver = new Asked(PlannerRoundsTest::aMinute);
        Amounts amounts = amounts(solver, lenient(two, RICE, PASTE), two, 60);
        assertThat(amounts.shares().values()).containsExactly(0.5, 0.5);
        assertThat(solver.questions).hasSize(2);
        assertThat(amounts.solveSeconds()).isEqualTo(120);
    }

    @Test
    void timeCountsWithThatOfWeighing() {
        RationPlanner planner = new RationPlanner(Demo.knowledge(), new Asked(PlannerRoundsTest::aMinute));
        Household household = household(ash, MEAT, RICE);
        var found = (Outcome.Found) planner.plan(household, ash, new SolveLimits(200, GAP));
        assertThat(found.amounts().solveSeconds()).isEqualTo(120);
        assertThat(planner.atOnce(found, household, ash).orElseThrow().amounts().solveSeconds())
                .isEqualTo(120);
        Amounts weighed = planner.weighed(household, found.model(), found.solution(), GAP, 7);
        assertThat(weighed.solveSeconds()).isEqualTo(67);
        assertThat(weighed.cost()).isCloseTo(16, within(1e-6));
        assertThat(weighed.bound()).isEqualTo(found.solution().bound());
    }

    private static Solution aMinute(Solution found) {
        return new Solution(found.status(), found.values(), found.objective(), found.bound(), 60);
    }

    @Test
    void aLaterRoundHasTheTimeThatIsLeftAndBeginsWithWhatWasFound() {
        Asked solver = new Asked(PlannerRoundsTest::aMinute);
        amounts(solver, lenient(two, RICE, PASTE), two, 150);
        // A search, then a start from its choices, a search with what is left, and a weighing.
        List<Asked.Question> questions = solver.questions;
        assertThat(questions).hasSizeGreaterThanOrEqualTo(4);
        assertThat(questions.get(0).limits().seconds()).isEqualTo(150);
        assertThat(questions.get(1).limits().seconds()).isEqualTo(1);
        assertThat(questions.get(1).limits().relativeGap()).isEqualTo(0.005);
        assertThat(questions.get(2).limits().seconds()).isEqualTo(30);
        Asked hurried = new Asked(PlannerRoundsTest::aMinute);
        amounts(hurried, lenient(two, RICE, PASTE), two, 60.5);
        assertThat(hurried.questions.get(1).limits().seconds()).isEqualTo(0.5);
        assertThat(hurried.questions.get(2).limits().seconds()).isEqualTo(0.1);
        assertThat(questions.get(2).start()).isEqualTo(questions.get(1).answer().values());
    }
}
