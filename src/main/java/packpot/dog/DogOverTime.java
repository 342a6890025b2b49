package packpot.dog;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What a dog is on each later day of a plan, from what it is on the first. Pure: asked twice, it answers the same. */
public final class DogOverTime {

    /**
     * The path that a puppy's weight takes.
     *
     * @param adultKg where it tends to
     * @param tempoDays tempo b of {@link Growth}
     * @param fit what its weigh-ins tell; null when they are too few
     */
    public record Path(
            double adultKg, double tempoDays, @Nullable GrowthFit fit) {}

    private static final int NEVER = Integer.MAX_VALUE;

    private final EnergyEquations energy;
    private final Growth growth;
    private final WeightFigures figures;
    private final Whelping whelping;

    private DogOverTime(EnergyEquations energy, Growth growth, WeightFigures figures) {
        this.energy = energy;
        this.growth = growth;
        this.figures = figures;
        this.whelping = new Whelping(figures);
    }

    public static DogOverTime load(EnergyEquations energy) {
        return new DogOverTime(energy, Growth.load(), WeightFigures.load());
    }

    /** The figures of models/weight_change.json. */
    public WeightFigures figures() {
        return figures;
    }

    EnergyEquations energy() {
        return energy;
    }

    Growth growth() {
        return growth;
    }

    Whelping whelping() {
        return whelping;
    }

    /**
     * The dog on a day: older, heavier or lighter, in another week of whelp. Everything else, and its course, stays as it
     * was given for the first day.
     *
     * @param dog as it is on the first day of the plan
     * @param day days from the first day, which is 0
     * @return nothing on a day on which the dog is not in the household
     */
    public Optional<Dog> on(Dog dog, int day) {
        if (day < 0) {
            throw new IllegalArgumentException("a dog is known from the first day on, not on day " + day);
        }
        return dog.course().isThere(day) ? Optional.of(whetherThereOrNot(dog, day)) : Optional.empty();
    }

    /** The dog on a day, in the household or not. */
    Dog whetherThereOrNot(Dog dog, int day) {
        return day == 0 ? dog : dog.at(dog.ageDays() + day, weight(dog, day), reproduction(dog, day));
    }

    private @Nullable Reproduction reproduction(Dog dog, int day) {
        Reproduction start = dog.reproduction();
        return start == null ? null : whelping.on(start, day);
    }

    private double weight(Dog dog, int day) {
        int end = phaseEnd(dog);
        if (day < end) {
            return withinPhase(dog, day);
        }
        Dog next = dog.at(dog.ageDays() + end, withinPhase(dog, end), reproduction(dog, end));
        return weight(next, day - end);
    }

    /** The first day on which another rule leads the weight: after weaning, or once grown and with a goal. */
    private int phaseEnd(Dog dog) {
        Reproduction start = dog.reproduction();
        if (start != null) {
            Integer weaned = whelping.weanedOn(start);
            return weaned == null ? NEVER : weaned;
        }
        return energy.stage(dog) == LifeStage.GROWTH && dog.goalKg() != null ? grownOn(dog) : NEVER;
    }

    /** The first day of the plan on which a growing dog counts as grown. */
    int grownOn(Dog dog) {
        return (int) Math.ceil(energy.grownDays(dog.expectedAdultKg()) - dog.ageDays());
    }

    private double withinPhase(Dog dog, int day) {
        Reproduction start = dog.reproduction();
        if (start != null) {
            return dog.weightKg() * whelping.weightRatio(start, day);
        }
        return switch (energy.stage(dog)) {
            case GROWTH ->
                path(dog)
                        .map(path -> Growth.weightAfter(dog.weightKg(), path.adultKg(), path.tempoDays(), day))
                        .orElse(dog.weightKg());
            case WEIGHT_LOSS, WEIGHT_GAIN -> towardGoal(dog, day);
            default -> dog.weightKg();
        };
    }

    /** {@code W (1 -+ rate)^(days / 7)} until the goal is met, and the goal from then on. */
    private double towardGoal(Dog dog, int day) {
        double goal = goal(dog);
        boolean loss = goal < dog.weightKg();
        double kg = dog.weightKg() * Math.pow(1 + (loss ? -1 : 1) * rate(dog, loss), day / 7.0);
        return loss ? Math.max(goal, kg) : Math.min(goal, kg);
    }

    /** The first day of the plan on which a dog on a weight plan has come to its goal. */
    int goalMetOn(Dog dog) {
        double goal = goal(dog);
        boolean loss = goal < dog.weightKg();
        double weeks = Math.log(goal / dog.weightKg()) / Math.log(1 + (loss ? -1 : 1) * rate(dog, loss));
        return (int) Math.ceil(7 * weeks - 1e-9);
    }

    double rate(Dog dog, boolean loss) {
        Double own = dog.course().weeklyShare();
        return own == null ? figures.usualSharePerWeek(loss) : own;
    }

    private static double goal(Dog dog) {
        Double goal = dog.goalKg();
        return goal == null ? dog.weightKg() : goal;
    }

    /** The path of a growing dog; none when nothing tells its adult weight, or it has reached it. */
    public Optional<Path> path(Dog dog) {
        Double adult = dog.expectedAdultKg();
        Optional<GrowthFit> fit = GrowthFit.of(dog.course().weighIns(), adult, growth, figures);
        if (fit.isPresent()) {
            GrowthFit found = fit.get();
            return Optional.of(new Path(found.adultKg(), found.tempoDays(), found));
        }
        return adult == null
                ? Optional.empty()
                : Optional.of(new Path(adult, growth.curve(adult).tempoDays(), null));
    }
}
