package packpot.audit;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import packpot.dog.Dog;
import packpot.food.Supplement;
import packpot.food.UnsafeFoods;
import packpot.household.Avoidance;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.household.Shape;
import packpot.plan.Plan;

/** Whether the foods may be there at all, and whether the pot has the shape that is wished. */
final class FoodCheck {
    private static final double CLOSE_SHARE = 1e-6;
    private static final double CLOSE_GRAMS = 1e-3;

    private final Household household;
    private final Knowledge knowledge;
    private final Plan plan;
    private final Map<String, PantryItem> pantry;
    private final List<Finding> findings;

    FoodCheck(
            Household household,
            Knowledge knowledge,
            Plan plan,
            Map<String, PantryItem> pantry,
            List<Finding> findings) {
        this.household = household;
        this.knowledge = knowledge;
        this.plan = plan;
        this.pantry = pantry;
        this.findings = findings;
    }

    void check() {
        Set<String> seen = new HashSet<>();
        for (Plan.Ingredient ingredient : plan.pot()) {
            PantryItem item = pantry.get(ingredient.food());
            if (item == null) {
                find(ingredient.label(), "is in the pot but not in the pantry");
                continue;
            }
            if (!seen.add(ingredient.food())) {
                find(ingredient.label(), "is in the pot twice");
            }
            potFood(ingredient, item);
        }
        for (Dog dog : household.dogs()) {
            plan.dogs().stream()
                    .filter(bowls -> bowls.name().equals(dog.name()))
                    .flatMap(bowls -> bowls.additions().stream())
                    .forEach(addition -> bowlFood(dog, addition));
        }
        shape();
    }

    private void potFood(Plan.Ingredient ingredient, PantryItem item) {
        if (item.place() == packpot.food.Place.BOWL) {
            find(ingredient.label(), "belongs into bowls, not into the pot");
        }
        if (!(ingredient.grams() > 0)) {
            find(ingredient.label(), "has no amount");
        }
        for (Dog dog : household.dogs()) {
            if (Avoidance.avoids(dog, item.food())) {
                find(ingredient.label(), "is in the shared pot, but " + dog.name() + " must not get it");
            }
        }
        unsafe(item);
        double cooked = ingredient.grams() * item.preparation().yieldCookedOverRaw();
        if (Math.abs(cooked - ingredient.cookedGrams()) > CLOSE_GRAMS) {
            find(
                    ingredient.label(),
                    String.format(
                            Locale.ROOT, "cooks to %.1f g, the plan says %.1f g", cooked, ingredient.cookedGrams()));
        }
        Supplement supplement = item.food().supplement();
        if (supplement != null) {
            double steps = ingredient.grams() / supplement.potStepGrams();
            if (Math.abs(steps - Math.rint(steps)) > 1e-6) {
                find(ingredient.label(), "is not a whole number of " + supplement.measurePlural());
            }
        }
        if (item.mustUseGrams() > ingredient.grams() + household.rules().foodRoundingGrams()) {
            find(
                    ingredient.label(),
                    String.format(
                            Locale.ROOT,
                            "%.0f g are used, at least %.0f g are wished",
                            ingredient.grams(),
                            item.mustUseGrams()));
        }
    }

    private void bowlFood(Dog dog, Plan.Addition addition) {
        PantryItem item = pantry.get(addition.food());
        Supplement supplement = item == null ? null : item.food().supplement();
        if (item == null || supplement == null) {
            find(addition.label(), "is added to a bowl but is no supplement of the pantry");
            return;
        }
        unsafe(item);
        if (Avoidance.avoids(dog, item.food())) {
            find(addition.label(), dog.name() + " must not get it");
        }
        if (item.place() == packpot.food.Place.POT) {
            find(addition.label(), "belongs into the pot, not into bowls");
        }
        if (addition.gramsPerDose() > supplement.mostDosesPerDay() * supplement.smallestDoseGrams() * (1 + 1e-9)) {
            find(addition.label(), "more than " + supplement.mostDosesPerDay() + " doses in one bowl");
        }
        double parts = addition.gramsPerDose() / (supplement.smallestPart() * supplement.gramsPerMeasure());
        if (parts < 1 - 1e-6 || Math.abs(parts - Math.rint(parts)) > 1e-6) {
            find(addition.label(), "a dose that cannot be measured: " + addition.gramsPerDose() + " g");
        }
        boolean inDays = addition.onDays().stream().allMatch(day -> day >= 1 && day <= plan.days());
        if (!inDays
                || new HashSet<>(addition.onDays()).size() != addition.onDays().size()) {
            find(addition.label(), "is given on days that are not in the batch, or twice on one day");
        }
    }

    private void unsafe(PantryItem item) {
        for (UnsafeFoods.UnsafeFood unsafe : knowledge
                .unsafeFoods()
                .inName(item.food().label() + " / " + item.food().name())) {
            if (unsafe.rule() == UnsafeFoods.Rule.BLOCK) {
                find(item.food().label(), "harms dogs: " + unsafe.why());
            }
        }
    }

    private void shape() {
        Shape shape = household.shape();
        double cooked = 0;
        for (Plan.Ingredient ingredient : plan.pot()) {
            PantryItem item = pantry.get(ingredient.food());
            cooked += item == null ? 0 : ingredient.grams() * item.preparation().yieldCookedOverRaw();
        }
        for (Shape.Band band : shape.bands()) {
            double share = 0;
            for (Plan.Ingredient ingredient : plan.pot()) {
                PantryItem item = pantry.get(ingredient.food());
                if (item != null && band.groups().contains(item.food().group())) {
                    share += ingredient.grams() * item.preparation().yieldCookedOverRaw() / cooked;
                }
            }
            if (share > band.most() + CLOSE_SHARE || share < band.least() - CLOSE_SHARE) {
                find(
                        band.label(),
                        String.format(
                                Locale.ROOT,
                                "%.2f %% of cooked mass, wished are %.0f to %.0f %%",
                                100 * share,
                                100 * band.least(),
                                100 * band.most()));
            }
        }
        int foods = 0;
        for (Plan.Ingredient ingredient : plan.pot()) {
            PantryItem item = pantry.get(ingredient.food());
            if (item == null || ingredient.stirredIn() != item.food().isSupplement()) {
                find(ingredient.label(), "is listed as what it is not");
                continue;
            }
            double share = ingredient.grams() * item.preparation().yieldCookedOverRaw() / cooked;
            if (Math.abs(share - ingredient.shareOfCookedMass()) > CLOSE_SHARE) {
                find(
                        ingredient.label(),
                        String.format(
                                Locale.ROOT,
                                "is %.4f %% of cooked mass, the plan says %.4f %%",
                                100 * share,
                                100 * ingredient.shareOfCookedMass()));
            }
            if (item.food().isSupplement()) {
                continue;
            }
            foods++;
            double most = Math.min(shape.oneFoodMost(), item.food().kitchen().mostShare());
            if (share > most + CLOSE_SHARE) {
                find(
                        ingredient.label(),
                        String.format(
                                Locale.ROOT,
                                "%.2f %% of cooked mass, at most %.1f %% are wished",
                                100 * share,
                                100 * most));
            }
        }
        int stirredIn = plan.pot().size() - foods;
        if (foods < shape.fewestFoods() || foods > shape.mostFoods() || stirredIn > shape.mostStirredIn()) {
            find(
                    "pot",
                    foods + " foods and " + stirredIn + " supplements, wished are " + shape.fewestFoods() + " to "
                            + shape.mostFoods() + " foods and at most " + shape.mostStirredIn() + " supplements");
        }
    }

    private void find(String where, String message) {
        findings.add(new Finding(where, message));
    }
}
