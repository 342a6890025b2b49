package packpot.spread;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import packpot.audit.DogAudit;
import packpot.audit.NutrientLine;
import packpot.audit.Verdict;
import packpot.food.Constituent;
import packpot.food.Nutrients;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.plan.Plan;

/**
 * What each dog gets a day out of an audited plan, as sums of terms each of which is off by itself:
 *
 * <pre>  of constituent c:  P sum over foods f of (a day's part of f in the pot) W[f] m[f,c] F[f,c]
 *                    + sum over additions a to f of (grams a day) D[a] m[f,c] F[f,c]</pre>
 *
 * with m the table's figure after cooking. P (portioning), W (weighing into the pot), F (the figure itself) and D (dosing) are
 * independent with mean 1. W and F are one and the same for all dogs, since they eat from one pot and one bottle; P and D are
 * averages over all meals and doses of the batch.
 */
record Intakes(List<Source> sources, List<Eater> eaters, int constituents) {

    /**
     * A food of the plan.
     *
     * @param potGrams that go into the pot; 0 for what is given in bowls alone
     * @param potSpread standard deviation of W
     * @param perGram units of each constituent
     * @param spread standard deviation of F for each constituent
     */
    record Source(double potGrams, double potSpread, Figures perGram, Figures spread) {}

    /**
     * A dog.
     *
     * @param potShare share of the pot that it gets a day
     * @param portionSpread standard deviation of P
     */
    record Eater(String name, double potShare, double portionSpread, List<Dose> doses, List<Demand> demands) {}

    /**
     * An addition to a dog's bowls.
     *
     * @param source index of its food
     * @param spread standard deviation of D
     */
    record Dose(int source, double gramsPerDay, double spread) {}

    /**
     * A minimum: the weighted sum of constituents, a day, is to reach so much.
     *
     * @param weights for a ratio, the denominator's times the minimum are taken off
     * @param least units a day; 0 for a ratio
     */
    record Demand(NutrientLine line, Figures weights, double least) {}

    /** Units of each constituent that a dog gets a day on average. */
    Figures means(Eater eater) {
        return Figures.of(constituents, i -> {
            double mean = 0;
            for (Source source : sources) {
                mean += eater.potShare() * source.potGrams() * source.perGram().at(i);
            }
            for (Dose dose : eater.doses()) {
                mean += dose.gramsPerDay()
                        * sources.get(dose.source()).perGram().at(i);
            }
            return mean;
        });
    }

    /** The terms of a plan with what its audit found. */
    static Intakes of(Plan plan, Verdict verdict, Household household, Knowledge knowledge, Spread spread) {
        Map<String, PantryItem> pantry = new LinkedHashMap<>();
        household.pantry().forEach(item -> pantry.put(item.food().id(), item));
        Map<String, Double> potGrams = new LinkedHashMap<>();
        double cooked = 0;
        for (Plan.Ingredient ingredient : plan.pot()) {
            potGrams.merge(ingredient.food(), ingredient.grams(), Double::sum);
            cooked += ingredient.cookedGrams();
        }
        plan.dogs().forEach(dog -> dog.additions().forEach(each -> potGrams.merge(each.food(), 0.0, Double::sum)));
        List<Constituent> asked = asked(verdict, knowledge.nutrients());
        List<Source> sources = new ArrayList<>();
        potGrams.forEach((food, grams) -> sources.add(source(item(pantry, food), grams, asked, spread)));
        List<String> foods = new ArrayList<>(potGrams.keySet());
        List<Eater> eaters = new ArrayList<>();
        for (DogAudit audit : verdict.dogs()) {
            Plan.DogPlan bowls = plan.dogs().stream()
                    .filter(each -> each.name().equals(audit.dog()))
                    .findFirst()
                    .orElseThrow();
            List<Dose> doses = bowls.additions().stream()
                    .map(each -> dose(each, foods.indexOf(each.food()), bowls.daysFed(), pantry, spread))
                    .toList();
            double meals = plan.mealsPerDay();
            double portion =
                    spread.ofWeighing(Math.max(1, bowls.potGramsPerDay()) / meals) / Math.sqrt(meals * bowls.daysFed());
            List<Demand> demands = audit.nutrients().stream()
                    .filter(line -> line.minimum() != null)
                    .map(line -> demand(line, audit.kcalPerDay(), asked, knowledge.nutrients()))
                    .toList();
            eaters.add(new Eater(audit.dog(), bowls.potGramsPerDay() / cooked, portion, doses, demands));
        }
        return new Intakes(sources, eaters, asked.size());
    }

    private static List<Constituent> asked(Verdict verdict, Nutrients nutrients) {
        TreeSet<Constituent> asked = new TreeSet<>();
        verdict.dogs().stream()
                .flatMap(dog -> dog.nutrients().stream())
                .filter(line -> line.minimum() != null)
                .forEach(line -> asked.addAll(weights(line, nutrients).keySet()));
        return List.copyOf(asked);
    }

    private static PantryItem item(Map<String, PantryItem> pantry, String food) {
        PantryItem item = pantry.get(food);
        if (item == null) {
            throw new IllegalArgumentException(food + " is not in the pantry");
        }
        return item;
    }

    private static Source source(PantryItem item, double grams, List<Constituent> asked, Spread spread) {
        Figures perGram = Figures.of(
                asked.size(),
                i -> item.food().composition().perGram(asked.get(i))
                        * item.preparation().retention(asked.get(i)));
        Figures off =
                Figures.of(asked.size(), i -> perGram.at(i) == 0 ? 0 : spread.ofFigure(item.food(), asked.get(i)));
        return new Source(grams, grams == 0 ? 0 : spread.intoPot(item.food(), grams), perGram, off);
    }

    private static Dose dose(
            Plan.Addition addition, int source, int days, Map<String, PantryItem> pantry, Spread spread) {
        PantryItem item = item(pantry, addition.food());
        int times = addition.onDays().size();
        return new Dose(
                source,
                addition.gramsPerDose() * times / days,
                spread.ofDose(item.food(), addition.gramsPerDose()) / Math.sqrt(times));
    }

    private static Map<Constituent, Double> weights(NutrientLine line, Nutrients nutrients) {
        if (!nutrients.isRatio(line.key())) {
            return nutrients.get(line.key()).towardMinimum();
        }
        Nutrients.Ratio ratio = nutrients.ratio(line.key());
        Map<Constituent, Double> weights = new LinkedHashMap<>(ratio.numerator().towardMinimum());
        double minimum = line.minimum() == null ? 0 : line.minimum();
        ratio.denominator()
                .towardMinimum()
                .forEach((constituent, weight) -> weights.merge(constituent, -minimum * weight, Double::sum));
        return weights;
    }

    private static Demand demand(NutrientLine line, double kcalPerDay, List<Constituent> asked, Nutrients nutrients) {
        Map<Constituent, Double> sum = weights(line, nutrients);
        Figures weights = Figures.of(asked.size(), i -> sum.getOrDefault(asked.get(i), 0.0));
        double minimum = line.minimum() == null ? 0 : line.minimum();
        return new Demand(line, weights, nutrients.isRatio(line.key()) ? 0 : minimum * kcalPerDay / 1000);
    }
}
