package packpot.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import packpot.solver.CancelledException;
import packpot.solver.Expression;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;
import packpot.solver.Solution;
import packpot.solver.Solution.Status;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import packpot.solver.SolverException;

/**
 * What is known where the search gave up and another solver went on. The model is the knapsack of S. Martello and P. Toth,
 * Knapsack Problems (1990), example 2.1: 107 at most, and 107.55 with fractions.
 */
class JointAnswerTest {
    private static final double[] WORTH = {70, 20, 39, 37, 7, 5, 10};
    private static final double[] WEIGHT = {31, 10, 20, 19, 4, 3, 6};
    private static final List<Double> BEST = List.of(1.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0);
    /** Worth 102, and 48 in weight. */
    private static final List<Double> START = List.of(1.0, 1.0, 0.0, 0.0, 1.0, 1.0, 0.0);

    private final List<List<Double>> asked = new ArrayList<>();

    private static LinearModel<String> knapsack() {
        LinearModel<String> model = new LinearModel<>();
        Expression room = new Expression();
        for (int j = 0; j < WORTH.length; j++) {
            Variable taken = model.choice("u" + j);
            model.objective().add(-WORTH[j], taken);
            room.add(WEIGHT[j], taken);
        }
        model.atMost("room", room, 50, null);
        return model;
    }

    private Solver other(Solution answer) {
        return new Solver() {
            @Override
            public <T> Solution solve(LinearModel<T> model, SolveLimits limits) {
                return solve(model, limits, List.of());
            }

            @Override
            public <T> Solution solve(LinearModel<T> model, SolveLimits limits, List<Double> start) {
                asked.add(start);
                if (answer.status() == Status.UNBOUNDED) {
                    throw new SolverException("it failed");
                }
                return answer;
            }
        };
    }

    /** The search gives up at once; what the other says then, and what is made of it within a hundredth. */
    private Solution after(Status status, List<Double> values, double objective, double bound) {
        Search search = new Search(other(new Solution(status, values, objective, bound, 1)), 0);
        return search.solve(knapsack(), new SolveLimits(60, 0.01), START);
    }

    @Test
    void theOtherBeginsWithWhatWasFound() {
        Solution found = after(Status.FEASIBLE, BEST, -107, -120);
        assertThat(asked).containsExactly(START);
        assertThat(found.values()).isEqualTo(BEST);
        assertThat(found.objective()).isEqualTo(-107);
        assertThat(found.bound()).isEqualTo(-120);
        assertThat(found.status()).isEqualTo(Status.FEASIBLE);
        assertThat(found.seconds()).isBetween(1e-9, 60.0);
    }

    @Test
    void theBetterValuesAndTheBetterBoundAreTaken() {
        Solution worse = after(Status.FEASIBLE, List.of(1.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0), -70, -120);
        assertThat(worse.values()).isEqualTo(START);
        assertThat(worse.objective()).isEqualTo(-102);
        assertThat(worse.bound()).isEqualTo(-120);
        // No more than all of them together, 188, whoever says so.
        assertThat(after(Status.FEASIBLE, BEST, -107, -500).bound()).isEqualTo(-188);
        Solution proved = after(Status.FEASIBLE, START, -102, -103);
        assertThat(proved.status()).isEqualTo(Status.OPTIMAL);
        assertThat(proved.bound()).isEqualTo(-103);
        assertThat(after(Status.FEASIBLE, BEST, -107, -107 * 1.0101).status()).isEqualTo(Status.FEASIBLE);
        assertThat(after(Status.FEASIBLE, BEST, -107, -107 * 1.0099).status()).isEqualTo(Status.OPTIMAL);
        // A bound that says more than what was found cannot be right, and says no more than that.
        assertThat(after(Status.OPTIMAL, List.of(1.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0), -70, -70)
                        .bound())
                .isEqualTo(-102);
    }

    @Test
    void whereTheOtherKnowsNothingWhatWasFoundStays() {
        for (Status status : List.of(Status.INFEASIBLE, Status.UNKNOWN, Status.UNBOUNDED)) {
            Solution kept = after(status, List.of(), Double.NaN, Double.NaN);
            assertThat(kept.status()).isEqualTo(Status.FEASIBLE);
            assertThat(kept.values()).isEqualTo(START);
            assertThat(kept.bound()).isEqualTo(-188);
        }
        Search nothing = new Search(other(new Solution(Status.UNBOUNDED, List.of(), 0, 0, 1)), 0);
        assertThatThrownBy(() -> nothing.solve(knapsack(), new SolveLimits(60, 0.01)))
                .hasMessage("it failed");
    }

    /** Things that are worth ten more than they weigh: S. Martello and P. Toth call such knapsacks strongly correlated. */
    private static LinearModel<String> correlated() {
        Random random = new Random(5);
        LinearModel<String> model = new LinearModel<>();
        Expression room = new Expression();
        for (int j = 0; j < 20; j++) {
            int weight = 10 + random.nextInt(90);
            Variable taken = model.choice("u" + j);
            model.objective().add(-weight - 10, taken);
            room.add(weight, taken);
        }
        model.atMost("room", room, 500, null);
        return model;
    }

    /** The least work after which a search within a gap has come to its end. */
    private static long whole(Compact program, double gap, double[] start) {
        long least = 0;
        long most = 1L << 30;
        while (least < most) {
            long middle = (least + most) / 2;
            boolean done =
                    new Tree(program, gap, middle, () -> false).search(start).complete();
            most = done ? middle : most;
            least = done ? least : middle + 1;
        }
        return most;
    }

    /** The best is known, and so far from the bound with fractions that a half of it is near, and an eighth is not. */
    @Test
    void whatIsNearIsGrantedFourTimesMore() {
        LinearModel<String> model = correlated();
        Compact program = Reducer.reduce(model).orElseThrow();
        Solution best = new Search().solve(model, new SolveLimits(60, 0));
        DualSimplex relaxed = new DualSimplex(new Dictionary(program), new Work());
        relaxed.solve(Double.POSITIVE_INFINITY, 100);
        double apart = 1 - relaxed.dictionary().cost() / best.objective();
        for (double gap : new double[] {apart / -2, apart / -8}) {
            long whole = whole(program, gap, program.shrink(best.values()));
            for (double share : new double[] {0.3, 0.15}) {
                asked.clear();
                Solution unknown = new Solution(Status.UNKNOWN, List.of(), Double.NaN, Double.NaN, 1);
                Search search = new Search(other(unknown), (long) (share * whole));
                Solution found = search.solve(model, new SolveLimits(60, gap), best.values());
                boolean alone = gap > apart / -3 && share > 0.2;
                assertThat(asked).hasSize(alone ? 0 : 1);
                assertThat(found.status()).isEqualTo(alone ? Status.OPTIMAL : Status.FEASIBLE);
            }
        }
    }

    @Test
    void whatIsLargeIsLeftToTheOtherAtOnce() {
        for (int n : new int[] {99_000, 101_000}) {
            asked.clear();
            LinearModel<String> model = new LinearModel<>();
            Variable before = model.whole("v", 0, 9);
            for (int j = 1; j < n; j++) {
                Variable next = model.whole("v", 0, 9);
                if (j <= 400) {
                    model.atLeast(
                            "pair", new Expression().add(1 + j % 5, before).add(1, next), 1, null);
                }
                before = next;
            }
            Solution answer = new Solution(Status.UNKNOWN, List.of(), Double.NaN, Double.NaN, 1);
            Solution found = new Search(other(answer)).solve(model, new SolveLimits(0, 0.01));
            // What is begun here, and has no time, is not asked of anybody.
            assertThat(asked).hasSize(n > 100_000 ? 1 : 0);
            assertThat(found == answer).isEqualTo(n > 100_000);
        }
    }

    /**
     * A million (n - y) at least 0.5: n at half a millionth is whole for the search, and in its own scale the row is kept to half
     * a millionth. In the model's it is not, and n has to be 1.
     */
    @Test
    void whatDoesNotKeepToTheModelIsNoAnswer() {
        LinearModel<String> model = new LinearModel<>();
        Variable n = model.whole("n", 0, 9);
        Variable y = model.variable("y", 0, 9);
        model.objective().add(1, n).add(1, y);
        model.atLeast("row", new Expression().add(1e6, n).add(-1e6, y), 0.5, null);
        Solution answer = new Solution(Status.OPTIMAL, List.of(1.0, 0.0), 1, 1, 1);
        Solution found = new Search(other(answer)).solve(model, new SolveLimits(60, 1e-9));
        assertThat(asked).containsExactly(List.of());
        assertThat(found.values()).isEqualTo(answer.values());
    }

    /** G. Cornuéjols and M. Dawande, A class of hard small 0-1 programs (1998): numbers halved exactly, in several rows. */
    private static LinearModel<String> hard() {
        Random random = new Random(7);
        LinearModel<String> model = new LinearModel<>();
        Variable[] u = new Variable[40];
        for (int j = 0; j < u.length; j++) {
            u[j] = model.choice("u" + j);
            model.objective().add(1 + random.nextInt(9), u[j]);
        }
        for (int i = 0; i < 5; i++) {
            Expression sum = new Expression();
            int all = 0;
            for (Variable v : u) {
                int number = random.nextInt(100);
                all += number;
                sum.add(number, v);
            }
            model.equal("half", sum, all / 2, null);
        }
        return model;
    }

    @Test
    void whatIsCancelledOnTheWayEnds() {
        Search search = new Search();
        CompletableFuture<Void> told = CompletableFuture.runAsync(
                search::cancel, CompletableFuture.delayedExecutor(300, TimeUnit.MILLISECONDS));
        assertThatThrownBy(() -> search.solve(hard(), new SolveLimits(60, 0.01)))
                .isInstanceOf(CancelledException.class);
        told.join();
    }

    @Test
    void whatRunsOutOfTimeEndsWithoutTheOther() {
        Search search = new Search(other(new Solution(Status.UNKNOWN, List.of(), Double.NaN, Double.NaN, 1)));
        Solution found = search.solve(hard(), new SolveLimits(0.2, 0.01));
        assertThat(found.status()).isEqualTo(Status.UNKNOWN);
        assertThat(found.seconds()).isBetween(0.2, 30.0);
        assertThat(asked).isEmpty();
    }
}
