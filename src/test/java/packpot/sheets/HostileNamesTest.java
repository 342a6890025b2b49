package packpot.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.household.Household;

/** Names of any script, with quotes and brackets, very long ones, and ones that spreadsheets would take for formulas. */
class HostileNamesTest {
    private static final List<String> NAMES = List.of(
            "<b onclick=\"x\">O'Hara & \"Söhne\"</b>",
            "=HYPERLINK(\"x\")",
            "木の葉 🐕 كلب Ἀργός",
            "</style><script>alert(1)</script>",
            "W".repeat(80));

    private static final SheetSource SOURCE = source();

    private static SheetSource source() {
        String text = Demo.text(Demo.file("foster-home"));
        String[] dogs = {"Juniper", "Barley", "Tansy", "Fennel", "Sorrel"};
        for (int i = 0; i < dogs.length; i++) {
            text = text.replace("\"" + dogs[i] + "\"", "\"" + NAMES.get(i).replace("\"", "\\\"") + "\"");
        }
        Household household = Demo.read(text.replace("Foster home with", "${7*7} <Foster> & home with"));
        return DemoSheets.source(household);
    }

    @Test
    void namesAreWordsAndNothingElse() throws Exception {
        String html = DemoSheets.sheets(SOURCE, Locale.US, Paper.A4).html();
        Document page = Jsoup.parse(html);
        assertThat(page.select("script, b[onclick]")).isEmpty();
        for (String name : NAMES) {
            assertThat(page.select("#portions ~ .dog h3").text()).contains(name);
        }
        // As XML the page has the same elements: nothing of a name has become markup.
        org.w3c.dom.Document xml = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(html.getBytes(StandardCharsets.UTF_8)));
        assertThat(xml.getElementsByTagName("*").getLength())
                .isEqualTo(page.getAllElements().size() - 1);
        try (PDDocument pdf = Loader.loadPDF(PdfFile.of(html))) {
            assertThat(pdf.getNumberOfPages()).isGreaterThan(10);
        }
    }

    @Test
    void lettersThatThePdfLacksAreKnown() {
        assertThat(PdfFile.unknown("Rex 木 كلب Ἀργός Ψ 木")).isEqualTo("木كلب");
        assertThat(PdfFile.unknown("Söhne & Töchter")).isEmpty();
    }

    @Test
    void noCellOfATableBeginsAFormula() throws Exception {
        for (String table : Tables.of(SOURCE).values()) {
            List<String[]> rows = new ArrayList<>();
            try (MappingIterator<String[]> cells = new CsvMapper()
                    .readerFor(String[].class)
                    .with(CsvParser.Feature.WRAP_AS_ARRAY)
                    .readValues(table)) {
                cells.forEachRemaining(rows::add);
            }
            assertThat(rows).allMatch(row -> row.length == rows.get(0).length);
            for (String[] row : rows) {
                for (String cell : row) {
                    assertThat(cell).doesNotStartWith("=").doesNotStartWith("@").doesNotStartWith("+");
                }
            }
        }
        assertThat(Tables.of(SOURCE).get("portions.csv")).contains("'=HYPERLINK");
    }
}
