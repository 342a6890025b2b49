package packpot.explain;

import java.util.List;
import packpot.plan.Plan;

/**
 * A change of the household with which there is a plan; every plan of it passed the audit.
 *
 * @param changes what is changed, a sentence each
 * @param notes what a person should know beside, such as that a price is guessed
 * @param planned the changed household and its plan; one, or one for each pot or cook session
 * @param smallest for wishes that are loosened: whether it is proved that less would not do
 * @param costPerDay of the batch, all dogs together; leftovers that keep are taken off
 * @param atTheTill money paid for shopping
 */
public record WayOut(
        Kind kind,
        List<String> changes,
        List<String> notes,
        List<Planner.Result.Planned> planned,
        boolean smallest,
        double costPerDay,
        double atTheTill) {

    /** What kind of change it is. */
    public enum Kind {
        LOOSEN,
        ADD_FOOD,
        ADDITION,
        SECOND_POT,
        SECOND_SESSION
    }

    public WayOut {
        changes = List.copyOf(changes);
        notes = List.copyOf(notes);
        planned = List.copyOf(planned);
    }

    /** The plans alone. */
    public List<Plan> plans() {
        return planned.stream().map(Planner.Result.Planned::plan).toList();
    }

    /** Plans of one day or pot after another, priced together. */
    static WayOut of(
            Kind kind,
            List<String> changes,
            List<String> notes,
            List<Planner.Result.Planned> planned,
            boolean smallest,
            int days) {
        return new WayOut(
                kind,
                changes,
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
