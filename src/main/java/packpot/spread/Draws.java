package packpot.spread;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * In how many draws of figures and amounts minimums are met. Factors are normal around 1; where one falls below nothing it
 * counts as nothing, which is rare below a spread of 40 %. Draws go in blocks, each with random numbers of its own, so that
 * the answer hangs on the seed alone and not on how many threads there are.
 */
final class Draws {
    private static final int BLOCK = 100;
    /** How near to a minimum still counts as on it, as a share of all that is summed up; as in the audit. */
    static final double CLOSE = 1e-6;

    private final Intakes intakes;
    private final List<Figures> slack;

    private Draws(Intakes intakes) {
        this.intakes = intakes;
        this.slack = intakes.eaters().stream()
                .map(eater -> slack(eater, intakes.means(eater)))
                .toList();
    }

    private Figures slack(Intakes.Eater eater, Figures means) {
        return Figures.of(eater.demands().size(), n -> {
            double sum = 0;
            for (int i = 0; i < intakes.constituents(); i++) {
                sum += Math.abs(eater.demands().get(n).weights().at(i)) * means.at(i);
            }
            return CLOSE * sum;
        });
    }

    /** Counts of draws in which minimums were met. */
    static final class Tally {
        private final int[][] met;
        private final int[] allOfDog;
        private int all;

        private Tally(List<Intakes.Eater> eaters) {
            met = eaters.stream().map(eater -> new int[eater.demands().size()]).toArray(int[][]::new);
            allOfDog = new int[eaters.size()];
        }

        /** Those of one minimum of a dog. */
        int met(int dog, int demand) {
            return met[dog][demand];
        }

        /** Those in which all minimums of a dog were met. */
        int allOf(int dog) {
            return allOfDog[dog];
        }

        /** Those in which all minimums of all dogs were. */
        int all() {
            return all;
        }

        private void add(Tally other) {
            for (int d = 0; d < met.length; d++) {
                for (int n = 0; n < met[d].length; n++) {
                    met[d][n] += other.met[d][n];
                }
                allOfDog[d] += other.allOfDog[d];
            }
            all += other.all;
        }
    }

    private record Block(int draws, SplittableRandom random) {}

    static Tally of(Intakes intakes, int draws, long seed) {
        Draws work = new Draws(intakes);
        SplittableRandom root = new SplittableRandom(seed);
        List<Block> blocks = new ArrayList<>();
        for (int left = draws; left > 0; left -= BLOCK) {
            blocks.add(new Block(Math.min(BLOCK, left), root.split()));
        }
        Tally tally = new Tally(intakes.eaters());
        blocks.parallelStream().map(work::count).toList().forEach(tally::add);
        return tally;
    }

    private Tally count(Block block) {
        Tally tally = new Tally(intakes.eaters());
        for (int draw = 0; draw < block.draws(); draw++) {
            tally.all += one(block.random(), tally) ? 1 : 0;
        }
        return tally;
    }

    private boolean one(SplittableRandom random, Tally tally) {
        List<Intakes.Source> sources = intakes.sources();
        double[] pot = new double[intakes.constituents()];
        double[][] perGram = new double[sources.size()][];
        for (int f = 0; f < perGram.length; f++) {
            Intakes.Source source = sources.get(f);
            double[] figures = source.perGram().copy();
            double grams = source.potGrams() * factor(random, source.potSpread());
            for (int i = 0; i < figures.length; i++) {
                if (figures[i] != 0) {
                    figures[i] *= factor(random, source.spread().at(i));
                    pot[i] += grams * figures[i];
                }
            }
            perGram[f] = figures;
        }
        boolean all = true;
        for (int d = 0; d < intakes.eaters().size(); d++) {
            boolean dog = eater(random, d, pot, perGram, tally.met[d]);
            tally.allOfDog[d] += dog ? 1 : 0;
            all &= dog;
        }
        return all;
    }

    private boolean eater(SplittableRandom random, int d, double[] pot, double[][] perGram, int[] met) {
        Intakes.Eater eater = intakes.eaters().get(d);
        double part = eater.potShare() * factor(random, eater.portionSpread());
        double[] eaten = pot.clone();
        for (int i = 0; i < eaten.length; i++) {
            eaten[i] *= part;
        }
        for (Intakes.Dose dose : eater.doses()) {
            double grams = dose.gramsPerDay() * factor(random, dose.spread());
            for (int i = 0; i < eaten.length; i++) {
                eaten[i] += grams * perGram[dose.source()][i];
            }
        }
        boolean all = true;
        for (int n = 0; n < met.length; n++) {
            Intakes.Demand demand = eater.demands().get(n);
            double sum = slack.get(d).at(n) - demand.least();
            for (int i = 0; i < eaten.length; i++) {
                sum += demand.weights().at(i) * eaten[i];
            }
            met[n] += sum >= 0 ? 1 : 0;
            all &= sum >= 0;
        }
        return all;
    }

    private static double factor(SplittableRandom random, double spread) {
        return spread == 0 ? 1 : Math.max(0, 1 + spread * random.nextGaussian());
    }
}
