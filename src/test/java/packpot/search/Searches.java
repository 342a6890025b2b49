package packpot.search;

import java.util.List;
import packpot.solver.LinearModel;
import packpot.solver.OrToolsSolver;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/** The search of our own, which tells what it leaves to the library. */
public final class Searches {
    private Searches() {}

    /** A search that says so whenever it asks the library in its place. */
    public static Search telling(Runnable left) {
        Solver library = new OrToolsSolver();
        return new Search(asking(library, left));
    }

    /** A search that gives up after so much work, and says so whenever it asks the library then. */
    static Search givingUp(long mostWork, Runnable left) {
        return new Search(asking(new OrToolsSolver(), left), mostWork);
    }

    private static Solver asking(Solver library, Runnable asked) {
        return new Solver() {
            @Override
            public <T> Solution solve(LinearModel<T> model, SolveLimits limits) {
                return solve(model, limits, List.of());
            }

            @Override
            public <T> Solution solve(LinearModel<T> model, SolveLimits limits, List<Double> start) {
                asked.run();
                return library.solve(model, limits, start);
            }
        };
    }
}
