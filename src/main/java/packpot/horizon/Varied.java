package packpot.horizon;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import packpot.food.FoodGroup;
import packpot.household.Horizon;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.plan.Plan;

/**
 * What the batches so far leave to wish for of the next one: another main protein than the last, and vegetables or fruit
 * that were not used yet.
 *
 * @param mainProtein of the last batch, its id; null before the first
 * @param vegetables that were used, their ids
 */
record Varied(Horizon.Variety wish, @Nullable String mainProtein, Set<String> vegetables) {
    private static final Set<FoodGroup> PROTEIN = Set.of(FoodGroup.MEAT, FoodGroup.FISH, FoodGroup.EGG);
    private static final Set<FoodGroup> GREENS = Set.of(FoodGroup.VEGETABLE, FoodGroup.OXALATE_GREEN, FoodGroup.FRUIT);

    Varied {
        vegetables = Set.copyOf(vegetables);
    }

    static Varied before(Horizon.Variety wish) {
        return new Varied(wish, null, Set.of());
    }

    /**
     * The household with these wishes; as it was when there are none.
     *
     * @param kcal that the batch must bring
     * @param sessionsLeft this one included
     */
    Household in(Household then, double kcal, int sessionsLeft) {
        String last = mainProtein;
        Set<String> wanted = wanted(then, sessionsLeft);
        double grams = wish.leastVegetableShare() * kcal / then.shape().usualKcalPerGram();
        return then.withPantry(then.pantry().stream()
                .map(item -> {
                    if (wish.proteinChanges() && item.food().id().equals(last)) {
                        return item.withMustUse(0).withAtMost(0.0);
                    }
                    return wanted.contains(item.food().id())
                            ? item.withMustUse(Math.max(
                                    item.mustUseGrams(),
                                    grams / item.preparation().yieldCookedOverRaw()))
                            : item;
                })
                .toList());
    }

    /** The cheapest vegetables that were not used yet, as many as are due. */
    private Set<String> wanted(Household then, int sessionsLeft) {
        int missing = wish.vegetables() - vegetables.size();
        if (missing <= 0 || mainProtein == null) {
            // The first batch chooses for itself.
            return Set.of();
        }
        int due = (missing + sessionsLeft - 1) / sessionsLeft;
        return then.pantry().stream()
                .filter(item -> GREENS.contains(item.food().group()) && then.mayGoIntoPot(item))
                .filter(item -> !item.outOfStock() && item.atMostGrams() == null)
                .filter(item -> !vegetables.contains(item.food().id()))
                .sorted(Comparator.comparingDouble(PantryItem::pricePerGram))
                .limit(due)
                .map(item -> item.food().id())
                .collect(Collectors.toSet());
    }

    /** The same after one batch more. */
    Varied after(Household then, Plan plan) {
        Map<String, FoodGroup> groups = new HashMap<>();
        then.pantry().forEach(item -> groups.put(item.food().id(), item.food().group()));
        Set<String> used = new HashSet<>(vegetables);
        plan.pot().stream()
                .map(Plan.Ingredient::food)
                .filter(food -> GREENS.contains(groups.getOrDefault(food, FoodGroup.OTHER)))
                .forEach(used::add);
        return new Varied(wish, mainProtein(plan, groups).orElse(null), used);
    }

    private static Optional<String> mainProtein(Plan plan, Map<String, FoodGroup> groups) {
        return plan.pot().stream()
                .filter(food -> PROTEIN.contains(groups.getOrDefault(food.food(), FoodGroup.OTHER)))
                .max(Comparator.comparingDouble(Plan.Ingredient::cookedGrams))
                .map(Plan.Ingredient::food);
    }

    /** What of the wishes these batches do not meet, in sentences. */
    static List<String> unmet(Horizon.Variety wish, List<HorizonPlan.Session> sessions, String why) {
        List<String> sentences = new ArrayList<>();
        Varied so = before(wish);
        for (HorizonPlan.Session session : sessions) {
            Varied next = so.after(session.household(), session.plan());
            String main = next.mainProtein();
            if (wish.proteinChanges() && main != null && main.equals(so.mainProtein())) {
                sentences.add(
                        "the batch of " + session.date() + " has the same main protein as the one before it: " + why);
            }
            so = next;
        }
        if (so.vegetables().size() < wish.vegetables()) {
            sentences.add(so.vegetables().size() + " different vegetables and fruit are used, " + wish.vegetables()
                    + " are wished: " + why);
        }
        return sentences;
    }
}
