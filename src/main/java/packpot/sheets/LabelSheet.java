package packpot.sheets;

import java.util.List;
import packpot.data.ModelFiles;
import packpot.data.Row;

/**
 * A sheet of labels as shops sell it, from models/label_sheets.csv. Lengths are in mm from the upper left corner of the
 * paper.
 *
 * @param id paper and number of labels, such as "a4-14"
 */
public record LabelSheet(
        String id,
        Paper paper,
        double widthMm,
        double heightMm,
        int columns,
        int rows,
        double leftMm,
        double topMm,
        double pitchXMm,
        double pitchYMm) {

    /** Where one label lies. */
    public record Place(double leftMm, double topMm) {}

    /** Those that there are for a paper, the usual one first. */
    public static List<LabelSheet> on(Paper paper) {
        return ModelFiles.table("label_sheets.csv").stream()
                .map(LabelSheet::of)
                .filter(sheet -> sheet.paper() == paper)
                .toList();
    }

    private static LabelSheet of(Row row) {
        return new LabelSheet(
                row.required("id"),
                row.required("paper").equals(Paper.A4.key()) ? Paper.A4 : Paper.LETTER,
                row.number("width_mm"),
                row.number("height_mm"),
                (int) row.number("columns"),
                (int) row.number("rows"),
                row.number("left_mm"),
                row.number("top_mm"),
                row.number("pitch_x_mm"),
                row.number("pitch_y_mm"));
    }

    public int labels() {
        return columns * rows;
    }

    /** The place of a label on its sheet, row by row; the first is 0. */
    public Place place(int label) {
        int row = label / columns;
        return new Place(leftMm + label % columns * pitchXMm, topMm + row * pitchYMm);
    }

    /** Whether a QR code has room beside the words. */
    public boolean hasRoomForCode() {
        return widthMm >= 80 && heightMm >= 30;
    }
}
