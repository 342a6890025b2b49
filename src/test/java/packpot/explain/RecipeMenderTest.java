package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import packpot.audit.PlanAudit;
import packpot.audit.RecipeAudit;
import packpot.audit.RecipeVerdict;
import packpot.household.Household;
import packpot.household.Recipe;
import packpot.household.RecipeScenario;
import packpot.household.Recipes;
import packpot.household.ScenarioException;
import packpot.household.Wish;
import packpot.plan.Plan;
import packpot.search.Search;
import packpot.solver.SolveLimits;

class RecipeMenderTest {
    private static final SolveLimits LIMITS = new SolveLimits(30, 0.01);
    private static final double BAND = 0.25;
    private static final RecipeMender MENDER = new RecipeMender(Recipes.KNOWLEDGE, new Search(), BAND);

    /** Meat, egg, liver, rice, vegetables: short of calcium, zinc and more, but of nothing that only other foods bring. */
    private static final String FAIR = """
            {'name': 'Fair', 'days': 7, 'dogs': ['Bramble', 'Moss'], 'foods': [
              {'food': 'ground turkey, 93 % lean', 'amount': '7 lb'}, {'food': 'egg, whole', 'amount': '12 large'},
              {'food': 'chicken liver', 'amount': '300 g'}, {'food': 'white rice, enriched, dry', 'amount': '3 lb'},
              {'food': 'carrots', 'amount': '2 lb'}, {'food': 'green peas, frozen', 'amount': '1 lb'},
              {'food': 'canola oil', 'amount': '4 tbsp'}],
             'additions': [{'food': 'eggshell powder', 'dog': 'Moss', 'amount': '0.25 tsp'}]}
            """;

    private static final Map<RecipeMend.Way, RecipeMend.Outcome> FAIR_MENDED = new EnumMap<>(RecipeMend.Way.class);

    private static RecipeScenario fair;

    @BeforeAll
    static void read() throws ScenarioException {
        fair = Recipes.forThreeAdults(FAIR);
    }

    private static RecipeMend.Outcome.Planned planned(RecipeMend.Way way, RecipeScenario scenario) {
        // The fair recipe is mended by many tests and comes out the same.
        RecipeMend.Outcome outcome = scenario.equals(fair)
                ? FAIR_MENDED.computeIfAbsent(
                        way, key -> MENDER.mend(key, fair, LIMITS).outcome())
                : MENDER.mend(way, scenario, LIMITS).outcome();
        assertThat(outcome).isInstanceOf(RecipeMend.Outcome.Planned.class);
        return (RecipeMend.Outcome.Planned) outcome;
    }

    @ParameterizedTest
    @EnumSource(RecipeMend.Way.class)
    void aMendPassesTheAuditThatTheRecipeDoesNot(RecipeMend.Way way) {
        assertThat(RecipeAudit.check(fair.recipe(), fair.household(), Recipes.KNOWLEDGE)
                        .good())
                .isFalse();
        RecipeMend.Outcome.Planned mend = planned(way, fair);
        assertThat(mend.verdict().findings()).isEmpty();
        assertThat(mend.verdict().dogs()).extracting("dog").containsExactly("Bramble", "Moss");
        // Only foods of the recipe, supplements, and where nothing else may change a little oil.
        List<String> own = fair.recipe().foods().stream()
                .map(part -> part.item().food().id())
                .toList();
        assertThat(mend.foods())
                .filteredOn(change -> !change.supplement() && !own.contains(change.food()))
                .allSatisfy(change -> {
                    assertThat(way).isEqualTo(RecipeMend.Way.ADDITIONS_ONLY);
                    assertThat(change.food()).startsWith("oil-");
                });
    }

    @Test
    void additionsOnlyLeaveTheProportionsOfThePot() {
        RecipeMend.Outcome.Planned mend = planned(RecipeMend.Way.ADDITIONS_ONLY, fair);
        assertThat(mend.foods())
                .filteredOn(change -> !change.supplement() && change.recipeGrams() > 50)
                .hasSize(7)
                .allSatisfy(change -> assertThat(change.grams() / change.recipeGrams())
                        .as(change.label())
                        .isCloseTo(mend.scale(), within(0.01 * mend.scale())));
        // Moss keeps at least the eggshell powder that the recipe gives it.
        Plan.DogPlan moss = mend.plan().dogs().get(1);
        assertThat(moss.additions())
                .anySatisfy(addition -> assertThat(addition.food()).isEqualTo("eggshell-powder"));
    }

    /** A mend with a table full of jars is near in grams, and yet nobody's. */
    @ParameterizedTest
    @EnumSource(RecipeMend.Way.class)
    void aMendGivesNoMoreSupplementsThanAPlan(RecipeMend.Way way) {
        Plan plan = planned(way, fair).plan();
        int kept = way == RecipeMend.Way.ADDITIONS_ONLY ? 1 : 0;
        assertThat(plan.pot().stream().filter(Plan.Ingredient::stirredIn).count())
                .isLessThanOrEqualTo(fair.household().shape().mostStirredIn());
        assertThat(plan.dogs())
                .allSatisfy(dog -> assertThat(dog.additions())
                        .hasSizeLessThanOrEqualTo(fair.household().shape().mostAdditions() + kept));
    }

    @Test
    void theSmallestChangeTakesAFoodOfThePantryRatherThanTurnThePotRound() throws ScenarioException {
        RecipeScenario rice = Recipes.forThreeAdults("""
                {'days': 7, 'foods': [
                  {'food': 'ground turkey, 93 % lean', 'amount': '6 lb'},
                  {'food': 'white rice, enriched, dry', 'amount': '3 lb'},
                  {'food': 'carrots', 'amount': '1 lb'}, {'food': 'canola oil', 'amount': '3 tbsp'}]}
                """);
        RecipeMend.Outcome.Planned mend = planned(RecipeMend.Way.SMALLEST_CHANGE, rice);
        assertThat(mend.distance()).isLessThan(0.15);
        List<String> pantry =
                rice.household().pantry().stream().map(item -> item.food().id()).toList();
        assertThat(mend.foods())
                .filteredOn(change -> !change.supplement() && change.recipeGrams() == 0)
                .hasSizeBetween(1, 2)
                .allSatisfy(change -> assertThat(pantry).contains(change.food()));
        // The pantry has prices for its foods, and none is guessed.
        assertThat(mend.foods())
                .filteredOn(change -> !change.supplement())
                .allSatisfy(change ->
                        assertThat(mend.guessed()).noneMatch(guess -> guess.startsWith(change.label() + ":")));
    }

    @Test
    void theSmallestChangeIsSmallerThanThatOfTheOtherWays() {
        RecipeMend.Outcome.Planned nearest = planned(RecipeMend.Way.SMALLEST_CHANGE, fair);
        RecipeMend.Outcome.Planned cheapest = planned(RecipeMend.Way.CHEAPEST_ALIKE, fair);
        assertThat(nearest.distance()).isLessThan(cheapest.distance());
    }

    @Test
    void aNarrowerBandIsNoCheaper() {
        RecipeMend.Outcome.Planned wide = planned(RecipeMend.Way.CHEAPEST_ALIKE, fair);
        RecipeMend.Outcome narrow = new RecipeMender(Recipes.KNOWLEDGE, new Search(), 0.15)
                .mend(RecipeMend.Way.CHEAPEST_ALIKE, fair, LIMITS)
                .outcome();
        assertThat(narrow)
                .isInstanceOfSatisfying(
                        RecipeMend.Outcome.Planned.class,
                        planned -> assertThat(planned.plan().cost().ofTheBatch())
                                .isGreaterThanOrEqualTo(
                                        wide.plan().cost().ofTheBatch() * (1 - 2 * LIMITS.relativeGap())));
    }

    @Test
    void theCheapestAlikeKeepsEveryShareWithinItsBand() {
        RecipeMend.Outcome.Planned mend = planned(RecipeMend.Way.CHEAPEST_ALIKE, fair);
        double all = mend.plan().pot().stream()
                .filter(ingredient -> !ingredient.stirredIn())
                .mapToDouble(Plan.Ingredient::cookedGrams)
                .sum();
        for (Recipe.Part part : fair.recipe().foods()) {
            double share = part.cookedGrams() / fair.recipe().cookedFoodGrams();
            assertThat(mend.plan().pot())
                    .filteredOn(ingredient ->
                            ingredient.food().equals(part.item().food().id()))
                    .singleElement()
                    .satisfies(ingredient -> assertThat(ingredient.cookedGrams() / all)
                            .as(ingredient.label())
                            .isBetween(share * (1 - BAND) * 0.995, share * (1 + BAND) * 1.005));
        }
    }

    /** A plan's own pot as a recipe. */
    private static RecipeScenario asRecipe(Plan plan, RecipeScenario of) throws ScenarioException {
        List<String> foods = new ArrayList<>();
        plan.pot()
                .forEach(ingredient -> foods.add(String.format(
                        Locale.ROOT, "{'food': '%s', 'amount': '%.3f g'}", ingredient.food(), ingredient.grams())));
        List<String> additions = new ArrayList<>();
        plan.dogs()
                .forEach(dog -> dog.additions()
                        .forEach(addition -> additions.add(String.format(
                                Locale.ROOT,
                                "{'food': '%s', 'dog': '%s', 'amount': '%.6f g'}",
                                addition.food(),
                                dog.name(),
                                addition.gramsInBatch() / plan.days()))));
        return Recipes.forThreeAdults("{'days': " + plan.days() + ", 'dogs': ['"
                + String.join(
                        "','",
                        of.recipe().dogs().stream().map(dog -> dog.name()).toList()) + "'], 'foods': ["
                + String.join(",", foods) + "], 'additions': [" + String.join(",", additions) + "]}");
    }

    @Test
    void theSmallestChangeOfAGoodRecipeIsNone() throws ScenarioException {
        RecipeScenario good =
                asRecipe(planned(RecipeMend.Way.SMALLEST_CHANGE, fair).plan(), fair);
        RecipeVerdict verdict = RecipeAudit.check(good.recipe(), good.household(), Recipes.KNOWLEDGE);
        assertThat(verdict.nutrition()).isEmpty();
        assertThat(verdict.safety()).isEmpty();
        RecipeMend.Outcome.Planned mend = planned(RecipeMend.Way.SMALLEST_CHANGE, good);
        assertThat(mend.scale()).isEqualTo(1);
        assertThat(mend.distance()).isLessThan(1e-3);
        assertThat(mend.foods())
                .allSatisfy(change ->
                        assertThat(change.grams()).as(change.label()).isCloseTo(change.recipeGrams(), within(1.0)));
    }

    @Test
    void aRecipeShortOfWhatNoAdditionBringsHasNoMendThatKeepsIt() throws ScenarioException {
        RecipeScenario rice = Recipes.forThreeAdults("""
                {'days': 7, 'foods': [{'food': 'white rice, enriched, dry', 'amount': '5 kg'}]}
                """);
        RecipeMend.Outcome outcome =
                MENDER.mend(RecipeMend.Way.ADDITIONS_ONLY, rice, LIMITS).outcome();
        assertThat(outcome).isInstanceOf(RecipeMend.Outcome.None.class);
        Clash clash = ((RecipeMend.Outcome.None) outcome).clash();
        if (clash == null) {
            throw new AssertionError("no clash is told");
        }
        assertThat(clash.irreducible()).isTrue();
        assertThat(clash.parts()).anySatisfy(part -> {
            assertThat(part.wish().kind()).isEqualTo(Wish.Kind.NUTRIENT_MINIMUM);
            assertThat(part.figures()).contains("can be reached");
        });
    }

    @Test
    void aFoodThatADogMustNotGetStandsInTheWayByName() throws ScenarioException {
        RecipeScenario scenario =
                Recipes.read("""
                {'dogs': [{'name': 'Moss', 'weight': '21 lb', 'age': '4 years', 'avoid': ['beef']}],
                 'pantry': [{'food': 'carrots', 'price': '$1.90'}]}
                """, "{'foods': [{'food': 'ground beef, 90 % lean', 'amount': '6 lb'}]}");
        for (RecipeMend.Way way : List.of(RecipeMend.Way.ADDITIONS_ONLY, RecipeMend.Way.CHEAPEST_ALIKE)) {
            RecipeMend.Outcome outcome = MENDER.mend(way, scenario, LIMITS).outcome();
            assertThat(outcome).isInstanceOf(RecipeMend.Outcome.None.class);
            assertThat(((RecipeMend.Outcome.None) outcome).reason())
                    .isEqualTo("Moss must not get ground beef, 90 % lean, which the recipe holds");
        }
    }

    @Test
    void aCapThatAFoodCarriesBindsEveryWay() throws ScenarioException {
        RecipeScenario scenario = Recipes.forThreeAdults(FAIR.replace("'300 g'", "'1500 g'"));
        RecipeMend.Outcome kept =
                MENDER.mend(RecipeMend.Way.ADDITIONS_ONLY, scenario, LIMITS).outcome();
        assertThat(kept).isInstanceOf(RecipeMend.Outcome.None.class);
        RecipeMend.Outcome.Planned nearest = planned(RecipeMend.Way.SMALLEST_CHANGE, scenario);
        assertThat(nearest.plan().pot())
                .filteredOn(ingredient -> ingredient.food().equals("chicken-liver-raw"))
                .allSatisfy(liver -> assertThat(liver.shareOfCookedMass()).isLessThanOrEqualTo(0.05));
    }

    @Test
    void aMendIsAuditedAsThePlanOfTheHouseholdThatItIsFor() {
        RecipeMend.Outcome.Planned mend = planned(RecipeMend.Way.SMALLEST_CHANGE, fair);
        // The same plan for a household whose pantry has no carrots is found out.
        Household other = fair.recipe().in(fair.household());
        Household without = other.withPantry(other.pantry().stream()
                .filter(item -> !item.food().label().equals("carrots"))
                .toList());
        assertThat(PlanAudit.check(mend.plan(), without, Recipes.KNOWLEDGE).passed())
                .isFalse();
    }
}
