package packpot;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.integer.IntegerStrategy;
import org.ojalgo.type.CalendarDateDuration;
import org.ojalgo.type.CalendarDateUnit;
import org.ojalgo.type.context.NumberContext;
import packpot.solver.LinearModel;
import packpot.solver.MpsWriter;

/** A solver in pure Java that shares no code with ours and gets our models as MPS text. */
final class OtherSolver {
    private static final int DIGITS_OF_GAP = 4;
    private static final int SECONDS = 60;

    private OtherSolver() {}

    /** Writes a model, reads it back and solves it within a thousandth, with or without its whole numbers. */
    static Optimisation.Result solve(LinearModel<?> model, boolean relaxed) {
        return solve(model, relaxed, SECONDS);
    }

    /** The same with a limit of time. */
    static Optimisation.Result solve(LinearModel<?> model, boolean relaxed, int seconds) {
        ExpressionsBasedModel read = read(MpsWriter.write(model, "model"));
        if (relaxed) {
            read.relax();
        }
        CalendarDateDuration longest = new CalendarDateDuration(seconds, CalendarDateUnit.SECOND);
        read.options.abort(longest);
        read.options.suffice(longest);
        read.options.integer(IntegerStrategy.newConfigurable().withGapTolerance(NumberContext.of(DIGITS_OF_GAP)));
        return read.minimise();
    }

    static ExpressionsBasedModel read(String text) {
        return ExpressionsBasedModel.parse(
                new ByteArrayInputStream(inFixedColumns(text).getBytes(StandardCharsets.UTF_8)),
                ExpressionsBasedModel.FileFormat.MPS);
    }

    /** The other reader knows only the format's older form, whose fields start at columns 2, 5, 15 and 25. */
    private static String inFixedColumns(String text) {
        StringBuilder fixed = new StringBuilder();
        String section = "";
        for (String line : text.lines().filter(l -> !l.startsWith("*")).toList()) {
            if (line.startsWith(" ")) {
                String[] words = line.strip().split(" ");
                boolean typed = section.equals("ROWS") || section.equals("BOUNDS");
                String[] fields = {typed ? words[0] : "", "", "", ""};
                System.arraycopy(words, typed ? 1 : 0, fields, 1, words.length - (typed ? 1 : 0));
                fixed.append(String.format(" %-3s%-10s%-10s%s", (Object[]) fields)
                                .stripTrailing())
                        .append('\n');
            } else {
                section = line;
                fixed.append(line).append('\n');
            }
        }
        return fixed.toString();
    }
}
