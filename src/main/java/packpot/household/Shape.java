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

    /** The same shape with other bands. */
    public Shape withBands(List<Band> other) {
        return with(other, oneFoodMost, fewestFoods, mostFoods, mostStirredIn);
    }

    /** The same shape with another limit of any single food, as a share of cooked mass. */
    public Shape withOneFoodMost(double share) {
        return with(bands, share, fewestFoods, mostFoods, mostStirredIn);
    }

    /** The same shape with another least number of foods. */
    public Shape withFewestFoods(int fewest) {
        return with(bands, oneFoodMost, fewest, mostFoods, mostStirredIn);
    }

    /** The same shape with another greatest number of foods. */
    public Shape withMostFoods(int most) {
        return with(bands, oneFoodMost, fewestFoods, most, mostStirredIn);
    }

    /** The same shape with another greatest number of supplements stirred in. */
    public Shape withMostStirredIn(int most) {
        return with(bands, oneFoodMost, fewestFoods, mostFoods, most);
    }

    /** The same shape with other greatest numbers of additions to a bowl, of adults and of dogs with special needs. */
    public Shape withMostAdditions(int adults, int specialNeeds) {
        return new Shape(
                bands,
                oneFoodMost,
                fewestFoods,
                mostFoods,
                mostStirredIn,
                adults,
                specialNeeds,
                additionsMostMassShare,
                additionsMostEnergyShare,
                smallestUsefulShare,
                smallestUsefulShareMinor,
                minorGroups,
                usualKcalPerGram);
    }

    /** The same shape with other smallest amounts of a food that is used, as shares of the expected batch. */
    public Shape withSmallestUseful(double share, double minorShare) {
        return new Shape(
                bands,
                oneFoodMost,
                fewestFoods,
                mostFoods,
                mostStirredIn,
                mostAdditions,
                mostAdditionsSpecialNeeds,
                additionsMostMassShare,
                additionsMostEnergyShare,
                share,
                minorShare,
                minorGroups,
                usualKcalPerGram);
    }

    private Shape with(List<Band> otherBands, double otherOneFoodMost, int fewest, int most, int stirredIn) {
        return new Shape(
                otherBands,
                otherOneFoodMost,
                fewest,
                most,
                stirredIn,
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
