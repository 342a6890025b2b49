package packpot.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import packpot.household.Household;
import packpot.household.PantryItem;

/** What the batch costs, and whose bowl it goes into. */
final class Costs {

    private Costs() {}

    static Plan.Cost of(
            Household household, List<Plan.Purchase> shopping, Map<PantryItem, Double> pot, List<Plan.DogPlan> dogs) {
        Map<String, PantryItem> items = new HashMap<>();
        household.pantry().forEach(item -> items.put(item.food().id(), item));
        Map<String, Double> costPerGram = new HashMap<>();
        double till = 0;
        double batch = 0;
        for (Plan.Purchase purchase : shopping) {
            PantryItem item = items.get(purchase.food());
            if (item == null) {
                throw new IllegalStateException(purchase.food() + " is not in the pantry");
            }
            double cost = purchase.pays()
                    - purchase.leftOverGrams() * household.rules().leftWorthPerGram(item);
            till += purchase.pays();
            batch += cost;
            costPerGram.put(purchase.food(), cost / purchase.usedGrams());
        }
        double potCost = pot.entrySet().stream()
                .mapToDouble(e -> e.getValue()
                        * costPerGram.getOrDefault(e.getKey().food().id(), 0.0))
                .sum();
        double fed = dogs.stream().mapToDouble(Plan.DogPlan::potGramsInBatch).sum();
        List<Plan.DogCost> perDog = new ArrayList<>();
        for (Plan.DogPlan dog : dogs) {
            double own = dog.additions().stream()
                    .mapToDouble(a -> a.gramsInBatch() * costPerGram.getOrDefault(a.food(), 0.0))
                    .sum();
            double share = fed == 0 ? 0 : dog.potGramsInBatch() / fed;
            perDog.add(new Plan.DogCost(dog.name(), (potCost * share + own) / dog.daysFed()));
        }
        return new Plan.Cost(till, batch, batch / household.kitchen().days(), perDog);
    }
}
