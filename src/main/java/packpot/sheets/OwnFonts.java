package packpot.sheets;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.apache.fontbox.FontBoxFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.font.CIDFontMapping;
import org.apache.pdfbox.pdmodel.font.FontMapper;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.font.FontMapping;
import org.apache.pdfbox.pdmodel.font.PDCIDSystemInfo;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;
import org.jspecify.annotations.Nullable;

/**
 * The library's own font wherever the PDF library looks for one of the system: it would read all fonts of the machine at
 * every start and keep a list of them in the user's home.
 */
final class OwnFonts implements FontMapper {
    private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";
    /** Held, so that its level stays: loggers that nobody holds are forgotten. */
    private static final Logger LOG = Logger.getLogger("org.apache.pdfbox");

    private static boolean installed;

    private final TrueTypeFont font;

    private OwnFonts(TrueTypeFont font) {
        this.font = font;
    }

    static synchronized void install() {
        if (installed) {
            return;
        }
        installed = true;
        LOG.setLevel(Level.SEVERE);
        try (InputStream in = OwnFonts.class.getResourceAsStream(FONT)) {
            if (in == null) {
                throw new IllegalStateException(FONT + " is missing from the program");
            }
            FontMappers.set(new OwnFonts(new TTFParser().parse(new RandomAccessReadBuffer(in))));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public FontMapping<TrueTypeFont> getTrueTypeFont(String name, @Nullable PDFontDescriptor descriptor) {
        return new FontMapping<>(font, true);
    }

    @Override
    public FontMapping<FontBoxFont> getFontBoxFont(String name, @Nullable PDFontDescriptor descriptor) {
        return new FontMapping<>(font, true);
    }

    @Override
    public @Nullable CIDFontMapping getCIDFont(
            String name, @Nullable PDFontDescriptor descriptor, @Nullable PDCIDSystemInfo system) {
        return new CIDFontMapping(null, font, true);
    }
}
