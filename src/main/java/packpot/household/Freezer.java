package packpot.household;

/**
 * The freezer.
 *
 * @param ratedMl volume that its maker states
 * @param usableShare of that, what can be filled at all
 * @param takenMl of the usable volume, what is full already
 * @param packingShare of the free volume, what bags really fill: the rest is air between them
 */
public record Freezer(double ratedMl, double usableShare, double takenMl, double packingShare) {

    /** Millilitres of bagged food that it can still take. */
    public double freeForFoodMl() {
        return Math.max(0, ratedMl * usableShare - takenMl) * packingShare;
    }
}
