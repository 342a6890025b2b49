package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import packpot.solver.CancelledException;
import packpot.solver.Expression;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;
import packpot.solver.Solution;
import packpot.solver.Solution.Status;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/** What the search leaves to another solver, and what it makes of its answer. */
class HandoverTest {
    private static final SolveLimits LIMITS = new SolveLimits(60, 0.01);
    private static final double INF = Double.POSITIVE_INFINITY;

    /** Answers what it is told to, and remembers what it was asked. */
    private static final class Other implements Solver {
        private final Solution answer;
        private final List<List<Double>> starts = new ArrayList<>();
        private double seconds;

        Other(Solution answer) {
            this.answer = answer;
        }

        @Override
        public <T> Solution solve(LinearModel<T> model, SolveLimits limits) {
            return solve(model, limits, List.of());
        }

        @Override
        public <T> Solution solve(LinearModel<T> model, SolveLimits limits, List<Double> start) {
            starts.add(start);
            seconds = limits.seconds();
            return answer;
        }
    }

    /** It pays to let x grow, and only another variable without a bound holds it: no dictionary begins here. */
    private static LinearModel<String> withoutBounds() {
        LinearModel<String> model = new LinearModel<>();
        Variable n = model.whole("n", 0, 3);
        Variable x = model.variable("x", 0, INF);
        Variable y = model.variable("y", 0, INF);
        model.objective().add(-1, x).add(2, y).add(1, n);
        model.atMost("hold", new Expression().add(1, x).add(-1, y).add(-1, n), 4, null);
        return model;
    }

    private static Solution answered(Status status, double objective, double bound) {
        List<Double> values =
                status == Status.INFEASIBLE || status == Status.UNKNOWN ? List.of() : List.of(0.0, 4.0, 0.0);
        return new Solution(status, values, objective, bound, 1);
    }

    private static Solution asked(Solution answer) {
        Other other = new Other(answer);
        Solution found = new Search(other).solve(withoutBounds(), LIMITS, List.of(1.0, 2.0));
        assertThat(other.starts).containsExactly(List.of(1.0, 2.0));
        assertThat(other.seconds).isBetween(1.0, 60.0);
        return found;
    }

    @Test
    void anAnswerWithinTheGapIsProved() {
        Solution found = asked(answered(Status.FEASIBLE, -4, -4.039));
        assertThat(found.status()).isEqualTo(Status.OPTIMAL);
        assertThat(found.values()).containsExactly(0.0, 4.0, 0.0);
        assertThat(found.objective()).isEqualTo(-4);
        assertThat(found.bound()).isEqualTo(-4.039);
        assertThat(found.seconds()).isLessThan(60);
        assertThat(asked(answered(Status.OPTIMAL, -4, -4.041)).status()).isEqualTo(Status.FEASIBLE);
        assertThat(asked(answered(Status.OPTIMAL, -4, -3.9)).bound()).isEqualTo(-4);
    }

    @Test
    void withoutAnAnswerNothingIsKnownUnlessItIsProved() {
        assertThat(asked(answered(Status.INFEASIBLE, 0, 0)).status()).isEqualTo(Status.INFEASIBLE);
        Solution unknown = asked(answered(Status.UNKNOWN, 0, 0));
        assertThat(unknown.status()).isEqualTo(Status.UNKNOWN);
        assertThat(unknown.values()).isEmpty();
        assertThat(asked(answered(Status.UNBOUNDED, 0, 0)).status()).isEqualTo(Status.UNKNOWN);
    }

    @Test
    void aModelWithoutWholeNumbersIsLeftToTheOther() {
        Solution answer = answered(Status.OPTIMAL, -4, -4);
        Other other = new Other(answer);
        assertThat(new Search(other).solve(withoutBounds().relaxed(), LIMITS)).isSameAs(answer);
        assertThat(other.starts).containsExactly(List.of());
    }

    @Test
    void whatIsSolvedHereIsNotAsked() {
        LinearModel<String> model = new LinearModel<>();
        Variable n = model.whole("n", 0, 3);
        model.objective().add(1, n);
        model.atLeast("need", new Expression().add(2, n), 3, null);
        Other other = new Other(answered(Status.OPTIMAL, 0, 0));
        Solution found = new Search(other).solve(model, LIMITS);
        assertThat(found.values()).containsExactly(2.0);
        assertThat(found.seconds()).isBetween(0.0, 60.0);
        assertThat(other.starts).isEmpty();
        model.atMost("little", new Expression().add(1, n), 1, null);
        Solution none = new Search(other).solve(model, LIMITS);
        assertThat(none.status()).isEqualTo(Status.INFEASIBLE);
        assertThat(none.seconds()).isBetween(0.0, 60.0);
        assertThat(other.starts).isEmpty();
    }

    @Test
    void withoutTimeNobodyIsAsked() {
        Other other = new Other(answered(Status.OPTIMAL, -4, -4));
        assertThat(new Search(other)
                        .solve(withoutBounds(), new SolveLimits(0, 0.01))
                        .status())
                .isEqualTo(Status.UNKNOWN);
        assertThat(other.starts).isEmpty();
    }

    @Test
    void aCancelledSearchAsksNobody() {
        Other other = new Other(answered(Status.OPTIMAL, -4, -4));
        Search search = new Search(other);
        search.cancel();
        assertThatThrownBy(() -> search.solve(withoutBounds(), LIMITS)).isInstanceOf(CancelledException.class);
        assertThat(other.starts).isEmpty();
    }
}
