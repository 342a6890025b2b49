package packpot.dog;

import org.jspecify.annotations.Nullable;

/**
 * How a bitch in whelp or nursing goes on from week to week. A week that a scenario gives is taken to begin on the first
 * day of the plan.
 *
 * <p>Weight, against that before breeding (HAND2010, CASE2011): unchanged to day 35, then in a straight line to 20 % above
 * it at whelping on day 63; 7.5 % above it after whelping, and back in a straight line by weaning.
 */
final class Whelping {
    private final int gestationDays;
    private final int equationWeeks;
    private final int weanedDays;
    private final double gainFromDay;
    private final double gainShare;
    private final double shareAfterWhelping;

    Whelping(WeightFigures figures) {
        gestationDays = 7 * (int) figures.number("gestation", "lastWeek");
        gainFromDay = figures.number("gestation", "gainFromDay");
        gainShare = figures.number("gestation", "gainShare");
        shareAfterWhelping = figures.number("lactation", "shareAfterWhelping");
        equationWeeks = (int) figures.number("lactation", "equationWeeks");
        weanedDays = 7 * (int) figures.number("lactation", "weanedAfterWeeks");
    }

    /** Days since breeding on a day of the plan; a litter of unknown size is never whelped. */
    private int clock(Reproduction start, int day) {
        if (start instanceof Reproduction.Gestation gestation) {
            int clock = 7 * (gestation.week() - 1) + day;
            return gestation.expectedPuppies() == null ? Math.min(clock, gestationDays - 1) : clock;
        }
        return gestationDays + 7 * (((Reproduction.Lactation) start).week() - 1) + day;
    }

    /** Day of the plan on which she whelps; null when she has, or when the size of the litter is not known. */
    @Nullable
    Integer whelpsOn(Reproduction start) {
        return start instanceof Reproduction.Gestation gestation && gestation.expectedPuppies() != null
                ? gestationDays - clock(start, 0)
                : null;
    }

    /** First day of the plan after weaning; null when there is none. */
    @Nullable
    Integer weanedOn(Reproduction start) {
        boolean unknown = start instanceof Reproduction.Gestation gestation && gestation.expectedPuppies() == null;
        return unknown ? null : gestationDays + weanedDays - clock(start, 0);
    }

    /** First day of the plan after the weeks that the equation for nursing knows; null when there is none. */
    @Nullable
    Integer beyondEquationOn(Reproduction start) {
        Integer weaned = weanedOn(start);
        return weaned == null ? null : weaned - weanedDays + 7 * equationWeeks;
    }

    /** First day of the plan after the ninth week of a litter whose size is not known; null for any other. */
    @Nullable
    Integer overdueOn(Reproduction start) {
        return start instanceof Reproduction.Gestation gestation && gestation.expectedPuppies() == null
                ? gestationDays - clock(start, 0)
                : null;
    }

    /** What she is on a day of the plan; null once her puppies are weaned. */
    @Nullable
    Reproduction on(Reproduction start, int day) {
        int clock = clock(start, day);
        if (clock >= gestationDays + weanedDays) {
            return null;
        }
        if (start instanceof Reproduction.Lactation lactation) {
            return new Reproduction.Lactation(nursingWeek(clock), lactation.puppies());
        }
        Integer puppies = ((Reproduction.Gestation) start).expectedPuppies();
        return clock < gestationDays || puppies == null
                ? new Reproduction.Gestation(1 + clock / 7, puppies)
                : new Reproduction.Lactation(nursingWeek(clock), puppies);
    }

    private int nursingWeek(int clock) {
        return Math.min(equationWeeks, 1 + (clock - gestationDays) / 7);
    }

    /** Her weight on a day of the plan over that of its first day. */
    double weightRatio(Reproduction start, int day) {
        return overBreedingWeight(clock(start, day)) / overBreedingWeight(clock(start, 0));
    }

    private double overBreedingWeight(int clock) {
        if (clock < gestationDays) {
            return 1 + gainShare * Math.max(0, (clock - gainFromDay) / (gestationDays - gainFromDay));
        }
        double nursed = Math.min(1, (clock - gestationDays) / (double) weanedDays);
        return 1 + shareAfterWhelping * (1 - nursed);
    }
}
