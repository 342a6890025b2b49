package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.ByHand.MEAT;
import static packpot.ration.ByHand.RICE;
import static packpot.ration.ByHand.household;
import static packpot.ration.ByHand.least;
import static packpot.ration.ByHand.need;
import static packpot.ration.ByHand.needs;

import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.needs.Needs;
import packpot.plan.Amounts;
import packpot.ration.RationPlanner.Outcome;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;

/**
 * How finely foods are weighed, and when the search goes on for it. Of 10 kg, 2000.5 g of meat are asked for, at $4 a kg
 * beside rice at $1: $16.0015. Weighed by 5 g they are 2005 g, which cost 0.084 % more, and by a gram 2001 g, 0.0094 %.
 */
class WeighingTest {
    private final Needs ash = needs(need("Ash", 1000, least("protein", 50.0125)));

    private Amounts amounts(Asked solver, double gap) {
        return ((Outcome.Found) new RationPlanner(Demo.knowledge(), solver)
                        .plan(household(ash, MEAT, RICE), ash, new SolveLimits(20, gap)))
                .amounts();
    }

    private int questions(Asked solver, double gap) {
        amounts(solver, gap);
        return solver.questions.size();
    }

    /** The first bound is so much too low, as a share; what is asked later is answered as it is. */
    private static Asked boundTooLow(double share, Solution.Status status) {
        boolean[] first = {true};
        return new Asked(found -> {
            double off = first[0] ? share : 0;
            Solution.Status ended = first[0] ? status : found.status();
            first[0] = false;
            return new Solution(ended, found.values(), found.objective(), found.bound() * (1 - off), found.seconds());
        });
    }

    @Test
    void whereStepsCostMoreThanTheGapFinerOnesAreTried() {
        assertThat(amounts(new Asked(), 0.001).potGrams().get(MEAT)).isCloseTo(2005, within(1e-3));
        assertThat(questions(new Asked(), 0.001)).isEqualTo(2);
        assertThat(amounts(new Asked(), 0.0005).potGrams().get(MEAT)).isCloseTo(2001, within(1e-3));
        assertThat(questions(new Asked(), 0.0005)).isEqualTo(3);
    }

    @Test
    void whatTheBoundIsOffCountsToo() {
        // 0.95 % and 0.084 % are more than a percent; 0.95 % and 0.0094 % are not.
        Asked solver = boundTooLow(0.0095, Solution.Status.OPTIMAL);
        Amounts amounts = amounts(solver, 0.01);
        assertThat(amounts.potGrams().get(MEAT)).isCloseTo(2001, within(1e-3));
        assertThat(amounts.proved()).isTrue();
        assertThat(solver.questions).hasSize(3);
    }

    @Test
    void whereWeighingTakesMoreThanIsLeftOfTheGapTheSearchGoesOn() {
        Asked solver = boundTooLow(0.012, Solution.Status.OPTIMAL);
        assertThat(amounts(solver, 0.01).proved()).isTrue();
        // A search, both weighings, a start from the same foods, a search for 0.7 / 4 of the gap before, and a
        // weighing.
        assertThat(solver.questions).hasSize(6);
        assertThat(solver.questions.get(4).limits().relativeGap()).isCloseTo(0.7 * 0.01 * 0.175, within(1e-9));
        assertThat(solver.questions.get(4).start()).isNotEmpty();
    }

    @Test
    void aSearchThatTimeCutShortIsNotTriedAgain() {
        Asked solver = boundTooLow(0.012, Solution.Status.FEASIBLE);
        assertThat(amounts(solver, 0.01).proved()).isFalse();
        assertThat(solver.questions).hasSize(3);
    }

    @Test
    void whereNothingIsLeftBetweenCostAndBoundNoSearchHelps() {
        Asked solver = new Asked();
        Amounts amounts = amounts(solver, 1e-5);
        assertThat(amounts.potGrams().get(MEAT)).isCloseTo(2001, within(1e-3));
        assertThat(amounts.proved()).isFalse();
        assertThat(solver.questions).hasSize(3);
        // A fiftieth of the gap is nothing: 1.2 parts of a million here.
        assertThat(questions(boundTooLow(1.1e-6, Solution.Status.OPTIMAL), 6e-5))
                .isEqualTo(3);
        assertThat(questions(boundTooLow(1.3e-6, Solution.Status.OPTIMAL), 6e-5))
                .isGreaterThan(3);
    }
}
