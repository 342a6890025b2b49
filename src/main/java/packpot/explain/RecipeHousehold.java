package packpot.explain;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import packpot.food.Food;
import packpot.food.FoodGroup;
import packpot.food.Place;
import packpot.food.Supplement;
import packpot.food.UnsafeFoods;
import packpot.household.GuessedPrices;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.household.Recipe;
import packpot.household.RecipeScenario;
import packpot.household.Rules;
import packpot.household.Shape;

/** The household for which a recipe is mended: how the pot looks is the cook's own affair, caps of foods are not. */
final class RecipeHousehold {
    private static final int ANY_NUMBER = 40;
    private static final Set<FoodGroup> OILS = Set.of(FoodGroup.OIL);
    /** What a recipe has must not be missed for the last digit, nor for the rounding of the kitchen. */
    private static final double ROOM = 1.02;
    /** Nearly what the audit allows; the rest is for rounding. */
    private static final double GOOD_ENERGY_BAND = 0.009;
    /** Below this a whole gram is more than a thousandth of the batch. */
    private static final double SMALL_BATCH_GRAMS = 2000;

    private final Knowledge knowledge;
    private final GuessedPrices guesses;

    RecipeHousehold(Knowledge knowledge, GuessedPrices guesses) {
        this.knowledge = knowledge;
        this.guesses = guesses;
    }

    /**
     * The household that cooks the recipe, with as much of its own wishes as bind this way.
     *
     * @param scale what the recipe must be multiplied with to bring the energy that is needed
     * @param goodAsItStands whether the recipe needs no mend
     * @param left told the limits of the household's shape that do not hold here, in sentences
     */
    Household of(RecipeMend.Way way, RecipeScenario scenario, double scale, boolean goodAsItStands, List<String> left) {
        Recipe recipe = scenario.recipe();
        Household household = scenario.household();
        Shape shape = household.shape();
        return recipe.in(household)
                .withShape(
                        way == RecipeMend.Way.CHEAPEST_ALIKE
                                ? asTheRecipeKeeps(way, shape, recipe, left)
                                : free(way, shape, recipe))
                .withRules(rules(
                        household.rules(),
                        scale * recipe.cookedGrams(),
                        way == RecipeMend.Way.SMALLEST_CHANGE && goodAsItStands));
    }

    /** A recipe that is good as it stands need not keep the margin, nor hit the energy better than it does. */
    private static Rules rules(Rules rules, double cookedGrams, boolean goodAsItStands) {
        double step = cookedGrams < SMALL_BATCH_GRAMS ? 0.1 : 1;
        return rules.withMargin(goodAsItStands ? 0 : rules.margin())
                .withEnergyBand(goodAsItStands ? GOOD_ENERGY_BAND : rules.energyBand())
                .withRounding(step);
    }

    /** No shape at all, but that oil as an addition stays a little, together with the recipe's own. */
    private static Shape free(RecipeMend.Way way, Shape shape, Recipe recipe) {
        List<Shape.Band> bands = shape.bands().stream()
                .map(band -> new Shape.Band(
                        band.key(),
                        band.label(),
                        band.groups(),
                        0,
                        band.groups().equals(OILS) ? Math.max(band.most(), ROOM * share(recipe, band)) : 1,
                        band.usual()))
                .toList();
        return shape(way, shape, recipe, bands, 1);
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
    private static Shape asTheRecipeKeeps(RecipeMend.Way way, Shape shape, Recipe recipe, List<String> left) {
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
        return shape(way, shape, recipe, bands, oneFood ? shape.oneFoodMost() : 1);
    }

    /** Where the cook's own stay whatever becomes of the rest, they do not count. */
    private static int atMost(RecipeMend.Way way, int most, int own) {
        return way == RecipeMend.Way.ADDITIONS_ONLY ? most + own : Math.max(most, own);
    }

    /** Supplements are as few as in any plan, or as many as the cook gives already. */
    private static Shape shape(
            RecipeMend.Way way, Shape shape, Recipe recipe, List<Shape.Band> bands, double oneFoodMost) {
        int stirredIn = (int) recipe.foods().stream()
                .filter(part -> part.item().food().isSupplement())
                .count();
        int given = recipe.dogs().stream()
                .mapToInt(dog -> (int) recipe.additions().stream()
                        .filter(addition -> addition.dog().equals(dog.name()))
                        .count())
                .max()
                .orElse(0);
        return shape.withBands(bands)
                .withOneFoodMost(oneFoodMost)
                .withFewestFoods(0)
                .withMostFoods(ANY_NUMBER)
                .withMostStirredIn(atMost(way, shape.mostStirredIn(), stirredIn))
                .withMostAdditions(
                        atMost(way, shape.mostAdditions(), given),
                        atMost(way, shape.mostAdditionsSpecialNeeds(), given))
                .withSmallestUseful(0, 0);
    }

    /** With as many supplements as there are, to see whether that is what a mend lacks. */
    Household withAnyNumberOfSupplements(Household household) {
        return household.withShape(
                household.shape().withMostStirredIn(ANY_NUMBER).withMostAdditions(ANY_NUMBER, ANY_NUMBER));
    }

    /** With the oils of the pantry, which count as additions where nothing else does. */
    Household withOwnOils(Household mends, Household household) {
        return withFoods(mends, household, OILS);
    }

    /** With the pantry's own foods, of which one may do what supplements cannot. */
    Household withOwnFoods(Household mends, Household household) {
        return withFoods(mends, household, EnumSet.complementOf(EnumSet.of(FoodGroup.SUPPLEMENT)));
    }

    private static Household withFoods(Household mends, Household household, Set<FoodGroup> groups) {
        List<PantryItem> pantry = new ArrayList<>(mends.pantry());
        household.pantry().stream()
                .filter(item -> groups.contains(item.food().group()) && !has(pantry, item.food()))
                .filter(item -> household.avoiders(item).isEmpty())
                .forEach(item -> pantry.add(item.withoutWishes()));
        return mends.withPantry(pantry);
    }

    /** With every supplement of the catalogue at a guessed price. */
    Household withShopSupplements(Household household) {
        return withShop(household, food -> {
            Supplement supplement = food.supplement();
            return supplement != null && supplement.place() != Place.NONE;
        });
    }

    /** With every oil that shops sell, at a guessed price. */
    Household withShopOils(Household household) {
        return withShop(
                household,
                food -> OILS.contains(food.group()) && knowledge.measures().usualPack(food) != null);
    }

    private Household withShop(Household household, Predicate<Food> offered) {
        List<PantryItem> pantry = new ArrayList<>(household.pantry());
        for (Food food : knowledge.foods().all()) {
            boolean harms = knowledge.unsafeFoods().inName(food.label() + " / " + food.name()).stream()
                    .anyMatch(unsafe -> unsafe.rule() == UnsafeFoods.Rule.BLOCK);
            if (offered.test(food) && !harms && !has(pantry, food)) {
                double onHand = pantry.stream()
                        .filter(item -> item.food().id().equals(food.id()))
                        .mapToDouble(PantryItem::onHandGrams)
                        .sum();
                pantry.removeIf(item -> item.food().id().equals(food.id()));
                Supplement supplement = food.supplement();
                Place place = supplement == null ? Place.POT : supplement.place();
                pantry.add(guesses.item(food, knowledge.preparations().usual(food), place)
                        .withOnHand(onHand));
            }
        }
        return household.withPantry(pantry);
    }

    private static boolean has(List<PantryItem> pantry, Food food) {
        return pantry.stream().anyMatch(item -> item.food().id().equals(food.id()) && !item.outOfStock());
    }
}
