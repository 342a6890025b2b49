package packpot.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** One run of the program with what it printed. */
record Run(int exitCode, String out, String err) {
    private static final Map<List<String>, Run> ONCE = new HashMap<>();

    static Run of(String... arguments) {
        PrintStream out = System.out;
        PrintStream err = System.err;
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        ByteArrayOutputStream told = new ByteArrayOutputStream();
        int exitCode;
        try {
            System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
            System.setErr(new PrintStream(told, true, StandardCharsets.UTF_8));
            exitCode = Main.run(arguments);
        } finally {
            System.setOut(out);
            System.setErr(err);
        }
        return new Run(exitCode, printed.toString(StandardCharsets.UTF_8), told.toString(StandardCharsets.UTF_8));
    }

    /** The same for arguments that several tests ask about: they run once. For commands that write no file. */
    static Run once(String... arguments) {
        return ONCE.computeIfAbsent(List.of(arguments), key -> of(arguments));
    }

    List<String> lines() {
        return out.lines().toList();
    }
}
