package packpot.sheets;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.awt.Font;
import java.awt.FontFormatException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.stream.Collectors;

/** The page as PDF, with fonts of its own, so that it prints alike everywhere. */
public final class PdfFile {
    private static final int MOST_UNKNOWN = 20;
    private static final String FONTS = "/net/sf/jasperreports/fonts/dejavu/";

    /** As often as a page is set while a plan is searched; more makes the setting no faster. */
    private static final int MOST_TRIALS = 8;

    private static final int TRIAL_ROWS = 120;
    private static final int TRIAL_PICTURES = 12;

    private static volatile boolean wanted;

    private PdfFile() {}

    /**
     * Sets a page that nobody sees, again and again until one is wanted, beside whatever the caller does first: most of the
     * time that a PDF takes is the loading of fonts and classes and the compiling of what runs often.
     */
    public static void getReady() {
        Thread ready = new Thread(
                () -> {
                    try {
                        String page = trialPage();
                        for (int i = 0; i < MOST_TRIALS && !wanted; i++) {
                            set(page);
                        }
                    } catch (IOException | RuntimeException | OutOfMemoryError e) {
                        // Whoever sets a page of his own is told.
                    }
                },
                "PDF");
        ready.setDaemon(true);
        ready.start();
    }

    /**
     * The PDF of a page that is well-formed as XML.
     *
     * @throws IOException when the page cannot be set
     */
    public static byte[] of(String html) throws IOException {
        wanted = true;
        return set(html);
    }

    /** A page with what sheets have much of: rows of tables, and pictures. */
    private static String trialPage() {
        return "<html><head><style>" + Sheets.file("base.css") + "</style></head><body><h2>one</h2><table>"
                + "<tr><th scope='row'>two</th><td class='n'><b>3.4</b></td><td class='n'>5</td><td>six</td></tr>"
                        .repeat(TRIAL_ROWS)
                + "</table><ul><li>seven</li></ul>"
                + ("<svg xmlns='http://www.w3.org/2000/svg' width='90' height='9' font-family='DejaVu Sans'>"
                                + "<text x='0' y='9'>eight</text><circle cx='4' cy='4' r='2' fill='#0072b2'/>"
                                + "<rect x='1' y='1' width='3' height='3' fill='#d55e00'/></svg>")
                        .repeat(TRIAL_PICTURES)
                + "</body></html>";
    }

    private static byte[] set(String html) throws IOException {
        XRLog.setLoggingEnabled(false);
        OwnFonts.install();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        PdfRendererBuilder builder = new PdfRendererBuilder()
                .useFastMode()
                .useSVGDrawer(new BatikSVGDrawer())
                .useFont(() -> font("DejaVuSans.ttf"), "DejaVu Sans", 400, FontStyle.NORMAL, true)
                .useFont(() -> font("DejaVuSans-Bold.ttf"), "DejaVu Sans", 700, FontStyle.NORMAL, true)
                .withHtmlContent(html, "")
                .withProducer("Packpot")
                .toStream(bytes);
        builder.run();
        return bytes.toByteArray();
    }

    /**
     * The characters of a text that the PDF does not set rightly, each once: those that its fonts do not have, and those of
     * scripts that run from right to left.
     */
    public static String unknown(String text) {
        try (InputStream in = font("DejaVuSans.ttf")) {
            Font font = Font.createFont(Font.TRUETYPE_FONT, in);
            return text.codePoints()
                    .filter(each -> !Character.isWhitespace(each))
                    .filter(each -> !font.canDisplay(each) || isRightToLeft(each))
                    .distinct()
                    .limit(MOST_UNKNOWN)
                    .mapToObj(Character::toString)
                    .collect(Collectors.joining());
        } catch (FontFormatException | IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static boolean isRightToLeft(int character) {
        byte direction = Character.getDirectionality(character);
        return direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT
                || direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC;
    }

    private static InputStream font(String name) {
        InputStream font = PdfFile.class.getResourceAsStream(FONTS + name);
        if (font == null) {
            throw new IllegalStateException(name + " is missing from the program");
        }
        return font;
    }
}
