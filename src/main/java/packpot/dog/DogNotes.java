package packpot.dog;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import packpot.units.Show;
import packpot.units.UnitSystem;
import packpot.words.Amount;
import packpot.words.Sentence;

/** What people must be told about how a dog is reckoned on later days, each sentence with its day. */
public final class DogNotes {

    /**
     * One sentence.
     *
     * @param day day of the plan from which it holds; 0 is the first
     * @param words what stands behind the name of the dog
     */
    public record Note(int day, Sentence words) {
        /** The whole sentence. */
        public Sentence of(Dog dog) {
            return Sentence.of("course.of", dog.name(), words);
        }
    }

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

    private void note(int day, String key, Object... values) {
        notes.add(new Note(day, Sentence.of(key, values)));
    }

    private void presence() {
        Integer comes = dog.course().comesDay();
        Integer leaves = dog.course().leavesDay();
        if (comes != null && comes > 0) {
            note(comes, "course.comes");
        }
        if (leaves != null) {
            note(leaves, "course.leaves");
        }
    }

    private void weighIns() {
        EnergyCorrection correction = dog.course().correction();
        if (correction != null) {
            notes.add(new Note(0, CorrectionWords.of(correction, units)));
        } else if (!overTime.energy().stage(dog).builds()) {
            Trend.of(dog.course().weighIns(), overTime.figures())
                    .ifPresent(trend -> note(0, "course.trendAlone", CorrectionWords.trend(trend, units)));
        }
    }

    private void whelping(Reproduction start) {
        Whelping whelping = overTime.whelping();
        Integer overdue = whelping.overdueOn(start);
        if (overdue != null) {
            note(overdue, "course.overdue");
        }
        if (start instanceof Reproduction.Gestation) {
            note(0, "course.gestation");
        }
        Integer whelps = whelping.whelpsOn(start);
        if (whelps != null) {
            note(whelps, "course.whelps");
        }
        Integer beyond = whelping.beyondEquationOn(start);
        if (beyond != null) {
            note(beyond, "course.lateNursing");
        }
        Integer weaned = whelping.weanedOn(start);
        if (weaned != null) {
            note(weaned, "course.weaned");
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
        boolean usual = then.course().weeklyShare() == null;
        note(
                from,
                loss
                        ? (usual ? "course.losesAtUsualRate" : "course.loses")
                        : (usual ? "course.gainsAtUsualRate" : "course.gains"),
                percent(overTime.rate(then, loss)),
                weight(goal));
        note(from + overTime.goalMetOn(then), "course.goalMet");
    }

    private void growing(Dog then, int from) {
        int grown = overTime.grownOn(then);
        overTime.path(then).ifPresentOrElse(path -> path(then, path, from), () -> note(from, "course.weightHeld"));
        Dog adult = overTime.whetherThereOrNot(then, grown);
        Double expected = then.expectedAdultKg();
        if (expected != null && adult.weightKg() < NEARLY_GROWN_SHARE * expected) {
            note(from + grown, "course.grownButLight", percent(adult.weightKg() / expected));
        } else {
            note(from + grown, "course.grown");
        }
        if (then.goalKg() != null) {
            onItsOwn(adult, from + grown);
        }
    }

    private void path(Dog then, DogOverTime.Path path, int from) {
        GrowthFit fit = path.fit();
        Double expected = then.expectedAdultKg();
        Sentence words = Sentence.of("course.grows", weight(path.adultKg()));
        if (fit != null && fit.ownTempo()) {
            double published = overTime.growth().curve(path.adultKg()).tempoDays();
            words = Sentence.of(
                    published > fit.tempoDays() ? "course.growsFaster" : "course.growsSlower",
                    words,
                    percent(Math.abs(published / fit.tempoDays() - 1)));
        }
        if (fit != null && expected == null) {
            words = Sentence.of("course.growsByWeighIns", words, weight(fit.leastAdultKg()), weight(fit.mostAdultKg()));
        }
        if (fit != null) {
            words = Sentence.of("course.growsWithin", words, fit.weighIns(), percent(fit.residualShare()));
        }
        notes.add(new Note(from, words));
        double usual = path.adultKg() * overTime.growth().curve(path.adultKg()).share(then.ageDays());
        double off = then.weightKg() / usual - 1;
        boolean curveIsSure =
                then.ageDays() >= overTime.growth().curve(path.adultKg()).inflectionDays();
        if (curveIsSure && Math.abs(off) > WORTH_TELLING_SHARE && then.weightKg() < path.adultKg()) {
            note(from, off > 0 ? "course.aboveCurve" : "course.belowCurve", percent(Math.abs(off)), weight(usual));
        }
    }

    private void veterinarian() {
        if (dog.vetKcalPerDay() != null && overTime.energy().stage(dog).asksForVeterinarian()) {
            note(0, "course.vetFigure");
        }
    }

    private Amount weight(double kilograms) {
        return new Amount(Show.bodyWeight(kilograms, units));
    }

    private static Amount percent(double share) {
        double percent = share * 100;
        return new Amount(String.format(Locale.ROOT, percent < 10 ? "%.1f %%" : "%.0f %%", percent));
    }
}
