package packpot.explain;

import java.util.ArrayList;
import java.util.List;
import packpot.audit.DogAudit;
import packpot.audit.RecipeAudit;
import packpot.audit.RecipeVerdict;
import packpot.dog.Dog;
import packpot.household.Avoidance;
import packpot.household.GuessedPrices;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.Recipe;
import packpot.household.RecipeScenario;
import packpot.ration.RecipeGoal;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/**
 * Mends a recipe in three ways, each solved and audited. A mend uses the recipe's foods and supplements: those of the
 * pantry, and only when they do not do, those of the catalogue, no more of them than a plan may have. Where nothing but
 * additions may change and supplements do not do, a little oil beside them; where the smallest change is not small, one or
 * two foods of the pantry. How the pot looks is the cook's own affair, so the household's shape does not bind otherwise;
 * caps that foods carry for the dog's sake do.
 */
public final class RecipeMender {
    /** For the clash of a way that has no plan. */
    private static final double CLASH_SECONDS = 10;

    private final Knowledge knowledge;
    private final Solver solver;
    private final GuessedPrices guesses;
    private final double band;

    /**
     * A mender.
     *
     * @param band how far a share may lie off the recipe's in the cheapest recipe of its character, as a share of it
     */
    public RecipeMender(Knowledge knowledge, Solver solver, double band) {
        this.knowledge = knowledge;
        this.solver = solver;
        this.guesses = GuessedPrices.load(knowledge);
        this.band = band;
    }

    /** All three ways, each with these limits. */
    public List<RecipeMend> all(RecipeScenario scenario, SolveLimits limits) {
        List<RecipeMend> mends = new ArrayList<>();
        for (RecipeMend.Way way : RecipeMend.Way.values()) {
            mends.add(mend(way, scenario, limits));
        }
        return mends;
    }

    /** One way. */
    public RecipeMend mend(RecipeMend.Way way, RecipeScenario scenario, SolveLimits limits) {
        Recipe recipe = scenario.recipe();
        List<String> avoided = avoided(recipe);
        if (!avoided.isEmpty() && way != RecipeMend.Way.SMALLEST_CHANGE) {
            return new RecipeMend(way, new RecipeMend.Outcome.None(String.join("; ", avoided), null));
        }
        RecipeVerdict verdict = RecipeAudit.check(recipe, scenario.household(), knowledge);
        double scale = verdict.good() ? 1 : scale(verdict);
        List<String> left = new ArrayList<>();
        RecipeHousehold households = new RecipeHousehold(knowledge, guesses);
        Household household = households.of(way, scenario, scale, verdict.good(), left);
        Household withShop = households.withShopSupplements(household);
        RecipeAttempts attempts = new RecipeAttempts(
                new Planner(knowledge, solver),
                limits,
                households,
                planned -> MendedRecipe.of(way, recipe, scale, planned, scenario.household(), left, guesses),
                this::none);
        return new RecipeMend(
                way,
                switch (way) {
                    case ADDITIONS_ONLY -> {
                        Household withOils = households.withOwnOils(withShop, scenario.household());
                        yield attempts.first(List.of(
                                new RecipeAttempts.Attempt(household, new RecipeGoal.AddOnly(recipe)),
                                new RecipeAttempts.Attempt(withShop, new RecipeGoal.AddOnly(recipe)),
                                new RecipeAttempts.Attempt(withOils, new RecipeGoal.AddOnly(recipe, true)),
                                new RecipeAttempts.Attempt(
                                        households.withShopOils(withOils), new RecipeGoal.AddOnly(recipe, true))));
                    }
                    case SMALLEST_CHANGE -> {
                        // The change is smallest only when it was sought among all supplements.
                        Household withFoods = households.withOwnFoods(withShop, scenario.household());
                        yield attempts.nearest(List.of(
                                new RecipeAttempts.Attempt(withShop, new RecipeGoal.Nearest(recipe, scale)),
                                new RecipeAttempts.Attempt(withFoods, new RecipeGoal.Nearest(recipe, scale, 1)),
                                new RecipeAttempts.Attempt(withFoods, new RecipeGoal.Nearest(recipe, scale, 2))));
                    }
                    case CHEAPEST_ALIKE ->
                        attempts.first(List.of(
                                new RecipeAttempts.Attempt(household, new RecipeGoal.SameShares(recipe, band)),
                                new RecipeAttempts.Attempt(withShop, new RecipeGoal.SameShares(recipe, band))));
                });
    }

    private RecipeMend.Outcome.None none(Planner.Result.NoPlan none, RecipeGoal goal) {
        if (!none.provedImpossible()) {
            return new RecipeMend.Outcome.None(
                    "no plan was found in the time given, and it is not proved that there is none", null);
        }
        return new RecipeMend.Outcome.None(
                "there is no such plan, even with every supplement of the catalogue",
                new WhyNot(knowledge, solver)
                        .firstClash(none.household(), goal, CLASH_SECONDS)
                        // Wishes that were not told apart in time explain nothing.
                        .filter(Clash::irreducible)
                        .orElse(null));
    }

    private static List<String> avoided(Recipe recipe) {
        List<String> sentences = new ArrayList<>();
        for (Dog dog : recipe.dogs()) {
            for (Recipe.Part part : recipe.foods()) {
                if (Avoidance.avoids(dog, part.item().food())) {
                    sentences.add(
                            dog.name() + " must not get " + part.item().food().label() + ", which the recipe holds");
                }
            }
            for (Recipe.Addition addition : recipe.additions()) {
                if (addition.dog().equals(dog.name())
                        && Avoidance.avoids(dog, addition.item().food())) {
                    sentences.add(dog.name() + " must not get "
                            + addition.item().food().label() + ", which the recipe adds");
                }
            }
        }
        return sentences;
    }

    /** What the recipe must be multiplied with to bring the energy that is needed. */
    private static double scale(RecipeVerdict verdict) {
        double target =
                verdict.dogs().stream().mapToDouble(DogAudit::targetKcalPerDay).sum();
        double got = verdict.dogs().stream().mapToDouble(DogAudit::kcalPerDay).sum();
        return target / got;
    }
}
