package packpot.report;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jline.utils.WCWidth;

/** How many columns of a terminal a text takes: two for many letters of East Asia and pictures, none for accents on others. */
final class Columns {
    /** A letter with all that belongs to it. */
    private static final Pattern LETTER = Pattern.compile("\\X");

    private Columns() {}

    static int of(String text) {
        return text.codePoints().map(c -> Math.max(0, WCWidth.wcwidth(c))).sum();
    }

    /** Where the longest beginning ends that is no wider; one letter at least, and none in two. */
    static int end(String text, int columns) {
        Matcher letters = LETTER.matcher(text);
        int end = 0;
        int taken = 0;
        while (letters.find()) {
            taken += of(letters.group());
            if (taken > columns && end > 0) {
                return end;
            }
            end = letters.end();
        }
        return end;
    }

    /** A line below a heading, as long as it. */
    static String underline(String heading, int most) {
        return "=".repeat(Math.min(most, of(heading)));
    }
}
