package packpot.audit;

import java.util.List;

/**
 * One dog's bowls, reckoned again.
 *
 * @param targetKcalPerDay that the batch must bring
 * @param kcalPerDay that it brings
 */
public record DogAudit(String dog, double targetKcalPerDay, double kcalPerDay, List<NutrientLine> nutrients) {
    public DogAudit {
        nutrients = List.copyOf(nutrients);
    }
}
