package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import packpot.Demo;

/** The command, from arguments to files and exit code. */
class SheetsCommandTest {
    private static final String QUICK = Demo.file("tiny-freezer").toString();

    @TempDir
    private Path folder;

    private String to(String name) {
        return folder.resolve(name).toString();
    }

    @Test
    void aFolderHoldsEverySheet() throws IOException {
        Run run = Run.of("sheets", QUICK, "--to", to("kitchen"));
        assertThat(run.exitCode()).as(run.err()).isZero();
        try (Stream<Path> files = Files.list(folder.resolve("kitchen"))) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder(
                            "sheets.html",
                            "sheets.pdf",
                            "shopping.csv",
                            "pot.csv",
                            "portions.csv",
                            "nutrients.csv",
                            "calendar.csv",
                            "calendar.ics",
                            "calendar.json",
                            "plan.json");
        }
        assertThat(folder.resolve("kitchen/sheets.html")).content().contains("if out: ");
        assertThat(run.out()).contains("sheets.html, sheets.pdf");
        Run again = Run.of("sheets", QUICK, "--to", to("kitchen"), "--no-stand-ins");
        assertThat(again.exitCode()).isEqualTo(7);
        assertThat(again.err()).contains("is not empty", "--overwrite");
        assertThat(Run.of("sheets", QUICK, "--to", to("kitchen"), "--no-stand-ins", "--overwrite")
                        .exitCode())
                .isZero();
        assertThat(folder.resolve("kitchen/sheets.html")).content().doesNotContain("if out: ");
    }

    @Test
    void oneFileIsEnoughForOne() {
        assertThat(Run.of("sheets", QUICK, "--to", to("mine.html"), "--no-stand-ins", "--locale", "de-AT")
                        .exitCode())
                .isZero();
        assertThat(folder.resolve("mine.html")).content().contains("lang=\"de-AT\"", "Einkaufsliste");
        assertThat(Run.of("sheets", QUICK, "--to", to("mine.pdf"), "--no-stand-ins", "--labels", "a4-21")
                        .exitCode())
                .isZero();
        assertThat(folder.resolve("mine.pdf"))
                .content(java.nio.charset.StandardCharsets.ISO_8859_1)
                .startsWith("%PDF");
    }

    /** The household's own locale, unless the command names another. */
    @Test
    void theScenarioSaysTheLanguage() throws IOException {
        Path mine = folder.resolve("mine.json");
        Files.writeString(mine, Demo.text(Demo.file("tiny-freezer")).replaceFirst("\\{", "{\"locale\": \"de-CH\", "));
        assertThat(Run.of("sheets", mine.toString(), "--to", to("own.html"), "--no-stand-ins")
                        .err())
                .isEmpty();
        assertThat(folder.resolve("own.html")).content().contains("lang=\"de-CH\"", "Einkaufsliste");
        assertThat(Run.of("sheets", mine.toString(), "--to", to("us.html"), "--no-stand-ins", "--locale", "en-US")
                        .err())
                .isEmpty();
        assertThat(folder.resolve("us.html")).content().contains("Shopping list");
    }

    @Test
    void wrongUseIsTold() {
        assertThat(Run.of("sheets", QUICK).err()).contains("--to");
        assertThat(Run.of("sheets", QUICK, "--to", "").err()).contains("--to: expected the name of a folder");
        assertThat(Run.of("sheets", QUICK, "--to", to("a"), "--locale", "fr").err())
                .contains("--locale: read \"fr\"", "[de, en]");
        assertThat(Run.of("sheets", QUICK, "--to", to("a"), "--paper", "a5").err())
                .contains("--paper: read \"a5\", expected a4 or letter");
        assertThat(Run.of("sheets", QUICK, "--to", to("a"), "--labels", "x").err())
                .contains("--labels: read \"x\"", "a4-14, a4-8, a4-21");
        assertThat(folder).isEmptyDirectory();
    }
}
