package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.Tiny.coefficient;
import static packpot.ration.Tiny.row;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import packpot.household.PantryItem;
import packpot.household.Recipe;
import packpot.household.Wish;
import packpot.solver.Expression;
import packpot.units.Show;

class RecipeRowsTest {
    private static final String TURKEY = "ground turkey, 93 % lean";
    private static final String RICE = "white rice, enriched, dry";
    private static final String SALT = "salt, iodised, 45 ug per g";
    private static final String EGGSHELL = "eggshell powder";

    private Build build;
    private Recipe recipe;
    private double turkeyYield;
    private double riceYield;

    @BeforeEach
    void start() {
        build = Tiny.build(Tiny.household());
        PantryItem turkey = Tiny.item(build, TURKEY);
        PantryItem rice = Tiny.item(build, RICE);
        turkeyYield = turkey.preparation().yieldCookedOverRaw();
        riceYield = rice.preparation().yieldCookedOverRaw();
        recipe = new Recipe(
                "two foods",
                10,
                build.household.dogs(),
                List.of(
                        new Recipe.Part(turkey, 3000, "3 kg"),
                        new Recipe.Part(rice, 1000, "1 kg"),
                        new Recipe.Part(Tiny.item(build, SALT), 7.4, "7.4 g")),
                List.of(new Recipe.Addition("Ash", Tiny.item(build, EGGSHELL), 1.5, "1.5 g")),
                List.of());
    }

    private void add(RecipeGoal goal) {
        RecipeRows.add(build, goal, new Expression().add(1, build.model.objective()));
    }

    @Test
    void proportionsAreKeptByOneScale() {
        add(new RecipeGoal.AddOnly(recipe));
        String turkey = TURKEY + " at its part of the recipe";
        assertThat(coefficient(build, turkey, TURKEY + " g")).isEqualTo(1);
        assertThat(coefficient(build, turkey, "scale of the recipe")).isEqualTo(-3000);
        assertThat(row(build, turkey).lower()).isZero();
        assertThat(row(build, turkey).upper()).isZero();
        assertThat(coefficient(build, RICE + " at its part of the recipe", "scale of the recipe"))
                .isEqualTo(-1000);
        assertThat(row(build, turkey).tag().kind()).isEqualTo(Wish.Kind.RECIPE);
        assertThat(row(build, turkey).tag().size()).isEqualTo(3000);
        // No scale makes more than two of the thinnest batch, which has half a kcal a gram.
        assertThat(Tiny.variable(build, "scale of the recipe").upper())
                .isCloseTo(2 * 10 * build.needs.kcalPerDay() / 0.5 / recipe.cookedGrams(), within(1e-9));
    }

    @Test
    void oilBeyondTheRecipesPartCountsAsMoreThanItSaves() {
        PantryItem oil = Tiny.item(build, "canola oil");
        List<Recipe.Part> foods = new ArrayList<>(recipe.foods());
        foods.add(new Recipe.Part(oil, 50, "50 g"));
        recipe = recipe.withFoods(foods);
        double before = build.model.objective().coefficient(Tiny.variable(build, "canola oil g"));
        add(new RecipeGoal.AddOnly(recipe, true));
        assertThat(row(build, "canola oil at its part of the recipe").lower()).isZero();
        assertThat(row(build, "canola oil at its part of the recipe").upper()).isInfinite();
        assertThat(row(build, TURKEY + " at its part of the recipe").upper()).isZero();
        double pot = recipe.foods().stream()
                .mapToDouble(part -> part.grams() * part.item().pricePerGram())
                .sum();
        // Oil has less than 10 kcal a gram, and no pot fewer than half a kcal.
        assertThat(build.model.objective().coefficient(Tiny.variable(build, "canola oil g")) - before)
                .isCloseTo(20 * pot / recipe.cookedGrams(), within(1e-9));
    }

    @Test
    void aNewFoodCountsByItsShareAndNoMoreComeThanAreAllowed() {
        add(new RecipeGoal.Nearest(recipe, 1.2, 1));
        String words = "foods that the recipe has not: at most 1";
        assertThat(row(build, words).upper()).isEqualTo(1);
        assertThat(coefficient(build, words, "carrots used")).isEqualTo(1);
        double share = Tiny.find(build.potGrams, "carrots").cookedPerGram() / (1.2 * recipe.cookedGrams());
        assertThat(build.model.objective().coefficient(Tiny.variable(build, "carrots g")))
                .isCloseTo(100 * share, within(1e-9));
        assertThat(build.model.objective().coefficient(Tiny.variable(build, "carrots used")))
                .isPositive();
        assertThat(build.model.objective().coefficient(Tiny.variable(build, "zinc gluconate used")))
                .isPositive();
        // What the recipe has is not new.
        assertThat(build.model.objective().coefficient(Tiny.variable(build, SALT + " used")))
                .isZero();
    }

    @Test
    void ofASupplementTheWholeMeasuresStayAndMoreMayCome() {
        add(new RecipeGoal.AddOnly(recipe));
        String salt = SALT + " at its part of the recipe";
        assertThat(row(build, salt).lower())
                .isEqualTo(-Tiny.item(build, SALT).food().supplement().potStepGrams());
        assertThat(row(build, salt).upper()).isInfinite();
        // An eighth of a teaspoon of eggshell powder is 0.6875 g a day: two whole ones in 1.5 g.
        String eggshell = "Ash: " + EGGSHELL + " as the recipe gives it";
        assertThat(row(build, eggshell).lower()).isEqualTo(2);
        assertThat(coefficient(build, eggshell, EGGSHELL + " for Ash doses")).isEqualTo(1);
        // Of half a gram there is none.
        Build less = Tiny.build(Tiny.household());
        Recipe little = new Recipe(
                recipe.name(),
                10,
                recipe.dogs(),
                recipe.foods(),
                List.of(new Recipe.Addition("Ash", Tiny.item(build, EGGSHELL), 0.5, "0.5 g")),
                List.of());
        RecipeRows.add(less, new RecipeGoal.AddOnly(little), new Expression());
        assertThat(Tiny.hasRow(less, eggshell)).isFalse();
    }

    @Test
    void theDistanceIsTheWeightedSumOfRelativeChangesInPercent() {
        double costOfMore = build.model.objective().coefficient(Tiny.variable(build, RICE + " packs"));
        add(new RecipeGoal.Nearest(recipe, 1.2));
        String rice = RICE + " beside the recipe";
        assertThat(row(build, rice).lower()).isCloseTo(1200, within(1e-9));
        assertThat(row(build, rice).upper()).isCloseTo(1200, within(1e-9));
        assertThat(coefficient(build, rice, RICE + " more than the recipe")).isEqualTo(-1);
        assertThat(coefficient(build, rice, RICE + " less than the recipe")).isEqualTo(1);
        double cooked = 3000 * turkeyYield
                + 1000 * riceYield
                + 7.4 * Tiny.item(build, SALT).preparation().yieldCookedOverRaw();
        double perGram = 100 * (1000 * riceYield / cooked) / 1200;
        assertThat(build.model.objective().coefficient(Tiny.variable(build, RICE + " more than the recipe")))
                .isCloseTo(perGram, within(1e-12));
        assertThat(build.model.objective().coefficient(Tiny.variable(build, RICE + " less than the recipe")))
                .isCloseTo(perGram, within(1e-12));
        // The whole cost of the recipe weighs a tenth of a percent of change.
        double cost = 1.2
                * (3000 * Tiny.item(build, TURKEY).pricePerGram()
                        + 1000 * Tiny.item(build, RICE).pricePerGram()
                        + 7.4 * Tiny.item(build, SALT).pricePerGram());
        assertThat(build.model.objective().coefficient(Tiny.variable(build, RICE + " packs")))
                .isCloseTo(0.1 / cost * costOfMore, within(1e-9));
    }

    @Test
    void aSpoonfulIsNotChargedForTheRoundingToItsMeasure() {
        add(new RecipeGoal.Nearest(recipe, 1));
        double step = Tiny.item(build, SALT).food().supplement().potStepGrams();
        assertThat(row(build, SALT + " beside the recipe").lower()).isCloseTo(7.4 - step / 2, within(1e-9));
        assertThat(row(build, SALT + " beside the recipe").upper()).isCloseTo(7.4 + step / 2, within(1e-9));
        assertThat(build.model.objective().coefficient(Tiny.variable(build, SALT + " more than the recipe")))
                .isCloseTo(100 * 0.02 / 7.4, within(1e-9));
    }

    @Test
    void aShareStaysWithinItsBandOfTheRecipes() {
        add(new RecipeGoal.SameShares(recipe, 0.25));
        double share = 1000 * riceYield / (3000 * turkeyYield + 1000 * riceYield);
        double reserve = build.rules().roundingReserve();
        String least = build.model.rows().stream()
                .map(row -> row.name())
                .filter(name -> name.startsWith(RICE + " at least") && name.contains("band"))
                .findFirst()
                .orElseThrow();
        assertThat(coefficient(build, least, TURKEY + " g"))
                .isCloseTo(-0.75 * share * (1 + reserve) * turkeyYield, within(1e-12));
        assertThat(coefficient(build, least, RICE + " g"))
                .isCloseTo(riceYield - 0.75 * share * (1 + reserve) * riceYield, within(1e-12));
        assertThat(least).contains(" at least " + Show.number(75 * share) + " % of the foods");
        double usual = share * 10 * build.needs.kcalPerDay() / 1.3;
        assertThat(row(build, least).tag().size()).isCloseTo(usual, within(1e-9));
        String most = RICE + " at most " + Show.number(125 * share) + " % of the foods, as the recipe's band has it";
        assertThat(row(build, most).tag().size()).isCloseTo(usual, within(1e-9));
        assertThat(build.model.rows())
                .filteredOn(row ->
                        row.name().startsWith(RICE + " at most") && row.name().contains("band"))
                .singleElement()
                .satisfies(row -> assertThat(row.expression().coefficient(Tiny.variable(build, TURKEY + " g")))
                        .isCloseTo(-1.25 * share * (1 - reserve) * turkeyYield, within(1e-12)));
        assertThat(build.model.rows())
                .noneMatch(
                        row -> row.name().startsWith(SALT + " at") && row.name().contains("band"));
    }
}
