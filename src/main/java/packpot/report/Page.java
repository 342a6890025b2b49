package packpot.report;

import java.util.List;

/** A page of text for a terminal, written from the top. */
final class Page {
    private static final int WIDTH = TextReport.WIDTH;
    private static final String INDENT = "  ";

    private final StringBuilder text = new StringBuilder();

    /** A heading that is underlined, at least so long. */
    Page heading(String heading, int leastLine) {
        return raw(heading + "\n" + "=".repeat(Math.min(WIDTH, Math.max(leastLine, Columns.of(heading)))) + "\n");
    }

    /** The title of a part, below a blank line. */
    Page title(String title) {
        return raw("\n").paragraph(title);
    }

    Page paragraph(String words) {
        return raw(Wrap.paragraph(words, "", WIDTH));
    }

    Page indented(String words) {
        return raw(Wrap.paragraph(words, INDENT, WIDTH));
    }

    /** A sentence behind a dash. */
    Page item(String sentence) {
        return raw(Wrap.item(sentence, INDENT, WIDTH));
    }

    /** A list below its title; nothing where there is nothing to list. */
    Page items(String title, List<?> sentences) {
        if (!sentences.isEmpty()) {
            title(title);
            sentences.forEach(sentence -> item(sentence.toString()));
        }
        return this;
    }

    Page table(TextTable table) {
        return raw(table.render(INDENT, WIDTH));
    }

    /** Text as it stands, with its line ends. */
    Page raw(String lines) {
        text.append(lines);
        return this;
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
