package packpot.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import packpot.search.Search;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;

/** A model with a few things changed, beside the model itself. */
class VariantTest {
    private final LinearModel<String> model = new LinearModel<>();
    private final Variable packs = model.whole("packs", 0, 100);
    private final Variable loose = model.variable("loose", 0, 50);
    private final Row<String> need =
            model.atLeast("grams", new Expression().add(7, packs).add(1, loose), 20, "tag");

    VariantTest() {
        model.objective().add(5, packs).add(0.8, loose);
    }

    private static Solution solve(LinearModel<String> model) {
        return new Search().solve(model, new SolveLimits(20, 0));
    }

    @Test
    void unchangedItIsTheSameModel() {
        assertThat(MpsWriter.write(new Variant<>(model).model(), "m")).isEqualTo(MpsWriter.write(model, "m"));
        assertThat(new Variant<>(model).model().rows().get(0).tag()).isEqualTo("tag");
    }

    @Test
    void everyChangeIsMadeAndTheOriginalStays() {
        String before = MpsWriter.write(model, "m");
        LinearModel<String> changed = new Variant<>(model)
                .shift(need, 7, 0)
                .add(need, 1, new Expression().add(1, loose))
                .charge(2, new Expression().add(1, loose))
                .bound(loose, 1, 3)
                .model();
        Row<String> row = changed.rows().get(0);
        assertThat(row.lower()).isEqualTo(27);
        assertThat(row.upper()).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(row.expression().coefficient(loose)).isEqualTo(2);
        assertThat(changed.objective().coefficient(loose)).isCloseTo(2.8, within(1e-12));
        assertThat(changed.variables().get(loose.index()).upper()).isEqualTo(3);
        assertThat(changed.variables().get(packs.index()).integer()).isTrue();
        assertThat(MpsWriter.write(model, "m")).isEqualTo(before);
    }

    @Tag("native")
    @Test
    void integersFixedLeaveALinearModelWithTheSameOptimum() {
        Solution solution = solve(model);
        LinearModel<String> fixed =
                new Variant<>(model).withIntegersFixed(solution::value).model();
        assertThat(fixed.hasIntegers()).isFalse();
        assertThat(new OrToolsSolver().solveLinear(fixed, 20).objective())
                .isCloseTo(solution.objective(), within(1e-9));
    }

    @Test
    void anotherObjectiveTakesThePlaceOfTheOld() {
        LinearModel<String> other =
                new Variant<>(model).minimise(new Expression().add(1, packs)).model();
        assertThat(other.objective().coefficient(loose)).isZero();
        assertThat(solve(other).objective()).isZero();
    }

    @Tag("native")
    @Test
    void aStartDoesNotChangeTheOptimum() {
        for (List<Double> start : List.of(List.of(2.0, 6.0), List.of(0.0, 0.0), List.of(3.0))) {
            Solution solution = new OrToolsSolver().solve(model, new SolveLimits(20, 0), start);
            assertThat(solution.objective()).isCloseTo(14.8, within(1e-9));
        }
    }
}
