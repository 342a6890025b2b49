package packpot.ration;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A recipe that a new one is to stay near to, and what that may cost.
 *
 * @param sharesOfCookedMass of the old recipe, by food id
 * @param mostCost money that the new ration may cost at most
 * @param noPlanBelow money below which no ration can be, as proved without regard to the old recipe
 * @param spoils bought food that spoils where it is not used, by food id; of it, less waste counts before nearness
 * @param mostDistance from the old recipe, 0 to 1, within which the cheapest ration is looked for; null where the nearest
 *     is
 */
public record Near(
        Map<String, Double> sharesOfCookedMass,
        double mostCost,
        double noPlanBelow,
        Map<String, Spoils> spoils,
        @Nullable Double mostDistance)
        implements Goal {
    public Near {
        sharesOfCookedMass = Map.copyOf(sharesOfCookedMass);
        spoils = Map.copyOf(spoils);
    }

    /**
     * A food that spoils where it is not used.
     *
     * @param useGrams so much is to be used, edible; what is used less is waste
     * @param weightPerGram of waste, in parts of the pot that may be exchanged for a gram less of it
     */
    public record Spoils(double useGrams, double weightPerGram) {}

    /** The cheapest of the rations that are no farther than this from the old recipe. */
    public Near within(double distance) {
        return new Near(sharesOfCookedMass, mostCost, noPlanBelow, spoils, distance);
    }
}
