package packpot.ration;

import java.util.Map;

/**
 * A recipe that a new one is to stay near to, and what that may cost.
 *
 * @param sharesOfCookedMass of the old recipe, by food id
 * @param mostCost money that the new ration may cost at most
 * @param noPlanBelow money below which no ration can be, as proved without regard to the old recipe
 */
public record Near(Map<String, Double> sharesOfCookedMass, double mostCost, double noPlanBelow) implements Goal {
    public Near {
        sharesOfCookedMass = Map.copyOf(sharesOfCookedMass);
    }
}
