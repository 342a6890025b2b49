package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Reference.Line;
import packpot.solver.LinearModel;
import packpot.solver.LinearSolution;
import packpot.solver.Netlib;
import packpot.solver.OrToolsSolver;

/** Published optima of NETLIB, by the library that solves our linear models and by the simplex method of our own search. */
class NetlibTest {
    private static final double SAME = 1e-6;
    /** What the search leaves to the library. */
    private static final Set<String> LOST = Set.of("BLEND", "SHARE1B", "BRANDY");

    static Stream<Line> instances() {
        return Netlib.instances();
    }

    @Test
    void allOfThemAreThere() {
        assertThat(instances()).hasSize(20);
    }

    @ParameterizedTest
    @MethodSource("instances")
    void theInstanceIsTheOneThatWasPublished(Line instance) {
        LinearModel<String> model = Netlib.model(instance.text("instance"));
        // The published count of rows has the objective among them.
        assertThat(model.rows()).hasSize((int) instance.number("rows_incl_cost") - 1);
        assertThat(model.variables()).hasSize((int) instance.number("columns"));
    }

    @Tag("native")
    @ParameterizedTest
    @MethodSource("instances")
    void theLibraryHasThePublishedOptimum(Line instance) {
        LinearSolution solution = new OrToolsSolver().solveLinear(Netlib.model(instance.text("instance")), 60);
        double published = instance.number("optimal_value");
        assertThat(solution.objective()).isCloseTo(published, within(SAME * Math.abs(published)));
    }

    /** Our models have bounds on all sides; where these have none, digits may be lost, and the search says so itself. */
    @ParameterizedTest
    @MethodSource("instances")
    void theSimplexMethodOfTheSearchHasItOrSaysThatDigitsWereLost(Line instance) {
        String name = instance.text("instance");
        Compact program = Reducer.reduce(Netlib.model(name)).orElseThrow();
        Tree.Result result = new Tree(program, 0, Long.MAX_VALUE, () -> false).search(null);
        double published = instance.number("optimal_value");
        double little = SAME * Math.abs(published);
        assertThat(result.lost()).isEqualTo(LOST.contains(name));
        if (!result.lost()) {
            assertThat(program.cost(Objects.requireNonNull(result.x()))).isCloseTo(published, within(little));
        }
        assertThat(result.bound()).isLessThanOrEqualTo(published + little);
    }
}
