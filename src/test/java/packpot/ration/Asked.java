package packpot.ration;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import packpot.search.Search;
import packpot.solver.LinearModel;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/** The search of our own, which keeps what it was asked. It solves models without whole numbers too, with one that is 0. */
final class Asked implements Solver {
    /** One question, and its answer. */
    record Question(LinearModel<?> model, SolveLimits limits, List<Double> start, Solution answer) {}

    final List<Question> questions = new ArrayList<>();
    private final Search search = new Search();
    private final UnaryOperator<Solution> seen;

    Asked() {
        this(UnaryOperator.identity());
    }

    /** With something that becomes of every answer. */
    Asked(UnaryOperator<Solution> seen) {
        this.seen = seen;
    }

    @Override
    public <T> Solution solve(LinearModel<T> model, SolveLimits limits) {
        return solve(model, limits, List.of());
    }

    @Override
    public <T> Solution solve(LinearModel<T> model, SolveLimits limits, List<Double> start) {
        LinearModel<T> whole = model.withFixed(Map.of());
        if (!whole.hasIntegers()) {
            whole.whole("no number", 0, 0);
        }
        Solution found = search.solve(whole, limits, start);
        int size = found.hasValues() ? model.variables().size() : 0;
        Solution answer = seen.apply(new Solution(
                found.status(), found.values().subList(0, size), found.objective(), found.bound(), found.seconds()));
        questions.add(new Question(model, limits, start, answer));
        return answer;
    }
}
