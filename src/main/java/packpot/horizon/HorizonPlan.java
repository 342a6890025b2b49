package packpot.horizon;

import java.time.LocalDate;
import java.util.List;
import packpot.audit.Finding;
import packpot.audit.SessionsAudit;
import packpot.audit.Verdict;
import packpot.household.Horizon;
import packpot.household.HorizonScenario;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.plan.Plan;

/**
 * Batches that follow each other, each with its own audited plan. Pure data; money is in the household's currency.
 *
 * @param household as it is on the first day
 * @param sessions in the order of their days
 * @param notes what people must know of it, in sentences
 */
public record HorizonPlan(Household household, Horizon horizon, List<Session> sessions, Cost cost, List<String> notes) {

    public HorizonPlan {
        sessions = List.copyOf(sessions);
        notes = List.copyOf(notes);
    }

    /**
     * One cook day.
     *
     * @param household as it is for this batch: its dogs, its days, and what is in the house
     */
    public record Session(Interval interval, Household household, Plan plan, Verdict verdict) {
        /** Bags for all dogs together, and for each by itself. */
        public BagPlan bags() {
            return BagPlan.of(household.kitchen(), plan);
        }

        public LocalDate date() {
            return household.start();
        }
    }

    /**
     * What it all costs.
     *
     * @param atTheTill money paid on all shopping days
     * @param leftWorth what bought food that is left at the end is still worth
     * @param cookDays price of the cook days, where they have one
     * @param total of these
     * @param noPlanBelow no choice of batches costs less, on these cook days or, where they were chosen, on any
     */
    public record Cost(double atTheTill, double leftWorth, double cookDays, double total, double noPlanBelow) {

        /** How far it may be off, as a share of the total. */
        public double gapShare() {
            return Math.max(0, total - noPlanBelow) / Math.max(1e-9, total);
        }
    }

    /** The plan that these batches make; nothing is proved of it yet. */
    static HorizonPlan of(HorizonScenario scenario, List<Session> sessions) {
        Household household = scenario.household();
        Stock stock = Stock.of(household);
        double till = 0;
        for (Session session : sessions) {
            till += session.plan().cost().atTheTill();
            stock = stock.after(session.household(), session.plan());
        }
        double worth = stock.worth(household);
        double cookDays = scenario.horizon().pricePerSession() * sessions.size();
        Cost cost = new Cost(till, worth, cookDays, till - worth + cookDays, 0);
        return new HorizonPlan(household, scenario.horizon(), sessions, cost, List.of());
    }

    /** The same, of which it is proved that no choice of batches costs less. */
    HorizonPlan withBound(double noPlanBelow) {
        return new HorizonPlan(
                household,
                horizon,
                sessions,
                new Cost(cost.atTheTill(), cost.leftWorth(), cost.cookDays(), cost.total(), noPlanBelow),
                notes);
    }

    /** What is wrong with the batches, each and together. */
    public List<Finding> audit(Knowledge knowledge) {
        return SessionsAudit.check(
                household,
                knowledge,
                sessions.stream()
                        .map(session -> new SessionsAudit.Batch(session.household(), session.plan()))
                        .toList(),
                new SessionsAudit.Stated(horizon.firstCookDay(), horizon.days(), cost.atTheTill(), cost.leftWorth()));
    }

    /** The same with other notes. */
    HorizonPlan withNotes(List<String> other) {
        return new HorizonPlan(household, horizon, sessions, cost, other);
    }

    /** Days that are fed from new batches. */
    public int days() {
        return sessions.stream().mapToInt(session -> session.interval().days()).sum();
    }
}
