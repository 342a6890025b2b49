package packpot;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import packpot.search.Search;
import packpot.solver.LinearModel;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/**
 * The usual solver, which answers the same question once for all tests of a process: the same model, gap and start. Only
 * what is proved is kept, since that is the answer however long a search may take; what time cut short is searched anew.
 *
 * <p>Limits of time count seconds of the wall, which pass as quickly on a machine that is busy with other tests. A search gets
 * no less than {@value #LEAST_SECONDS} seconds, so that a plan does not come out dearer for that: most need less than one.
 */
public final class SharedSolver implements Solver {
    private static final double LEAST_SECONDS = 30;
    private static final Map<ByteBuffer, Solution> PROVED = new ConcurrentHashMap<>();

    private final Solver solver = new Search();

    @Override
    public <T> Solution solve(LinearModel<T> model, SolveLimits limits) {
        return solve(model, limits, List.of());
    }

    @Override
    public <T> Solution solve(LinearModel<T> model, SolveLimits limits, List<Double> start) {
        ByteBuffer question = question(model, limits.relativeGap(), start);
        Solution known = PROVED.get(question);
        if (known != null) {
            return known;
        }
        SolveLimits patient = new SolveLimits(Math.max(LEAST_SECONDS, limits.seconds()), limits.relativeGap());
        Solution found = solver.solve(model, patient, start);
        if (found.status() == Solution.Status.OPTIMAL || found.status() == Solution.Status.INFEASIBLE) {
            PROVED.put(question, found);
        }
        return found;
    }

    /** A digest of every figure that the solver is given; names and tags do not reach it. */
    private static <T> ByteBuffer question(LinearModel<T> model, double gap, List<Double> start) {
        Digest digest = new Digest();
        digest.figures(gap, start.size(), model.variables().size(), model.rows().size());
        start.forEach(digest::figures);
        model.variables().forEach(v -> digest.figures(v.lower(), v.upper(), v.integer() ? 1 : 0));
        model.rows().forEach(row -> {
            digest.figures(row.lower(), row.upper());
            row.expression().forEach((v, coefficient) -> digest.figures(v.index(), coefficient));
            digest.figures(Double.NaN);
        });
        model.objective().forEach((v, coefficient) -> digest.figures(v.index(), coefficient));
        return ByteBuffer.wrap(digest.sha.digest());
    }

    private static final class Digest {
        private final MessageDigest sha;
        private final ByteBuffer bytes = ByteBuffer.allocate(Double.BYTES);

        Digest() {
            try {
                sha = MessageDigest.getInstance("SHA-256");
            } catch (NoSuchAlgorithmException e) {
                throw new AssertionError(e);
            }
        }

        void figures(double... figures) {
            for (double figure : figures) {
                sha.update(bytes.putDouble(0, figure).rewind());
                bytes.clear();
            }
        }
    }
}
