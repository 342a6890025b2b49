package packpot.explain;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import packpot.food.Constituent;
import packpot.food.Nutrient;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.needs.Needs;
import packpot.needs.Requirement;
import packpot.plan.Plan;
import packpot.profile.Limit;

/**
 * The food that takes the place of a lost one: that which brings most more than before, in pot and bowls together, of
 * what the lost food was there for. A food that brought at least a twentieth of the energy was there for energy; any other
 * for the nutrient of which it brought the largest part of all that the plan holds, among those of which a dog must get so much.
 *
 * @param of "energy", or the nutrient's label
 * @param unit kcal, or the nutrient's
 * @param before what the stand-in brought of it over the batch with the lost food there
 * @param after and without
 * @param lost what the lost food had brought
 */
public record StandIn(String food, String label, String of, String unit, double before, double after, double lost) {
    private static final double FOR_ENERGY = 0.05;
    private static final double NOTICEABLE = 0.01;

    static @Nullable StandIn of(
            String lost, Planner.Result.Planned old, Planner.Result.Planned now, Knowledge knowledge) {
        Map<String, PantryItem> items = new HashMap<>();
        old.household().pantry().forEach(item -> items.put(item.food().id(), item));
        PantryItem lostItem = items.get(lost);
        if (lostItem == null) {
            return null;
        }
        Map<String, Double> before = grams(old.plan());
        Map<String, Double> after = grams(now.plan());
        Household household = old.household();
        ToDoubleFunction<PantryItem> energy =
                item -> knowledge.foodEnergy().kcalPerGram(item.food().composition(), household.foodEnergy());
        if (part(lostItem, before, items, energy) >= FOR_ENERGY) {
            return most(lostItem, before, after, items, energy, "energy", "kcal");
        }
        Nutrient purpose = null;
        double largest = 0;
        Set<String> wantedByADog = minimums(household, knowledge);
        for (Nutrient nutrient : knowledge.nutrients().all()) {
            if (!wantedByADog.contains(nutrient.key())) {
                continue;
            }
            double part = part(lostItem, before, items, item -> perGram(item, nutrient));
            if (part > largest) {
                largest = part;
                purpose = nutrient;
            }
        }
        Nutrient wanted = purpose;
        return wanted == null
                ? null
                : most(lostItem, before, after, items, item -> perGram(item, wanted), wanted.label(), wanted.unit());
    }

    /** The nutrients of which any dog must get so much. */
    private static Set<String> minimums(Household household, Knowledge knowledge) {
        Set<String> keys = new HashSet<>();
        Needs.of(household, knowledge).dogs().stream()
                .flatMap(dog -> dog.requirements().stream())
                .map(Requirement::limit)
                .filter(limit -> limit.kind() == Limit.Kind.MINIMUM)
                .forEach(limit -> keys.add(limit.nutrient()));
        return keys;
    }

    private static Map<String, Double> grams(Plan plan) {
        Map<String, Double> grams = new HashMap<>();
        plan.shopping().forEach(line -> grams.put(line.food(), line.usedGrams()));
        return grams;
    }

    private static double perGram(PantryItem item, Nutrient nutrient) {
        double sum = 0;
        for (Map.Entry<Constituent, Double> term : nutrient.towardMinimum().entrySet()) {
            sum += term.getValue()
                    * item.food().composition().perGram(term.getKey())
                    * item.preparation().retention(term.getKey());
        }
        return sum;
    }

    /** Share that a food has of all that the plan holds of something. */
    private static double part(
            PantryItem food,
            Map<String, Double> grams,
            Map<String, PantryItem> items,
            ToDoubleFunction<PantryItem> perGram) {
        double all = 0;
        for (Map.Entry<String, Double> entry : grams.entrySet()) {
            PantryItem item = items.get(entry.getKey());
            all += item == null ? 0 : entry.getValue() * perGram.applyAsDouble(item);
        }
        double own = grams.getOrDefault(food.food().id(), 0.0) * perGram.applyAsDouble(food);
        return all > 0 ? own / all : 0;
    }

    private static @Nullable StandIn most(
            PantryItem lost,
            Map<String, Double> before,
            Map<String, Double> after,
            Map<String, PantryItem> items,
            ToDoubleFunction<PantryItem> perGram,
            String of,
            String unit) {
        double gone = before.getOrDefault(lost.food().id(), 0.0) * perGram.applyAsDouble(lost);
        Set<String> foods = new HashSet<>(before.keySet());
        foods.addAll(after.keySet());
        StandIn best = null;
        for (String food : foods) {
            PantryItem item = items.get(food);
            if (item == null || food.equals(lost.food().id())) {
                continue;
            }
            double was = before.getOrDefault(food, 0.0) * perGram.applyAsDouble(item);
            double is = after.getOrDefault(food, 0.0) * perGram.applyAsDouble(item);
            double least = best == null ? NOTICEABLE * gone : best.after() - best.before();
            if (is - was > least) {
                best = new StandIn(food, item.food().label(), of, unit, was, is, gone);
            }
        }
        return best;
    }
}
