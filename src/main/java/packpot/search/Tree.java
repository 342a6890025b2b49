package packpot.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import packpot.search.DualSimplex.End;

/**
 * Branch and bound. The search goes down to the nearer side of a whole number and takes up the branch with the lowest bound
 * whenever it comes to an end. A branch is left only for a bound or an impossibility that is reckoned from the program itself.
 */
final class Tree {
    private static final int DIVE_WITHOUT_SOLUTION = 5;
    private static final int DIVE_WITH_SOLUTION = 20;
    private static final long STEPS_BETWEEN_LOOKS = 200;

    /** How far a column may go. */
    private record Decision(int column, double low, double high) {}

    /** What is decided beside what the parent has decided. */
    private record Node(@Nullable Node parent, List<Decision> decisions, double bound, int depth) {}

    /**
     * How a search ended.
     *
     * @param x values of the columns; null where none were found
     * @param bound nothing costs less
     * @param complete whether all was searched: the values are within the gap, or there are none
     * @param lost whether digits were lost, so that another solver should be asked
     */
    @SuppressWarnings("ArrayRecordComponent")
    record Result(double @Nullable [] x, double bound, boolean complete, boolean lost) {}

    private final Compact program;
    private final double gap;
    private final BooleanSupplier stop;
    private final Work work = new Work();
    private long mostWork;
    private final DualSimplex simplex;
    private final Brancher brancher;
    private final PriorityQueue<Node> open =
            new PriorityQueue<>(Comparator.comparingDouble(Node::bound).thenComparingInt(node -> -node.depth()));
    private double @Nullable [] best;
    private double bestCost = Double.POSITIVE_INFINITY;
    /** No solution in what was left costs less. */
    private double leastLeft = Double.POSITIVE_INFINITY;

    private long nodes;
    private boolean lost;
    private boolean stopped;

    /**
     * @param gap within which a solution is good enough, as a share of its cost
     * @param mostWork after which the search is given up, in entries of dictionaries
     * @param stop asked at each node, and now and then within one
     */
    Tree(Compact program, double gap, long mostWork, BooleanSupplier stop) {
        this.program = program;
        this.gap = gap;
        this.mostWork = mostWork;
        this.stop = stop;
        simplex = new DualSimplex(new Dictionary(program), work);
        brancher = new Brancher(program.columns());
    }

    /**
     * Searches.
     *
     * @param start values of the columns to begin with; NaN for those not known; null for none
     */
    Result search(double @Nullable [] start) {
        if (!simplex.dictionary().isDualFeasible()) {
            return new Result(null, Double.NEGATIVE_INFINITY, false, true);
        }
        if (start != null) {
            begin(start);
        }
        return search(new Node(null, List.of(), Double.NEGATIVE_INFINITY, 0));
    }

    /** Goes on with a search that was given up for its work; the more it may do, from now on. */
    Result goOn(long moreWork) {
        mostWork = work.entries() + moreWork;
        stopped = false;
        return search(next());
    }

    private Result search(@Nullable Node first) {
        @Nullable Node node = first;
        while (node != null && !lost) {
            @Nullable Node below = ends() ? unfinished(node) : visit(node);
            node = below == null && !stopped ? next() : below;
        }
        double bound = Math.min(Math.min(leastLeft, brancher.leastDear()), bestCost);
        for (Node left : open) {
            bound = Math.min(bound, left.bound());
        }
        return new Result(best, lost ? Double.NEGATIVE_INFINITY : bound, open.isEmpty() && !lost, lost);
    }

    /** Takes whole numbers as they are given, and looks for the rest. */
    private void begin(double[] start) {
        DualSimplex copy = simplex.copy();
        for (int j = 0; j < start.length; j++) {
            if (program.whole(j) && !Double.isNaN(start[j])) {
                double inside = Math.min(
                        program.upper()[j], Math.max(program.lower()[j], Wholes.rounded(program, j, start[j])));
                copy.dictionary().bound(j, inside, inside);
            }
        }
        End end;
        do {
            end = copy.solve(Double.POSITIVE_INFINITY, STEPS_BETWEEN_LOOKS);
        } while (end == End.LIMIT && !stop.getAsBoolean());
        if (end == End.OPTIMAL) {
            keep(Diver.dive(copy, Double.POSITIVE_INFINITY));
        }
    }

    private @Nullable Node next() {
        Node node = open.poll();
        if (node != null && node.bound() >= dear()) {
            leastLeft = Math.min(leastLeft, node.bound());
            open.clear();
            return null;
        }
        return node;
    }

    private double dear() {
        return bestCost - gap * Math.abs(bestCost);
    }

    private void keep(double @Nullable [] x) {
        if (x != null && program.cost(x) < bestCost) {
            bestCost = program.cost(x);
            best = x;
        }
    }

    private void take(Node node) {
        double[] low = program.lower().clone();
        double[] high = program.upper().clone();
        for (Node at = node; at != null; at = at.parent()) {
            for (Decision decision : at.decisions()) {
                int j = decision.column();
                low[j] = Math.max(low[j], decision.low());
                high[j] = Math.min(high[j], decision.high());
            }
        }
        for (int j = 0; j < low.length; j++) {
            if (program.whole(j)) {
                simplex.dictionary().bound(j, low[j], high[j]);
            }
        }
    }

    /** Solves a node; gives the child to go on with, or null where nothing is left below it. */
    private @Nullable Node visit(Node node) {
        nodes++;
        simplex.dictionary().tidy();
        take(node);
        Dictionary dictionary = simplex.dictionary();
        List<Decision> decided = new ArrayList<>();
        boolean rebuilt = false;
        while (true) {
            End end = solve();
            if (end == End.LIMIT || ends()) {
                return unfinished(node);
            }
            lost |= end == End.LOST;
            if (end == End.LOST || end == End.IMPOSSIBLE) {
                return null;
            }
            double[] reduced = new double[program.columns()];
            double own = Certificate.bound(dictionary, reduced);
            if (end == End.OPTIMAL && !rebuilt && own < dictionary.cost() - DualSimplex.WEAK * Math.abs(own)) {
                rebuilt = true;
                dictionary.rebuild();
                continue;
            }
            double bound = Math.max(node.bound(), own);
            if (end == End.DEAR || bound >= dear()) {
                leastLeft = Math.min(leastLeft, bound);
                return null;
            }
            int[] fractional = Wholes.fractional(dictionary);
            if (fractional.length == 0) {
                double @Nullable [] x = Wholes.solution(simplex);
                lost |= x == null;
                keep(x);
                leastLeft = Math.min(leastLeft, bound);
                return null;
            }
            if (decided.isEmpty() && nodes % (best == null ? DIVE_WITHOUT_SOLUTION : DIVE_WITH_SOLUTION) == 1) {
                keep(Diver.dive(simplex, dear()));
                if (bound >= dear()) {
                    leastLeft = Math.min(leastLeft, bound);
                    return null;
                }
            }
            fix(own, reduced, decided);
            Brancher.Choice choice = brancher.choose(simplex, fractional, dear());
            int j = choice.column();
            Decision down = new Decision(j, dictionary.lower[j], choice.floor());
            Decision up = new Decision(j, choice.floor() + program.unit()[j], dictionary.upper[j]);
            if (choice.only() == Brancher.Only.BOTH) {
                open.add(child(node, decided, choice.upFirst() ? down : up, bound));
                return child(node, decided, choice.upFirst() ? up : down, bound);
            }
            Decision forced = choice.only() == Brancher.Only.UP ? up : down;
            decided.add(forced);
            dictionary.bound(j, forced.low(), forced.high());
        }
    }

    /** Solves the node that was taken; ends at {@link End#LIMIT} when told to stop. */
    private End solve() {
        while (true) {
            End end = simplex.solve(dear(), STEPS_BETWEEN_LOOKS);
            if (end != End.LIMIT || ends()) {
                return end;
            }
        }
    }

    private boolean ends() {
        return work.entries() > mostWork || stop.getAsBoolean();
    }

    private @Nullable Node unfinished(Node node) {
        open.add(node);
        stopped = true;
        return null;
    }

    private static Node child(Node parent, List<Decision> decided, Decision last, double bound) {
        List<Decision> decisions = new ArrayList<>(decided);
        decisions.add(last);
        return new Node(parent, decisions, bound, parent.depth() + 1);
    }

    /** What a whole number costs shows how far it may go from its bound. */
    private void fix(double bound, double[] reduced, List<Decision> decided) {
        double room = dear() - bound;
        if (Double.isInfinite(room)) {
            return;
        }
        Dictionary dictionary = simplex.dictionary();
        for (int j = 0; j < reduced.length; j++) {
            double price = Math.abs(reduced[j]) * program.unit()[j];
            if (price <= Dictionary.DUAL || dictionary.lower[j] == dictionary.upper[j]) {
                continue;
            }
            double steps = Math.floor(room / price);
            double far = steps * program.unit()[j];
            double low =
                    reduced[j] < 0 ? Math.max(dictionary.lower[j], dictionary.upper[j] - far) : dictionary.lower[j];
            double high =
                    reduced[j] > 0 ? Math.min(dictionary.upper[j], dictionary.lower[j] + far) : dictionary.upper[j];
            if (low > dictionary.lower[j] || high < dictionary.upper[j]) {
                leastLeft = Math.min(leastLeft, bound + price * (steps + 1));
                dictionary.bound(j, low, high);
                decided.add(new Decision(j, low, high));
            }
        }
    }
}
