package packpot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.ojalgo.optimisation.Optimisation;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.SolverException;

/**
 * A second solver, in pure Java, searches the whole models of the demos and of generated households. It finds no plan of most of
 * them by itself in a minute, but says of nearly all that have none that they have none. Where there is one it is given half
 * of our plan: which foods and additions there are, to seek packs, doses and bags for; and those, to seek foods for. Nothing
 * that it finds may be cheaper than our bound allows, and where it calls something the optimum that is to be our plan's cost.
 * It is wrong now and then: it says that nothing lies in a model in which our plan lies, or stops at a dearer one. That is
 * counted, our plan being held to every row of the model, and must stay rare.
 *
 * <p>The ordinary run takes every twentieth household. {@code mvn -q test -Dtest=HalvesTest -Dhalves=all} takes all of them.
 */
class HalvesTest {
    private static final boolean ALL = "all".equals(System.getProperty("halves"));
    private static final int EVERY = ALL ? 1 : 20;
    private static final int SECONDS = ALL ? 10 : 2;
    private static final SolveLimits LIMITS = new SolveLimits(30, Demo.GAP);
    /** Relative; both solvers let rows be broken by some 1e-7 of themselves. */
    private static final double SAME = 1e-5;

    private static final Map<Asked, Integer> ASKED = new HashMap<>();

    /** What was asked for, and how that ended. */
    private record Asked(String what, String end) {}

    static Stream<Path> scenarios() {
        List<Path> generated = GeneratedScenarios.files().toList();
        List<Path> some = new ArrayList<>(Demo.files());
        for (int i = 0; i < generated.size(); i += EVERY) {
            some.add(generated.get(i));
        }
        return some.stream();
    }

    @ParameterizedTest
    @MethodSource("scenarios")
    void noHalfIsCheaper(Path file) {
        LinearModel<?> model = Demo.model(Demo.read(Demo.text(file)));
        Solution ours = new SharedSolver().solve(model, LIMITS);
        if (!ours.hasValues()) {
            Optional<Double> theirs = cost("the whole", model, Double.NaN);
            if (ours.status() == Solution.Status.INFEASIBLE) {
                assertThat(theirs).isEmpty();
            }
            return;
        }
        double[] values =
                ours.values().stream().mapToDouble(Double::doubleValue).toArray();
        model.check(values);
        assertThat(ours.objective()).isCloseTo(model.objective().value(values), within(SAME * ours.objective()));
        half("packs, doses and bags", model, ours, true);
        half("foods and additions", model, ours, false);
    }

    private static void half(String what, LinearModel<?> model, Solution ours, boolean choicesAreOurs) {
        Map<Integer, Double> fixed = new HashMap<>();
        for (Variable v : model.variables()) {
            boolean choice = v.lower() >= 0 && v.upper() <= 1;
            if (v.integer() && choice == choicesAreOurs) {
                fixed.put(v.index(), (double) Math.round(ours.value(v)));
            }
        }
        cost(what, model.withFixed(fixed), ours.objective())
                .ifPresent(cost -> assertThat(cost).as(what).isGreaterThanOrEqualTo(ours.bound() * (1 - SAME)));
    }

    /** What the second solver's solution costs, if it has one that keeps to every row. */
    private static Optional<Double> cost(String what, LinearModel<?> model, double ourCost) {
        Optimisation.Result theirs;
        try {
            theirs = OtherSolver.solve(model, false, SECONDS);
        } catch (StackOverflowError e) {
            count(what, "its stack is full");
            return Optional.empty();
        }
        Optimisation.State state = theirs.getState();
        boolean dearer = theirs.getValue() > ourCost * (1 + 2 * Demo.GAP);
        boolean wrong = state == Optimisation.State.INFEASIBLE ? !Double.isNaN(ourCost) : state.isOptimal() && dearer;
        String end = state == Optimisation.State.FAILED ? "nothing in time" : state.name();
        count(what, wrong ? "wrong: " + end : end);
        if (!state.isFeasible()) {
            return Optional.empty();
        }
        double[] values = IntStream.range(0, model.variables().size())
                .mapToDouble(theirs::doubleValue)
                .toArray();
        try {
            model.check(values);
        } catch (SolverException e) {
            count(what, "breaks a row");
            return Optional.empty();
        }
        return Optional.of(theirs.getValue());
    }

    private static void count(String what, String end) {
        ASKED.merge(new Asked(what, end), 1, Integer::sum);
    }

    @AfterAll
    static void report() {
        ASKED.entrySet().stream()
                .map(e -> String.format(
                        Locale.ROOT,
                        "%-24s %-20s %d",
                        e.getKey().what(),
                        e.getKey().end(),
                        e.getValue()))
                .sorted()
                .forEach(System.out::println);
        long agreed = count(end -> end.equals("OPTIMAL"));
        long wrong = count(end -> end.startsWith("wrong"));
        // A comparison with hardly anything to compare with would say nothing.
        assertThat(agreed)
                .isGreaterThan(ASKED.values().stream().mapToInt(n -> n).sum() / 4);
        assertThat(wrong).isLessThan(agreed / 10 + 1);
    }

    private static long count(Predicate<String> which) {
        return ASKED.entrySet().stream()
                .filter(e -> which.test(e.getKey().end()))
                .mapToInt(Map.Entry::getValue)
                .sum();
    }
}
