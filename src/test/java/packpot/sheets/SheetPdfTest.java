package packpot.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The PDF as printed: rendered to pictures and searched for ink where none may be, and for letters upon letters. */
class SheetPdfTest {
    private static final float DPI = 50;
    private static final double MM_PER_INCH = 25.4;
    /** Most printers leave out less than this at the edges of a page. */
    private static final double MARGIN_MM = 7;

    static Stream<Arguments> papers() {
        return Stream.of("foster-home", "growing-puppy")
                .flatMap(demo -> Stream.of(
                        Arguments.of(demo, Locale.US, Paper.LETTER),
                        Arguments.of(demo, Locale.US, Paper.A4),
                        Arguments.of(demo, Locale.GERMANY, Paper.A4)));
    }

    private static PDDocument pdf(String html) throws IOException {
        return Loader.loadPDF(PdfFile.of(html));
    }

    @ParameterizedTest
    @MethodSource("papers")
    void nothingIsCutOffAndNothingOverlaps(String demo, Locale locale, Paper paper) throws IOException {
        Sheets sheets = DemoSheets.sheets(DemoSheets.source(demo), locale, paper);
        String html = sheets.html();
        try (PDDocument document = pdf(html)) {
            int labelPages =
                    -Math.floorDiv(-sheets.labels().size(), sheets.labelSheet().labels());
            int pages = document.getNumberOfPages();
            assertThat(document.getPage(0).getMediaBox().getWidth() / 72 * MM_PER_INCH)
                    .isCloseTo(paper.widthMm(), org.assertj.core.data.Offset.offset(0.1));
            PDFRenderer renderer = new PDFRenderer(document);
            List<List<TextPosition>> lettersOfPages = lettersOfPages(document);
            for (int page = 0; page < pages; page++) {
                BufferedImage image = renderer.renderImageWithDPI(page, DPI, ImageType.GRAY);
                boolean labels = page >= pages - labelPages;
                assertThat(inkInMargin(image, labels ? 0.5 : MARGIN_MM))
                        .as("page %d of %s on %s", page + 1, demo, paper)
                        .isZero();
                assertThat(ink(image)).as("page %d is empty", page + 1).isPositive();
                List<TextPosition> letters = lettersOfPages.get(page);
                assertThat(labels ? besideLabels(letters, sheets.labelSheet()) : cutOff(letters, paper))
                        .as("page %d of %s on %s", page + 1, demo, paper)
                        .isEmpty();
            }
            String text = new PDFTextStripper().getText(document);
            java.util.Set<String> missing = words(printed(html));
            missing.removeAll(words(text));
            assertThat(missing).isEmpty();
            assertThat(overlaps(lettersOfPages)).isEmpty();
            assertThat(text).doesNotContain("#");
        }
    }

    @Test
    void plantedFaultsAreFound() throws IOException {
        String html = DemoSheets.html("tiny-freezer", Locale.US, Paper.A4);
        String wide = html.replace("<h1>", "<h1 style=\"white-space:nowrap;width:900mm\">" + "wide ".repeat(60));
        try (PDDocument document = pdf(wide)) {
            assertThat(cutOff(letters(document, 1), Paper.A4)).isNotEmpty();
        }
        String hidden = html.replace("class=\"in\"", "class=\"in\" style=\"padding-top:30mm\"");
        try (PDDocument document = pdf(hidden)) {
            assertThat(words(new PDFTextStripper().getText(document)).containsAll(words(printed(html)))
                            && besideLabels(
                                            letters(document, document.getNumberOfPages()),
                                            LabelSheet.on(Paper.A4).get(0))
                                    .isEmpty())
                    .isFalse();
        }
        String over = html.replace("<h1>", "<div style=\"position:absolute;top:0;left:0\">upon the title</div><h1>");
        try (PDDocument document = pdf(over)) {
            assertThat(overlaps(lettersOfPages(document))).isNotEmpty();
        }
    }

    private static int ink(BufferedImage image) {
        return inkInMargin(image, image.getWidth());
    }

    private static int inkInMargin(BufferedImage image, double margin) {
        int pixels = (int) Math.floor(margin / MM_PER_INCH * DPI);
        int ink = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                boolean inside =
                        x >= pixels && y >= pixels && x < image.getWidth() - pixels && y < image.getHeight() - pixels;
                if (!inside && image.getRaster().getSample(x, y, 0) < 200) {
                    ink++;
                }
            }
        }
        return ink;
    }

    private static List<TextPosition> letters(PDDocument document, int page) throws IOException {
        List<TextPosition> letters = new ArrayList<>();
        PDFTextStripper stripper = new PDFTextStripper() {
            @Override
            protected void processTextPosition(TextPosition letter) {
                if (!letter.getUnicode().isBlank()) {
                    letters.add(letter);
                }
            }
        };
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        stripper.getText(document);
        return letters;
    }

    private static List<List<TextPosition>> lettersOfPages(PDDocument document) throws IOException {
        List<List<TextPosition>> pages = new ArrayList<>();
        for (int page = 1; page <= document.getNumberOfPages(); page++) {
            pages.add(letters(document, page));
        }
        return pages;
    }

    /** Letters that reach into the margin, where they are cut off. */
    private static List<String> cutOff(List<TextPosition> letters, Paper paper) {
        return letters.stream()
                .filter(letter -> mm(letter.getXDirAdj()) < MARGIN_MM
                        || mm(letter.getXDirAdj() + letter.getWidthDirAdj()) > paper.widthMm() - MARGIN_MM
                        || mm(letter.getYDirAdj() - letter.getHeightDir()) < MARGIN_MM
                        || mm(letter.getYDirAdj()) > paper.heightMm() - MARGIN_MM)
                .map(TextPosition::getUnicode)
                .toList();
    }

    /** Letters that lie in no label, or half in one. */
    private static List<String> besideLabels(List<TextPosition> letters, LabelSheet sheet) {
        List<String> beside = new ArrayList<>();
        for (TextPosition letter : letters) {
            boolean inside = false;
            for (int label = 0; label < sheet.labels(); label++) {
                LabelSheet.Place place = sheet.place(label);
                inside |= mm(letter.getXDirAdj()) >= place.leftMm()
                        && mm(letter.getXDirAdj() + letter.getWidthDirAdj()) <= place.leftMm() + sheet.widthMm()
                        && mm(letter.getYDirAdj() - letter.getHeightDir()) >= place.topMm()
                        && mm(letter.getYDirAdj()) <= place.topMm() + sheet.heightMm();
            }
            if (!inside) {
                beside.add(letter.getUnicode());
            }
        }
        return beside;
    }

    private static double mm(double points) {
        return points / 72 * MM_PER_INCH;
    }

    /** The words of a page that are to be printed, figures of labels included. */
    private static String printed(String html) {
        org.jsoup.nodes.Document page = org.jsoup.Jsoup.parse(html);
        // Words of pictures are drawn as outlines; their figures stand in tables too.
        page.select("nav, .hide, .screen-only, head, svg").remove();
        return page.text();
    }

    /** Words of letters alone: long ones may be broken at the end of a line. */
    private static java.util.Set<String> words(String text) {
        return java.util.regex.Pattern.compile("\\p{L}+")
                .matcher(text)
                .results()
                .map(java.util.regex.MatchResult::group)
                .collect(java.util.stream.Collectors.toCollection(java.util.TreeSet::new));
    }

    /** Letters of a page whose bodies lie upon each other. */
    private static List<String> overlaps(List<List<TextPosition>> pages) {
        List<String> found = new ArrayList<>();
        for (int page = 1; page <= pages.size(); page++) {
            List<TextPosition> letters = pages.get(page - 1);
            for (int i = 0; i < letters.size(); i++) {
                for (int j = i + 1; j < letters.size(); j++) {
                    if (upon(letters.get(i), letters.get(j))) {
                        found.add("page " + page + ": " + letters.get(i).getUnicode() + " upon "
                                + letters.get(j).getUnicode());
                    }
                }
            }
        }
        return found;
    }

    private static boolean upon(TextPosition a, TextPosition b) {
        double across = Math.min(a.getXDirAdj() + a.getWidthDirAdj(), b.getXDirAdj() + b.getWidthDirAdj())
                - Math.max(a.getXDirAdj(), b.getXDirAdj());
        double down = Math.min(a.getYDirAdj(), b.getYDirAdj())
                - Math.max(a.getYDirAdj() - a.getHeightDir(), b.getYDirAdj() - b.getHeightDir());
        return across > 0.3 * Math.min(a.getWidthDirAdj(), b.getWidthDirAdj())
                && down > 0.3 * Math.min(a.getHeightDir(), b.getHeightDir());
    }
}
