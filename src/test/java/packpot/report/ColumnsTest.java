package packpot.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Widths are those of UAX 11 and of the terminals that follow it. */
class ColumnsTest {

    @ParameterizedTest
    @CsvSource({
        "Moss, 4",
        "木の葉, 6",
        "كلب, 3",
        "e\u0301te\u0301, 3",
        "🐕, 2",
        "한글, 4",
        "ﾊﾟ, 2",
        "Ａ, 2",
        "'', 0",
        "n\u0303\u0323, 1"
    })
    void lettersTakeTheirColumns(String text, int columns) {
        assertThat(Columns.of(text)).isEqualTo(columns);
    }

    @Test
    void tablesLineUpInEveryScript() {
        List<String> names = List.of("Moss", "木の葉", "كلب", "कुत्ता", "🐕🐕", "E\u0301clair", "한글", "Ἀργός");
        TextTable table = new TextTable("lr");
        names.forEach(name -> table.row(name, "12 kg"));
        assertThat(table.render("  ", 60).lines().mapToInt(Columns::of).distinct())
                .hasSize(1);
    }

    @Test
    void noLetterIsTornAtTheEndOfALine() {
        String name = "🐕".repeat(25) + "e\u0301".repeat(25) + "木".repeat(10);
        List<String> lines = Wrap.lines(name, 11);
        assertThat(String.join("", lines)).isEqualTo(name);
        assertThat(lines).allSatisfy(line -> {
            assertThat(Columns.of(line)).isLessThanOrEqualTo(11);
            assertThat(Character.isLowSurrogate(line.charAt(0))).isFalse();
            assertThat(line).doesNotStartWith("\u0301");
        });
    }

    @Test
    void oneLetterIsTakenHoweverWide() {
        assertThat(Columns.end("木木", 1)).isEqualTo(1);
        assertThat(Columns.end("", 1)).isZero();
    }
}
