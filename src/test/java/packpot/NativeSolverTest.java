package packpot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Glpsol.Answer;
import packpot.search.Searches;
import packpot.solver.LinearModel;
import packpot.solver.LinearSolution;
import packpot.solver.OrToolsSolver;
import packpot.solver.Solution;
import packpot.solver.Solution.Status;
import packpot.solver.SolveLimits;

/**
 * Every demo and {@value GeneratedScenarios#COUNT} generated scenarios, solved here and by glpsol from the MPS text: the
 * same optimum of the relaxation; of the whole model no bound that the other's solution is below, and no plan where the
 * other has proved that there is none. Without glpsol this is skipped, with PACKPOT_GLPSOL set it is not. It also takes
 * both times.
 */
class NativeSolverTest {
    private static final double SAME = 1e-6;
    private static final double GAP = 1e-3;
    /** Most models take either of the two much less; what is left undecided is counted. */
    private static final int SECONDS = Integer.getInteger("packpot.seconds", 1);

    private static final SolveLimits LIMITS = new SolveLimits(SECONDS, GAP);
    /** Less than this is not measured well. */
    private static final double LEAST_SECONDS = 0.005;

    private static final List<Compared> COMPARED = new ArrayList<>();

    private static @Nullable Glpsol glpsol;

    /** One model with both answers and their seconds, those of glpsol without its start and its reading. */
    private record Compared(
            String name, Solution ours, double ourSeconds, Answer theirs, double theirSeconds, boolean byItself) {
        double ratio() {
            return ourSeconds / Math.max(LEAST_SECONDS, theirSeconds);
        }

        boolean decided() {
            return ours.status() == Status.OPTIMAL || ours.status() == Status.INFEASIBLE;
        }

        boolean theyDecided() {
            return theirs.status() == Status.OPTIMAL || theirs.status() == Status.INFEASIBLE;
        }
    }

    @BeforeAll
    static void find() {
        glpsol = Glpsol.find();
        assumeTrue(glpsol != null, "glpsol is not installed (package glpk-utils)");
        // Ours is timed in a process that has solved before, as the page's has.
        Searches.telling(() -> {})
                .solve(Demo.model(Demo.read(Demo.text(Demo.file("foster-home")))), new SolveLimits(5, GAP));
    }

    static Stream<Path> scenarios() {
        return Stream.concat(Demo.files().stream(), GeneratedScenarios.files());
    }

    @ParameterizedTest
    @MethodSource("scenarios")
    void bothSolversAgree(Path file) {
        Glpsol other = Objects.requireNonNull(glpsol);
        LinearModel<?> model = Demo.model(Demo.read(Demo.text(file)));
        String name = String.valueOf(file.getFileName()).replace(".json", "");
        Path mps = Path.of("target", "models", name + ".mps");
        Glpsol.write(model, name, mps);

        relaxation(new OrToolsSolver().solveLinear(model.relaxed(), 60), other.relaxation(mps));

        AtomicBoolean left = new AtomicBoolean();
        long begun = System.nanoTime();
        Solution ours = Searches.telling(() -> left.set(true)).solve(model, LIMITS);
        double seconds = (System.nanoTime() - begun) / 1e9;
        Answer theirs = other.solve(mps, GAP, SECONDS);
        double net = theirs.seconds() - other.startUp(mps);
        COMPARED.add(new Compared(name, ours, seconds, theirs, net, !left.get()));

        if (ours.status() == Status.INFEASIBLE) {
            assertThat(theirs.hasSolution()).isFalse();
        }
        if (ours.status() == Status.OPTIMAL) {
            assertThat(ours.relativeGap()).isLessThanOrEqualTo(GAP);
        }
        if (ours.hasValues()) {
            assertThat(theirs.status()).isNotEqualTo(Status.INFEASIBLE);
            assertThat(theirs.bound()).isLessThanOrEqualTo(ours.objective() * (1 + SAME));
        }
        if (ours.hasValues() && theirs.hasSolution()) {
            assertThat(ours.bound()).isLessThanOrEqualTo(theirs.cost() * (1 + SAME));
        }
        if (ours.status() == Status.OPTIMAL && theirs.status() == Status.OPTIMAL) {
            assertThat(ours.objective()).isCloseTo(theirs.cost(), within(2 * GAP * theirs.cost()));
        }
    }

    private static void relaxation(LinearSolution ours, Answer theirs) {
        assertThat(ours.status()).isEqualTo(theirs.status());
        if (ours.isOptimal()) {
            assertThat(ours.objective()).isCloseTo(theirs.cost(), within(SAME * theirs.cost()));
        }
    }

    @AfterAll
    static void report() {
        if (COMPARED.isEmpty()) {
            return;
        }
        System.out.println("Seconds of a solve to a gap of 0.1 %, ours warm in the process, glpsol's less its start:");
        COMPARED.forEach(c -> print(
                "%-16s %-10s %8.3f s  glpsol %-10s %8.3f s  ratio %6.2f%s",
                c.name(),
                c.ours().status(),
                c.ourSeconds(),
                c.theirs().status(),
                c.theirSeconds(),
                c.ratio(),
                c.byItself() ? "" : "  left to the library"));
        ratios("all", COMPARED);
        ratios(
                "decided by either",
                COMPARED.stream().filter(c -> c.decided() || c.theyDecided()).toList());
        ratios(
                "with a solution",
                COMPARED.stream().filter(c -> c.ours().hasValues()).toList());
        long undecided = count(c -> !c.decided());
        long theirUndecided = count(c -> !c.theyDecided());
        long without = count(c -> c.ours().status() == Status.INFEASIBLE);
        print(
                "without a solution: %d; undecided after %d s: %d here, %d there; left to the library: %d",
                without, SECONDS, undecided, theirUndecided, count(c -> !c.byItself()));
        // A comparison with nothing to compare with would say nothing.
        assertThat(undecided).isLessThanOrEqualTo(COMPARED.size() / 3);
        assertThat(theirUndecided).isLessThanOrEqualTo(COMPARED.size() / 3);
        assertThat(without).isBetween(COMPARED.size() / 20L, COMPARED.size() / 2L);
    }

    private static long count(Predicate<Compared> which) {
        return COMPARED.stream().filter(which).count();
    }

    private static void ratios(String which, List<Compared> models) {
        double[] ratios = models.stream().mapToDouble(Compared::ratio).sorted().toArray();
        print(
                "%s, %d models: ratio in the median %.2f, quartiles %.2f and %.2f; more than twice as slow: %d",
                which,
                ratios.length,
                ratios[ratios.length / 2],
                ratios[ratios.length / 4],
                ratios[3 * ratios.length / 4],
                models.stream().filter(c -> c.ratio() > 2).count());
    }

    private static void print(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }
}
