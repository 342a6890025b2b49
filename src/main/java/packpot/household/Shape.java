package packpot.household;

import java.util.List;
import java.util.Set;
import packpot.dog.LifeStage;
import packpot.food.FoodGroup;

/**
 * How a recipe should look.
 *
 * @param bands shares of cooked mass by kind of food
 * @param oneFoodMost most of any single food, as a share of cooked mass
 * @param fewestFoods foods in the pot, supplements not counted
 * @param mostFoods foods in the pot, supplements not counted
 * @param mostStirredIn supplements that are stirred into the whole batch
 * @param mostAdditions different additions to the bowl of an adult at maintenance
 * @param mostAdditionsSpecialNeeds the same for a dog that grows, breeds, or is to lose or gain weight
 * @param additionsMostMassShare of a bowl's mass
 * @param additionsMostEnergyShare of a bowl's energy
 * @param smallestUsefulShare least of a food when it is used at all, as a share of the expected batch
 * @param smallestUsefulShareMinor the same for foods that play a small part
 * @param minorGroups the foods that play a small part
 * @param usualKcalPerGram of a cooked batch, to expect its mass by
 */
public record Shape(
        List<Band> bands,
        double oneFoodMost,
        int fewestFoods,
        int mostFoods,
        int mostStirredIn,
        int mostAdditions,
        int mostAdditionsSpecialNeeds,
        double additionsMostMassShare,
        double additionsMostEnergyShare,
        double smallestUsefulShare,
        double smallestUsefulShareMinor,
        Set<FoodGroup> minorGroups,
        double usualKcalPerGram) {

    /**
     * A share of cooked mass.
     *
     * @param least 0 when there is no lower limit
     * @param most 1 when there is no upper limit
     * @param usual whether both are the usual figures, not the scenario's own
     */
    public record Band(String key, String label, Set<FoodGroup> groups, double least, double most, boolean usual) {
        public Band {
            groups = Set.copyOf(groups);
        }
    }

    /** Different additions that a dog at this stage may get into its bowl. */
    public int mostAdditions(LifeStage stage) {
        return stage == LifeStage.ADULT ? mostAdditions : mostAdditionsSpecialNeeds;
    }

    /** The same shape with another least number of foods. */
    Shape withFewestFoods(int fewest) {
        return new Shape(
                bands,
                oneFoodMost,
                fewest,
                mostFoods,
                mostStirredIn,
                mostAdditions,
                mostAdditionsSpecialNeeds,
                additionsMostMassShare,
                additionsMostEnergyShare,
                smallestUsefulShare,
                smallestUsefulShareMinor,
                minorGroups,
                usualKcalPerGram);
    }

    public Shape {
        bands = List.copyOf(bands);
        minorGroups = Set.copyOf(minorGroups);
    }
}
