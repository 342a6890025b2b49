package packpot.household;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;
import packpot.units.Dimension;
import packpot.units.Quantity;
import packpot.units.Unit;
import packpot.units.UnitException;
import packpot.units.UnitSystem;
import packpot.units.Write;

/** Edits of "kitchen". */
final class KitchenEdits {
    private static final String HOLDS = "/kitchen/freezer/holds";

    private final TreeEditor tree;
    private final Unit volume;

    private KitchenEdits(TreeEditor tree, UnitSystem units) {
        this.tree = tree;
        this.volume = units == UnitSystem.METRIC ? Unit.LITRE : Unit.QUART;
    }

    /** The old kitchen with what is written here as in the changed one. */
    static Kitchen changed(Kitchen old, Kitchen changed) {
        return old.withDays(changed.days())
                .withMostPotLoads(changed.mostPotLoads())
                .withBinMl(changed.binMl())
                .withMostBags(changed.mostBags())
                .withFreezer(changed.freezer());
    }

    /** False when the change cannot be written. */
    static boolean write(TreeEditor tree, Kitchen old, Kitchen changed, UnitSystem units) {
        if (old.days() != changed.days()) {
            tree.put("/kitchen/days", changed.days());
        }
        if (old.mostPotLoads() != changed.mostPotLoads()) {
            tree.put("/kitchen/mostPotLoads", changed.mostPotLoads());
        }
        KitchenEdits edits = new KitchenEdits(tree, units);
        Double bin = changed.binMl();
        if (bin == null) {
            tree.remove("/kitchen/bin");
        } else if (!bin.equals(old.binMl())) {
            tree.put("/kitchen/bin", Write.volume(bin, edits.volume, RoundingMode.CEILING));
        }
        Integer bags = changed.mostBags();
        if (bags == null) {
            tree.remove("/kitchen/mostBags");
        } else if (!bags.equals(old.mostBags())) {
            tree.put("/kitchen/mostBags", bags);
        }
        return edits.freezer(old, changed.freezer());
    }

    private boolean freezer(Kitchen kitchen, @Nullable Freezer changed) {
        Freezer old = kitchen.freezer();
        if (changed == null) {
            tree.remove("/kitchen/freezer");
            return true;
        }
        if (old == null || old.usableShare() != changed.usableShare() || old.packingShare() != changed.packingShare()) {
            return false;
        }
        if (old.ratedMl() != changed.ratedMl()) {
            tree.put("/kitchen/freezer/volume", Write.volume(changed.ratedMl(), volume, RoundingMode.CEILING));
        }
        double freedMl = old.takenMl() - changed.takenMl();
        return freedMl == 0 || (freedMl > 0 && holds(freedMl, kitchen.bagUsableMl() / old.packingShare()));
    }

    /** Takes as much out of what the freezer holds, from the largest part on. */
    private boolean holds(double freedMl, double bagMl) {
        ArrayNode left = tree.tree().at(HOLDS).deepCopy() instanceof ArrayNode holds
                ? holds
                : JsonNodeFactory.instance.arrayNode();
        double toFree = freedMl;
        while (toFree > 0) {
            int largest = largest(left, bagMl);
            if (largest < 0) {
                return false;
            }
            ObjectNode held = (ObjectNode) left.get(largest);
            double ml = millilitres(held, bagMl);
            if (!shrink(held, ml - toFree)) {
                left.remove(largest);
            }
            toFree -= ml;
        }
        if (left.isEmpty()) {
            tree.remove(HOLDS);
        } else {
            tree.put(HOLDS, left);
        }
        return true;
    }

    /** Makes a part as small as this; false when nothing is left of it. Bags come to be a volume, since none is cut. */
    private boolean shrink(ObjectNode held, double toMl) {
        boolean left = toMl >= 1;
        if (left) {
            held.put("volume", Write.volume(toMl, volume, RoundingMode.FLOOR)).remove("bags");
        }
        return left;
    }

    private static int largest(ArrayNode holds, double bagMl) {
        int largest = -1;
        for (int i = 0; i < holds.size(); i++) {
            if (largest < 0 || millilitres(holds.get(i), bagMl) > millilitres(holds.get(largest), bagMl)) {
                largest = i;
            }
        }
        return largest;
    }

    /** What a part takes, as KitchenReader reckons it. */
    private static double millilitres(JsonNode held, double bagMl) {
        double bags = held.path("bags").asInt() * bagMl;
        try {
            return held.hasNonNull("volume")
                    ? bags
                            + Quantity.parse(held.path("volume").asText(), Dimension.VOLUME)
                                    .inBaseUnits()
                    : bags;
        } catch (UnitException e) {
            throw new IllegalStateException("a scenario that was read cannot be read", e);
        }
    }
}
