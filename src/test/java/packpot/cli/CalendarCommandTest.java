package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import packpot.Demo;

/** The command, from arguments to output and exit code. */
class CalendarCommandTest {
    private static final Path QUICK = Demo.file("tiny-freezer");

    @TempDir
    private Path folder;

    private static List<?> schemaErrors(String json) {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Demo.text(Path.of("models", "calendar.schema.json")))
                .validate(json, InputFormat.JSON);
    }

    @Test
    void itSaysWhatToDoOnWhichDay() {
        Run run = Run.of("calendar", QUICK.toString());
        assertThat(run.exitCode()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.lines()).allMatch(line -> line.length() <= 80);
        assertThat(run.out())
                .contains(
                        "Checked: enough food ready on every day",
                        "Fri 19 Jun  Shop by the list",
                        "Sat 20 Jun  Cook: 11.8 kg",
                        "Tue 23 Jun  In the morning, move bags 6 and 7 from the freezer",
                        "Fri 3 Jul   The last bowls",
                        "Sat 4 Jul   Cook the next batch")
                .doesNotContain("canned.");
    }

    @Test
    void itWritesACalendarFile() throws IOException {
        Path file = folder.resolve("batch.ics");
        Run run = Run.of("calendar", QUICK.toString(), "--ics", file.toString());
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(Files.readString(file)).startsWith("BEGIN:VCALENDAR\r\n").contains("DTSTART;VALUE=DATE:20260619");
        Run again = Run.of("calendar", QUICK.toString(), "--ics", file.toString());
        assertThat(again.exitCode()).isEqualTo(7);
        assertThat(again.err()).contains("batch.ics", "exists already");
        assertThat(again.out()).isEmpty();
        Run same = Run.of("calendar", QUICK.toString(), "--ics", "a.ics", "--out", "./a.ics");
        assertThat(same.exitCode()).isEqualTo(2);
        assertThat(same.err()).contains("name the same file");
    }

    @Test
    void jsonFollowsItsSchema() {
        Run run = Run.of("calendar", QUICK.toString(), "--json");
        assertThat(run.exitCode()).isZero();
        assertThat(schemaErrors(run.out())).isEmpty();
        assertThat(schemaErrors(run.out().replace("\"ledger\"", "\"book\""))).isNotEmpty();
    }

    @Test
    void withoutAPlanItSaysWhy() {
        Run run = Run.of("calendar", "src/test/resources/why-not/nutrient-minimum.json", "--json");
        assertThat(run.exitCode()).isEqualTo(4);
        assertThat(run.err()).contains("there is no calendar");
        assertThat(schemaErrors(run.out())).isEmpty();
    }
}
