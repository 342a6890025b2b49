package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.SharedSolver;
import packpot.audit.PlanAudit;
import packpot.household.Household;
import packpot.household.Wish;
import packpot.needs.Needs;
import packpot.plan.PlanBuilder;
import packpot.ration.RationPlanner.Outcome;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;
import packpot.solver.SolveLimits;

/** The smallest demo through the whole of the model and the planner, by the search of our own. */
@Tag("demos")
class SmallestDemoTest {
    private static final SolveLimits LIMITS = new SolveLimits(60, Demo.GAP);

    private final Household household = Demo.read(Demo.text(Demo.file("tiny-freezer")));
    private final Needs needs = Needs.of(household, Demo.knowledge());
    private final RationPlanner planner = new RationPlanner(Demo.knowledge(), new SharedSolver());

    private Outcome.Found found() {
        return (Outcome.Found) planner.plan(household, needs, LIMITS);
    }

    private static List<?> findings(Household household, Needs needs, Outcome.Found found) {
        return PlanAudit.check(
                        PlanBuilder.build(household, Demo.knowledge(), needs, found.amounts()),
                        household,
                        Demo.knowledge())
                .findings();
    }

    @Test
    void itsPlanPassesTheAuditAndCostsNoMoreThanItsBoundAllows() {
        Outcome.Found found = found();
        assertThat(findings(household, needs, found)).isEmpty();
        assertThat(found.amounts().cost() * (1 - 1.1 * Demo.GAP))
                .isLessThanOrEqualTo(found.solution().bound());
        // The library's SCIP proves that nothing costs less than 53.46, and finds 53.50.
        assertThat(found.amounts().cost()).isBetween(53.46, 53.56);
        assertThat(found.amounts().proved()).isTrue();
    }

    @Test
    void aSimilarHouseholdIsPlannedFromItAndAtOnce() {
        Household less = household.withBudget(140.0);
        Outcome.Found from = (Outcome.Found) planner.planFrom(found(), less, needs, LIMITS);
        assertThat(findings(less, needs, from)).isEmpty();
        assertThat(from.amounts().cost()).isCloseTo(found().amounts().cost(), within(0.2));
        Outcome.Found atOnce = planner.atOnce(found(), less, needs).orElseThrow();
        assertThat(findings(less, needs, atOnce)).isEmpty();
        assertThat(atOnce.amounts().cost()).isBetween(53.46, 55.0);
    }

    @Test
    void withoutMoneyThereIsNone() {
        Outcome none = planner.plan(household.withBudget(1.0), needs, LIMITS);
        assertThat(none).isInstanceOf(Outcome.None.class);
        assertThat(((Outcome.None) none).provedImpossible()).isTrue();
    }

    /** What solves the model keeps to every limit where limits are rows of their own. */
    @Test
    void limitsAsRowsSayTheSame() {
        Outcome.Found found = found();
        Map<String, Double> byName = new HashMap<>();
        LinearModel<Wish> usual = found.model().linearModel();
        usual.variables().forEach(v -> byName.put(v.name(), found.solution().value(v)));
        LinearModel<Wish> rows = RationModel.withLimitsAsRows(
                        household, Demo.knowledge(), needs, RationPlanner.sharesByNeed(needs))
                .linearModel();
        double[] values = new double[rows.variables().size()];
        for (Variable v : rows.variables()) {
            values[v.index()] = byName.getOrDefault(v.name(), 0.0);
            assertThat(values[v.index()]).as(v.name()).isBetween(v.lower() - 1e-6, v.upper() + 1e-6);
        }
        assertThatCode(() -> rows.check(values)).doesNotThrowAnyException();
        assertThat(rows.objective().value(values)).isCloseTo(found.solution().objective(), within(1e-6));
        assertThat(rows.rows().size()).isGreaterThan(usual.rows().size());
    }
}
