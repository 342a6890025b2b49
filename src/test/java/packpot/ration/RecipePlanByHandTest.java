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
import packpot.food.Place;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.household.Recipe;
import packpot.needs.Needs;
import packpot.needs.Requirement;
import packpot.plan.Amounts;
import packpot.ration.RationPlanner.Outcome;
import packpot.solver.Expression;
import packpot.solver.SolveLimits;

/** Rations that keep to a recipe, for 10 000 kcal. Meat and rice have 1 kcal a gram, at $4 and $1 a kg. */
class RecipePlanByHandTest {
    private static final SolveLimits LIMITS = new SolveLimits(20, 0.001);
    /** 9 kcal and a gram of fat a gram, $3 a kg. */
    private static final PantryItem OIL =
            ByHand.loose(ByHand.food("oil", FoodGroup.OIL, Map.of(Constituent.FAT_G, 100.0)), 0.003);

    private final Asked solver = new Asked();

    private static Recipe recipe(double meat, double rice, double oil, double chalkPerDay) {
        return new Recipe(
                "stew",
                ByHand.DAYS,
                List.of(ByHand.dog("Ash")),
                List.of(part(MEAT, meat), part(RICE, rice), part(OIL, oil)).stream()
                        .filter(part -> part.grams() > 0)
                        .toList(),
                chalkPerDay == 0 ? List.of() : List.of(new Recipe.Addition("Ash", CHALK, chalkPerDay, "spoons")),
                List.of());
    }

    private static Recipe.Part part(PantryItem item, double grams) {
        return new Recipe.Part(item, grams, grams + " g");
    }

    private Outcome plan(RecipeGoal goal, Requirement... requirements) {
        Needs ash = needs(need("Ash", 1000, requirements));
        boolean oily =
                goal.recipe().foods().stream().anyMatch(part -> part.item().equals(OIL));
        Household household = oily ? household(ash, MEAT, RICE, CHALK, OIL) : household(ash, MEAT, RICE, CHALK);
        return new RationPlanner(Demo.knowledge(), solver).plan(household, ash, LIMITS, goal);
    }

    private Amounts amounts(RecipeGoal goal, Requirement... requirements) {
        return ((Outcome.Found) plan(goal, requirements)).amounts();
    }

    private double objective(RecipeGoal goal, Requirement... requirements) {
        return ((Outcome.Found) plan(goal, requirements)).solution().objective();
    }

    private static void assertGrams(Amounts amounts, PantryItem item, double grams) {
        assertThat(amounts.potGrams().getOrDefault(item, 0.0)).isCloseTo(grams, within(1e-3));
    }

    @Test
    void proportionsStay() {
        Amounts amounts = amounts(new RecipeGoal.AddOnly(recipe(3000, 1000, 0, 0)), least("protein", 50));
        assertGrams(amounts, MEAT, 7500);
        assertGrams(amounts, RICE, 2500);
        assertThat(amounts.cost()).isCloseTo(32.5, within(1e-3));
        assertThat(amounts.bound()).isBetween(32.4, 32.501);
        // Whole steps of every food would break them, so nothing is weighed.
        assertThat(solver.questions).hasSize(1);
        // Three quarters meat have 187.5 g of protein per 1000 kcal.
        assertThat(plan(new RecipeGoal.AddOnly(recipe(3000, 1000, 0, 0)), most("protein", 187)))
                .isInstanceOf(Outcome.None.class);
    }

    /** A kcal of oil costs a third of one of rice, and yet the pot is not filled up with it. */
    @Test
    void aFoodThatTheRecipeHasNotComesForWantAlone() {
        Needs ash = needs(need("Ash", 1000));
        var goal = new RecipeGoal.AddOnly(recipe(3000, 1000, 0, 0));
        Household household = household(ash, MEAT, RICE, CHALK, OIL);
        Amounts without = ((Outcome.Found)
                        new RationPlanner(Demo.knowledge(), solver).plan(household, ash, LIMITS, goal))
                .amounts();
        assertGrams(without, OIL, 0);
        assertGrams(without, MEAT, 7500);
        // A supplement is not charged for being none of the recipe's.
        Build build = ByHand.build(household(ash, MEAT, RICE, CHALK.withPlace(Place.EITHER)), ash);
        RecipeRows.add(build, goal, new Expression());
        var objective = build.model.objective();
        assertThat(objective.coefficient(Tiny.variable(build, "chalk g"))).isZero();
        assertThat(objective.coefficient(Tiny.variable(build, "meat g"))).isZero();
    }

    @Test
    void wholeDosesOfTheRecipeStayAndMoreMayCome() {
        // 2.7 g a day are two whole spoons.
        assertThat(doses(2.7)).isEqualTo(2);
        assertThat(doses(2)).isEqualTo(2);
        assertThat(doses(0.7)).isZero();
        // A gram of calcium per 1000 kcal takes three.
        assertThat(doses(2, least("calcium", 1))).isEqualTo(3);
    }

    private int doses(double chalkPerDay, Requirement... requirements) {
        Amounts amounts = amounts(new RecipeGoal.AddOnly(recipe(3000, 1000, 0, chalkPerDay)), requirements);
        return amounts.doses().values().iterator().next().getOrDefault(CHALK, 0);
    }

    /** 30 g of fat per 1000 kcal are 300 g of oil; 7300 kcal are left for meat and rice, three to one. */
    @Test
    void asLittleMoreOilAsWillDo() {
        Recipe oily = recipe(3000, 1000, 100, 0);
        Amounts amounts = amounts(new RecipeGoal.AddOnly(oily, true), least("fat", 30));
        assertGrams(amounts, OIL, 300);
        assertGrams(amounts, MEAT, 5475);
        assertGrams(amounts, RICE, 1825);
        // Oil is dearer to the search than to the household, and of cheaper plans nothing is known.
        assertThat(amounts.cost()).isCloseTo(4 * 5.475 + 1.825 + 0.9, within(1e-3));
        assertThat(amounts.bound()).isZero();
        assertThat(plan(new RecipeGoal.AddOnly(oily), least("fat", 30))).isInstanceOf(Outcome.None.class);
    }

    @Test
    void asNearAsCanBe() {
        RecipeGoal goal = new RecipeGoal.Nearest(recipe(3000, 1000, 0, 0), 2.5);
        Amounts amounts = amounts(goal, most("protein", 150));
        assertGrams(amounts, MEAT, 6000);
        assertGrams(amounts, RICE, 4000);
        assertThat(amounts.cost()).isCloseTo(28, within(1e-3));
        assertThat(amounts.bound()).isZero();
        // Meat is three quarters and a fifth less, rice a quarter and three fifths more: 15 % each. The cost counts as
        // a
        // tenth of a percent times 28 / 32.5.
        assertThat(objective(goal, most("protein", 150))).isCloseTo(30 + 0.1 * 28 / 32.5, within(0.01));
    }

    @Test
    void newFoodsAndSupplementsCountAsAChange() {
        Recipe rice = recipe(0, 1000, 0, 0);
        assertThat(plan(new RecipeGoal.Nearest(rice, 10), least("protein", 100)))
                .isInstanceOf(Outcome.None.class);
        RecipeGoal one = new RecipeGoal.Nearest(rice, 10, 1);
        assertGrams(amounts(one, least("protein", 100)), MEAT, 4000);
        // Two fifths less rice, two fifths of the pot meat, 2 for a new food; $22 in the place of $10.
        assertThat(objective(one, least("protein", 100))).isCloseTo(40 + 40 + 2 + 0.22, within(0.05));
        // Half a percent for a supplement; 30 cents of it beside $10.
        assertThat(objective(one, least("calcium", 1))).isCloseTo(0.5 + 0.103, within(0.01));
    }

    @Test
    void anAdditionOfTheRecipeIsNotChargedForRounding() {
        RecipeGoal goal = new RecipeGoal.Nearest(recipe(0, 1000, 0, 2.5), 10);
        // Two spoons or three are as near to 2.5 as can be; the new jar counts half a percent, and the cheaper is
        // taken.
        assertThat(objective(goal)).isCloseTo(0.5 + 0.1 * 10.2 / 10, within(0.01));
        // Five are two more than what is free, of 2.5, and count at the least weight of a fiftieth.
        assertThat(objective(goal, least("calcium", 2)))
                .isCloseTo(100 * 0.02 * 2 / 2.5 + 0.5 + 0.1 * 10.5 / 10, within(0.01));
    }

    @Test
    void theSameFoodsWithinABand() {
        Amounts amounts = amounts(new RecipeGoal.SameShares(recipe(4000, 6000, 0, 0), 0.25));
        // Two fifths of meat may become three tenths.
        assertGrams(amounts, MEAT, 3000);
        assertThat(amounts.cost()).isCloseTo(19, within(1e-3));
        assertThat(amounts.bound()).isBetween(18.97, 19.001);
        // Rice may be at most 0.75, which a band of a tenth makes 0.66.
        assertGrams(amounts(new RecipeGoal.SameShares(recipe(4000, 6000, 0, 0), 0.1)), MEAT, 3600);
        assertGrams(amounts(new RecipeGoal.SameShares(recipe(4000, 6000, 0, 0), 1)), MEAT, 0);
    }
}
