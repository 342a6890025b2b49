package packpot.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import packpot.dog.CorrectionWords;
import packpot.dog.EnergyCorrection;
import packpot.food.Nutrient;
import packpot.food.Nutrients;
import packpot.household.Household;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.needs.Requirement;
import packpot.profile.Limit;
import packpot.units.Show;

/** The targets of each dog. */
public final class TargetsReport {

    private TargetsReport() {}

    /** For people. */
    public static String text(Needs needs, Nutrients nutrients, Household household) {
        StringBuilder text = new StringBuilder();
        for (DogNeed need : needs.dogs()) {
            text.append(need.dog().name())
                    .append(", ")
                    .append(Show.bodyWeight(need.dog().weightKg(), household.units()))
                    .append(", ")
                    .append(need.energy().stage().words())
                    .append('\n');
            text.append(Wrap.item(
                    String.format(
                            Locale.ROOT,
                            "%,.0f kcal a day: %s (%s, %s)",
                            need.energy().kcalPerDay(),
                            need.energy().equation(),
                            need.energy().source(),
                            need.energy().found()),
                    "  ",
                    TextReport.WIDTH));
            EnergyCorrection correction = need.dog().course().correction();
            if (correction != null) {
                text.append(Wrap.item(
                        CorrectionWords.of(correction, household.units()).toString(), "  ", TextReport.WIDTH));
            }
            if (need.dog().otherKcalPerDay() > 0) {
                text.append(Wrap.item(
                        String.format(
                                Locale.ROOT,
                                "%,.0f kcal of that are treats and other food, so the batch brings %,.0f kcal",
                                need.dog().otherKcalPerDay(),
                                need.kcalPerDay()),
                        "  ",
                        TextReport.WIDTH));
            }
            text.append(Wrap.item("held to " + need.profile().title(), "  ", TextReport.WIDTH));
            if (need.raisedBy() > 1) {
                text.append(Wrap.item(
                        "eats less than the profile assumes: minimums times "
                                + Show.number(Math.round(need.raisedBy() * 100) / 100.0),
                        "  ",
                        TextReport.WIDTH));
            }
            text.append(table(need, nutrients).render("  ", TextReport.WIDTH)).append('\n');
        }
        text.append(String.join(
                        "\n",
                        Wrap.lines(
                                "Figures are per 1000 kcal. Keys are resolved in models/SOURCES.md; memory: recalled, not"
                                        + " read.",
                                TextReport.WIDTH)))
                .append("\n\n");
        return text.append(String.join("\n", Wrap.lines(Disclaimer.TEXT, TextReport.WIDTH)))
                .append('\n')
                .toString();
    }

    private static TextTable table(DogNeed need, Nutrients nutrients) {
        TextTable table = new TextTable("llrl");
        for (Requirement requirement : need.requirements()) {
            Limit limit = requirement.limit();
            if (limit.kind() == Limit.Kind.DEPENDENT_MINIMUM) {
                table.heading(dependent(limit, nutrients));
                continue;
            }
            boolean ratio = nutrients.isRatio(limit.nutrient());
            table.row(
                    label(nutrients, limit.nutrient()),
                    words(limit),
                    Show.number(requirement.per1000Kcal()) + (ratio ? " : 1" : " " + unit(nutrients, limit)),
                    source(limit));
        }
        return table;
    }

    private static String label(Nutrients nutrients, String key) {
        return nutrients.isRatio(key)
                ? nutrients.ratio(key).label()
                : nutrients.get(key).label();
    }

    private static String unit(Nutrients nutrients, Limit limit) {
        return nutrients.get(limit.nutrient()).unit();
    }

    private static String words(Limit limit) {
        return limit.kind() == Limit.Kind.MINIMUM ? "at least" : "at most";
    }

    /** Too long for a column. */
    private static String dependent(Limit limit, Nutrients nutrients) {
        Nutrient per = nutrients.get(String.valueOf(limit.per()));
        return "  plus " + Show.number(limit.value()) + " " + unit(nutrients, limit) + " per " + per.unit() + " of "
                + per.label() + " above " + Show.number(limit.threshold()) + "  " + source(limit);
    }

    private static String source(Limit limit) {
        return limit.source() + (limit.found().equals("text") ? "" : ", " + limit.found());
    }

    /** For programs. */
    public static Object data(Needs needs, Nutrients nutrients) {
        List<Object> dogs = new ArrayList<>();
        for (DogNeed need : needs.dogs()) {
            Map<String, Object> dog = new LinkedHashMap<>();
            dog.put("name", need.dog().name());
            dog.put("weightKg", need.dog().weightKg());
            dog.put("lifeStage", need.energy().stage().words());
            dog.put("energyNeedKcalPerDay", need.energy().kcalPerDay());
            dog.put("energyEquation", need.energy().equation());
            dog.put("energySource", need.energy().source());
            dog.put("energyFound", need.energy().found());
            EnergyCorrection correction = need.dog().course().correction();
            if (correction != null) {
                dog.put("energyCorrection", correction(correction));
            }
            dog.put("batchKcalPerDay", need.kcalPerDay());
            dog.put("profile", need.profile().title());
            dog.put("minimumsRaisedBy", need.raisedBy());
            List<Object> requirements = new ArrayList<>();
            for (Requirement requirement : need.requirements()) {
                Map<String, Object> line = new LinkedHashMap<>();
                line.put("nutrient", requirement.limit().nutrient());
                line.put("kind", requirement.limit().kind().name().toLowerCase(Locale.ROOT));
                line.put("per1000Kcal", requirement.per1000Kcal());
                line.put(
                        "unit",
                        nutrients.isRatio(requirement.limit().nutrient())
                                ? "ratio"
                                : nutrients.get(requirement.limit().nutrient()).unit());
                line.put("publishedPer1000Kcal", requirement.limit().value());
                line.put("source", requirement.limit().source());
                line.put("found", requirement.limit().found());
                requirements.add(line);
            }
            dog.put("requirements", requirements);
            dogs.add(dog);
        }
        return Map.of("packpotTargets", JsonReport.FORMAT, "dogs", dogs);
    }

    /** What weigh-ins do to an energy target, for programs. */
    static Map<String, Object> correction(EnergyCorrection correction) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("factor", correction.factor());
        data.put("foundKcalPerDay", correction.foundKcalPerDay());
        data.put("uncertaintyKcalPerDay", correction.uncertaintyKcalPerDay());
        data.put("fedKcalPerDay", correction.fedKcalPerDay());
        data.put("wishedKgPerWeek", correction.wishedKgPerWeek());
        data.put("trendKgPerWeek", correction.trend().kgPerWeek());
        data.put("trendStandardErrorKgPerWeek", correction.trend().standardErrorKgPerWeek());
        data.put("weighIns", correction.trend().weighIns());
        data.put("energyOfChangeSource", correction.source());
        return data;
    }
}
