package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Component;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import packpot.Demo;

/** The command, from arguments to output and exit code. */
class SessionsCommandTest {
    private static final String QUICK = Demo.file("tiny-freezer").toString();

    @TempDir
    private Path folder;

    private static List<?> schemaErrors(String json) {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Demo.text(Path.of("models", "sessions.schema.json")))
                .validate(json, InputFormat.JSON);
    }

    /** The calendar is read back by ical4j, an independent reader of RFC 5545. */
    @Test
    void itPlansEveryCookDay() throws IOException, ParserException {
        Path file = folder.resolve("weeks.ics");
        Run run = Run.of("sessions", QUICK, "--weeks", "4", "--ics", file.toString());
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        assertThat(run.lines()).allMatch(line -> line.length() <= 80);
        assertThat(run.out()).contains("2 cook days", "Checked: every batch", "in all", "To buy for");
        var calendar = new CalendarBuilder().build(new StringReader(Files.readString(file)));
        List<String> titles = calendar.getComponents(Component.VEVENT).stream()
                .map(event -> event.getProperty("SUMMARY").orElseThrow().getValue())
                .toList();
        assertThat(titles.stream().filter(title -> title.startsWith("Cook: "))).hasSize(2);
        assertThat(titles.stream().filter(title -> title.startsWith("Shop "))).hasSize(2);
        assertThat(titles.stream().filter(title -> title.startsWith("Cook the next")))
                .hasSize(1);
    }

    @Test
    void programsReadItBySchema() {
        Run run = Run.of("sessions", QUICK, "--weeks", "3", "--json");
        assertThat(run.exitCode()).isZero();
        assertThat(schemaErrors(run.out())).isEmpty();
        assertThat(schemaErrors(run.out().replace("\"batches\"", "\"pots\""))).isNotEmpty();
    }

    @Test
    void oneBatchOrTheCalendarIsShown() {
        Run second = Run.of("sessions", QUICK, "--weeks", "4", "--show", "2");
        assertThat(second.out()).contains("Into the pot", "Cook on Saturday 4 July 2026");
        Run calendar = Run.of("sessions", QUICK, "--weeks", "4", "--show", "calendar");
        assertThat(calendar.out()).contains("What to do", "Sat 4 Jul   Cook: ");
        Run none = Run.of("sessions", QUICK, "--weeks", "4", "--show", "9");
        assertThat(none.exitCode()).isEqualTo(2);
        assertThat(none.err()).contains("1 to 2");
    }

    /** There is eggshell powder for one batch, and none to buy. */
    @Test
    void aBatchWithoutAPlanIsExplained() {
        Run run = Run.of("sessions", Demo.file("three-adults").toString(), "--weeks", "8");
        assertThat(run.exitCode()).isEqualTo(4);
        assertThat(run.err()).contains("The batch of");
        assertThat(run.out()).contains("Clash", "eggshell powder");
    }

    /** The demo chooses its cook days on Saturdays and Sundays; the first is the first day, a Saturday. */
    @Test
    void cookDaysAreChosen() {
        Run run = Run.of("sessions", Demo.file("ten-weeks").toString(), "--weeks", "4");
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        assertThat(run.out()).contains("Checked: every batch", "Cook days were chosen", "Sat 2 May ");
        // A puppy of 14 weeks grows too fast for one portion; a dog that stays as it is has one.
        assertThat(run.out())
                .containsPattern("Rue needs \\d+ kcal a day when the batch")
                .doesNotContain("Sedge needs");
        assertThat(run.lines())
                .filteredOn(line -> line.matches(".* (Mon|Tue|Wed|Thu|Fri) .* days .*kg .*"))
                .isEmpty();
    }

    @Test
    void wrongUseIsTold() {
        assertThat(Run.of("sessions", QUICK, "--weeks", "27").err()).contains("--weeks is from 1 to 26; read 27");
        assertThat(Run.of("sessions", QUICK, "--show", "soon").err()).contains("the number of a batch");
    }
}
