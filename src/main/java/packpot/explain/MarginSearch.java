package packpot.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import packpot.spread.Odds;
import packpot.spread.Spread;

/**
 * Which margin above the minimums buys certainty: plans with larger margins, each audited and drawn anew, until the smallest
 * whole per cent is found at which every minimum of every dog, taken by itself, is met as often as wished. Margins are
 * halved, which supposes that a larger one is no less certain; what was planned is shown, so that one can see it.
 */
public final class MarginSearch {
    private final Planner planner;
    private final Knowledge knowledge;
    private final SolveLimits limits;
    private final Question question;

    /**
     * What is asked.
     *
     * @param wished how often each minimum should be met, as a share
     * @param largestPercent margin beyond which no plan is made
     */
    public record Question(Spread spread, int draws, long seed, double wished, int largestPercent) {}

    /** What became of a margin. */
    public enum End {
        ENOUGH,
        TOO_LITTLE,
        /** It is proved that there is no plan. */
        NO_PLAN,
        NOT_FOUND_IN_TIME,
        FAILED_AUDIT
    }

    /**
     * A margin that was tried.
     *
     * @param margin above every minimum, as a share
     * @param perDay cost of a day; null without a plan
     * @param odds of its plan; null without one
     */
    public record Tried(
            double margin,
            End end,
            @Nullable Double perDay,
            @Nullable Odds odds) {}

    /**
     * The answer.
     *
     * @param base the scenario's own plan
     * @param tried its own margin and all others, the smallest first
     * @param enough the smallest margin that is enough; null where none was found
     */
    public record Answer(
            Planner.Result.Planned base,
            Odds odds,
            List<Tried> tried,
            @Nullable Tried enough) {
        public Answer {
            tried = List.copyOf(tried);
        }
    }

    public MarginSearch(Knowledge knowledge, Solver solver, SolveLimits limits, Question question) {
        this.planner = new Planner(knowledge, solver);
        this.knowledge = knowledge;
        this.limits = limits;
        this.question = question;
    }

    /** The scenario's own plan. */
    public Planner.Searched plan(Household household) {
        return planner.search(household, limits);
    }

    /** How sure a plan is. */
    public Odds odds(Planner.Result.Planned planned) {
        return Odds.of(
                planned.plan(),
                planned.verdict(),
                planned.household(),
                knowledge,
                question.spread(),
                question.draws(),
                question.seed(),
                question.wished());
    }

    /** The scenario's own plan, with no other margin. */
    public Answer alone(Planner.Result.Planned base) {
        Odds odds = odds(base);
        Tried first = judged(base.household().rules().margin(), base, odds);
        return new Answer(base, odds, List.of(first), first.end() == End.ENOUGH ? first : null);
    }

    /**
     * Searches from the scenario's own plan on, which passed its audit.
     *
     * @param now is told which margin is tried
     */
    public Answer from(Planner.Searched own, Planner.Result.Planned base, Consumer<String> now) {
        Answer alone = alone(base);
        if (alone.enough() != null) {
            return alone;
        }
        Odds odds = alone.odds();
        Household household = base.household();
        List<Tried> tried = new ArrayList<>(alone.tried());
        Tried enough = null;
        int tooLittle = (int) Math.floor(100 * household.rules().margin() + 1e-9);
        int most = question.largestPercent() + 1;
        int next = guess(odds, tooLittle);
        while (next > tooLittle && next < most) {
            now.accept("Planning with a margin of " + next + " %");
            Tried one = tryOne(own, household, next / 100.0);
            tried.add(one);
            if (one.end() == End.TOO_LITTLE) {
                tooLittle = next;
            } else {
                enough = one.end() == End.ENOUGH ? one : enough;
                most = next;
            }
            // Before anything was enough, or too much, the largest margin says whether the search is worth while.
            next = most > question.largestPercent() ? question.largestPercent() : (tooLittle + most) / 2;
        }
        tried.sort(Comparator.comparingDouble(Tried::margin));
        return new Answer(base, odds, tried, enough);
    }

    /** By the formula, as if more of the same foods brought it. */
    private int guess(Odds odds, int tooLittle) {
        double needed = odds.dogs().stream()
                .flatMap(dog -> dog.minimums().stream())
                .filter(minimum -> minimum.share() < question.wished())
                .mapToDouble(Odds.OfMinimum::marginNeeded)
                .max()
                .orElse(0);
        double percent = Math.min(question.largestPercent(), Math.ceil(100 * needed));
        return Math.max(tooLittle + 1, (int) percent);
    }

    private Tried tryOne(Planner.Searched own, Household household, double margin) {
        Household careful = household.withRules(household.rules().withMargin(margin));
        Planner.Result result = planner.searchFrom(own, careful, limits).result();
        if (result instanceof Planner.Result.NoPlan none) {
            return new Tried(margin, none.provedImpossible() ? End.NO_PLAN : End.NOT_FOUND_IN_TIME, null, null);
        }
        Planner.Result.Planned planned = (Planner.Result.Planned) result;
        return judged(margin, planned, odds(planned));
    }

    private Tried judged(double margin, Planner.Result.Planned planned, Odds odds) {
        End end = !planned.verdict().passed()
                ? End.FAILED_AUDIT
                : odds.eachAtLeast(question.wished()) ? End.ENOUGH : End.TOO_LITTLE;
        return new Tried(margin, end, planned.plan().cost().perDay(), odds);
    }
}
