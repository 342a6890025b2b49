package packpot.explain;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import packpot.audit.DogAudit;
import packpot.audit.RecipeAudit;
import packpot.audit.RecipeVerdict;
import packpot.dog.Dog;
import packpot.food.Food;
import packpot.food.FoodGroup;
import packpot.food.Place;
import packpot.food.Supplement;
import packpot.food.UnsafeFoods;
import packpot.household.Avoidance;
import packpot.household.GuessedPrices;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.household.Recipe;
import packpot.household.RecipeScenario;
import packpot.household.Rules;
import packpot.household.Shape;
import packpot.plan.Plan;
import packpot.ration.RecipeGoal;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/**
 * Mends a recipe in three ways, each solved and audited. A mend uses the recipe's foods and supplements, and where nothing
 * but additions may change a little oil beside them: those of the pantry, and only when they do not do, those of the
 * catalogue. How the pot looks is the cook's own
 * affair, so the household's shape does not bind; caps that foods carry for the dog's sake do.
 */
public final class RecipeMender {
    private static final int ANY_NUMBER = 40;
    private static final Set<FoodGroup> OILS = Set.of(FoodGroup.OIL);
    /** What a recipe has must not be missed for the last digit, nor for the rounding of the kitchen. */
    private static final double ROOM = 1.02;

    /** For the clash of a way that has no plan. */
    private static final double CLASH_SECONDS = 10;

    /** Nearly what the audit allows; the rest is for rounding. */
    private static final double GOOD_ENERGY_BAND = 0.009;
    /** Below this a whole gram is more than a thousandth of the batch. */
    private static final double SMALL_BATCH_GRAMS = 2000;

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
    public List<Mend> all(RecipeScenario scenario, SolveLimits limits) {
        List<Mend> mends = new ArrayList<>();
        for (Mend.Way way : Mend.Way.values()) {
            mends.add(mend(way, scenario, limits));
        }
        return mends;
    }

    /** One way. */
    public Mend mend(Mend.Way way, RecipeScenario scenario, SolveLimits limits) {
        Recipe recipe = scenario.recipe();
        List<String> avoided = avoided(recipe);
        if (!avoided.isEmpty() && way != Mend.Way.SMALLEST_CHANGE) {
            return new Mend(way, new Mend.Outcome.None(String.join("; ", avoided), null));
        }
        RecipeVerdict verdict = RecipeAudit.check(recipe, scenario.household(), knowledge);
        double scale = verdict.good() ? 1 : scale(verdict);
        RecipeGoal goal = switch (way) {
            case ADDITIONS_ONLY -> new RecipeGoal.AddOnly(recipe);
            case SMALLEST_CHANGE -> new RecipeGoal.Nearest(recipe, scale);
            case CHEAPEST_ALIKE -> new RecipeGoal.SameShares(recipe, band);
        };
        List<String> left = new ArrayList<>();
        Shape shape = scenario.household().shape();
        Household household = withOwnOils(way, recipe.in(scenario.household()), scenario.household())
                .withShape(way == Mend.Way.CHEAPEST_ALIKE ? asTheRecipeKeeps(shape, recipe, left) : free(shape, recipe))
                .withRules(rules(
                        scenario.household().rules(),
                        scale * recipe.cookedGrams(),
                        way == Mend.Way.SMALLEST_CHANGE && verdict.good()));
        Planner planner = new Planner(knowledge, solver);
        // The change is smallest only when it was sought among all supplements; a cost with those that are there first.
        Planner.Result result = planner.plan(
                way == Mend.Way.SMALLEST_CHANGE ? withShopAdditions(way, household) : household, limits, goal);
        if (result instanceof Planner.Result.NoPlan && way != Mend.Way.SMALLEST_CHANGE) {
            result = planner.plan(withShopAdditions(way, household), limits, goal);
        }
        if (result instanceof Planner.Result.NoPlan none) {
            return new Mend(way, none(none, goal));
        }
        Planner.Result.Planned planned = (Planner.Result.Planned) result;
        if (!planned.verdict().passed()) {
            return new Mend(
                    way,
                    new Mend.Outcome.None(
                            "a plan was found, but rounded to what a kitchen measures it fails the check ("
                                    + planned.verdict().findings().get(0) + ")",
                            null));
        }
        return new Mend(way, planned(way, recipe, scale, planned, household, left));
    }

    private Mend.Outcome.None none(Planner.Result.NoPlan none, RecipeGoal goal) {
        if (!none.provedImpossible()) {
            return new Mend.Outcome.None(
                    "no plan was found in the time given, and it is not proved that there is none", null);
        }
        return new Mend.Outcome.None(
                "there is no such plan, even with every supplement of the catalogue",
                new WhyNot(knowledge, solver)
                        .firstClash(none.household(), goal, CLASH_SECONDS)
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

    /** A recipe that is good as it stands need not keep the margin, nor hit the energy better than it does. */
    private static Rules rules(Rules rules, double cookedGrams, boolean goodAsItStands) {
        double step = cookedGrams < SMALL_BATCH_GRAMS ? 0.1 : 1;
        return new Rules(
                goodAsItStands ? 0 : rules.margin(),
                goodAsItStands ? GOOD_ENERGY_BAND : rules.energyBand(),
                rules.roundingReserve(),
                rules.sodiumMostGramsPer1000Kcal(),
                rules.leftoverWorthShare(),
                step,
                step);
    }

    /** No shape at all, but that oil as an addition stays a little, together with the recipe's own. */
    private static Shape free(Shape shape, Recipe recipe) {
        List<Shape.Band> bands = shape.bands().stream()
                .map(band -> new Shape.Band(
                        band.key(),
                        band.label(),
                        band.groups(),
                        0,
                        band.groups().equals(OILS) ? Math.max(band.most(), ROOM * share(recipe, band)) : 1,
                        band.usual()))
                .toList();
        return shape(shape, bands, 1);
    }

    private static double share(Recipe recipe, Shape.Band band) {
        return recipe.foods().stream()
                        .filter(part ->
                                band.groups().contains(part.item().food().group()))
                        .mapToDouble(Recipe.Part::cookedGrams)
                        .sum()
                / recipe.cookedGrams();
    }

    /** Of the household's shape, what the recipe itself keeps; a mend need not be better than the cook's own. */
    private static Shape asTheRecipeKeeps(Shape shape, Recipe recipe, List<String> left) {
        List<Shape.Band> bands = new ArrayList<>();
        for (Shape.Band band : shape.bands()) {
            double share = share(recipe, band);
            boolean least = share >= band.least();
            boolean most = share <= band.most();
            bands.add(new Shape.Band(
                    band.key(),
                    band.label(),
                    band.groups(),
                    least ? band.least() : 0,
                    most ? band.most() : 1,
                    band.usual()));
            if (!least || !most) {
                left.add(band.label() + (least ? " at most " : " at least ")
                        + Math.round(100 * (least ? band.most() : band.least())) + " % of cooked mass");
            }
        }
        boolean oneFood = recipe.foods().stream()
                .allMatch(part -> part.item().food().isSupplement()
                        || part.cookedGrams() <= shape.oneFoodMost() * recipe.cookedGrams());
        if (!oneFood) {
            left.add("one food at most " + Math.round(100 * shape.oneFoodMost()) + " % of cooked mass");
        }
        return shape(shape, bands, oneFood ? shape.oneFoodMost() : 1);
    }

    private static Shape shape(Shape shape, List<Shape.Band> bands, double oneFoodMost) {
        return new Shape(
                bands,
                oneFoodMost,
                0,
                ANY_NUMBER,
                ANY_NUMBER,
                ANY_NUMBER,
                ANY_NUMBER,
                shape.additionsMostMassShare(),
                shape.additionsMostEnergyShare(),
                0,
                0,
                shape.minorGroups(),
                shape.usualKcalPerGram());
    }

    /** A spoon of oil is an addition like any other, where nothing but additions may change. */
    private static Household withOwnOils(Mend.Way way, Household mends, Household household) {
        if (way != Mend.Way.ADDITIONS_ONLY) {
            return mends;
        }
        List<PantryItem> pantry = new ArrayList<>(mends.pantry());
        household.pantry().stream()
                .filter(item -> OILS.contains(item.food().group()) && !has(pantry, item.food()))
                .forEach(item -> pantry.add(item.withoutWishes()));
        return mends.withPantry(pantry);
    }

    private Household withShopAdditions(Mend.Way way, Household household) {
        List<PantryItem> pantry = new ArrayList<>(household.pantry());
        for (Food food : knowledge.foods().all()) {
            Supplement supplement = food.supplement();
            boolean asSupplement = supplement != null && supplement.place() != Place.NONE;
            boolean asOil = way == Mend.Way.ADDITIONS_ONLY
                    && OILS.contains(food.group())
                    && knowledge.measures().usualPack(food) != null;
            boolean harms = knowledge.unsafeFoods().inName(food.label() + " / " + food.name()).stream()
                    .anyMatch(unsafe -> unsafe.rule() == UnsafeFoods.Rule.BLOCK);
            if ((asSupplement || asOil) && !harms && !has(pantry, food)) {
                pantry.removeIf(item -> item.food().id().equals(food.id()));
                Place place = supplement == null ? Place.POT : supplement.place();
                pantry.add(guesses.item(food, knowledge.preparations().usual(food), place));
            }
        }
        return household.withPantry(pantry);
    }

    private static boolean has(List<PantryItem> pantry, Food food) {
        return pantry.stream().anyMatch(item -> item.food().id().equals(food.id()) && !item.outOfStock());
    }

    private Mend.Outcome.Planned planned(
            Mend.Way way,
            Recipe recipe,
            double scale,
            Planner.Result.Planned planned,
            Household before,
            List<String> left) {
        Plan plan = planned.plan();
        Set<String> own =
                recipe.foods().stream().map(part -> part.item().food().id()).collect(Collectors.toSet());
        double cooked = plan.pot().stream()
                .filter(ingredient -> !ingredient.stirredIn() && own.contains(ingredient.food()))
                .mapToDouble(Plan.Ingredient::cookedGrams)
                .sum();
        double shown = way == Mend.Way.SMALLEST_CHANGE ? scale : cooked / recipe.cookedFoodGrams();
        List<Mend.Change> foods = changes(recipe, plan, shown);
        double distance = 0;
        for (int i = 0; i < recipe.foods().size(); i++) {
            Mend.Change change = foods.get(i);
            if (!change.supplement()) {
                distance += recipe.foods().get(i).cookedGrams() / recipe.cookedGrams() * Math.abs(change.relative());
            }
        }
        Map<String, PantryItem> items = new HashMap<>();
        planned.household().pantry().forEach(item -> items.put(item.food().id(), item));
        Set<String> owned = before.pantry().stream()
                .filter(item -> !item.outOfStock())
                .map(item -> item.food().id())
                .collect(Collectors.toSet());
        List<String> guessed = new ArrayList<>();
        double cost = 0;
        for (Plan.Purchase purchase : plan.shopping()) {
            PantryItem item = items.get(purchase.food());
            if (item == null) {
                throw new IllegalStateException(purchase.food() + " is not in the pantry");
            }
            cost += purchase.usedGrams() * item.pricePerGram();
            if (!owned.contains(purchase.food())) {
                guessed.add(guesses.words(item, plan.currency()));
            }
        }
        return new Mend.Outcome.Planned(
                plan, planned.verdict(), shown, distance, foods, guessed, left, cost / plan.days());
    }

    private static List<Mend.Change> changes(Recipe recipe, Plan plan, double scale) {
        Map<String, Plan.Ingredient> pot = new HashMap<>();
        plan.pot().forEach(ingredient -> pot.put(ingredient.food(), ingredient));
        List<Mend.Change> changes = new ArrayList<>();
        for (Recipe.Part part : recipe.foods()) {
            Food food = part.item().food();
            Plan.Ingredient now = pot.remove(food.id());
            changes.add(new Mend.Change(
                    food.id(),
                    food.label(),
                    food.isSupplement(),
                    part.grams(),
                    part.grams() * scale,
                    now == null ? 0 : now.grams()));
        }
        plan.pot().stream()
                .filter(ingredient -> pot.containsKey(ingredient.food()))
                .forEach(ingredient -> changes.add(new Mend.Change(
                        ingredient.food(), ingredient.label(), ingredient.stirredIn(), 0, 0, ingredient.grams())));
        return changes;
    }
}
