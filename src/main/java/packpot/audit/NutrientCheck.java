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
import packpot.food.Constituent;
import packpot.food.Nutrient;
import packpot.food.Nutrients;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.profile.Limit;
import packpot.profile.ProfileStage;

/** Every nutrient and ratio of what one dog eats, held to the published limits without margin. */
final class NutrientCheck {
    private final Household household;
    private final Knowledge knowledge;
    private final List<Finding> findings;

    NutrientCheck(Household household, Knowledge knowledge, List<Finding> findings) {
        this.household = household;
        this.knowledge = knowledge;
        this.findings = findings;
    }

    /** Every line that the dog's profile speaks of; what is short or over goes to the findings. */
    List<NutrientLine> check(Dog dog, EnergyNeed need, Ledger ledger, int days) {
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
                    got * thousands / days,
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
    static double raise(Dog dog, EnergyNeed need, ProfileStage profile) {
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
        if (minimum != null && !(got >= minimum * (1 - NutrientLine.CLOSE))) {
            find(dog, "%s is %.4g %s, below the minimum of %.4g", label, got, unit, minimum);
        }
        if (maximum != null && !(against <= maximum * (1 + NutrientLine.CLOSE))) {
            find(dog, "%s is %.4g %s, above the maximum of %.4g", label, against, unit, maximum);
        }
    }

    private void find(Dog dog, String format, Object... figures) {
        findings.add(new Finding(dog.name(), String.format(Locale.ROOT, format, figures)));
    }
}
