package packpot.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.dog.Dog;
import packpot.dog.DogNotes;
import packpot.dog.EnergyCorrection;
import packpot.dog.Reproduction;
import packpot.needs.DogNeed;
import packpot.needs.WeeklyNeeds;
import packpot.units.Show;
import packpot.units.UnitSystem;

/** What every dog is and needs, week by week. */
public final class TargetsOverTimeReport {
    private static final double DAYS_PER_MONTH = 365.25 / 12;
    private static final double DAYS_PER_YEAR = 365.25;
    private static final int WEEKS_UNTIL_MONTHS = 26;

    private TargetsOverTimeReport() {}

    /** For people. */
    public static String text(WeeklyNeeds weekly, UnitSystem units) {
        StringBuilder text = new StringBuilder();
        for (WeeklyNeeds.Line dog : weekly.dogs()) {
            text.append(dog.name()).append(", profile ").append(dog.profile()).append('\n');
            text.append(table(dog, units).render("  ", TextReport.WIDTH));
            for (DogNotes.Note note : dog.notes()) {
                text.append(Wrap.item(
                        (note.day() == 0 ? "" : weekly.start().plusDays(note.day()) + ": ") + note.words(),
                        "  ",
                        TextReport.WIDTH));
            }
            text.append('\n');
        }
        text.append(String.join(
                        "\n",
                        Wrap.lines(
                                "Weights of later days are reckoned, not weighed: weigh growing dogs every week and those"
                                        + " on a weight plan every two weeks, give the weigh-ins, and plan again. kcal:"
                                        + " all that a dog eats in a day, treats included.",
                                TextReport.WIDTH)))
                .append("\n\n");
        return text.append(String.join("\n", Wrap.lines(Disclaimer.TEXT, TextReport.WIDTH)))
                .append('\n')
                .toString();
    }

    private static TextTable table(WeeklyNeeds.Line dog, UnitSystem units) {
        TextTable table = new TextTable("lrrlrl").row("date", "age", "weight", "stage", "kcal", "column");
        for (WeeklyNeeds.Day day : dog.days()) {
            DogNeed need = day.need();
            String date = day.date().toString();
            if (need == null) {
                table.row(date, "", "", "not there", "", "");
            } else {
                table.row(
                        date,
                        age(need.dog().ageDays()),
                        Show.bodyWeight(need.dog().weightKg(), units),
                        stage(need),
                        String.format(Locale.ROOT, "%,.0f", need.energy().kcalPerDay()),
                        need.profile().stage());
            }
        }
        return table;
    }

    private static String age(double days) {
        if (days < 7 * WEEKS_UNTIL_MONTHS) {
            return String.format(Locale.ROOT, "%.0f weeks", Math.floor(days / 7));
        }
        return days < 2 * DAYS_PER_YEAR
                ? String.format(Locale.ROOT, "%.1f months", days / DAYS_PER_MONTH)
                : String.format(Locale.ROOT, "%.1f years", days / DAYS_PER_YEAR);
    }

    private static String stage(DogNeed need) {
        Integer week = week(need.dog());
        return need.energy().stage().words() + (week == null ? "" : ", week " + week);
    }

    private static @Nullable Integer week(Dog dog) {
        Reproduction reproduction = dog.reproduction();
        if (reproduction instanceof Reproduction.Gestation gestation) {
            return gestation.week();
        }
        return reproduction instanceof Reproduction.Lactation lactation ? (Integer) lactation.week() : null;
    }

    /** For programs; the fields are described in models/targets-over-time.schema.json. */
    public static Object data(WeeklyNeeds weekly) {
        List<Object> dogs = new ArrayList<>();
        for (WeeklyNeeds.Line line : weekly.dogs()) {
            Map<String, Object> dog = new LinkedHashMap<>();
            dog.put("name", line.name());
            dog.put("profile", line.profile());
            dog.put("days", line.days().stream().map(TargetsOverTimeReport::day).toList());
            EnergyCorrection correction = line.correction();
            if (correction != null) {
                dog.put("energyCorrection", TargetsReport.correction(correction));
            }
            dog.put(
                    "notes",
                    line.notes().stream()
                            .map(note -> note(note, weekly.start()))
                            .toList());
            dogs.add(dog);
        }
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("packpotTargetsOverTime", JsonReport.FORMAT);
        data.put("start", weekly.start().toString());
        data.put("weeks", weekly.weeks());
        data.put("dogs", dogs);
        return data;
    }

    private static Map<String, Object> note(DogNotes.Note note, LocalDate start) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("date", start.plusDays(note.day()).toString());
        data.put("text", note.words().toString());
        return data;
    }

    private static Map<String, Object> day(WeeklyNeeds.Day day) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("date", day.date().toString());
        DogNeed need = day.need();
        data.put("there", need != null);
        if (need != null) {
            data.put("ageDays", need.dog().ageDays());
            data.put("weightKg", need.dog().weightKg());
            data.put("lifeStage", need.energy().stage().words());
            data.put("reproductionWeek", week(need.dog()));
            data.put("energyNeedKcalPerDay", need.energy().kcalPerDay());
            data.put("energyEquation", need.energy().equation());
            data.put("energySource", need.energy().source());
            data.put("energyFound", need.energy().found());
            data.put("batchKcalPerDay", need.kcalPerDay());
            data.put("profileColumn", need.profile().stage());
            data.put("profile", need.profile().title());
            data.put("minimumsRaisedBy", need.raisedBy());
        }
        return data;
    }
}
