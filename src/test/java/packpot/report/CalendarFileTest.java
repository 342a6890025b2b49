package packpot.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Component;
import net.fortuna.ical4j.model.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Demo;
import packpot.plan.FeedingCalendar;
import packpot.plan.FeedingCalendar.Event;
import packpot.plan.FeedingCalendar.Kind;
import packpot.units.UnitSystem;
import packpot.words.Sentence;

/** Calendar files, read back by a library of others. */
class CalendarFileTest {
    private static final Instant MADE = Instant.parse("2026-03-01T08:09:10Z");

    static Stream<FeedingCalendar> demos() {
        return Demo.all().map(demo -> packpot.plan.CalendarBuilder.of(demo.plan(), demo.household(), Demo.knowledge()));
    }

    /** An event as both sides tell it. */
    private record Told(LocalDate from, LocalDate before, String summary, String description) {
        static Told of(Event event) {
            return new Told(
                    event.date(),
                    event.date().plusDays(1),
                    event.title().toString(),
                    event.details().stream().map(Sentence::toString).collect(Collectors.joining("\n")));
        }

        static Told of(Component event) {
            return new Told(
                    LocalDate.parse(value(event, Property.DTSTART), DateTimeFormatter.BASIC_ISO_DATE),
                    LocalDate.parse(value(event, Property.DTEND), DateTimeFormatter.BASIC_ISO_DATE),
                    value(event, Property.SUMMARY),
                    value(event, Property.DESCRIPTION));
        }
    }

    private static String value(Component event, String property) {
        return event.getProperty(property).map(Property::getValue).orElse("");
    }

    private static List<Component> read(String file) throws IOException, ParserException {
        Calendar calendar = new CalendarBuilder().build(new StringReader(file));
        calendar.validate();
        return new ArrayList<>(calendar.getComponents());
    }

    private static FeedingCalendar of(String household, Event... events) {
        LocalDate start = LocalDate.of(2026, 3, 7);
        return new FeedingCalendar(household, start, 1, 1, 500, List.of(events), List.of(), 0, List.of());
    }

    private static Event event(String title, String... details) {
        return new Event(
                LocalDate.of(2026, 12, 31),
                Kind.DOG,
                "Ole",
                Sentence.of("said", title),
                Stream.of(details).map(detail -> Sentence.of("said", detail)).toList(),
                List.of());
    }

    @ParameterizedTest
    @MethodSource("demos")
    void everyEventIsReadBackAsItWas(FeedingCalendar calendar) throws IOException, ParserException {
        List<Component> read = read(CalendarFile.of(calendar, MADE));
        assertThat(read.stream().map(Told::of))
                .containsExactlyElementsOf(
                        calendar.events().stream().map(Told::of).toList());
        assertThat(read.stream().map(each -> value(each, Property.UID))).doesNotHaveDuplicates();
        assertThat(read).allMatch(each -> value(each, Property.DTSTAMP).equals("20260301T080910Z"));
    }

    @Test
    void marksAndLongWordsOfAllScriptsAreReadBack() throws IOException, ParserException {
        Event event = event(
                "Öle, \"der Große\"; 50 % \\ n \\n: " + "ü".repeat(100) + "🐕".repeat(60),
                "first, line;",
                "second: \\, line");
        String file = CalendarFile.of(of("A; b, c", event), MADE);
        assertThat(read(file).stream().map(Told::of)).containsExactly(Told.of(event));
    }

    @ParameterizedTest
    @MethodSource("demos")
    void linesEndAndFoldAsTheStandardSays(FeedingCalendar calendar) {
        Event longest = event("🐕".repeat(200));
        for (String file : List.of(CalendarFile.of(calendar, MADE), CalendarFile.of(of("Dogs", longest), MADE))) {
            assertThat(file).endsWith("\r\n").doesNotContain("\r\n\r\n");
            assertThat(file.replace("\r\n", "")).doesNotContain("\r", "\n");
            for (String line : file.split("\r\n", -1)) {
                assertThat(line.getBytes(StandardCharsets.UTF_8).length)
                        .as(line)
                        .isLessThanOrEqualTo(75);
            }
        }
    }

    @Test
    void anEventKeepsItsNameWhenItIsPlannedAgain() throws IOException, ParserException {
        List<String> before = uids(of("Dogs", event("one"), event("two")));
        assertThat(before).hasSize(2).doesNotHaveDuplicates();
        assertThat(uids(of("Dogs", event("one, planned again"), event("two")))).isEqualTo(before);
        assertThat(uids(of("Other dogs", event("one"), event("two")))).doesNotContainAnyElementsOf(before);
    }

    private static List<String> uids(FeedingCalendar calendar) throws IOException, ParserException {
        return read(CalendarFile.of(calendar, MADE)).stream()
                .map(each -> value(each, Property.UID))
                .toList();
    }

    @ParameterizedTest
    @MethodSource("demos")
    void theTextTellsTheSameEvents(FeedingCalendar calendar) throws IOException, ParserException {
        String text = CalendarReport.text(calendar, List.of(), UnitSystem.METRIC);
        assertThat(text.lines().filter(line -> line.length() > 80)).isEmpty();
        String told = text.replaceAll("\\s+", " ");
        int at = told.indexOf("What to do");
        for (Told event :
                read(CalendarFile.of(calendar, MADE)).stream().map(Told::of).toList()) {
            String words = (event.summary() + " " + event.description())
                    .replaceAll("\\s+", " ")
                    .strip();
            int found = told.indexOf(words, at);
            assertThat(found).as(words).isGreaterThan(at);
            at = found;
        }
    }
}
