package packpot.ration;

import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.food.FoodGroup;
import packpot.food.Supplement;
import packpot.household.PantryItem;
import packpot.household.Recipe;
import packpot.household.Wish;
import packpot.needs.DogNeed;
import packpot.solver.Expression;
import packpot.solver.LinearModel.Variable;
import packpot.units.Show;

/**
 * How near the pot keeps to a recipe with r[i] g of food i, cooked c[i] = yield[i] r[i].
 *
 * <p>Proportions kept: x[i] = s r[i] with one scale s &ge; 0 for all foods; of what the recipe gives of a supplement, at
 * least the whole measures in it stay; where oil may be more than s r[i], the excess counts as more than it can save.
 *
 * <p>Nearest: with a given scale S, x[i] - p[i] + n[i] = S r[i], and &Sigma; w[i] (p[i] + n[i]) / (S r[i]) is as small as
 * can be, where w[i] is the food's share of the recipe's cooked mass, never below a floor so that spoonfuls count;
 * supplements and additions are not charged for the part of a measure by which they must be rounded. A food outside the
 * recipe counts by its share of the cooked pot, and it and every supplement that the recipe has not count a little for
 * being new.
 *
 * <p>Character: for every food (1 - b) c[i] / &Sigma; c &le; yield[i] x[i] / &Sigma; yield x &le; (1 + b) c[i] / &Sigma;
 * c.
 */
final class RecipeRows {
    /** A pinch of salt doubled counts like a fiftieth of the pot. */
    static final double LEAST_WEIGHT = 0.02;
    /** The distance is counted in percent; all of the cost together weighs as much as a tenth of one. */
    private static final double DISTANCE_WEIGHT = 100;

    private static final double COST_WEIGHT = 0.1;
    /** In percent of the pot; one more jar on the table is worth changing the amounts by this. */
    private static final double NEW_SUPPLEMENT = 0.5;

    private static final double NEW_FOOD = 2;
    /** Times the price of a gram of the pot; a gram of oil saves about seven of them. */
    private static final double OIL_DEARER = 20;

    private static final double WHOLE = 1e-6;

    private RecipeRows() {}

    /** Adds the rows; {@code cost} is what the model makes least so far. */
    static void add(Build build, RecipeGoal goal, Expression cost) {
        if (goal instanceof RecipeGoal.AddOnly add) {
            keepProportions(build, add.recipe(), add.moreOil());
        } else if (goal instanceof RecipeGoal.Nearest nearest) {
            distance(build, nearest, cost);
        } else if (goal instanceof RecipeGoal.SameShares shares) {
            sameShares(build, shares);
        }
    }

    /** The weight of a food's relative change. */
    static double weight(Recipe recipe, Recipe.Part part) {
        return Math.max(LEAST_WEIGHT, part.cookedGrams() / recipe.cookedGrams());
    }

    private static @Nullable Prepared prepared(Build build, PantryItem item) {
        return build.potGrams.keySet().stream()
                .filter(food -> food.item().equals(item))
                .findFirst()
                .orElse(null);
    }

    private static @Nullable Variable grams(Build build, PantryItem item) {
        Prepared food = prepared(build, item);
        return food == null ? null : build.potGrams.get(food);
    }

    private static void keepProportions(Build build, Recipe recipe, boolean moreOil) {
        Variable scale = build.model.variable("scale of the recipe", 0, mostScale(build, recipe));
        for (Recipe.Part part : recipe.foods()) {
            Variable grams = grams(build, part.item());
            if (grams == null) {
                continue;
            }
            String label = part.item().food().label();
            Supplement supplement = part.item().food().supplement();
            String words = label + " at its part of the recipe";
            Expression off = new Expression().add(1, grams).add(-part.grams(), scale);
            if (moreOil && part.item().food().group() == FoodGroup.OIL && supplement == null) {
                build.model.atLeast(words, off, 0, wish(label, words, part.grams()));
                build.model.objective().add(oilPerGram(recipe), off);
            } else if (supplement == null) {
                build.model.equal(words, off, 0, wish(label, words, part.grams()));
            } else {
                build.model.atLeast(words, off, -supplement.potStepGrams(), wish(label, words, part.grams()));
            }
        }
        build.potGrams.forEach((food, grams) -> {
            boolean own = recipe.foods().stream().anyMatch(part -> part.item().equals(food.item()));
            if (!own && !food.item().food().isSupplement()) {
                build.model.objective().add(oilPerGram(recipe), grams);
            }
        });
        forAdditions(build, recipe, (addition, count, doses) -> {
            double least = Math.floor(doses + WHOLE);
            String label = addition.item().food().label();
            String words = addition.dog() + ": " + label + " as the recipe gives it";
            if (least > 0) {
                build.model.atLeast(
                        words,
                        new Expression().add(1, count),
                        least,
                        new Wish(Wish.Kind.RECIPE, addition.dog(), label, words, least));
            }
        });
    }

    /** Its energy is cheaper than the recipe's, so without this the pot would be filled up with oil. */
    private static double oilPerGram(Recipe recipe) {
        double cost = recipe.foods().stream()
                .mapToDouble(part -> part.grams() * part.item().pricePerGram())
                .sum();
        return OIL_DEARER * cost / recipe.cookedGrams();
    }

    private static double mostScale(Build build, Recipe recipe) {
        return 2 * build.mostCookedGrams() / recipe.cookedGrams();
    }

    private static void distance(Build build, RecipeGoal.Nearest goal, Expression cost) {
        Recipe recipe = goal.recipe();
        Expression objective = build.model.objective();
        double usualCost = 0;
        for (Recipe.Part part : recipe.foods()) {
            Variable grams = grams(build, part.item());
            double wanted = goal.scale() * part.grams();
            usualCost += wanted * part.item().pricePerGram();
            if (grams == null) {
                continue;
            }
            Supplement supplement = part.item().food().supplement();
            double free = supplement == null ? 0 : supplement.potStepGrams() / 2;
            String label = part.item().food().label();
            objective.add(
                    DISTANCE_WEIGHT * weight(recipe, part) / wanted, off(build, label, grams, wanted, free, wanted));
        }
        forAdditions(build, recipe, (addition, count, doses) -> {
            String name = addition.item().food().label() + " for " + addition.dog();
            objective.add(DISTANCE_WEIGHT * LEAST_WEIGHT / doses, off(build, name, count, doses, 0.5, doses));
        });
        news(build, goal, objective);
        // The cost stands in the objective already, with weight 1.
        objective.add(COST_WEIGHT / Math.max(usualCost, 1e-6) - 1, cost);
    }

    /** What the recipe has not: a mend with twenty jars is near in grams and yet nobody's. */
    private static void news(Build build, RecipeGoal.Nearest goal, Expression objective) {
        Recipe recipe = goal.recipe();
        Expression foods = new Expression();
        build.inPot.forEach((food, used) -> {
            if (recipe.foods().stream().anyMatch(part -> part.item().equals(food.item()))) {
                return;
            }
            if (food.item().food().isSupplement()) {
                objective.add(NEW_SUPPLEMENT, used);
                return;
            }
            objective.add(NEW_FOOD, used);
            foods.add(1, used);
            Variable grams = build.potGrams.get(food);
            if (grams != null) {
                double share = food.cookedPerGram() / (goal.scale() * recipe.cookedGrams());
                objective.add(DISTANCE_WEIGHT * share, grams);
            }
        });
        if (!foods.isEmpty()) {
            String words = "foods that the recipe has not: at most " + goal.newFoods();
            build.model.atMost(
                    words,
                    foods,
                    goal.newFoods(),
                    new Wish(Wish.Kind.INGREDIENTS, "", "foods outside the recipe", words, 1));
        }
        build.given.forEach(given -> objective.add(NEW_SUPPLEMENT, given));
    }

    /** How far a variable lies off what is wanted, less what is free. */
    private static Expression off(
            Build build, String name, Variable variable, double wanted, double free, double size) {
        Variable more = build.model.variable(name + " more than the recipe", 0, Double.POSITIVE_INFINITY);
        Variable less = build.model.variable(name + " less than the recipe", 0, size);
        build.model.row(
                name + " beside the recipe",
                new Expression().add(1, variable).add(-1, more).add(1, less),
                wanted - free,
                wanted + free,
                null);
        return new Expression().add(1, more).add(1, less);
    }

    private static void sameShares(Build build, RecipeGoal.SameShares goal) {
        Recipe recipe = goal.recipe();
        double reserve = build.rules().roundingReserve();
        Expression cooked = new Expression();
        for (Recipe.Part part : recipe.foods()) {
            Prepared food = prepared(build, part.item());
            Variable grams = grams(build, part.item());
            if (food != null && grams != null && !part.item().food().isSupplement()) {
                cooked.add(food.cookedPerGram(), grams);
            }
        }
        for (Recipe.Part part : recipe.foods()) {
            Prepared food = prepared(build, part.item());
            Variable grams = grams(build, part.item());
            if (food == null || grams == null || part.item().food().isSupplement()) {
                continue;
            }
            double share = part.cookedGrams() / recipe.cookedFoodGrams();
            double least = share * Math.max(0, 1 - goal.band());
            double most = share * (1 + goal.band());
            String label = part.item().food().label();
            double size = share * build.usualCookedGrams();
            String atLeast =
                    label + " at least " + Show.number(100 * least) + " % of the foods, as the recipe's band has it";
            build.model.atLeast(
                    atLeast,
                    new Expression().add(food.cookedPerGram(), grams).add(-least * (1 + reserve), cooked),
                    0,
                    wish(label, atLeast, size));
            if (most < 1) {
                String atMost =
                        label + " at most " + Show.number(100 * most) + " % of the foods, as the recipe's band has it";
                build.model.atMost(
                        atMost,
                        new Expression().add(food.cookedPerGram(), grams).add(-most * (1 - reserve), cooked),
                        0,
                        wish(label, atMost, size));
            }
        }
    }

    /** Something to do with the doses that the recipe gives of an addition over the batch. */
    @FunctionalInterface
    private interface DosesAction {
        void with(Recipe.Addition addition, Variable count, double doses);
    }

    private static void forAdditions(Build build, Recipe recipe, DosesAction action) {
        for (Recipe.Addition addition : recipe.additions()) {
            for (DogNeed dog : build.needs.dogs()) {
                if (!dog.dog().name().equals(addition.dog())) {
                    continue;
                }
                for (Map.Entry<Prepared, Variable> given : build.dosesOf(dog).entrySet()) {
                    if (given.getKey().item().equals(addition.item())) {
                        double doses = addition.gramsPerDay() * recipe.days() / build.doseGrams(given.getKey(), dog);
                        action.with(addition, given.getValue(), doses);
                    }
                }
            }
        }
    }

    private static Wish wish(String label, String words, double size) {
        return new Wish(Wish.Kind.RECIPE, "", label, words, Math.max(1, size));
    }
}
