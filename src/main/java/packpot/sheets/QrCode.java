package packpot.sheets;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.Map;
import javax.imageio.ImageIO;

/** QR codes (ISO/IEC 18004) as small black and white pictures. */
final class QrCode {
    /** Clear modules around the code, as the standard asks. */
    private static final int QUIET_MODULES = 4;

    private QrCode() {}

    /** The words as a PNG with one dot a module, in a data URL. */
    static String png(String words) {
        try {
            BitMatrix matrix = new QRCodeWriter()
                    .encode(
                            words,
                            BarcodeFormat.QR_CODE,
                            0,
                            0,
                            Map.of(
                                    EncodeHintType.MARGIN,
                                    QUIET_MODULES,
                                    EncodeHintType.ERROR_CORRECTION,
                                    ErrorCorrectionLevel.M,
                                    EncodeHintType.CHARACTER_SET,
                                    "UTF-8"));
            BufferedImage image =
                    new BufferedImage(matrix.getWidth(), matrix.getHeight(), BufferedImage.TYPE_BYTE_BINARY);
            for (int y = 0; y < matrix.getHeight(); y++) {
                for (int x = 0; x < matrix.getWidth(); x++) {
                    image.setRGB(x, y, matrix.get(x, y) ? 0 : 0xFFFFFF);
                }
            }
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            ImageIO.setUseCache(false);
            ImageIO.write(image, "png", bytes);
            return "data:image/png;base64," + Base64.getEncoder().encodeToString(bytes.toByteArray());
        } catch (WriterException e) {
            throw new IllegalArgumentException("too many words for a code: " + words, e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
