package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.ByHand.CHALK;
import static packpot.ration.ByHand.MEAT;
import static packpot.ration.ByHand.RICE;
import static packpot.ration.ByHand.household;
import static packpot.ration.ByHand.least;
import static packpot.ration.ByHand.most;
import static packpot.ration.ByHand.need;
import static packpot.ration.ByHand.needs;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.food.Constituent;
import packpot.food.FoodGroup;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.needs.Needs;
import packpot.plan.Amounts;
import packpot.ration.RationPlanner.Outcome;
import packpot.solver.SolveLimits;

/** Rations whose amounts and cost follow by hand. */
class RationPlannerTest {
    private static final SolveLimits LIMITS = new SolveLimits(20, 0.001);

    /** 10 000 kcal over the batch, and of 1000 g of food 200 g of meat at least. */
    private final Needs ash = needs(need("Ash", 1000, least("protein", 50)));

    /** As rice, and twice as dear. */
    private static final PantryItem OATS =
            ByHand.loose(ByHand.food("oats", FoodGroup.GRAIN, Map.of(Constituent.CARBOHYDRATE_G, 25.0)), 0.002);

    private final RationPlanner planner = new RationPlanner(Demo.knowledge(), new Asked());

    private Amounts amounts(Household household, Needs needs) {
        return ((Outcome.Found) planner.plan(household, needs, LIMITS)).amounts();
    }

    @Test
    void theCheapestMixThatHasEnoughProtein() {
        Amounts amounts = amounts(household(ash, MEAT, RICE), ash);
        // 50 g of protein are in 200 g of meat: 2 kg of it at $4 and 8 kg of rice at $1.
        assertThat(amounts.potGrams()).containsOnlyKeys(MEAT, RICE);
        assertThat(amounts.potGrams().get(MEAT)).isCloseTo(2000, within(1e-6));
        assertThat(amounts.potGrams().get(RICE)).isCloseTo(8000, within(1e-6));
        assertThat(amounts.cost()).isCloseTo(16, within(1e-6));
        assertThat(amounts.bound()).isBetween(16 * 0.999, 16 + 1e-6);
        assertThat(amounts.proved()).isTrue();
        assertThat(amounts.shares()).containsExactly(Map.entry(ash.dogs().get(0), 1.0));
    }

    @Test
    void foodsAreWeighedInWholeSteps() {
        Needs needs = needs(need("Ash", 1000, least("protein", 50.0125)));
        Amounts amounts = amounts(household(needs, MEAT, RICE), needs);
        // 2000.5 g would do; what is above a kilogram is weighed in steps of 5 g.
        assertThat(amounts.potGrams().get(MEAT)).isCloseTo(2005, within(1e-6));
        assertThat(amounts.potGrams().get(RICE)).isCloseTo(7995, within(1e-6));
        assertThat(amounts.cost()).isCloseTo(4 * 2.005 + 7.995, within(1e-6));
    }

    @Test
    void whereWholeStepsFitInNoWayTheSolutionStands() {
        Needs needs = needs(need("Ash", 1000.05, least("protein", 50)));
        Amounts amounts = amounts(household(needs, MEAT, RICE), needs);
        // 10 000.5 kcal are asked for, to the last one.
        assertThat(amounts.potGrams().get(MEAT)).isCloseTo(2000.1, within(1e-3));
        assertThat(amounts.potGrams().get(RICE)).isCloseTo(8000.4, within(1e-3));
    }

    /** Else it would make up the number of foods with nothing of it in the pot. */
    @Test
    void aFoodThatIsNotToBeHadCountsAsNoFoodOfThePot() {
        Household three = household(ash, MEAT, RICE, ByHand.gone(OATS, 0));
        three = three.withShape(three.shape().withFewestFoods(3));
        assertThat(planner.plan(three, ash, LIMITS)).isInstanceOf(Outcome.None.class);
        assertThat(amounts(three.withShape(three.shape().withFewestFoods(2)), ash)
                        .potGrams())
                .containsOnlyKeys(MEAT, RICE);
        // Of 150 g in the house all is used, which is less than would be useful otherwise.
        Household few = three.withPantry(List.of(MEAT, RICE, ByHand.gone(OATS, 150)));
        assertThat(amounts(few, ash).potGrams().get(ByHand.gone(OATS, 150))).isCloseTo(150, within(1e-6));
    }

    @Test
    void packsArePaidWhole() {
        var meat = ByHand.packs(MEAT, 1500, 6);
        Amounts amounts = amounts(household(ash, meat, RICE), ash);
        // Two packs hold 3 kg; once they are paid, the meat in them saves rice: 3 kg and 7 kg, $12 and $7.
        assertThat(amounts.potGrams().get(meat)).isCloseTo(3000, within(1e-6));
        assertThat(amounts.potGrams().get(RICE)).isCloseTo(7000, within(1e-6));
        assertThat(amounts.cost()).isCloseTo(19, within(1e-6));
    }

    @Test
    void whatIsInTheHouseComesFirst() {
        Amounts amounts = amounts(household(ash, MEAT.withOnHand(1200), RICE), ash);
        // All 1200 g on hand and 800 g for $3.20; 8 kg of rice.
        assertThat(amounts.cost()).isCloseTo(3.2 + 8, within(1e-6));
    }

    @Test
    void twoDogsShareThePotByTheirEnergy() {
        Needs two = needs(need("Ash", 900, least("protein", 50)), need("Elm", 300));
        Amounts amounts = amounts(household(two, MEAT, RICE), two);
        // Both eat the same mix of 12 kg: 2.4 kg of meat and 9.6 kg of rice.
        assertThat(amounts.cost()).isCloseTo(9.6 + 9.6, within(1e-6));
        assertThat(amounts.shares().values()).containsExactly(0.75, 0.25);
    }

    @Test
    void dosesGoIntoBowls() {
        Needs two = needs(need("Ash", 900, least("calcium", 1)), need("Elm", 300));
        Amounts amounts = amounts(household(two, RICE, CHALK), two);
        // Ash needs 0.9 g of calcium a day: three spoons of 0.4 g, on ten days; $12 of rice and $0.30 of chalk.
        assertThat(amounts.doses().get(two.dogs().get(0))).containsExactly(Map.entry(CHALK, 3));
        assertThat(amounts.doses().get(two.dogs().get(1))).isEmpty();
        assertThat(amounts.cost()).isCloseTo(12.3, within(1e-6));
    }

    @Test
    void whatNoFoodBringsIsProvedImpossible() {
        Needs much = needs(need("Ash", 1000, least("protein", 251)));
        Household household = household(much, MEAT, RICE);
        Outcome outcome = planner.plan(household, much, LIMITS);
        assertThat(outcome).isInstanceOf(Outcome.None.class);
        assertThat(((Outcome.None) outcome).provedImpossible()).isTrue();
        assertThat(((Outcome.None) outcome).model().potChoices()).containsOnlyKeys(MEAT, RICE);
        assertThat(planner.costsAtLeast(household, much, LIMITS)).isInfinite();
    }

    @Test
    void minimumAndMaximumLeaveNoRoomBetweenThem() {
        Needs both = needs(need("Ash", 1000, least("protein", 50), most("protein", 49)));
        assertThat(planner.plan(household(both, MEAT, RICE), both, LIMITS)).isInstanceOf(Outcome.None.class);
    }

    @Test
    void fractionsOfPacksAreTheLeastThatItCanCost() {
        Household household = household(ash, ByHand.packs(MEAT, 1500, 6), RICE);
        // Part of a pack would do: 2 kg at $4 a kg and 8 kg of rice.
        assertThat(planner.costsAtLeast(household, ash, LIMITS)).isCloseTo(16, within(1e-6));
    }

    @Test
    void aBudgetIsKept() {
        Household household = household(ash, ByHand.packs(MEAT, 1500, 6), RICE);
        assertThat(planner.plan(household.withBudget(19.0), ash, LIMITS)).isInstanceOf(Outcome.Found.class);
        assertThat(planner.plan(household.withBudget(18.9), ash, LIMITS)).isInstanceOf(Outcome.None.class);
    }

    @Test
    void fewFoodsMayBeDearer() {
        // Without rice there is meat alone: 10 kg at $4.
        Household one = household(ash, MEAT, RICE).withShape(ByHand.ANY_SHAPE.withMostFoods(1));
        assertThat(amounts(one, ash).cost()).isCloseTo(40, within(1e-6));
    }
}
