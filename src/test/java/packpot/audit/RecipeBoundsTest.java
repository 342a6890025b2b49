package packpot.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static packpot.audit.TwoFoods.HOUSEHOLD;
import static packpot.audit.TwoFoods.KCAL;
import static packpot.audit.TwoFoods.RECIPE;
import static packpot.audit.TwoFoods.household;
import static packpot.audit.TwoFoods.recipe;
import static packpot.audit.TwoFoods.told;
import static packpot.audit.TwoFoods.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import packpot.Records;
import packpot.food.FoodGroup;
import packpot.household.Household;
import packpot.household.Recipe;
import packpot.household.Shape;

/** Energy, safety and shape of a recipe at every limit and a little beyond it. */
class RecipeBoundsTest {
    @ParameterizedTest
    @CsvSource({"1.0099, true", "1.0101, false", "0.9901, true", "0.9899, false"})
    void energyLiesWithinAPercentOfItsTarget(double share, boolean good) {
        double meat = (600 * share - 96) / 1.7;
        List<String> told =
                told(verdict(recipe("foods[0].grams", meat), HOUSEHOLD).nutrition(), "energy is");
        if (good) {
            assertThat(told).isEmpty();
        } else {
            assertThat(told)
                    .containsExactly(String.format(
                            Locale.ROOT,
                            "Moss: energy is %.0f kcal a day, %.0f %% of the target of 600",
                            600 * share,
                            100 * share));
        }
    }

    /**
     * Grain: 5 g of protein, 75 g of carbohydrate beside 5 g of fibre, and 10 g of water in 100 g. Four steps: gross energy
     * 5 x 5.7 + 80 x 4.1 = 356.5 kcal, of which 91.2 - 1.43 x 5.56 = 83.26 % are digestible, less 5 x 1.04; meat 208 kcal of
     * which 91.2 %, less 20 x 1.04.
     */
    /** Carbonate until calcium comes to a share of its minimum of 1.25 g, or its maximum of 6.25 g, per 1000 kcal. */
    /** 600 + 30 mg of phosphorus; as much calcium is the least, twice as much the most. */
    /** 95 kcal per kg^0.75 are 534.2 for 10 kg: on 400 kcal minimums rise by 1.3356; at a goal of 8 kg by 1.1298. */
    /** FEDIAF: 0.01 g of arginine more for each gram of protein above 52.1 g per 1000 kcal. */
    @Test
    void aSupplementIsNoMoreThanItsCap() {
        String cap = "additions[0].item.food.supplement.mostGramsPer1000Kcal";
        double per1000 = 1000 / KCAL;
        String told = "of calcium carbonate per 1000 kcal";
        assertThat(told(verdict(recipe(cap, per1000), HOUSEHOLD).safety(), told))
                .isEmpty();
        assertThat(told(verdict(recipe(cap, per1000 * (1 - 1e-5)), HOUSEHOLD).safety(), told))
                .containsExactly("Moss: 1.65 g of calcium carbonate per 1000 kcal, at most 1.65 g");
        Recipe growing = Records.with(recipe(cap + "Growing", 0.0), "dogs[0].ageDays", 100.0);
        assertThat(told(verdict(growing, HOUSEHOLD).safety(), told)).hasSize(1);
        assertThat(told(verdict(recipe(cap + "Growing", 0.0), HOUSEHOLD).safety(), told))
                .isEmpty();
        // On two days as much again, and nothing of what another dog gets.
        assertThat(told(
                        verdict(Records.with(recipe(cap, per1000 * 2), "days", 2), HOUSEHOLD)
                                .safety(),
                        told))
                .isEmpty();
        assertThat(told(
                        verdict(Records.with(recipe(cap, per1000 * 1.99), "days", 2), HOUSEHOLD)
                                .safety(),
                        told))
                .hasSize(1);
        assertThat(told(
                        verdict(Records.with(recipe(cap, 0.0), "additions[0].dog", "Pip"), HOUSEHOLD)
                                .safety(),
                        told))
                .isEmpty();
        // The same stirred into the pot counts too.
        List<Recipe.Part> foods = new ArrayList<>(RECIPE.foods());
        foods.add(new Recipe.Part(recipe(cap, per1000 * 1.9).additions().get(0).item(), 1, "1 g"));
        Recipe both = Records.with(recipe(cap, per1000 * 1.9).withFoods(foods), "name", "both");
        assertThat(told(verdict(both, HOUSEHOLD).safety(), told))
                .containsExactly("Moss: 3.30 g of calcium carbonate per 1000 kcal, at most 3.14 g");
        assertThat(told(verdict(both, HOUSEHOLD).shape(), "foods,"))
                .containsExactly("pot: 2 foods, 5 to 10 are wished");
    }

    @Test
    void whatADogMustNotGetAndWhatHarms() {
        String carbonate = RECIPE.additions().get(0).item().food().id();
        assertThat(told(
                        verdict(recipe("dogs[0].avoids", List.of(carbonate)), HOUSEHOLD)
                                .safety(),
                        "must not"))
                .containsExactly("Moss: must not get calcium carbonate");
        Recipe another = Records.with(recipe("dogs[0].avoids", List.of(carbonate)), "additions[0].dog", "Pip");
        assertThat(told(verdict(another, HOUSEHOLD).safety(), "must not")).isEmpty();
        assertThat(told(
                        verdict(recipe("foods[0].item.food.label", "onion powder"), HOUSEHOLD)
                                .safety(),
                        "harms"))
                .singleElement()
                .asString()
                .startsWith("onion powder: harms dogs: damages red blood cells");
        assertThat(told(
                        verdict(recipe("additions[0].item.food.label", "onion powder"), HOUSEHOLD)
                                .safety(),
                        "harms"))
                .hasSize(1);
        assertThat(verdict(recipe("foods[0].item.food.label", "tuna"), HOUSEHOLD)
                        .advice())
                .contains("tuna: a small share only; small fish are better");
        assertThat(verdict(recipe("additions[0].item.food.supplement.caution", "Mind this."), HOUSEHOLD)
                        .advice())
                .containsExactly("calcium carbonate: Mind this.");
        assertThat(verdict(recipe("additions[0].item.food.supplement.caution", ""), HOUSEHOLD)
                        .advice())
                .isEmpty();
    }

    @Test
    void aFoodIsNoMoreThanIsSafe() {
        String cap = "foods[1].item.food.kitchen.mostShare";
        double share = 30.0 / 330;
        assertThat(told(verdict(recipe(cap, share), HOUSEHOLD).safety(), "mass"))
                .isEmpty();
        Recipe over = recipe(cap, share - 1e-5);
        assertThat(told(verdict(over, HOUSEHOLD).safety(), "mass"))
                .containsExactly("test grain: 9.1 % of cooked mass, at most 9.1 %");
        assertThat(told(
                        verdict(
                                        Records.with(over, "foods[1].item.food.kitchen.mostShareReason", "it swells"),
                                        HOUSEHOLD)
                                .safety(),
                        "mass"))
                .containsExactly("test grain: 9.1 % of cooked mass, at most 9.1 %: it swells");
    }

    private static List<String> band(double least, double most, boolean usual) {
        Shape.Band band = new Shape.Band("grain", "grains", Set.of(FoodGroup.GRAIN), least, most, usual);
        return told(verdict(RECIPE, household("shape.bands", List.of(band))).shape(), "grains");
    }

    @Test
    void theShapeIsRemarkedOnAtItsBounds() {
        double share = 30.0 / 330;
        assertThat(band(share, share, true)).isEmpty();
        assertThat(band(share + 1e-5, 1, true))
                .containsExactly("grains: 9.1 % of cooked mass, usual are 9.1 % to 100 %");
        assertThat(band(0, share - 1e-5, false))
                .containsExactly("grains: 9.1 % of cooked mass, the household wishes 0 % to 9.1 %");
        String one = "one food is usually";
        assertThat(told(
                        verdict(RECIPE, household("shape.oneFoodMost", 300.0 / 330))
                                .shape(),
                        one))
                .isEmpty();
        assertThat(told(
                        verdict(RECIPE, household("shape.oneFoodMost", 300.0 / 330 - 1e-5))
                                .shape(),
                        one))
                .containsExactly("test meat: 91 % of cooked mass, one food is usually at most 91 %");
        assertThat(told(verdict(RECIPE, household("shape.fewestFoods", 2)).shape(), "foods,"))
                .isEmpty();
        assertThat(told(verdict(RECIPE, household("shape.fewestFoods", 3)).shape(), "foods,"))
                .containsExactly("pot: 2 foods, 3 to 10 are wished");
        Household two = household("shape.fewestFoods", 1);
        assertThat(told(verdict(RECIPE, Records.with(two, "shape.mostFoods", 2)).shape(), "foods,"))
                .isEmpty();
        assertThat(told(verdict(RECIPE, Records.with(two, "shape.mostFoods", 1)).shape(), "foods,"))
                .containsExactly("pot: 2 foods, 1 to 1 are wished");
        assertThat(told(
                        verdict(RECIPE.withFoods(RECIPE.foods().subList(0, 1)), HOUSEHOLD)
                                .shape(),
                        "1 food, "))
                .containsExactly("pot: 1 food, 5 to 10 are wished");
    }
}
