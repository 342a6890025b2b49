package packpot.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import packpot.food.FoodEnergy;
import packpot.food.Supplement;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.units.Show;
import packpot.words.Sentence;
import packpot.words.Term;

/** Turns solved amounts into amounts that a kitchen can measure. */
public final class PlanBuilder {
    private final Household household;
    private final Knowledge knowledge;
    private final Needs needs;
    private final Amounts amounts;

    private PlanBuilder(Household household, Knowledge knowledge, Needs needs, Amounts amounts) {
        this.household = household;
        this.knowledge = knowledge;
        this.needs = needs;
        this.amounts = amounts;
    }

    /** Builds the plan. */
    public static Plan build(Household household, Knowledge knowledge, Needs needs, Amounts amounts) {
        return new PlanBuilder(household, knowledge, needs, amounts).plan();
    }

    private Plan plan() {
        Map<PantryItem, Double> pot = new LinkedHashMap<>();
        amounts.potGrams().forEach((item, grams) -> pot.put(item, Rounding.potGrams(item, grams, household)));
        double cooked = pot.entrySet().stream()
                .mapToDouble(e -> e.getValue() * e.getKey().preparation().yieldCookedOverRaw())
                .sum();
        List<Plan.Ingredient> ingredients = ingredients(pot, cooked);
        List<Plan.DogPlan> dogs = dogs(cooked);
        Map<PantryItem, Double> used = used(pot, dogs);
        List<Plan.Purchase> shopping = used.entrySet().stream()
                .map(entry -> Shopping.purchase(entry.getKey(), entry.getValue()))
                .toList();
        Plan.Batch batch = BatchReckoning.batch(household.kitchen(), cooked, dogs);
        FoodEnergy.Method energy = household.foodEnergy();
        return new Plan(
                household.name(),
                household.start(),
                household.kitchen().days(),
                household.kitchen().mealsPerDay(),
                household.currency(),
                Sentence.of(
                        "energy.ofFood",
                        energy.key(),
                        new Term(
                                "energyrule",
                                energy.key(),
                                knowledge.foodEnergy().words(energy))),
                household.rules().margin(),
                dogs,
                shopping,
                ingredients,
                batch,
                Costs.of(household, shopping, pot, dogs),
                new Plan.Proof(
                        amounts.proved(),
                        amounts.cost(),
                        amounts.bound(),
                        Math.max(0, amounts.cost() - amounts.bound()) / Math.max(1e-9, amounts.cost()),
                        amounts.solveSeconds()),
                AtTheirLimit.of(household, ingredients, batch),
                household.defaults(),
                Cautions.of(household, knowledge, needs, pot.keySet(), dogs, batch));
    }

    private List<Plan.Ingredient> ingredients(Map<PantryItem, Double> pot, double cooked) {
        List<Plan.Ingredient> ingredients = new ArrayList<>();
        pot.forEach((item, grams) -> {
            double cookedGrams = grams * item.preparation().yieldCookedOverRaw();
            ingredients.add(new Plan.Ingredient(
                    item.food().id(),
                    item.food().label(),
                    item.food().isSupplement(),
                    grams,
                    Rounding.potMeasure(item, grams, household.units(), knowledge),
                    item.preparation().method(),
                    item.preparation().label(),
                    cookedGrams,
                    cookedGrams / cooked));
        });
        ingredients.sort((a, b) -> Double.compare(b.grams(), a.grams()));
        return ingredients;
    }

    private List<Plan.DogPlan> dogs(double cooked) {
        List<Integer> portions = Rounding.portions(
                needs.dogs().stream()
                        .map(dog -> amounts.shares().getOrDefault(dog, 0.0) * cooked / dog.days())
                        .toList(),
                needs.dogs().stream().map(DogNeed::days).toList(),
                cooked);
        List<Plan.DogPlan> dogs = new ArrayList<>();
        for (int i = 0; i < needs.dogs().size(); i++) {
            dogs.add(dog(needs.dogs().get(i), portions.get(i)));
        }
        return dogs;
    }

    private Plan.DogPlan dog(DogNeed need, int gramsPerDay) {
        List<Integer> meals = Rounding.meals(gramsPerDay, household.kitchen().mealsPerDay());
        double scoopMl = meals.get(0) / household.kitchen().mixDensityGramsPerMl();
        List<Plan.Addition> additions = new ArrayList<>();
        amounts.doses()
                .getOrDefault(need, Map.of())
                .forEach((item, count) -> additions.add(addition(need, item, count)));
        return new Plan.DogPlan(
                need.dog().name(),
                need.dog().weightKg(),
                need.energy().stage().words(),
                need.energy().kcalPerDay(),
                need.dog().otherKcalPerDay(),
                need.energy().equation(),
                need.energy().found(),
                need.energy().source(),
                need.profile().title(),
                need.raisedBy(),
                need.kcalPerDay(),
                need.firstDay() + 1,
                need.days(),
                gramsPerDay,
                meals,
                Show.scoop(scoopMl, household.units()),
                additions);
    }

    private Plan.Addition addition(DogNeed need, PantryItem item, int count) {
        Supplement supplement = item.food().supplement();
        if (supplement == null) {
            throw new IllegalStateException(item.food().id() + " is no supplement");
        }
        int days = need.days();
        int first = need.firstDay() + 1;
        List<Integer> onDays = new ArrayList<>();
        int parts = 1;
        switch (supplement.dosing()) {
            case DAILY -> {
                parts = count;
                for (int day = 0; day < days; day++) {
                    onDays.add(first + day);
                }
            }
            case SPREAD -> {
                for (int dose = 0; dose < count; dose++) {
                    onDays.add(first + dose * days / count);
                }
            }
        }
        return new Plan.Addition(
                item.food().id(),
                item.food().label(),
                Rounding.dose(supplement, parts),
                parts * supplement.smallestDoseGrams(),
                onDays);
    }

    private Map<PantryItem, Double> used(Map<PantryItem, Double> pot, List<Plan.DogPlan> dogs) {
        Map<PantryItem, Double> used = new LinkedHashMap<>();
        for (PantryItem item : household.pantry()) {
            double grams = pot.getOrDefault(item, 0.0);
            for (Plan.DogPlan dog : dogs) {
                for (Plan.Addition addition : dog.additions()) {
                    grams += addition.food().equals(item.food().id()) ? addition.gramsInBatch() : 0;
                }
            }
            if (grams > 0) {
                used.put(item, grams);
            }
        }
        return used;
    }
}
