package packpot.audit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import packpot.dog.Dog;
import packpot.dog.EnergyNeed;
import packpot.dog.LifeStage;
import packpot.food.Constituent;
import packpot.food.Nutrient;
import packpot.food.Nutrients;
import packpot.food.Supplement;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.plan.Plan;
import packpot.profile.Limit;
import packpot.profile.ProfileStage;

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

    DogAudit check(Dog dog, Plan.DogPlan bowls) {
        EnergyNeed need = knowledge.energy().need(dog, household.maintenance(), household.growth());
        double target = need.kcalPerDay() - dog.otherKcalPerDay();
        stated(dog, bowls, need, target);
        Ledger ledger = ledger(bowls);
        double kcalPerDay = ledger.kcal() / plan.days();
        double kcalPerGram = bowls.potGramsPerDay() == 0 ? 0 : kcalPerDay / bowls.potGramsPerDay();
        double tolerance = Math.max(ENERGY_TOLERANCE * target, SCALE_GRAMS * kcalPerGram);
        if (Math.abs(kcalPerDay - target) > tolerance) {
            find(dog, "energy is %.1f kcal a day, more than 1 %% off the target of %.1f", kcalPerDay, target);
        }
        additions(dog, need, bowls, ledger);
        supplementCaps(dog, need, bowls, ledger.kcal());
        return new DogAudit(dog.name(), target, kcalPerDay, nutrients(dog, need, ledger));
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
        double raise = raise(dog, need, knowledge.profiles().forDog(household.profileOf(dog), dog, need));
        if (off(bowls.minimumsRaisedBy(), raise)) {
            find(dog, "minimums are raised by %.4f, the plan says %.4f", raise, bowls.minimumsRaisedBy());
        }
        int meals = bowls.potGramsPerMeal().stream().mapToInt(Integer::intValue).sum();
        if (meals != bowls.potGramsPerDay() || bowls.potGramsPerMeal().size() != plan.mealsPerDay()) {
            find(dog, "meals of %d g in all do not make the day's %d g", meals, bowls.potGramsPerDay());
        }
    }

    /** The dog's part of every food in the pot, and its own additions. */
    private Ledger ledger(Plan.DogPlan bowls) {
        Ledger ledger = new Ledger(household, knowledge);
        double cooked = 0;
        for (Plan.Ingredient ingredient : plan.pot()) {
            PantryItem item = pantry.get(ingredient.food());
            cooked += item == null ? 0 : ingredient.grams() * item.preparation().yieldCookedOverRaw();
        }
        double part = cooked <= 0 ? 0 : (double) bowls.potGramsPerDay() * plan.days() / cooked;
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

    private void additions(Dog dog, EnergyNeed need, Plan.DogPlan bowls, Ledger ledger) {
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
        double bowl = grams + (double) bowls.potGramsPerDay() * plan.days();
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

    private void supplementCaps(Dog dog, EnergyNeed need, Plan.DogPlan bowls, double kcal) {
        double fed =
                plan.dogs().stream().mapToDouble(Plan.DogPlan::potGramsPerDay).sum();
        double cooked = fed * plan.days() + plan.batch().spareGrams();
        double part = bowls.potGramsPerDay() * plan.days() / cooked;
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

    private List<NutrientLine> nutrients(Dog dog, EnergyNeed need, Ledger ledger) {
        ProfileStage profile = knowledge.profiles().forDog(household.profileOf(dog), dog, need);
        List<Limit> limits = new ArrayList<>(profile.limits());
        limits.addAll(knowledge.profiles().ceilings(dog));
        double raise = raise(dog, need, profile);
        Map<String, Double> per1000 = new HashMap<>();
        Map<String, Double> againstMaximum = new HashMap<>();
        double thousands = ledger.kcal() / 1000;
        for (Nutrient nutrient : knowledge.nutrients().all()) {
            per1000.put(nutrient.key(), ledger.sum(nutrient.towardMinimum()) / thousands);
            againstMaximum.put(nutrient.key(), ledger.sum(nutrient.towardMaximum()) / thousands);
        }
        List<NutrientLine> lines = new ArrayList<>();
        for (Nutrient nutrient : knowledge.nutrients().all()) {
            Double minimum = minimum(nutrient.key(), limits, raise, per1000);
            Double maximum = maximum(nutrient, limits);
            if (minimum == null && maximum == null) {
                continue;
            }
            double got = per1000.getOrDefault(nutrient.key(), 0.0);
            double most = againstMaximum.getOrDefault(nutrient.key(), 0.0);
            judge(dog, nutrient.label(), nutrient.unit() + " per 1000 kcal", minimum, got, most, maximum);
            Map<PantryItem, Double> unknown = ledger.kcalOfUnknown(nutrient.towardMinimum());
            lines.add(new NutrientLine(
                    nutrient.key(),
                    nutrient.label(),
                    nutrient.unit(),
                    minimum,
                    got,
                    most,
                    maximum,
                    got * thousands / plan.days(),
                    unknown.values().stream().mapToDouble(Double::doubleValue).sum() / ledger.kcal(),
                    labels(unknown),
                    fromMemory(nutrient.key(), limits)));
        }
        for (Nutrients.Ratio ratio : knowledge.nutrients().ratios()) {
            ratio(dog, ratio, limits, ledger, lines);
        }
        return lines;
    }

    private static List<String> labels(Map<PantryItem, Double> kcal) {
        return kcal.entrySet().stream()
                .sorted(Map.Entry.<PantryItem, Double>comparingByValue(Comparator.reverseOrder()))
                .map(e -> e.getKey().food().label())
                .toList();
    }

    private void ratio(Dog dog, Nutrients.Ratio ratio, List<Limit> limits, Ledger ledger, List<NutrientLine> lines) {
        Double minimum = plain(ratio.key(), limits, Limit.Kind.MINIMUM);
        Double maximum = plain(ratio.key(), limits, Limit.Kind.MAXIMUM);
        if (minimum == null && maximum == null) {
            return;
        }
        double below = ledger.sum(ratio.denominator().towardMinimum());
        double got = below <= 0
                ? Double.POSITIVE_INFINITY
                : ledger.sum(ratio.numerator().towardMinimum()) / below;
        judge(dog, ratio.label(), ": 1", minimum, got, got, maximum);
        Map<Constituent, Double> both = new HashMap<>(ratio.numerator().towardMinimum());
        both.putAll(ratio.denominator().towardMinimum());
        Map<PantryItem, Double> unknown = ledger.kcalOfUnknown(both);
        lines.add(new NutrientLine(
                ratio.key(),
                ratio.label(),
                "",
                minimum,
                got,
                got,
                maximum,
                got,
                unknown.values().stream().mapToDouble(Double::doubleValue).sum() / ledger.kcal(),
                labels(unknown),
                fromMemory(ratio.key(), limits)));
    }

    /** Minimums are printed for an intake; a dog that gets less energy per kg^0.75 must find more in every kcal. */
    private static double raise(Dog dog, EnergyNeed need, ProfileStage profile) {
        Double reference = profile.referenceKcalPerKg075();
        if (reference == null) {
            return 1;
        }
        Double goal = dog.goalKg();
        double kg = goal != null && goal < dog.weightKg() ? goal : dog.weightKg();
        double assumed = reference * Math.exp(0.75 * Math.log(kg));
        return assumed > need.kcalPerDay() ? assumed / need.kcalPerDay() : 1;
    }

    private static @Nullable Double minimum(String key, List<Limit> limits, double raise, Map<String, Double> per1000) {
        Double plain = plain(key, limits, Limit.Kind.MINIMUM);
        Double minimum = plain == null ? null : (Double) (plain * raise);
        for (Limit limit : limits) {
            String per = limit.per();
            if (limit.kind() == Limit.Kind.DEPENDENT_MINIMUM && limit.nutrient().equals(key) && per != null) {
                double base = minimum == null ? 0 : plain == null ? 0 : plain * raise;
                double above = per1000.getOrDefault(per, 0.0) - limit.threshold();
                minimum = Math.max(minimum == null ? 0 : minimum, base + limit.value() * above);
            }
        }
        return minimum;
    }

    private @Nullable Double maximum(Nutrient nutrient, List<Limit> limits) {
        Double maximum = plain(nutrient.key(), limits, Limit.Kind.MAXIMUM);
        if (nutrient.key().equals("sodium")) {
            double ceiling = household.rules().sodiumMostGramsPer1000Kcal();
            return maximum == null ? (Double) ceiling : (Double) Math.min(maximum, ceiling);
        }
        return maximum;
    }

    private static @Nullable Double plain(String key, List<Limit> limits, Limit.Kind kind) {
        Double found = null;
        for (Limit limit : limits) {
            if (limit.kind() == kind && limit.nutrient().equals(key)) {
                double value = limit.value();
                boolean tighter = found == null || (kind == Limit.Kind.MINIMUM ? value > found : value < found);
                found = tighter ? (Double) value : found;
            }
        }
        return found;
    }

    private static boolean fromMemory(String key, List<Limit> limits) {
        Set<Limit.Kind> fromPrint = new LinkedHashSet<>();
        limits.stream()
                .filter(limit -> limit.nutrient().equals(key) && !limit.fromMemory())
                .forEach(limit -> fromPrint.add(limit.kind()));
        return limits.stream()
                .anyMatch(limit ->
                        limit.nutrient().equals(key) && limit.fromMemory() && !fromPrint.contains(limit.kind()));
    }

    private void judge(
            Dog dog,
            String label,
            String unit,
            @Nullable Double minimum,
            double got,
            double against,
            @Nullable Double maximum) {
        if (minimum != null && !(got >= minimum * (1 - CLOSE))) {
            find(dog, "%s is %.4g %s, below the minimum of %.4g", label, got, unit, minimum);
        }
        if (maximum != null && !(against <= maximum * (1 + CLOSE))) {
            find(dog, "%s is %.4g %s, above the maximum of %.4g", label, against, unit, maximum);
        }
    }

    private static boolean off(double stated, double reckoned) {
        return Math.abs(stated - reckoned) > 1e-6 * Math.max(1, Math.abs(reckoned));
    }

    private void find(Dog dog, String format, Object... figures) {
        findings.add(new Finding(dog.name(), String.format(Locale.ROOT, format, figures)));
    }
}
