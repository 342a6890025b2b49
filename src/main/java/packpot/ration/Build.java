package packpot.ration;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.food.Nutrient;
import packpot.food.Supplement;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.household.Rules;
import packpot.household.Wish;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.solver.Expression;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;

/**
 * A model in the making: the data, the model, and the variables that families of constraints share. All amounts are
 * for the whole batch: grams, kcal, ml.
 */
final class Build {
    /** A batch holds at least this many kcal per cooked gram, and at most the second figure; bounds the big numbers. */
    private static final double THINNEST_KCAL_PER_GRAM = 0.5;

    final Household household;
    final Knowledge knowledge;
    final Needs needs;
    final Map<DogNeed, Double> shares;
    final LinearModel<Wish> model = new LinearModel<>();
    final List<Prepared> potFoods = new ArrayList<>();
    final List<Prepared> bowlFoods = new ArrayList<>();
    /** Edible grams of each food into the pot. */
    final Map<Prepared, Variable> potGrams = new LinkedHashMap<>();
    /** Whether a food is in the pot at all. */
    final Map<Prepared, Variable> inPot = new LinkedHashMap<>();
    /** Doses of each addition to each dog's bowls over the whole batch. */
    final Map<DogNeed, Map<Prepared, Variable>> doses = new LinkedHashMap<>();
    /** Whether an addition is given at all. */
    final List<Variable> given = new ArrayList<>();
    /** Edible grams that come out of bought packs, and the packs. */
    final Map<Prepared, Variable> boughtGrams = new LinkedHashMap<>();

    final Map<Prepared, Variable> packs = new LinkedHashMap<>();
    /** The rows that keep grams of a food out of a pot that does not use it. */
    final Map<Prepared, Row<Wish>> onlyWhenUsed = new LinkedHashMap<>();
    /** The row of the budget, when there is one. */
    @Nullable
    Row<Wish> budget;
    /** What each food adds to the cost of the batch. */
    final Map<PantryItem, Expression> costs = new LinkedHashMap<>();
    /** What each food adds to what is paid at the till, which the budget is about. */
    final Map<PantryItem, Expression> paid = new LinkedHashMap<>();
    /** The limits that can be moved, each in its own unit. */
    final List<Lever> levers = new ArrayList<>();
    /** kcal of each dog. */
    final Map<DogNeed, Variable> dogKcal = new LinkedHashMap<>();

    final Variable potKcal;
    final Variable cookedGrams;
    private final Map<String, Variable> potNutrients = new HashMap<>();

    /**
     * Whether every limit that a person would name stands as a row with its wish. Otherwise some of them are bounds of
     * variables, which solve faster.
     */
    final boolean limitsAsRows;

    Build(Household household, Knowledge knowledge, Needs needs, Map<DogNeed, Double> shares) {
        this(household, knowledge, needs, shares, false);
    }

    Build(Household household, Knowledge knowledge, Needs needs, Map<DogNeed, Double> shares, boolean limitsAsRows) {
        this.limitsAsRows = limitsAsRows;
        this.household = household;
        this.knowledge = knowledge;
        this.needs = needs;
        this.shares = shares;
        for (PantryItem item : household.pantry()) {
            Prepared prepared = new Prepared(item, household, knowledge);
            if (household.mayGoIntoPot(item) || (limitsAsRows && item.place().pot())) {
                potFoods.add(prepared);
            }
            if (item.place().bowl() && item.food().isSupplement()) {
                bowlFoods.add(prepared);
            }
        }
        this.potKcal =
                model.variable("kcal of the pot", 0, limitsAsRows ? Double.POSITIVE_INFINITY : 1.1 * batchKcal());
        this.cookedGrams = model.variable("cooked grams", 0, roomGrams());
    }

    Rules rules() {
        return household.rules();
    }

    int days() {
        return household.kitchen().days();
    }

    /** kcal that the whole batch must bring. */
    double batchKcal() {
        return needs.kcalPerBatch();
    }

    double mostCookedGrams() {
        return batchKcal() / THINNEST_KCAL_PER_GRAM;
    }

    /** More cooked mass than any batch can have, whichever of its limits are lifted. */
    double roomGrams() {
        return limitsAsRows
                ? 2 * mostCookedGrams()
                        + household.pantry().stream()
                                .mapToDouble(item ->
                                        item.mustUseGrams() * item.preparation().yieldCookedOverRaw())
                                .sum()
                : mostCookedGrams();
    }

    /** Cooked mass that a batch of this energy usually has. */
    double usualCookedGrams() {
        return batchKcal() / household.shape().usualKcalPerGram();
    }

    double share(DogNeed dog) {
        return shares.getOrDefault(dog, 0.0);
    }

    /** Grams of one dose of a bowl addition over the batch: a daily dose is given on every day that the dog is there. */
    double doseGrams(Prepared addition, DogNeed dog) {
        Supplement supplement = addition.item().food().supplement();
        if (supplement == null) {
            throw new IllegalStateException(addition.item().food().id() + " is no supplement");
        }
        return switch (supplement.dosing()) {
            case DAILY -> supplement.smallestDoseGrams() * dog.days();
            case SPREAD -> supplement.smallestDoseGrams();
        };
    }

    /**
     * Says that a limit stands on one side of a row.
     *
     * @param perUnit by how much that side moves with one unit of the figure
     */
    void side(Row<Wish> row, double figure, String unit, double step, double perUnit) {
        lever(row, figure, unit, step, (variant, change) -> variant.shift(row, change * perUnit, change * perUnit));
    }

    /**
     * Says that a limit is a coefficient of a row.
     *
     * @param perUnit the terms that one unit of the figure adds
     */
    void slope(Row<Wish> row, double figure, String unit, double step, Expression perUnit) {
        lever(row, figure, unit, step, (variant, change) -> variant.add(row, change, perUnit));
    }

    /** Says how the limit of a row is moved. */
    void lever(Row<Wish> row, double figure, String unit, double step, Lever.Move move) {
        Wish wish = row.tag();
        if (wish == null) {
            throw new IllegalStateException(row.name() + " stands for no wish");
        }
        levers.add(new Lever(wish, row, figure, unit, step, move));
    }

    /** The doses of a dog, by addition. */
    Map<Prepared, Variable> dosesOf(DogNeed dog) {
        return doses.getOrDefault(dog, Map.of());
    }

    /** All of a nutrient in the pot. */
    Variable potNutrient(Nutrient nutrient, boolean againstMaximum) {
        boolean sameForm = nutrient.towardMinimum().equals(nutrient.towardMaximum());
        String name = "pot " + nutrient.key() + (againstMaximum && !sameForm ? " against the maximum" : "");
        return potNutrients.computeIfAbsent(name, key -> {
            Variable total = model.variable(key, 0, Double.POSITIVE_INFINITY);
            Expression sum = new Expression().add(-1, total);
            potGrams.forEach((food, grams) -> sum.add(food.nutrientPerGram(nutrient, againstMaximum), grams));
            model.equal(key, sum, 0, null);
            return total;
        });
    }

    /** What a dog gets of a nutrient from pot and additions. */
    Expression dogNutrient(DogNeed dog, Nutrient nutrient, boolean againstMaximum) {
        Expression sum = new Expression().add(share(dog), potNutrient(nutrient, againstMaximum));
        dosesOf(dog)
                .forEach((addition, count) ->
                        sum.add(addition.nutrientPerGram(nutrient, againstMaximum) * doseGrams(addition, dog), count));
        return sum;
    }
}
