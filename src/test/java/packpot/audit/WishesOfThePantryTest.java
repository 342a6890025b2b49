package packpot.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static packpot.audit.TinyPlan.CALCIUM;
import static packpot.audit.TinyPlan.CHICKEN;
import static packpot.audit.TinyPlan.HOUSEHOLD;
import static packpot.audit.TinyPlan.PLAN;
import static packpot.audit.TinyPlan.SPINACH;
import static packpot.audit.TinyPlan.VITAMIN_E;
import static packpot.audit.TinyPlan.findings;
import static packpot.audit.TinyPlan.household;
import static packpot.audit.TinyPlan.item;
import static packpot.audit.TinyPlan.line;
import static packpot.audit.TinyPlan.number;
import static packpot.audit.TinyPlan.pantry;
import static packpot.audit.TinyPlan.plan;
import static packpot.audit.TinyPlan.pot;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import packpot.Records;
import packpot.food.FoodGroup;
import packpot.food.Place;
import packpot.food.Supplement;
import packpot.household.Household;
import packpot.household.Shape;
import packpot.plan.Plan;

/** What the household wishes of foods, packs and the shape of the pot, each at its bound and a little beyond it. */
class WishesOfThePantryTest {
    private static final double CHICKEN_GRAMS = number(pot(CHICKEN) + ".grams");

    @Test
    void aFoodIsUsedAtMostAndAtLeastAsWished() {
        assertThat(findings(household(item(CHICKEN) + ".atMostGrams", CHICKEN_GRAMS)))
                .isEmpty();
        assertThat(findings(household(item(CHICKEN) + ".atMostGrams", CHICKEN_GRAMS - 1)))
                .containsExactly("chicken thigh, with skin: 4574 g used, at most 4573 g are wished");
        double rounding = HOUSEHOLD.rules().foodRoundingGrams();
        assertThat(findings(household(item(CHICKEN) + ".mustUseGrams", CHICKEN_GRAMS + rounding)))
                .isEmpty();
        assertThat(findings(household(item(CHICKEN) + ".mustUseGrams", CHICKEN_GRAMS + rounding + 1)))
                .containsExactly("chicken thigh, with skin: 4574 g are used, at least 4580 g are wished");
    }

    @Test
    void theBudgetIsKept() {
        double till = PLAN.cost().atTheTill();
        assertThat(findings(household("budget", till - 0.004))).isEmpty();
        assertThat(findings(household("budget", till - 0.006)))
                .containsExactly("budget: 105.57 at the till, at most 105.56 are wished");
    }

    @Test
    void nothingIsBoughtThatTheShopHasNotOrThatIsNotWanted() {
        assertThat(findings(household(item(CHICKEN) + ".outOfStock", true)))
                .containsExactly("chicken thigh, with skin: is bought although the shop has none");
        assertThat(findings(household(item(unused()) + ".outOfStock", true))).isEmpty();
        assertThat(findings(household(item("peas-green-frozen") + ".wholePacksOnly", true)))
                .isEmpty();
        assertThat(findings(household(item("lentils-dry") + ".wholePacksOnly", true)))
                .containsExactly("lentils, dry: a pack is opened and not used up");
    }

    private static String unused() {
        return HOUSEHOLD.pantry().stream()
                .map(each -> each.food().id())
                .filter(food ->
                        PLAN.shopping().stream().noneMatch(line -> line.food().equals(food)))
                .findFirst()
                .orElseThrow();
    }

    /** One pack more than is needed, with every figure of the line and of the cost as it would then be. */
    @Test
    void aWholePackThatNobodyNeeds() {
        String line = line("lentils-dry");
        Plan more = PLAN;
        more = Records.with(more, line + ".packs", 3);
        more = Records.with(more, line + ".buyGramsAsBought", 1500.0);
        more = Records.with(more, line + ".leftOverGrams", 907.0);
        more = Records.with(more, line + ".pays", 4.8);
        assertThat(findings(more))
                .contains("lentils, dry: a whole pack is bought that nobody needs")
                .noneMatch(finding -> finding.contains("does not add up"));
        assertThat(findings(PLAN)).isEmpty();
    }

    @Test
    void whatIsUsedWasInTheHouseOrBought() {
        Household emptier = household(item(SPINACH) + ".onHandGrams", 0.0);
        assertThat(findings(emptier)).noneMatch(finding -> finding.contains("are used, but only"));
        Plan none = Records.with(PLAN, line(SPINACH) + ".packs", 0);
        assertThat(findings(none))
                .contains("spinach, frozen: 364.0 g are used, but only 200.0 g in the house and 0.0 g bought");
        assertThat(findings(none, household(item(SPINACH) + ".onHandGrams", 364.0)))
                .noneMatch(finding -> finding.contains("are used, but only"));
    }

    @Test
    void everyLineOfTheListStandsForAFoodThatIsUsed() {
        List<Plan.Purchase> lines = new ArrayList<>(PLAN.shopping());
        lines.add(lines.get(0));
        assertThat(findings(plan("shopping", lines))).contains(CHICKEN + ": has 2 lines on the shopping list");
        assertThat(findings(plan(
                        "shopping", PLAN.shopping().subList(1, PLAN.shopping().size()))))
                .contains(CHICKEN + ": is used but not on the shopping list, which names what is in the house too");
        assertThat(findings(plan(line(CHICKEN) + ".food", unused())))
                .contains(unused() + ": has 1 lines on the shopping list but no use");
        assertThat(findings(plan(line(CHICKEN) + ".food", "no such food")))
                .contains("chicken thigh, with skin: is on the shopping list but not in the pantry");
    }

    private static Household band(double least, double most) {
        Shape.Band band = new Shape.Band("poultry", "poultry", Set.of(FoodGroup.PULSE), least, most, false);
        return household("shape.bands", List.of(band));
    }

    @Test
    void aKindOfFoodLiesInItsBand() {
        double share = number(pot("lentils-dry") + ".shareOfCookedMass");
        assertThat(findings(band(share, share))).isEmpty();
        assertThat(findings(band(share + 2e-6, 1)))
                .containsExactly("poultry: 14.89 % of cooked mass, wished are 15 to 100 %");
        assertThat(findings(band(0, share - 2e-6)))
                .containsExactly("poultry: 14.89 % of cooked mass, wished are 0 to 15 %");
    }

    @Test
    void aFoodIsNoMoreOfThePotThanWishedAndThanIsSensible() {
        double share = number(pot(CHICKEN) + ".shareOfCookedMass");
        for (String place : List.of("shape.oneFoodMost", item(CHICKEN) + ".food.kitchen.mostShare")) {
            assertThat(findings(household(place, share))).isEmpty();
            assertThat(findings(household(place, share - 2e-6)))
                    .containsExactly("chicken thigh, with skin: 35.03 % of cooked mass, at most 35.0 % are wished");
        }
    }

    @Test
    void asManyFoodsAsWished() {
        String told = "pot: 9 foods and 6 supplements, wished are %d to %d foods and at most %d supplements";
        assertThat(findings(household("shape.fewestFoods", 9))).isEmpty();
        assertThat(findings(household("shape.fewestFoods", 10))).containsExactly(told.formatted(10, 10, 6));
        assertThat(findings(household("shape.mostFoods", 9))).isEmpty();
        assertThat(findings(household("shape.mostFoods", 8))).containsExactly(told.formatted(5, 8, 6));
        assertThat(findings(household("shape.mostStirredIn", 5))).containsExactly(told.formatted(5, 10, 5));
    }

    @Test
    void everyFoodIsWhereItBelongsAndIsListedAsWhatItIs() {
        assertThat(findings(household(item(CALCIUM) + ".place", Place.BOWL)))
                .containsExactly("calcium carbonate: belongs into bowls, not into the pot");
        assertThat(findings(household(item(VITAMIN_E) + ".place", Place.POT)))
                .containsOnly("vitamin e oil: belongs into the pot, not into bowls");
        assertThat(findings(plan(pot(CALCIUM) + ".stirredIn", false)))
                .containsExactly("calcium carbonate: is listed as what it is not");
        assertThat(findings(plan(pot(CHICKEN) + ".stirredIn", true)))
                .contains("chicken thigh, with skin: is listed as what it is not");
    }

    @Test
    void anIngredientHasAnAmountAndStandsOnce() {
        assertThat(findings(plan(pot(CALCIUM) + ".grams", 0.0))).contains("calcium carbonate: has no amount");
        List<Plan.Ingredient> twice = new ArrayList<>(PLAN.pot());
        twice.add(twice.get(0));
        assertThat(findings(plan("pot", twice))).contains("chicken thigh, with skin: is in the pot twice");
        assertThat(findings(plan(pot(CALCIUM) + ".food", "no such food")))
                .contains("calcium carbonate: is in the pot but not in the pantry");
    }

    private static Household supplement(String food, String part, Object value) {
        return household(item(food) + ".food.supplement." + part, value);
    }

    @Test
    void aSupplementIsMeasuredInWholeSteps() {
        assertThat(findings(supplement(CALCIUM, "potStepGrams", 47.0 / 5))).isEmpty();
        assertThat(findings(supplement(CALCIUM, "potStepGrams", 47.0 / 5.4)))
                .containsExactly("calcium carbonate: is not a whole number of "
                        + supplement(CALCIUM).measurePlural());
        assertThat(findings(supplement(CALCIUM, "potStepGrams", 47.0 / (5 + 3e-6))))
                .hasSize(1);
    }

    private static Supplement supplement(String food) {
        return pantry(food).food().supplement();
    }

    @Test
    void aDoseCanBeMeasuredAndIsNotTooMany() {
        double part = supplement(VITAMIN_E).smallestPart();
        assertThat(part * supplement(VITAMIN_E).gramsPerMeasure()).isEqualTo(0.03);
        String told = "vitamin e oil: a dose that cannot be measured: 0.03 g";
        assertThat(findings(supplement(VITAMIN_E, "smallestPart", part / 2))).isEmpty();
        assertThat(findings(supplement(VITAMIN_E, "smallestPart", part / 1.5))).containsOnly(told);
        assertThat(findings(supplement(VITAMIN_E, "smallestPart", part / (1 + 3e-6))))
                .containsOnly(told);
        assertThat(findings(supplement(VITAMIN_E, "smallestPart", part * 1e6))).containsOnly(told);
        Household halves = supplement(VITAMIN_E, "smallestPart", part / 2);
        String most = item(VITAMIN_E) + ".food.supplement.mostDosesPerDay";
        assertThat(findings(Records.with(halves, most, 2))).isEmpty();
        assertThat(findings(Records.with(halves, most, 1)))
                .containsOnly("vitamin e oil: more than 1 doses in one bowl");
    }

    @Test
    void dosesAreGivenOnDaysOfTheBatchAndOnceADay() {
        for (List<Integer> days : List.of(List.of(0), List.of(15))) {
            assertThat(findings(plan("dogs[0].additions[1].onDays", days)))
                    .contains(
                            "vitamin d3 drops: is given on days that are not in the batch, or twice on one day",
                            "Clover: has additions on days on which it is not there");
        }
        for (List<Integer> days : List.of(List.of(1), List.of(14))) {
            assertThat(findings(plan("dogs[0].additions[1].onDays", days))).isEmpty();
        }
        assertThat(findings(plan("dogs[0].additions[1].onDays", List.of(3, 3))))
                .contains("vitamin d3 drops: is given on days that are not in the batch, or twice on one day");
        assertThat(findings(plan("dogs[0].additions[0].onDays", List.of(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13))))
                .contains("vitamin e oil: is to be given every day, but is given on 13 days");
    }
}
