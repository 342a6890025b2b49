package packpot.audit;

import java.util.List;

/**
 * What a recipe is worth, as reckoned from the amounts that it gives.
 *
 * @param dogs energy and nutrients of each dog that it feeds
 * @param nutrition what is short or over, and energy that is off
 * @param safety foods that harm, that a dog must not get, or of which there is more than is safe
 * @param shape where the pot does not look as the household wishes; a remark, no fault of the recipe
 * @param advice what to mind about foods that may be given
 */
public record RecipeVerdict(
        List<DogAudit> dogs, List<Finding> nutrition, List<Finding> safety, List<Finding> shape, List<String> advice) {
    public RecipeVerdict {
        dogs = List.copyOf(dogs);
        nutrition = List.copyOf(nutrition);
        safety = List.copyOf(safety);
        shape = List.copyOf(shape);
        advice = List.copyOf(advice);
    }

    /** Whether every dog gets its energy and all that its profile asks, and nothing that harms. */
    public boolean good() {
        return nutrition.isEmpty() && safety.isEmpty();
    }
}
