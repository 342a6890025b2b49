package packpot.household;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import packpot.dog.Plausible;
import packpot.dog.WeighIn;
import packpot.units.Unit;

/** Reads the "weighIns" of a dog; a weight that no dog comes to in the time is asked about and not used. */
final class WeighInReader {
    private static final int MOST_WEIGH_INS = 400;
    private static final double POUND_KG = Unit.POUND.inBaseUnit() / 1000;
    /** Slips that turn a weight into one that no dog has: a decimal point, and the two units. */
    private static final double[] SLIPS = {0.1, 10, POUND_KG, 1 / POUND_KG, 0.01, 100};

    private final LocalDate start;
    private final Plausible plausible;

    WeighInReader(LocalDate start, Plausible plausible) {
        this.start = start;
        this.plausible = plausible;
    }

    private record Line(Fields fields, LocalDate date, WeighIn weighIn) {}

    /**
     * The weigh-ins, oldest first.
     *
     * @param kind null when the age is not known; then weights are not held against each other
     */
    List<WeighIn> read(Fields dog, Plausible.@Nullable Kind kind) {
        List<Fields> all = dog.objects("weighIns");
        if (all.size() > MOST_WEIGH_INS) {
            dog.fault("weighIns", "are " + all.size() + "; expected at most " + MOST_WEIGH_INS + ", the latest ones");
            return List.of();
        }
        List<Line> lines = new ArrayList<>();
        LocalDate before = null;
        for (Fields fields : all) {
            LocalDate date = date(fields, before, kind);
            Double grams = DogReader.weight(fields, "weight");
            if (!fields.has("weight")) {
                fields.fault("weight", "is missing; expected the weight that was read, such as \"9.5 kg\"");
            }
            fields.end();
            before = date == null ? before : date;
            if (date != null && grams != null) {
                int day = (int) ChronoUnit.DAYS.between(start, date);
                lines.add(new Line(fields, date, new WeighIn(day, grams / 1000)));
            }
        }
        return kind == null ? lines.stream().map(Line::weighIn).toList() : kept(lines, kind);
    }

    private @Nullable LocalDate date(Fields fields, @Nullable LocalDate before, Plausible.@Nullable Kind kind) {
        LocalDate date = fields.date("date");
        if (!fields.has("date")) {
            fields.fault("date", "is missing; expected the day of the weigh-in, such as \"2026-03-07\"");
        }
        if (date == null) {
            return null;
        }
        if (date.isAfter(start)) {
            fields.fault(
                    "date",
                    "read " + date + ", which is after the plan's first day, " + start
                            + "; expected weigh-ins that have been, or a later \"start\"");
            return null;
        }
        if (kind != null && ChronoUnit.DAYS.between(date, start) > kind.ageDays()) {
            fields.fault("date", "read " + date + ", when the dog was not born; correct the date or the dog's age");
            return null;
        }
        if (before != null && date.equals(before)) {
            fields.fault("date", "read " + date + ", which stands there already; keep one weigh-in a day");
            return null;
        }
        if (before != null && date.isBefore(before)) {
            fields.fault(
                    "date", "read " + date + ", which comes before " + before + "; expected the oldest weigh-in first");
            return null;
        }
        return date;
    }

    private List<WeighIn> kept(List<Line> lines, Plausible.Kind kind) {
        List<WeighIn> all = lines.stream().map(Line::weighIn).toList();
        boolean[] fits = plausible.longest(all, kind);
        List<WeighIn> kept = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            if (fits[i]) {
                kept.add(all.get(i));
            } else {
                ask(lines, i, neighbour(fits, i), kind);
            }
        }
        return kept;
    }

    /** The nearest weigh-in that is believed; there is always one. */
    private static int neighbour(boolean[] fits, int i) {
        for (int distance = 1; ; distance++) {
            if (i - distance >= 0 && fits[i - distance]) {
                return i - distance;
            }
            if (i + distance < fits.length && fits[i + distance]) {
                return i + distance;
            }
        }
    }

    private void ask(List<Line> lines, int i, int other, Plausible.Kind kind) {
        Line line = lines.get(i);
        Line near = lines.get(other);
        double meant = meant(line.weighIn(), near.weighIn(), kind);
        line.fields()
                .fault(
                        "weight",
                        "read " + DogReader.kg(line.weighIn().kg() * 1000) + " on " + line.date() + " beside "
                                + DogReader.kg(near.weighIn().kg() * 1000) + " on " + near.date()
                                + ", a change that no dog makes; "
                                + (meant > 0
                                        ? "did you mean " + DogReader.kg(meant * 1000) + "?"
                                        : "check the weight and the date, or take this weigh-in out"));
    }

    private double meant(WeighIn odd, WeighIn near, Plausible.Kind kind) {
        for (double slip : SLIPS) {
            WeighIn other = new WeighIn(odd.day(), odd.kg() * slip);
            boolean fits = odd.day() < near.day()
                    ? plausible.follows(other, near, kind)
                    : plausible.follows(near, other, kind);
            if (fits) {
                return other.kg();
            }
        }
        return 0;
    }

    /** A weight of the first day that cannot follow the latest weigh-in is a fault, told once. */
    void agree(Fields dog, double kg, List<WeighIn> weighIns, Plausible.Kind kind) {
        WeighIn latest = weighIns.get(weighIns.size() - 1);
        if (!plausible.follows(latest, new WeighIn(0, kg), kind)) {
            dog.fault(
                    "weight",
                    String.format(
                            Locale.ROOT,
                            "read %s, but on %s, %s, it weighed %s, and no dog changes so much in that time;"
                                    + " correct one of the two, or leave \"weight\" out and the latest weigh-in is taken",
                            DogReader.kg(kg * 1000),
                            start.plusDays(latest.day()),
                            latest.day() == 0 ? "the same day" : -latest.day() + " days before",
                            DogReader.kg(latest.kg() * 1000)));
        }
    }
}
