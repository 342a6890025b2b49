package packpot.explain;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import packpot.explain.Loosening.Change;
import packpot.household.Household;
import packpot.household.Shape;
import packpot.units.Show;

/** Limits of how the pot and the bowls look made weaker. */
final class LooserRecipe {

    private LooserRecipe() {}

    static @Nullable Change shape(Household household, Demand demand, double figure, double miss, double wider) {
        Shape shape = household.shape();
        String what = demand.wish().what();
        if (what.startsWith("smallest amount")) {
            boolean minor = what.endsWith("minor food");
            double old = minor ? shape.smallestUsefulShareMinor() : shape.smallestUsefulShare();
            double share = Loosening.down(old * (1 - miss - wider), 0.0005);
            return new Change(
                    household.withShape(
                            minor
                                    ? shape.withSmallestUseful(shape.smallestUsefulShare(), share)
                                    : shape.withSmallestUseful(
                                            share, Math.min(share, shape.smallestUsefulShareMinor()))),
                    "use foods from " + Show.number(100 * share) + " % of the batch on, not from "
                            + Show.number(100 * old) + " %",
                    "");
        }
        boolean atLeast = Measure.isAtLeast(demand);
        List<Shape.Band> bands = new ArrayList<>();
        String sentence = "";
        for (Shape.Band band : shape.bands()) {
            if (band.label().equals(what)) {
                double share = Math.min(1, (atLeast ? Loosening.down(figure, 0.5) : Loosening.up(figure, 0.5)) / 100);
                bands.add(new Shape.Band(
                        band.key(),
                        band.label(),
                        band.groups(),
                        atLeast ? share : Math.min(band.least(), share),
                        atLeast ? band.most() : share,
                        false));
                sentence = what + (atLeast ? " at least " : " at most ") + Show.number(100 * share)
                        + " % of cooked mass, not " + Show.number(100 * (atLeast ? band.least() : band.most())) + " %";
            } else {
                bands.add(band);
            }
        }
        return sentence.isEmpty() ? null : new Change(household.withShape(shape.withBands(bands)), sentence, "");
    }

    /** More of any single food. */
    static Change oneFoodMost(Household household, double figure) {
        Shape shape = household.shape();
        double share = Math.min(1, Loosening.up(figure, 0.5) / 100);
        return new Change(
                household.withShape(shape.withOneFoodMost(share)),
                "one food up to " + Show.number(100 * share) + " % of cooked mass, not "
                        + Show.number(100 * shape.oneFoodMost()) + " %",
                "");
    }

    static Change ingredients(Household household, Demand demand, int count) {
        Shape shape = household.shape();
        boolean supplements = demand.wish().what().equals("supplements");
        boolean fewest = Measure.isAtLeast(demand);
        Shape other = fewest
                ? shape.withFewestFoods(count)
                : supplements ? shape.withMostStirredIn(count) : shape.withMostFoods(count);
        return new Change(
                household.withShape(other),
                (fewest ? "at least " : "at most ")
                        + count
                        + (supplements
                                ? " supplements stirred into the batch, not " + shape.mostStirredIn()
                                : " foods in the pot, not " + (fewest ? shape.fewestFoods() : shape.mostFoods())),
                "");
    }

    static Change additions(Household household, Demand demand, int count) {
        Shape shape = household.shape();
        // A limit holds for all dogs of a kind; the wish of one of them says which of the two limits it is.
        boolean adults = demand.rows().get(0).upper() == shape.mostAdditions();
        Shape other = shape.withMostAdditions(
                adults ? Math.max(count, shape.mostAdditions()) : shape.mostAdditions(),
                Math.max(count, shape.mostAdditionsSpecialNeeds()));
        return new Change(
                household.withShape(other),
                demand.wish().who() + " may have " + count + " additions to the bowl, not "
                        + Math.round(demand.rows().get(0).upper()),
                "");
    }
}
