package packpot.sheets;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;

/** The page as PDF, with fonts of its own, so that it prints alike everywhere. */
public final class PdfFile {
    private static final String FONTS = "/net/sf/jasperreports/fonts/dejavu/";

    private PdfFile() {}

    /**
     * The PDF of a page that is well-formed as XML.
     *
     * @throws IOException when the page cannot be set
     */
    public static byte[] of(String html) throws IOException {
        XRLog.setLoggingEnabled(false);
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

    private static InputStream font(String name) {
        InputStream font = PdfFile.class.getResourceAsStream(FONTS + name);
        if (font == null) {
            throw new IllegalStateException(name + " is missing from the program");
        }
        return font;
    }
}
