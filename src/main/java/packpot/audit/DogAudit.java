package packpot.audit;

import java.util.List;

/**
 * One dog's bowls, reckoned again.
 *
 * @param targetKcalPerDay that the batch must bring
 * @param kcalPerDay that it brings
 * @param dryGramsPerDay what the bowls hold beside water, by the foods' figures before cooking
 */
public record DogAudit(
        String dog, double targetKcalPerDay, double kcalPerDay, double dryGramsPerDay, List<NutrientLine> nutrients) {
    public DogAudit {
        nutrients = List.copyOf(nutrients);
    }

    /** kcal in 100 g of dry matter, by which figures per 1000 kcal become figures per 100 g of dry matter. */
    public double kcalPer100GramsDry() {
        return 100 * kcalPerDay / dryGramsPerDay;
    }
}
