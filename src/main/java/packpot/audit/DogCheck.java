package packpot.audit;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import packpot.dog.Dog;
import packpot.dog.EnergyNeed;
import packpot.dog.LifeStage;
import packpot.food.Dosing;
import packpot.food.Supplement;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.plan.Plan;

/** Energy and every nutrient of one dog, from the printed portion and doses. */
final class DogCheck {
    private static final double ENERGY_TOLERANCE = 0.01;
    /** A kitchen scale shows whole grams; for a very small dog one gram a day is more than the tolerance. */
    private static final double SCALE_GRAMS = 1;

    private static final double CLOSE = 1e-6;

    private final Household household;
    private final Knowledge knowledge;
    private final Plan plan;
    private final Map<String, PantryItem> pantry;
    private final List<Finding> findings;

    DogCheck(
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

    /** Days of the batch on which the dog is there, reckoned from its dates. */
    int daysThere(Dog dog) {
        Integer comes = dog.course().comesDay();
        Integer leaves = dog.course().leavesDay();
        int from = comes == null ? 0 : Math.max(0, comes);
        int to = leaves == null ? plan.days() : Math.min(plan.days(), leaves);
        return Math.max(0, to - from);
    }

    DogAudit check(Dog dog, Plan.DogPlan bowls) {
        int days = daysThere(dog);
        Integer comes = dog.course().comesDay();
        if (bowls.daysFed() != days || bowls.firstDay() != 1 + (comes == null ? 0 : Math.max(0, comes))) {
            find(
                    dog,
                    "is there on %d days, the plan feeds it on %d, from day %d of the batch on",
                    days,
                    bowls.daysFed(),
                    bowls.firstDay());
        }
        boolean outside = bowls.additions().stream()
                .flatMap(addition -> addition.onDays().stream())
                .anyMatch(day -> day < bowls.firstDay() || day >= bowls.firstDay() + days);
        if (outside) {
            find(dog, "has additions on days on which it is not there");
        }
        for (Plan.Addition addition : bowls.additions()) {
            PantryItem item = pantry.get(addition.food());
            Supplement supplement = item == null ? null : item.food().supplement();
            if (supplement != null
                    && supplement.dosing() == Dosing.DAILY
                    && addition.onDays().size() != days) {
                findings.add(new Finding(
                        addition.label(),
                        "is to be given every day, but is given on "
                                + addition.onDays().size() + " days"));
            }
        }
        EnergyNeed need = knowledge.energy().need(dog, household.maintenance(), household.growth());
        double target = need.kcalPerDay() - dog.otherKcalPerDay();
        stated(dog, bowls, need, target);
        Ledger ledger = ledger(bowls, days);
        double kcalPerDay = ledger.kcal() / days;
        double kcalPerGram = bowls.potGramsPerDay() == 0 ? 0 : kcalPerDay / bowls.potGramsPerDay();
        double tolerance = Math.max(ENERGY_TOLERANCE * target, SCALE_GRAMS * kcalPerGram);
        if (Math.abs(kcalPerDay - target) > tolerance) {
            find(dog, "energy is %.1f kcal a day, more than 1 %% off the target of %.1f", kcalPerDay, target);
        }
        additions(dog, need, bowls, ledger, days);
        supplementCaps(dog, need, bowls, ledger.kcal(), days);
        List<NutrientLine> nutrients = new NutrientCheck(household, knowledge, findings).check(dog, need, ledger, days);
        return new DogAudit(dog.name(), target, kcalPerDay, ledger.dryGrams() / days, nutrients);
    }

    private void stated(Dog dog, Plan.DogPlan bowls, EnergyNeed need, double target) {
        if (off(bowls.energyNeedKcalPerDay(), need.kcalPerDay())
                || off(bowls.batchKcalPerDay(), target)
                || off(bowls.otherFoodKcalPerDay(), dog.otherKcalPerDay())
                || off(bowls.weightKg(), dog.weightKg())) {
            find(
                    dog,
                    "the plan states another weight or energy than %.1f kg and %.1f kcal a day",
                    dog.weightKg(),
                    target);
        }
        double raise = NutrientCheck.raise(dog, need, knowledge.profiles().forDog(household.profileOf(dog), dog, need));
        if (off(bowls.minimumsRaisedBy(), raise)) {
            find(dog, "minimums are raised by %.4f, the plan says %.4f", raise, bowls.minimumsRaisedBy());
        }
        int meals = bowls.potGramsPerMeal().stream().mapToInt(Integer::intValue).sum();
        if (meals != bowls.potGramsPerDay() || bowls.potGramsPerMeal().size() != plan.mealsPerDay()) {
            find(dog, "meals of %d g in all do not make the day's %d g", meals, bowls.potGramsPerDay());
        }
    }

    /** The dog's part of every food in the pot, and its own additions. */
    private Ledger ledger(Plan.DogPlan bowls, int days) {
        Ledger ledger = new Ledger(household, knowledge);
        double cooked = 0;
        for (Plan.Ingredient ingredient : plan.pot()) {
            PantryItem item = pantry.get(ingredient.food());
            cooked += item == null ? 0 : ingredient.grams() * item.preparation().yieldCookedOverRaw();
        }
        double part = cooked <= 0 ? 0 : (double) bowls.potGramsPerDay() * days / cooked;
        for (Plan.Ingredient ingredient : plan.pot()) {
            PantryItem item = pantry.get(ingredient.food());
            if (item != null) {
                ledger.add(item, ingredient.grams() * part);
            }
        }
        for (Plan.Addition addition : bowls.additions()) {
            PantryItem item = pantry.get(addition.food());
            if (item != null) {
                ledger.add(item, addition.gramsPerDose() * addition.onDays().size());
            }
        }
        return ledger;
    }

    private void additions(Dog dog, EnergyNeed need, Plan.DogPlan bowls, Ledger ledger, int days) {
        double grams = bowls.additions().stream()
                .mapToDouble(a -> a.gramsPerDose() * a.onDays().size())
                .sum();
        Ledger alone = new Ledger(household, knowledge);
        for (Plan.Addition addition : bowls.additions()) {
            PantryItem item = pantry.get(addition.food());
            if (item != null) {
                alone.add(item, addition.gramsPerDose() * addition.onDays().size());
            }
        }
        double bowl = grams + (double) bowls.potGramsPerDay() * days;
        if (grams > household.shape().additionsMostMassShare() * bowl + CLOSE) {
            find(dog, "additions are %.1f %% of the bowl's mass", 100 * grams / bowl);
        }
        if (alone.kcal() > household.shape().additionsMostEnergyShare() * ledger.kcal() * (1 + ENERGY_TOLERANCE)) {
            find(dog, "additions are %.1f %% of the bowl's energy", 100 * alone.kcal() / ledger.kcal());
        }
        int most = household.shape().mostAdditions(need.stage());
        if (bowls.additions().size() > most) {
            find(
                    dog,
                    "%d different additions, at most %d are wished",
                    bowls.additions().size(),
                    most);
        }
    }

    private void supplementCaps(Dog dog, EnergyNeed need, Plan.DogPlan bowls, double kcal, int days) {
        double cooked = plan.batch().cookedGrams();
        double part = bowls.potGramsPerDay() * days / cooked;
        for (PantryItem item : pantry.values()) {
            Supplement supplement = item.food().supplement();
            if (supplement == null) {
                continue;
            }
            double grams = 0;
            for (Plan.Ingredient ingredient : plan.pot()) {
                grams += ingredient.food().equals(item.food().id()) ? ingredient.grams() * part : 0;
            }
            for (Plan.Addition addition : bowls.additions()) {
                grams += addition.food().equals(item.food().id())
                        ? addition.gramsPerDose() * addition.onDays().size()
                        : 0;
            }
            boolean builds = need.stage() == LifeStage.GROWTH
                    || need.stage() == LifeStage.GESTATION
                    || need.stage() == LifeStage.LACTATION;
            double most = builds ? supplement.mostGramsPer1000KcalGrowing() : supplement.mostGramsPer1000Kcal();
            if (grams > most * kcal / 1000 * (1 + CLOSE)) {
                find(
                        dog,
                        "%.2f g of %s per 1000 kcal, at most %.2f g",
                        grams / kcal * 1000,
                        item.food().label(),
                        most);
            }
        }
    }

    private static boolean off(double stated, double reckoned) {
        return Math.abs(stated - reckoned) > 1e-6 * Math.max(1, Math.abs(reckoned));
    }

    private void find(Dog dog, String format, Object... figures) {
        findings.add(new Finding(dog.name(), String.format(Locale.ROOT, format, figures)));
    }
}
