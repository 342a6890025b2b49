package packpot.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import packpot.audit.DogAudit;
import packpot.audit.NutrientLine;
import packpot.audit.Verdict;
import packpot.plan.Plan;
import packpot.units.Show;

/** The nutrients of each dog between minimum and maximum. */
final class NutrientText {
    private static final int MOST_FOODS = 3;

    private NutrientText() {}

    /** One table for dogs that get the same per 1000 kcal under the same limits; what they get a day is left out of it. */
    static List<String> joined(List<DogAudit> dogs) {
        Map<String, List<DogAudit>> dogsByTable = new LinkedHashMap<>();
        dogs.forEach(dog -> dogsByTable
                .computeIfAbsent(table(dog, false).render("  ", TextReport.WIDTH), key -> new ArrayList<>())
                .add(dog));
        List<String> tables = new ArrayList<>();
        dogsByTable.forEach((table, same) -> tables.add(
                same.size() == 1
                        ? table(same.get(0))
                        : same.stream().map(NutrientText::heading).collect(Collectors.joining()) + table));
        return tables;
    }

    static String table(DogAudit dog) {
        return heading(dog) + table(dog, true).render("  ", TextReport.WIDTH);
    }

    private static String heading(DogAudit dog) {
        return String.format(
                Locale.ROOT,
                "%s: %,.0f kcal a day of %,.0f wished%n",
                dog.dog(),
                dog.kcalPerDay(),
                dog.targetKcalPerDay());
    }

    private static TextTable table(DogAudit dog, boolean perDay) {
        TextTable table = new TextTable("lrrrrl")
                .row("per 1000 kcal", "minimum", "got", "maximum", perDay ? "got a day" : "", "");
        for (NutrientLine line : dog.nutrients()) {
            boolean ratio = line.unit().isEmpty();
            table.row(
                    ratio ? line.label() : line.label() + ", " + line.unit(),
                    figure(line.minimum()),
                    Show.number(line.got()),
                    figure(line.maximum()),
                    ratio || !perDay ? "" : Show.number(line.gotPerDay()),
                    marks(line));
        }
        return table;
    }

    private static String figure(@Nullable Double limit) {
        return limit == null ? "-" : Show.number(limit);
    }

    private static String marks(NutrientLine line) {
        String judged = line.tooLittle() ? "short " : line.tooMuch() ? "over " : "";
        String memory = line.fromMemory() ? "m" : "";
        return (judged + (line.thin() ? memory + "?" : memory)).strip();
    }

    /** What the marks mean, and the thin data by name. */
    static String legend(Verdict verdict, Plan plan) {
        StringBuilder text = new StringBuilder();
        text.append('\n')
                .append(Wrap.paragraph(
                        "Minimums are the profile's own, raised where noted; the plan keeps "
                                + Show.number(100 * plan.marginShare())
                                + " % above them. Energy of food: " + plan.foodEnergyRule() + ".",
                        "",
                        TextReport.WIDTH));
        return text.append(marksLegend(verdict.dogs())).toString();
    }

    /** What m and ? stand for, where they are used. */
    static String marksLegend(List<DogAudit> dogs) {
        StringBuilder text = new StringBuilder();
        boolean memory = dogs.stream().flatMap(dog -> dog.nutrients().stream()).anyMatch(NutrientLine::fromMemory);
        if (memory) {
            text.append("m: a limit of this line was recalled, not read in print; see models/SOURCES.md\n");
        }
        Set<String> thin = new TreeSet<>();
        for (DogAudit dog : dogs) {
            for (NutrientLine line : dog.nutrients()) {
                if (line.thin()) {
                    thin.add(line.label() + ": not measured in " + foods(line.unknownFoods())
                            + String.format(Locale.ROOT, ", %.0f %% of the energy", 100 * line.unknownEnergyShare()));
                }
            }
            if (!thin.isEmpty()) {
                break;
            }
        }
        if (!thin.isEmpty()) {
            text.append("\n?: thin data. What is not measured counts as nothing toward a minimum, and is\n")
                    .append("not known toward a maximum:\n");
            thin.forEach(line -> text.append(Wrap.item(line, "  ", TextReport.WIDTH)));
        }
        return text.toString();
    }

    private static String foods(List<String> labels) {
        String first = String.join("; ", labels.subList(0, Math.min(MOST_FOODS, labels.size())));
        return labels.size() > MOST_FOODS ? first + "; and " + (labels.size() - MOST_FOODS) + " more" : first;
    }
}
