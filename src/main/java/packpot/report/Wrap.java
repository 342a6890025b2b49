package packpot.report;

import java.util.ArrayList;
import java.util.List;

/** Breaks text into lines at blanks. */
final class Wrap {

    private Wrap() {}

    /** At least one line; a word longer than the width is cut. */
    static List<String> lines(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("\\s+", -1)) {
            String rest = word;
            if (!line.isEmpty() && Columns.of(line.toString()) + 1 + Columns.of(rest) > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            while (Columns.of(rest) > width) {
                int end = Columns.end(rest, width);
                lines.add(rest.substring(0, end));
                rest = rest.substring(end);
            }
            line.append(line.isEmpty() ? "" : " ").append(rest);
        }
        lines.add(line.toString());
        return lines;
    }

    /** A sentence on lines of its own. */
    static String paragraph(String text, String indent, int width) {
        return indent + String.join("\n" + indent, lines(text, width - indent.length())) + "\n";
    }

    /** A sentence behind a dash, its further lines indented. */
    static String item(String text, String indent, int width) {
        return item("-", text, indent, width);
    }

    /** The same behind a number. */
    static String item(int number, String text, String indent, int width) {
        return item(number + ".", text, indent, width);
    }

    private static String item(String mark, String text, String indent, int width) {
        String inner = indent + " ".repeat(mark.length() + 1);
        return indent + mark + " " + String.join("\n" + inner, lines(text, width - inner.length())) + "\n";
    }
}
