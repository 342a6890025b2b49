package packpot.report;

import java.util.ArrayList;
import java.util.List;

/** Columns of text as wide as they need, cut so that a line never passes the width of the page. */
final class TextTable {
    private static final String GAP = "  ";

    private final String columns;
    private final List<List<String>> rows = new ArrayList<>();

    /**
     * A table.
     *
     * @param columns one letter a column: l for text, r for figures
     */
    TextTable(String columns) {
        this.columns = columns;
    }

    TextTable row(String... cells) {
        if (cells.length != columns.length()) {
            throw new IllegalArgumentException("a row of " + cells.length + " cells in a table of " + columns.length());
        }
        rows.add(List.of(cells));
        return this;
    }

    /** A line of its own between rows. */
    TextTable heading(String heading) {
        rows.add(List.of(heading));
        return this;
    }

    /** The lines; text that does not fit its last column goes on below it. */
    String render(String indent, int width) {
        int[] widths = new int[columns.length()];
        for (List<String> row : rows) {
            for (int i = 0; i < widths.length && row.size() > 1; i++) {
                widths[i] = Math.max(widths[i], Columns.of(row.get(i)));
            }
        }
        int before = indent.length();
        for (int i = 0; i < widths.length - 1; i++) {
            before += widths[i] + GAP.length();
        }
        widths[widths.length - 1] = Math.max(8, Math.min(widths[widths.length - 1], width - before));
        StringBuilder text = new StringBuilder();
        for (List<String> row : rows) {
            if (row.size() == 1) {
                text.append(indent).append(row.get(0)).append('\n');
            } else {
                line(text, row, widths, indent, before);
            }
        }
        return text.toString();
    }

    private void line(StringBuilder text, List<String> row, int[] widths, String indent, int before) {
        StringBuilder line = new StringBuilder(indent);
        int last = widths.length - 1;
        for (int i = 0; i < last; i++) {
            line.append(pad(row.get(i), widths[i], columns.charAt(i) == 'r')).append(GAP);
        }
        List<String> parts = Wrap.lines(row.get(last), widths[last]);
        line.append(columns.charAt(last) == 'r' ? pad(parts.get(0), widths[last], true) : parts.get(0));
        text.append(line.toString().stripTrailing()).append('\n');
        for (String part : parts.subList(1, parts.size())) {
            text.append(" ".repeat(before)).append(part).append('\n');
        }
    }

    private static String pad(String cell, int width, boolean right) {
        String space = " ".repeat(Math.max(0, width - Columns.of(cell)));
        return right ? space + cell : cell + space;
    }
}
