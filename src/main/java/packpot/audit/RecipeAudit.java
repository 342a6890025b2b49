package packpot.audit;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import packpot.dog.Dog;
import packpot.dog.EnergyNeed;
import packpot.food.Food;
import packpot.food.Supplement;
import packpot.food.UnsafeFoods;
import packpot.household.Avoidance;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.Recipe;
import packpot.household.Shape;

/**
 * Reckons what a recipe brings to each dog, with the means that a plan is audited by. The pot is split by the energy that
 * each dog needs from it; a dog's part of the pot is that part of every food in it.
 */
public final class RecipeAudit {
    /** As far as the audit of a plan lets energy lie off its target. */
    private static final double ENERGY_TOLERANCE = 0.01;

    private final Recipe recipe;
    private final Household household;
    private final Knowledge knowledge;
    private final List<Finding> nutrition = new ArrayList<>();
    private final List<Finding> safety = new ArrayList<>();
    private final List<Finding> shape = new ArrayList<>();
    private final Set<String> advice = new LinkedHashSet<>();

    private RecipeAudit(Recipe recipe, Household household, Knowledge knowledge) {
        this.recipe = recipe;
        this.household = household;
        this.knowledge = knowledge;
    }

    /** The verdict on a recipe for dogs of the household. */
    public static RecipeVerdict check(Recipe recipe, Household household, Knowledge knowledge) {
        return new RecipeAudit(recipe, household, knowledge).verdict();
    }

    private RecipeVerdict verdict() {
        double all = recipe.dogs().stream().mapToDouble(this::target).sum();
        List<DogAudit> dogs = new ArrayList<>();
        for (Dog dog : recipe.dogs()) {
            dogs.add(dog(dog, target(dog) / all));
        }
        recipe.foods().forEach(part -> food(part.item().food()));
        recipe.additions().forEach(addition -> food(addition.item().food()));
        caps();
        shape();
        return new RecipeVerdict(dogs, nutrition, safety, shape, List.copyOf(advice));
    }

    private EnergyNeed need(Dog dog) {
        return knowledge.energy().need(dog, household.maintenance(), household.growth());
    }

    private double target(Dog dog) {
        return need(dog).kcalPerDay() - dog.otherKcalPerDay();
    }

    private DogAudit dog(Dog dog, double share) {
        Ledger ledger = new Ledger(household, knowledge);
        recipe.foods().forEach(part -> ledger.add(part.item(), part.grams() * share));
        recipe.additions().stream()
                .filter(addition -> addition.dog().equals(dog.name()))
                .forEach(addition -> ledger.add(addition.item(), addition.gramsPerDay() * recipe.days()));
        double kcalPerDay = ledger.kcal() / recipe.days();
        double target = target(dog);
        if (Math.abs(kcalPerDay - target) > ENERGY_TOLERANCE * target) {
            nutrition.add(new Finding(
                    dog.name(),
                    String.format(
                            Locale.ROOT,
                            "energy is %.0f kcal a day, %.0f %% of the target of %.0f",
                            kcalPerDay,
                            100 * kcalPerDay / target,
                            target)));
        }
        List<NutrientLine> lines =
                new NutrientCheck(household, knowledge, nutrition).check(dog, need(dog), ledger, recipe.days());
        supplementCaps(dog, share, ledger.kcal());
        avoided(dog);
        return new DogAudit(dog.name(), target, kcalPerDay, ledger.dryGrams() / recipe.days(), lines);
    }

    private void supplementCaps(Dog dog, double share, double kcal) {
        Set<Food> supplements = new LinkedHashSet<>();
        recipe.foods().forEach(part -> supplements.add(part.item().food()));
        recipe.additions().forEach(addition -> supplements.add(addition.item().food()));
        for (Food food : supplements) {
            Supplement supplement = food.supplement();
            if (supplement == null) {
                continue;
            }
            double grams = recipe.foods().stream()
                            .filter(part -> part.item().food().equals(food))
                            .mapToDouble(part -> part.grams() * share)
                            .sum()
                    + recipe.additions().stream()
                            .filter(addition -> addition.dog().equals(dog.name())
                                    && addition.item().food().equals(food))
                            .mapToDouble(addition -> addition.gramsPerDay() * recipe.days())
                            .sum();
            double per1000 = grams / kcal * 1000;
            double most = need(dog).stage().builds()
                    ? supplement.mostGramsPer1000KcalGrowing()
                    : supplement.mostGramsPer1000Kcal();
            if (per1000 > most * (1 + NutrientLine.CLOSE)) {
                safety.add(new Finding(
                        dog.name(),
                        String.format(
                                Locale.ROOT,
                                "%.2f g of %s per 1000 kcal, at most %.2f g",
                                per1000,
                                food.label(),
                                most)));
            }
        }
    }

    private void avoided(Dog dog) {
        for (Recipe.Part part : recipe.foods()) {
            if (Avoidance.avoids(dog, part.item().food())) {
                safety.add(new Finding(
                        dog.name(), "must not get " + part.item().food().label()));
            }
        }
        for (Recipe.Addition addition : recipe.additions()) {
            if (addition.dog().equals(dog.name())
                    && Avoidance.avoids(dog, addition.item().food())) {
                safety.add(new Finding(
                        dog.name(), "must not get " + addition.item().food().label()));
            }
        }
    }

    private void food(Food food) {
        for (UnsafeFoods.UnsafeFood unsafe : knowledge.unsafeFoods().inName(food.label() + " / " + food.name())) {
            if (unsafe.rule() == UnsafeFoods.Rule.BLOCK) {
                safety.add(new Finding(food.label(), "harms dogs: " + unsafe.why()));
            } else {
                advice.add(food.label() + ": " + (unsafe.advice().isEmpty() ? unsafe.why() : unsafe.advice()));
            }
        }
        Supplement supplement = food.supplement();
        if (supplement != null && !supplement.caution().isEmpty()) {
            advice.add(food.label() + ": " + supplement.caution());
        }
    }

    /** Caps that a food carries for the dog's sake; the share of the cooked pot counts. */
    private void caps() {
        double cooked = recipe.cookedGrams();
        for (Recipe.Part part : recipe.foods()) {
            Food food = part.item().food();
            double share = part.cookedGrams() / cooked;
            double most = food.kitchen().mostShare();
            if (share > most * (1 + NutrientLine.CLOSE)) {
                safety.add(new Finding(
                        food.label(),
                        percent(share) + " of cooked mass, at most " + percent(most)
                                + (food.kitchen().mostShareReason().isEmpty()
                                        ? ""
                                        : ": " + food.kitchen().mostShareReason())));
            }
        }
    }

    private void shape() {
        Shape wished = household.shape();
        double cooked = recipe.cookedGrams();
        for (Shape.Band band : wished.bands()) {
            double share = recipe.foods().stream()
                            .filter(part ->
                                    band.groups().contains(part.item().food().group()))
                            .mapToDouble(Recipe.Part::cookedGrams)
                            .sum()
                    / cooked;
            if (share > band.most() + NutrientLine.CLOSE || share < band.least() - NutrientLine.CLOSE) {
                shape.add(new Finding(
                        band.label(),
                        percent(share) + " of cooked mass, "
                                + (band.usual() ? "usual are " : "the household wishes ")
                                + percent(band.least()) + " to " + percent(band.most())));
            }
        }
        for (Recipe.Part part : recipe.foods()) {
            double share = part.cookedGrams() / cooked;
            if (!part.item().food().isSupplement() && share > wished.oneFoodMost() + NutrientLine.CLOSE) {
                shape.add(new Finding(
                        part.item().food().label(),
                        percent(share) + " of cooked mass, one food is usually at most "
                                + percent(wished.oneFoodMost())));
            }
        }
        long foods = recipe.foods().stream()
                .filter(part -> !part.item().food().isSupplement())
                .count();
        if (foods < wished.fewestFoods() || foods > wished.mostFoods()) {
            shape.add(new Finding(
                    "pot",
                    foods + (foods == 1 ? " food, " : " foods, ") + wished.fewestFoods() + " to " + wished.mostFoods()
                            + " are wished"));
        }
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, share < 0.0995 && share > 0 ? "%.1f %%" : "%.0f %%", 100 * share);
    }
}
