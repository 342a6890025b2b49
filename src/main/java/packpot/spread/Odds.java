package packpot.spread;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import packpot.audit.NutrientLine;
import packpot.audit.Verdict;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.plan.Plan;

/**
 * How sure a plan is of its minimums.
 *
 * @param draws how many there were
 * @param allMet in how many every minimum of every dog was met
 */
public record Odds(int draws, long seed, List<OfDog> dogs, int allMet) {

    /** More would take minutes. */
    public static final int MOST_DRAWS = 10_000_000;

    public Odds {
        dogs = List.copyOf(dogs);
    }

    /**
     * One dog.
     *
     * @param minimums the least certain first
     * @param allMet draws in which all of them were met
     */
    public record OfDog(String dog, List<OfMinimum> minimums, int allMet) {
        public OfDog {
            minimums = List.copyOf(minimums);
        }
    }

    /**
     * One minimum of a dog.
     *
     * @param key of a nutrient or ratio
     * @param unit of the minimum a day; empty for a ratio
     * @param minimum a day at the dog's portion; for a ratio a plain number
     * @param mean what the plan brings by the table, as a share of the minimum
     * @param spread standard deviation around that, as a share of the minimum
     * @param met draws in which it was met
     * @param share the same as a share of all draws
     * @param standardError of that share, from there being no more draws
     * @param formula the share by the formula for a sum of independent normals
     * @param marginNeeded margin at which it would be met as often as wished, if more of the same brought it; infinite where
     *     none is enough
     */
    public record OfMinimum(
            String key,
            String label,
            String unit,
            double minimum,
            double mean,
            double spread,
            int met,
            double share,
            double standardError,
            double formula,
            double marginNeeded) {}

    /**
     * Draws what an audited plan really brings.
     *
     * @param wished how often a minimum should be met, as a share
     */
    public static Odds of(
            Plan plan,
            Verdict verdict,
            Household household,
            Knowledge knowledge,
            Spread spread,
            int draws,
            long seed,
            double wished) {
        return of(Intakes.of(plan, verdict, household, knowledge, spread), draws, seed, wished);
    }

    static Odds of(Intakes intakes, int draws, long seed, double wished) {
        Draws.Tally tally = Draws.of(intakes, draws, seed);
        List<OfDog> dogs = new ArrayList<>();
        for (int d = 0; d < intakes.eaters().size(); d++) {
            Intakes.Eater eater = intakes.eaters().get(d);
            List<OfMinimum> minimums = new ArrayList<>();
            for (int n = 0; n < eater.demands().size(); n++) {
                Intakes.Demand demand = eater.demands().get(n);
                minimums.add(minimum(demand, ClosedForm.of(intakes, eater, demand), tally.met(d, n), draws, wished));
            }
            minimums.sort(Comparator.comparingInt(OfMinimum::met).thenComparing(OfMinimum::formula));
            dogs.add(new OfDog(eater.name(), minimums, tally.allOf(d)));
        }
        return new Odds(draws, seed, dogs, tally.all());
    }

    private static OfMinimum minimum(Intakes.Demand demand, ClosedForm form, int met, int draws, double wished) {
        NutrientLine line = demand.line();
        boolean ratio = demand.least() == 0;
        double share = (double) met / draws;
        // One draw more of each kind, so that what never happened is not called certain.
        double careful = (met + 1.0) / (draws + 2.0);
        return new OfMinimum(
                line.key(),
                line.label(),
                line.unit(),
                ratio && line.minimum() != null ? line.minimum() : demand.least(),
                form.mean(),
                form.spread(),
                met,
                share,
                Math.sqrt(careful * (1 - careful) / draws),
                form.likelihood(),
                form.marginFor(wished));
    }

    /** Whether each minimum of each dog, taken by itself, is met as often as wished. */
    public boolean eachAtLeast(double wished) {
        return dogs.stream().flatMap(dog -> dog.minimums().stream()).allMatch(minimum -> minimum.share() >= wished);
    }
}
