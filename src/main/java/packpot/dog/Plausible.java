package packpot.dog;

import java.util.List;

/** Which weights can follow each other: two scales differ, dogs gain and lose, but no dog does so without bounds. */
public final class Plausible {
    private final WeightFigures figures;

    public Plausible(WeightFigures figures) {
        this.figures = figures;
    }

    /**
     * What bears on how fast a weight can change.
     *
     * @param ageDays age on the first day of the plan
     * @param grownDays age from which the dog counts as grown
     * @param reproducing in whelp or nursing
     */
    public record Kind(double ageDays, double grownDays, boolean reproducing) {}

    /** Whether a dog can weigh one thing and some days later the other. */
    public boolean follows(WeighIn first, WeighIn then, Kind kind) {
        double weeks = (then.day() - first.day()) / 7.0;
        double age = kind.ageDays + first.day();
        double slow = figures.number("jump", "adultSharePerWeek");
        double gain = age >= kind.grownDays
                ? slow
                : figures.number(
                        "puppyJump",
                        age < figures.number("puppyJump", "untilDays") ? "gainSharePerWeek" : "gainShareAfter");
        double scale = (1 + figures.number("jump", "scaleShare"))
                * (kind.reproducing ? 1 + figures.number("jump", "reproductionShare") : 1);
        double ratio = then.kg() / first.kg();
        return ratio <= scale * Math.pow(1 + gain, weeks) && ratio * scale * Math.pow(1 + slow, weeks) >= 1;
    }

    /**
     * The most weigh-ins of which each can follow the one before it; what is left out is to be asked about.
     *
     * @param weighIns oldest first
     * @return for each, whether it belongs to them
     */
    public boolean[] longest(List<WeighIn> weighIns, Kind kind) {
        int count = weighIns.size();
        int[] length = new int[count];
        int[] before = new int[count];
        int last = -1;
        for (int i = 0; i < count; i++) {
            length[i] = 1;
            before[i] = -1;
            for (int j = 0; j < i; j++) {
                if (length[j] >= length[i] && follows(weighIns.get(j), weighIns.get(i), kind)) {
                    length[i] = length[j] + 1;
                    before[i] = j;
                }
            }
            if (last < 0 || length[i] > length[last]) {
                last = i;
            }
        }
        boolean[] kept = new boolean[count];
        for (int i = last; i >= 0; i = before[i]) {
            kept[i] = true;
        }
        return kept;
    }
}
