package packpot.dog;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import packpot.units.Show;
import packpot.units.UnitSystem;

/** What people must be told about how a dog is reckoned on later days, each sentence with its day. */
public final class DogNotes {

    /**
     * One sentence.
     *
     * @param day day of the plan from which it holds; 0 is the first
     */
    public record Note(int day, String words) {}

    /** Young puppies often weigh more than a Gompertz curve gives; from its point of inflection on it is a fair measure. */
    private static final double WORTH_TELLING_SHARE = 0.25;

    private static final double NEARLY_GROWN_SHARE = 0.95;

    private final DogOverTime overTime;
    private final Dog dog;
    private final UnitSystem units;
    private final List<Note> notes = new ArrayList<>();

    private DogNotes(DogOverTime overTime, Dog dog, UnitSystem units) {
        this.overTime = overTime;
        this.dog = dog;
        this.units = units;
    }

    /**
     * The notes of the first days, in order.
     *
     * @param dog as it is on the first day
     * @param lastDay notes of later days are left out
     */
    public static List<Note> of(DogOverTime overTime, Dog dog, int lastDay, UnitSystem units) {
        DogNotes notes = new DogNotes(overTime, dog, units);
        notes.presence();
        notes.weighIns();
        Reproduction reproduction = dog.reproduction();
        if (reproduction != null) {
            notes.whelping(reproduction);
        }
        Integer weaned =
                reproduction == null ? (Integer) 0 : overTime.whelping().weanedOn(reproduction);
        if (weaned != null) {
            notes.onItsOwn(overTime.whetherThereOrNot(dog, weaned), weaned);
        }
        notes.veterinarian();
        Integer leaves = dog.course().leavesDay();
        int end = leaves == null ? lastDay : Math.min(lastDay, leaves);
        return notes.notes.stream()
                .filter(note -> note.day() <= end)
                .sorted(Comparator.comparingInt(Note::day))
                .toList();
    }

    private void note(int day, String words) {
        notes.add(new Note(day, words));
    }

    private void presence() {
        Integer comes = dog.course().comesDay();
        Integer leaves = dog.course().leavesDay();
        if (comes != null && comes > 0) {
            note(comes, "comes into the household");
        }
        if (leaves != null) {
            note(leaves, "leaves the household; not fed from this day on");
        }
    }

    private void weighIns() {
        EnergyCorrection correction = dog.course().correction();
        if (correction != null) {
            note(0, CorrectionWords.of(correction, units));
        } else if (!overTime.energy().stage(dog).builds()) {
            Trend.of(dog.course().weighIns(), overTime.figures())
                    .ifPresent(trend -> note(
                            0,
                            CorrectionWords.trend(trend, units)
                                    + "; that changes no energy target without what it ate, \"fedEnergy\""));
        }
    }

    private void whelping(Reproduction start) {
        Whelping whelping = overTime.whelping();
        Integer overdue = whelping.overdueOn(start);
        if (overdue != null) {
            note(
                    overdue,
                    "is held in the ninth week of gestation, since the size of the litter is not known; give"
                            + " \"expectedPuppies\", or \"lactation\" once she has whelped");
        }
        if (start instanceof Reproduction.Gestation) {
            note(
                    0,
                    "gains weight from the sixth week of gestation on, to 20 % at whelping (published: 15 to 25 %); the"
                            + " week given is taken to begin on the first day");
        }
        Integer whelps = whelping.whelpsOn(start);
        if (whelps != null) {
            note(whelps, "is taken to whelp; plan again with the puppies that are born");
        }
        Integer beyond = whelping.beyondEquationOn(start);
        if (beyond != null) {
            note(beyond, "is held at the fourth week of nursing, the last that the equation knows, until weaning");
        }
        Integer weaned = whelping.weanedOn(start);
        if (weaned != null) {
            note(
                    weaned,
                    "is taken to have weaned her puppies, eight weeks after whelping, at her weight before breeding");
        }
    }

    private void onItsOwn(Dog then, int from) {
        switch (overTime.energy().stage(then)) {
            case GROWTH -> growing(then, from);
            case WEIGHT_LOSS, WEIGHT_GAIN -> weightPlan(then, from);
            default -> {}
        }
    }

    private void weightPlan(Dog then, int from) {
        Double goal = then.goalKg();
        if (goal == null) {
            return;
        }
        boolean loss = goal < then.weightKg();
        note(
                from,
                "is taken to " + (loss ? "lose " : "gain ") + percent(overTime.rate(then, loss))
                        + " of its weight a week"
                        + (then.course().weeklyShare() == null ? ", the usual rate," : "") + " until it weighs "
                        + Show.bodyWeight(goal, units) + "; what the scale says comes first");
        note(from + overTime.goalMetOn(then), "has come to its goal weight and is fed as an adult");
    }

    private void growing(Dog then, int from) {
        int grown = overTime.grownOn(then);
        overTime.path(then)
                .ifPresentOrElse(
                        path -> path(then, path, from),
                        () -> note(
                                from,
                                "is growing, but nothing tells its adult weight, so its weight is held; give"
                                        + " \"expectedAdultWeight\", or three \"weighIns\" over two weeks"));
        Dog adult = overTime.whetherThereOrNot(then, grown);
        Double expected = then.expectedAdultKg();
        note(
                from + grown,
                "counts as grown and is fed as an adult"
                        + (expected != null && adult.weightKg() < NEARLY_GROWN_SHARE * expected
                                ? ", though it weighs only " + percent(adult.weightKg() / expected)
                                        + " of its expected adult weight"
                                : ""));
        if (then.goalKg() != null) {
            onItsOwn(adult, from + grown);
        }
    }

    private void path(Dog then, DogOverTime.Path path, int from) {
        GrowthFit fit = path.fit();
        Double expected = then.expectedAdultKg();
        StringBuilder words = new StringBuilder(
                        "grows from today's weight along the published curve for its size toward ")
                .append(Show.bodyWeight(path.adultKg(), units));
        if (fit != null && fit.ownTempo()) {
            double published = overTime.growth().curve(path.adultKg()).tempoDays();
            words.append(", ")
                    .append(percent(Math.abs(published / fit.tempoDays() - 1)))
                    .append(published > fit.tempoDays() ? " faster" : " slower")
                    .append(" than that curve, by its weigh-ins");
        }
        if (fit != null && expected == null) {
            words.append(", the adult weight that its weigh-ins speak for (")
                    .append(Show.bodyWeight(fit.leastAdultKg(), units))
                    .append(" to ")
                    .append(Show.bodyWeight(fit.mostAdultKg(), units))
                    .append("); its energy and limits stay those of a puppy whose adult weight is not known");
        }
        if (fit != null) {
            words.append("; ")
                    .append(fit.weighIns())
                    .append(" weigh-ins lie within ")
                    .append(percent(fit.residualShare()))
                    .append(" of the path (standard deviation)");
        }
        note(from, words.toString());
        double usual = path.adultKg() * overTime.growth().curve(path.adultKg()).share(then.ageDays());
        double off = then.weightKg() / usual - 1;
        boolean curveIsSure =
                then.ageDays() >= overTime.growth().curve(path.adultKg()).inflectionDays();
        if (curveIsSure && Math.abs(off) > WORTH_TELLING_SHARE && then.weightKg() < path.adultKg()) {
            note(
                    from,
                    "weighs " + percent(Math.abs(off)) + (off > 0 ? " more" : " less")
                            + " than that curve gives for its age, " + Show.bodyWeight(usual, units)
                            + "; check its age and its expected adult weight");
        }
    }

    private void veterinarian() {
        if (dog.vetKcalPerDay() != null && overTime.energy().stage(dog).asksForVeterinarian()) {
            note(0, "is held to the veterinarian's figure on every day; ask again as it changes");
        }
    }

    private static String percent(double share) {
        double percent = share * 100;
        return String.format(Locale.ROOT, percent < 10 ? "%.1f %%" : "%.0f %%", percent);
    }
}
