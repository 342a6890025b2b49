package packpot.household;

import java.math.RoundingMode;
import java.util.List;
import packpot.data.ModelFiles;
import packpot.units.Write;

/** Edits of "shape". */
final class ShapeEdits {
    private static final String SHAPE = "/shape/";

    private final TreeEditor tree;

    private ShapeEdits(TreeEditor tree) {
        this.tree = tree;
    }

    /** The old shape with what is written here as in the changed one. */
    static Shape changed(Shape old, Shape changed) {
        return old.withBands(changed.bands())
                .withOneFoodMost(changed.oneFoodMost())
                .withFewestFoods(changed.fewestFoods())
                .withMostFoods(changed.mostFoods())
                .withMostStirredIn(changed.mostStirredIn())
                .withMostAdditions(changed.mostAdditions(), changed.mostAdditionsSpecialNeeds())
                .withSmallestUseful(changed.smallestUsefulShare(), changed.smallestUsefulShareMinor());
    }

    static void write(TreeEditor tree, Household old, Household changed) {
        ShapeEdits edits = new ShapeEdits(tree);
        edits.bands(old.shape().bands(), changed.shape().bands());
        edits.limits(old.shape(), changed.shape());
        edits.fewestFoods(old, changed);
        edits.additions(old.shape(), changed.shape());
        edits.smallestUseful(old.shape(), changed.shape());
    }

    private void limits(Shape old, Shape changed) {
        if (old.oneFoodMost() != changed.oneFoodMost()) {
            tree.put(SHAPE + "oneFoodMost", Write.share(changed.oneFoodMost(), RoundingMode.CEILING));
        }
        if (old.mostFoods() != changed.mostFoods()) {
            tree.put(SHAPE + "mostFoods", changed.mostFoods());
        }
        if (old.mostStirredIn() != changed.mostStirredIn()) {
            tree.put(SHAPE + "mostStirredIn", changed.mostStirredIn());
        }
    }

    private void bands(List<Shape.Band> old, List<Shape.Band> changed) {
        for (int i = 0; i < changed.size(); i++) {
            Shape.Band was = old.get(i);
            Shape.Band band = changed.get(i);
            String path = SHAPE + "shares/" + band.key() + "/";
            // One side that moved the usual figure of the other out of its way must go on holding it there.
            boolean pushed = was.least() == was.most() && !was.equals(band);
            if (pushed || was.least() != band.least()) {
                tree.put(path + "least", Write.share(band.least(), RoundingMode.FLOOR));
            }
            if (pushed || was.most() != band.most()) {
                tree.put(path + "most", Write.share(band.most(), RoundingMode.CEILING));
            }
        }
    }

    private void fewestFoods(Household old, Household changed) {
        int fewest = changed.shape().fewestFoods();
        boolean said = tree.tree().path("shape").hasNonNull("fewestFoods");
        // Fewer than usual were taken for granted since there were no more foods; there may be now.
        boolean moreFoods = !said
                && fewest < ModelFiles.json("shape.json").path("fewestFoods").intValue()
                && fewest < PartsTogether.usable(changed.pantry(), changed.dogs());
        if (fewest != old.shape().fewestFoods() || moreFoods) {
            tree.put(SHAPE + "fewestFoods", fewest);
        }
    }

    private void additions(Shape old, Shape changed) {
        boolean adults = old.mostAdditions() != changed.mostAdditions();
        if (adults) {
            tree.put(SHAPE + "mostAdditions", changed.mostAdditions());
        }
        // Where nothing is said of special needs, what is said of adults holds for them too.
        if (adults || old.mostAdditionsSpecialNeeds() != changed.mostAdditionsSpecialNeeds()) {
            tree.put(SHAPE + "mostAdditionsSpecialNeeds", changed.mostAdditionsSpecialNeeds());
        }
    }

    private void smallestUseful(Shape old, Shape changed) {
        boolean foods = old.smallestUsefulShare() != changed.smallestUsefulShare();
        if (foods) {
            tree.put(SHAPE + "smallestUseful", Write.share(changed.smallestUsefulShare(), RoundingMode.FLOOR));
        }
        if (foods || old.smallestUsefulShareMinor() != changed.smallestUsefulShareMinor()) {
            tree.put(
                    SHAPE + "smallestUsefulMinor", Write.share(changed.smallestUsefulShareMinor(), RoundingMode.FLOOR));
        }
    }
}
