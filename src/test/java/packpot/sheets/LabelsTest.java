package packpot.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.LuminanceSource;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import packpot.plan.FeedingCalendar;
import packpot.words.Texts;

class LabelsTest {
    @Test
    void everyBagHasALabelThatSaysWhenItIsThawed() {
        SheetSource source = DemoSheets.source("foster-home");
        List<Labels.Label> labels = Labels.of(source, Texts.of(Locale.US));
        assertThat(labels).hasSize(source.plan().batch().bags());
        assertThat(labels)
                .filteredOn(label -> label.thawOn() != null)
                .hasSize(source.plan().batch().bagsFrozen());
        for (FeedingCalendar.Event event : source.calendar().events()) {
            if (event.kind() == FeedingCalendar.Kind.THAW) {
                event.bags()
                        .forEach(bag -> assertThat(labels.get(bag - 1).thawOn()).isEqualTo(event.date()));
            }
        }
        assertThat(labels).allMatch(label -> label.useBy().isAfter(source.plan().start()));
    }

    /** The code is read by the reader of the same library, from a picture four times as large. */
    @Test
    void theCodeSaysWhatTheLabelSays() throws Exception {
        SheetSource source = DemoSheets.source("tiny-freezer");
        Labels.Label label = Labels.of(source, Texts.of(Locale.US)).get(0);
        byte[] png = Base64.getDecoder().decode(label.code().substring("data:image/png;base64,".length()));
        BufferedImage small = ImageIO.read(new ByteArrayInputStream(png));
        int size = small.getWidth() * 4;
        int[] pixels = new int[size * size];
        for (int y = 0; y < size; y++) {
            for (int x = 0; x < size; x++) {
                pixels[y * size + x] = small.getRGB(x / 4, y / 4);
            }
        }
        LuminanceSource light = new RGBLuminanceSource(size, size, pixels);
        String read = new QRCodeReader()
                .decode(new BinaryBitmap(new HybridBinarizer(light)))
                .getText();
        assertThat(read)
                .isEqualTo(Labels.words(source, Texts.of(Locale.US), 1, label.useBy()))
                .contains(source.plan().start().toString());
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void labelsLieOnTheirPaperBesideEachOther(Paper paper) {
        assertThat(LabelSheet.on(paper)).isNotEmpty();
        for (LabelSheet sheet : LabelSheet.on(paper)) {
            assertThat(sheet.pitchXMm()).isGreaterThanOrEqualTo(sheet.widthMm());
            assertThat(sheet.pitchYMm()).isGreaterThanOrEqualTo(sheet.heightMm());
            LabelSheet.Place last = sheet.place(sheet.labels() - 1);
            assertThat(last.leftMm() + sheet.widthMm()).isLessThanOrEqualTo(paper.widthMm());
            assertThat(last.topMm() + sheet.heightMm()).isLessThanOrEqualTo(paper.heightMm());
            assertThat(sheet.id()).isEqualTo(paper.key() + "-" + sheet.labels());
        }
    }
}
