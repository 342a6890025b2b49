package packpot.cli;

import java.io.Console;
import java.util.Locale;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/** Shows on a terminal that long work goes on; silent when the output is piped. */
final class Progress {
    private static final String CLEAR_LINE = "\r" + " ".repeat(70) + "\r";

    private Progress() {}

    /** Does the work and shows the seconds that it takes. */
    static <T> T during(String what, Supplier<T> work) {
        return during(() -> what, work);
    }

    /** The same for work that says from time to time what it does now. */
    static <T> T during(Supplier<String> what, Supplier<T> work) {
        if (!onTerminal()) {
            return work.get();
        }
        ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(task -> {
            Thread thread = new Thread(task, "progress");
            thread.setDaemon(true);
            return thread;
        });
        long started = System.nanoTime();
        var unused = clock.scheduleAtFixedRate(
                () -> show(String.format(
                        Locale.ROOT, "\r%-58s %3d s ", what.get(), (System.nanoTime() - started) / 1_000_000_000)),
                1,
                1,
                TimeUnit.SECONDS);
        try {
            return work.get();
        } finally {
            clock.shutdownNow();
            show(CLEAR_LINE);
        }
    }

    /** Since Java 22 there is a console even when the output is piped, and it can be asked; before, it is then null. */
    @SuppressWarnings("SystemConsoleNull")
    private static boolean onTerminal() {
        Console console = System.console();
        if (console == null) {
            return false;
        }
        try {
            return (boolean) Console.class.getMethod("isTerminal").invoke(console);
        } catch (ReflectiveOperationException olderJava) {
            return true;
        }
    }

    private static void show(String text) {
        System.err.print(text);
        System.err.flush();
    }
}
