package packpot.report;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import packpot.audit.Finding;
import packpot.plan.FeedingCalendar;
import packpot.units.Show;
import packpot.units.UnitSystem;

/** The calendar of one batch for people, in 80 columns, and for programs. */
public final class CalendarReport {
    private static final DateTimeFormatter LONG = DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);
    private static final DateTimeFormatter SHORT = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

    private CalendarReport() {}

    /**
     * The text.
     *
     * @param findings what the check of the calendar found wrong; empty when nothing is
     */
    public static String text(FeedingCalendar calendar, List<Finding> findings, UnitSystem units) {
        boolean several = calendar.events().stream()
                        .filter(event -> event.kind() == FeedingCalendar.Kind.COOK)
                        .count()
                > 1;
        Page page = new Page()
                .heading(calendar.household(), 1)
                .paragraph((several ? "Calendar from " : "Calendar of the batch cooked on ")
                        + LONG.format(calendar.start()) + "; it feeds " + calendar.days()
                        + (calendar.days() == 1 ? " day" : " days") + ", to " + LONG.format(calendar.lastDay()))
                .paragraph(
                        findings.isEmpty()
                                ? "Checked: enough food ready on every day, and no bag kept too long"
                                : "FAILED THE CHECK, do not follow it:");
        findings.forEach(finding -> page.item(finding.toString()));
        page.title("What to do").table(events(calendar.events()));
        page.title("Where the food is at the end of each day; oldest is what was eaten, in days out of the freezer")
                .table(ledger(calendar, units));
        page.items("To know", calendar.notes());
        return page.raw("\n").paragraph(Disclaimer.TEXT).toString();
    }

    private static TextTable events(List<FeedingCalendar.Event> events) {
        TextTable table = new TextTable("ll");
        LocalDate before = null;
        for (FeedingCalendar.Event event : events) {
            table.row(event.date().equals(before) ? "" : SHORT.format(event.date()), words(event));
            before = event.date();
        }
        return table;
    }

    /** Title and details in one paragraph. */
    static String words(FeedingCalendar.Event event) {
        StringBuilder words = new StringBuilder(event.title().toString());
        event.details().forEach(detail -> words.append(' ').append(detail));
        return words.toString();
    }

    private static TextTable ledger(FeedingCalendar calendar, UnitSystem units) {
        TextTable table = new TextTable("lrrrrr").row("", "eaten", "in the fridge", "thawing", "frozen", "oldest");
        for (FeedingCalendar.Day day : calendar.ledger()) {
            table.row(
                    SHORT.format(day.date()),
                    Show.weight(day.eatenGrams(), units),
                    day.fridgeGrams() < 1 ? "-" : Show.weight(day.fridgeGrams(), units),
                    bags(day.thawingBags()),
                    bags(day.freezerBags()),
                    day.oldestDays() + (day.oldestDays() == 1 ? " day" : " days"));
        }
        return table;
    }

    private static String bags(int count) {
        return count == 0 ? "-" : count + (count == 1 ? " bag" : " bags");
    }

    /** For programs; the fields are described in models/calendar.schema.json. */
    public static String json(FeedingCalendar calendar, List<Finding> findings) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("packpotCalendar", JsonReport.FORMAT);
        data.put("checkPassed", findings.isEmpty());
        data.put("findings", findings);
        data.put("calendar", calendar);
        data.put("disclaimer", Disclaimer.TEXT);
        return JsonReport.of(data);
    }
}
