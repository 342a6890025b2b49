package packpot.sheets;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.SequenceWriter;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.audit.DogAudit;
import packpot.audit.NutrientLine;
import packpot.plan.FeedingCalendar;
import packpot.plan.Plan;

/**
 * The tables of a plan as CSV (RFC 4180), in base units and with a point, for programs. Text that a spreadsheet would take
 * for a formula stands behind an apostrophe.
 */
public final class Tables {
    private static final String FORMULA_BEGINS = "=+-@\t\r";

    private Tables() {}

    /** Each table by the name of its file. */
    public static Map<String, String> of(SheetSource source) {
        Map<String, String> tables = new LinkedHashMap<>();
        tables.put("shopping.csv", shopping(source.plan()));
        tables.put("pot.csv", pot(source.plan()));
        tables.put("portions.csv", portions(source.plan()));
        tables.put("nutrients.csv", nutrients(source));
        tables.put("calendar.csv", calendar(source.calendar()));
        return tables;
    }

    private static String shopping(Plan plan) {
        List<List<Object>> rows = new ArrayList<>();
        rows.add(List.of(
                "section",
                "food",
                "packs",
                "pack",
                "buy_g",
                "used_g",
                "from_hand_g",
                "left_over_g",
                "pays_" + plan.currency().toLowerCase(java.util.Locale.ROOT)));
        plan.shopping()
                .forEach(line -> rows.add(List.of(
                        line.section(),
                        line.label(),
                        orEmpty(line.packs()),
                        line.pack(),
                        line.buyGramsAsBought(),
                        line.usedGrams(),
                        line.fromHandGrams(),
                        line.leftOverGrams(),
                        line.pays())));
        return csv(rows);
    }

    private static String pot(Plan plan) {
        List<List<Object>> rows = new ArrayList<>();
        rows.add(List.of("food", "raw_g", "measure", "cooked_g", "share_of_cooked", "preparation"));
        plan.pot()
                .forEach(each -> rows.add(List.of(
                        each.label(),
                        each.grams(),
                        each.measure(),
                        each.cookedGrams(),
                        each.shareOfCookedMass(),
                        each.preparation())));
        return csv(rows);
    }

    private static String portions(Plan plan) {
        List<List<Object>> rows = new ArrayList<>();
        rows.add(List.of("dog", "what", "g_per_meal", "g_per_day", "dose", "on_days"));
        for (Plan.DogPlan dog : plan.dogs()) {
            rows.add(List.of(
                    dog.name(),
                    "batch",
                    String.join(
                            "|",
                            dog.potGramsPerMeal().stream().map(String::valueOf).toList()),
                    dog.potGramsPerDay(),
                    dog.scoopPerMeal(),
                    dog.firstDay() + "-" + (dog.firstDay() + dog.daysFed() - 1)));
            dog.additions()
                    .forEach(addition -> rows.add(List.of(
                            dog.name(),
                            addition.label(),
                            "",
                            addition.gramsPerDose(),
                            addition.dose(),
                            String.join(
                                    "|",
                                    addition.onDays().stream()
                                            .map(String::valueOf)
                                            .toList()))));
        }
        return csv(rows);
    }

    private static String nutrients(SheetSource source) {
        List<List<Object>> rows = new ArrayList<>();
        rows.add(List.of(
                "dog",
                "nutrient",
                "unit",
                "minimum_per_1000_kcal",
                "got_per_1000_kcal",
                "maximum_per_1000_kcal",
                "got_per_day",
                "got_per_100_g_dry_matter",
                "energy_share_not_measured"));
        for (DogAudit dog : source.verdict().dogs()) {
            for (NutrientLine line : dog.nutrients()) {
                rows.add(List.of(
                        dog.dog(),
                        line.label(),
                        line.unit(),
                        orEmpty(line.minimum()),
                        line.got(),
                        orEmpty(line.maximum()),
                        line.unit().isEmpty() ? "" : line.gotPerDay(),
                        line.unit().isEmpty() ? "" : line.got() * dog.kcalPer100GramsDry() / 1000,
                        line.unknownEnergyShare()));
            }
        }
        return csv(rows);
    }

    private static String calendar(FeedingCalendar calendar) {
        List<List<Object>> rows = new ArrayList<>();
        rows.add(List.of("date", "kind", "about", "what", "bags"));
        calendar.events()
                .forEach(event -> rows.add(List.of(
                        event.date().toString(),
                        event.kind().name().toLowerCase(java.util.Locale.ROOT),
                        event.about(),
                        event.title().toString(),
                        String.join(
                                "|", event.bags().stream().map(String::valueOf).toList()))));
        return csv(rows);
    }

    private static Object orEmpty(@Nullable Object value) {
        return value == null ? "" : value;
    }

    private static String csv(List<List<Object>> rows) {
        StringWriter text = new StringWriter();
        CsvMapper mapper = new CsvMapper();
        try (SequenceWriter writer = mapper.writer(mapper.typedSchemaFor(List.class)
                        .withLineSeparator("\r\n")
                        .withoutEscapeChar())
                .writeValues(text)) {
            for (List<Object> row : rows) {
                writer.write(row.stream().map(Tables::safe).toList());
            }
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static Object safe(Object cell) {
        return cell instanceof String text && !text.isEmpty() && FORMULA_BEGINS.indexOf(text.charAt(0)) >= 0
                ? "'" + text
                : cell;
    }
}
