package packpot.explain;

import java.util.List;
import java.util.Set;
import packpot.plan.Plan;

/**
 * A change of the household with which there is a plan; every plan of it passed the audit.
 *
 * @param changes what is changed, a sentence each
 * @param gaveWay what of the household was loosened for it, as far as wishes are told apart here
 * @param notes what a person should know beside, such as that a price is guessed
 * @param planned the changed household and its plan; one, or one for each pot or cook session
 * @param smallest for wishes that are loosened: whether it is proved that less would not do
 * @param costPerDay of the batch, all dogs together; leftovers that keep are taken off
 * @param atTheTill money paid for shopping
 */
public record Mend(
        Kind kind,
        List<String> changes,
        Set<String> gaveWay,
        List<String> notes,
        List<Planner.Result.Planned> planned,
        boolean smallest,
        double costPerDay,
        double atTheTill) {

    /** Prices are proved to a share; two that differ by no more than both are off are the same to a person. */
    private static final double SAME_PRICE = 2 * Repair.PLAN_GAP;

    /** What kind of change it is. */
    public enum Kind {
        LOOSEN,
        ADD_FOOD,
        ADDITION,
        SECOND_POT,
        SECOND_SESSION
    }

    public Mend {
        changes = List.copyOf(changes);
        gaveWay = Set.copyOf(gaveWay);
        notes = List.copyOf(notes);
        planned = List.copyOf(planned);
    }

    /**
     * Whether another mend makes this one not worth telling: it loosens the same at a lower price, or less at nearly
     * the same.
     */
    boolean isOutdoneBy(Mend other) {
        if (kind != Kind.LOOSEN || other.kind() != Kind.LOOSEN || !gaveWay.containsAll(other.gaveWay())) {
            return false;
        }
        return gaveWay.equals(other.gaveWay())
                ? other.costPerDay() < costPerDay
                : other.costPerDay() <= (1 + SAME_PRICE) * costPerDay;
    }

    /** The plans alone. */
    public List<Plan> plans() {
        return planned.stream().map(Planner.Result.Planned::plan).toList();
    }

    /** Plans of one day or pot after another, priced together. */
    static Mend of(
            Kind kind,
            List<String> changes,
            Set<String> gaveWay,
            List<String> notes,
            List<Planner.Result.Planned> planned,
            boolean smallest,
            int days) {
        return new Mend(
                kind,
                changes,
                gaveWay,
                notes,
                planned,
                smallest,
                planned.stream()
                                .mapToDouble(each -> each.plan().cost().ofTheBatch())
                                .sum()
                        / days,
                planned.stream()
                        .mapToDouble(each -> each.plan().cost().atTheTill())
                        .sum());
    }
}
