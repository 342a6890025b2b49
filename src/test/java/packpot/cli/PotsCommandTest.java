package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import packpot.Demo;

/** The command, from arguments to output and exit code. */
class PotsCommandTest {
    private static final String QUICK = Demo.file("growing-puppy").toString();

    private static List<?> schemaErrors(String json) {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Demo.text(Path.of("models", "pots.schema.json")))
                .validate(json, InputFormat.JSON);
    }

    @Test
    void onePotAndTwoStandSideBySide() {
        Run run = Run.of("pots", QUICK);
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.lines()).allMatch(line -> line.length() <= 80);
        assertThat(run.out()).contains("one pot", "2 pots", "In 2 pots", "proved to within");
        // A freezer that is full of one batch holds no two.
        Run tiny = Run.of("pots", Demo.file("tiny-freezer").toString());
        assertThat(tiny.out()).containsPattern("2 pots +- +- +no plan");
        Run full = Run.of("pots", QUICK, "--show", "2");
        assertThat(full.out()).contains("Pot 1 of 2", "Pot 2 of 2", "Into the pot");
    }

    @Test
    void programsReadItBySchema() {
        Run run = Run.of("pots", QUICK, "--most", "2", "--json");
        assertThat(schemaErrors(run.out())).isEmpty();
        assertThat(schemaErrors(run.out().replace("\"upTo\"", "\"ways\""))).isNotEmpty();
    }

    @Test
    void wrongUseIsTold() {
        assertThat(Run.of("pots", QUICK, "--most", "9").err()).contains("--most is from 1 to 7; read 9");
        assertThat(Run.of("pots", QUICK, "--show", "4").err()).contains("--show is from 1 to 3; read 4");
    }
}
