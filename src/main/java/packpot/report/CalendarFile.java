package packpot.report;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import packpot.plan.FeedingCalendar;
import packpot.words.Texts;

/**
 * The events of a calendar as iCalendar (RFC 5545): all-day events without a time zone, in lines of at most 75 octets. An
 * event keeps its UID when the same batch is planned again, so that a calendar program replaces it.
 */
public final class CalendarFile {
    /** RFC 5545, 3.1: octets of a line, its end left out. */
    private static final int MOST_OCTETS = 75;

    private static final DateTimeFormatter DATE = DateTimeFormatter.BASIC_ISO_DATE;
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);

    private final StringBuilder text = new StringBuilder();

    private final Texts texts;

    private CalendarFile(Texts texts) {
        this.texts = texts;
    }

    /** The whole file in English. */
    public static String of(FeedingCalendar calendar, Instant made) {
        return of(calendar, Texts.of(Locale.ENGLISH), made);
    }

    /**
     * The whole file.
     *
     * @param texts the language of its events
     * @param made when it is made
     */
    public static String of(FeedingCalendar calendar, Texts texts, Instant made) {
        CalendarFile file = new CalendarFile(texts);
        file.line("BEGIN:VCALENDAR");
        file.line("VERSION:2.0");
        file.line("PRODID:-//packpot//packpot//EN");
        file.line("CALSCALE:GREGORIAN");
        Map<String, Integer> seen = new HashMap<>();
        for (FeedingCalendar.Event event : calendar.events()) {
            String key = String.join(
                    "\n",
                    calendar.household(),
                    calendar.start().toString(),
                    event.kind().name(),
                    event.about(),
                    event.date().toString());
            file.event(event, uid(key, seen.merge(key, 1, Integer::sum)), STAMP.format(made));
        }
        file.line("END:VCALENDAR");
        return file.text.toString();
    }

    private static String uid(String key, int turn) {
        return UUID.nameUUIDFromBytes((key + "\n" + turn).getBytes(StandardCharsets.UTF_8)) + "@packpot";
    }

    private void event(FeedingCalendar.Event event, String uid, String made) {
        LocalDate date = event.date();
        line("BEGIN:VEVENT");
        line("UID:" + uid);
        line("DTSTAMP:" + made);
        line("DTSTART;VALUE=DATE:" + DATE.format(date));
        line("DTEND;VALUE=DATE:" + DATE.format(date.plusDays(1)));
        line("SUMMARY:" + escaped(texts.say(event.title())));
        if (!event.details().isEmpty()) {
            line("DESCRIPTION:"
                    + escaped(event.details().stream().map(texts::say).collect(Collectors.joining("\n"))));
        }
        line("TRANSP:TRANSPARENT");
        line("END:VEVENT");
    }

    /** RFC 5545, 3.3.11. */
    private static String escaped(String words) {
        return words.replace("\\", "\\\\")
                .replace(";", "\\;")
                .replace(",", "\\,")
                .replace("\n", "\\n");
    }

    /** One content line, folded between characters. */
    private void line(String content) {
        int octets = 0;
        for (int c : content.codePoints().toArray()) {
            String character = Character.toString(c);
            int size = character.getBytes(StandardCharsets.UTF_8).length;
            if (octets + size > MOST_OCTETS) {
                text.append("\r\n ");
                octets = 1;
            }
            text.append(character);
            octets += size;
        }
        text.append("\r\n");
    }
}
