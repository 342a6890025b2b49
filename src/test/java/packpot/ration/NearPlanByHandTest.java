package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.ByHand.MEAT;
import static packpot.ration.ByHand.RICE;
import static packpot.ration.ByHand.household;
import static packpot.ration.ByHand.least;
import static packpot.ration.ByHand.need;
import static packpot.ration.ByHand.needs;

import java.util.Map;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.household.Household;
import packpot.household.Wish;
import packpot.needs.Needs;
import packpot.ration.RationPlanner.Outcome;
import packpot.solver.SolveLimits;

/** Of 10 kg at least 2 kg are meat, at $4 a kg; the rest is rice, at $1. So the cheapest costs $16. */
class NearPlanByHandTest {
    private static final SolveLimits LIMITS = new SolveLimits(20, 0.001);
    private static final Map<String, Double> HALVES = Map.of("meat", 0.5, "rice", 0.5);

    private final Needs ash = needs(need("Ash", 1000, least("protein", 50)));
    private final Household household = household(ash, MEAT, RICE);

    private Outcome plan(Near near) {
        return new RationPlanner(Demo.knowledge(), new Asked()).plan(household, ash, LIMITS, near);
    }

    private Outcome.Found found(Near near) {
        return (Outcome.Found) plan(near);
    }

    private static double meat(Outcome.Found found) {
        return found.amounts().potGrams().get(MEAT);
    }

    private static Near near(Map<String, Double> shares, double mostCost) {
        return new Near(shares, mostCost, 16, Map.of(), null);
    }

    @Test
    void asNearAsTheMoneyAllows() {
        Outcome.Found found = found(near(HALVES, 22));
        // Every kg of meat more costs $3: with $22 there are 4 kg.
        assertThat(meat(found)).isCloseTo(4000, within(0.1));
        assertThat(found.amounts().cost()).isCloseTo(22, within(1e-3));
        // A tenth of the pot is rice in the place of meat.
        assertThat(found.solution().objective()).isCloseTo(0.1, within(1e-6));
        // What is known of cheaper plans was proved without regard to the old recipe.
        assertThat(found.amounts().bound()).isEqualTo(16);
        assertThat(found.amounts().proved()).isTrue();
    }

    @Test
    void withMoreMoneyThanTheOldRecipeTakesItIsKept() {
        Asked solver = new Asked();
        var found = (Outcome.Found)
                new RationPlanner(Demo.knowledge(), solver).plan(household, ash, LIMITS, near(HALVES, 30));
        assertThat(meat(found)).isCloseTo(5000, within(0.1));
        // Of no distance no gap is a share, and yet it need not be weighed finer than by 5 g.
        assertThat(solver.questions).hasSize(2);
        assertThat(found.solution().objective()).isCloseTo(0, within(1e-6));
    }

    @Test
    void moreMoneyThanTheCheapestAsksIsARowWithItsWish() {
        assertThat(plan(near(HALVES, 15.9))).isInstanceOf(Outcome.None.class);
        assertThat(found(near(HALVES, 22)).model().linearModel().rows())
                .filteredOn(row -> row.tag() != null && row.tag().kind() == Wish.Kind.BUDGET)
                .singleElement()
                .satisfies(row -> assertThat(row.upper()).isEqualTo(22))
                .satisfies(row -> assertThat(row.tag().size()).isEqualTo(22));
    }

    @Test
    void theCheapestOfThoseThatAreNearEnough() {
        Outcome.Found found = found(near(HALVES, 30).within(0.2));
        // A fifth of the pot may be rice in the place of meat: 3 kg of meat, $12 and $7.
        assertThat(meat(found)).isCloseTo(3000, within(0.1));
        assertThat(found.amounts().cost()).isCloseTo(19, within(1e-3));
        assertThat(found.solution().objective()).isCloseTo(19, within(1e-3));
    }

    @Test
    void aFoodThatThePantryLacksIsGoneFromEveryNewRecipe() {
        Near near = near(Map.of("fish", 0.3, "meat", 0.2, "rice", 0.5), 30);
        // What stands in for three tenths is three tenths of the pot, whatever it is.
        assertThat(found(near.within(0.301)).amounts().cost()).isCloseTo(16, within(1e-3));
        assertThat(plan(near.within(0.299))).isInstanceOf(Outcome.None.class);
        // Where distance is least, the missing food counts for nothing, the 0.3 that stand in count half.
        assertThat(found(near).solution().objective()).isCloseTo(0.15, within(1e-6));
    }

    @Test
    void lessWasteCountsBeforeNearnessWhereItWeighsMore() {
        Map<String, Double> old = Map.of("meat", 0.2, "rice", 0.8);
        // A gram of meat more is 1 / 10 000 of the pot exchanged.
        Near heavy = new Near(old, 30, 16, Map.of("meat", new Near.Spoils(3000, 2e-4)), null);
        assertThat(meat(found(heavy))).isCloseTo(3000, within(0.1));
        assertThat(found(heavy).solution().objective()).isCloseTo(0.1, within(1e-6));
        Near light = new Near(old, 30, 16, Map.of("meat", new Near.Spoils(3000, 5e-5)), null);
        assertThat(meat(found(light))).isCloseTo(2000, within(0.1));
        assertThat(found(light).solution().objective()).isCloseTo(1000 * 5e-5, within(1e-6));
        Near nothing = new Near(old, 30, 16, Map.of("meat", new Near.Spoils(0, 1)), null);
        assertThat(found(nothing).model().linearModel().rows())
                .noneMatch(row -> row.name().equals("meat spoils"));
    }
}
