package packpot.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.function.IntSupplier;
import packpot.data.ModelDataException;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.solver.SolverException;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Starts the program. */
public final class Main {
    private static final String DEBUG = "PACKPOT_DEBUG";
    static final String REPORT = "This is a fault of the program, not of your scenario. Set " + DEBUG
            + "=1 to see where it happened, and report it.";
    private static final String NO_MEMORY = "The memory that Java may use is full; nothing was left half written. Set"
            + " JAVA_TOOL_OPTIONS=-Xmx4g for more, or plan fewer dogs, foods or days at once.";

    private Main() {}

    /** Runs one command and ends the process with its exit code. */
    public static void main(String[] arguments) {
        System.exit(orFault(() -> run(arguments)));
    }

    /** The exit code of a command, or that of a fault which no command sees: no memory, a part of the program missing. */
    static int orFault(IntSupplier command) {
        try {
            return command.getAsInt();
        } catch (Error e) {
            if (System.getenv(DEBUG) != null) {
                e.printStackTrace();
            }
            System.err.println(isMemory(e) ? NO_MEMORY : "The program failed: " + e + "\n" + REPORT);
            return ExitCode.FAULT_OF_PROGRAM;
        }
    }

    private static boolean isMemory(Throwable fault) {
        return fault instanceof OutOfMemoryError || (fault.getCause() != null && isMemory(fault.getCause()));
    }

    static int run(String... arguments) {
        CommandLine commandLine = commandLine(arguments)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setOut(new PrintWriter(System.out, true, StandardCharsets.UTF_8))
                .setErr(new PrintWriter(System.err, true, StandardCharsets.UTF_8))
                .setParameterExceptionHandler(Main::wrongUse)
                .setExecutionExceptionHandler(Main::fault);
        commandLine.setUsageHelpWidth(80);
        boolean alone = !(commandLine.getCommandSpec().userObject() instanceof Packpot);
        return commandLine.execute(alone ? Arrays.copyOfRange(arguments, 1, arguments.length) : arguments);
    }

    /** One command by itself where one is named: reading the options of all of them takes as long as a short plan. */
    private static CommandLine commandLine(String... arguments) {
        if (arguments.length > 0) {
            for (Class<?> command : Packpot.class.getAnnotation(Command.class).subcommands()) {
                String name = command.getAnnotation(Command.class).name();
                if (name.equals(arguments[0]) && command.getPackageName().equals(Packpot.class.getPackageName())) {
                    readAhead();
                    return new CommandLine(command).setCommandName("packpot " + name);
                }
            }
        }
        return new CommandLine(new Packpot());
    }

    /** Reads what every command needs while this thread reads the options. */
    private static void readAhead() {
        Thread reader = new Thread(Knowledge::load, "read ahead");
        // The command reads it too, meets the same fault, and tells.
        reader.setUncaughtExceptionHandler((thread, fault) -> {});
        reader.setDaemon(true);
        reader.start();
    }

    /** The message stands last, where it is still on the screen; the help is a page of its own. */
    private static int wrongUse(CommandLine.ParameterException wrong, String[] arguments) {
        CommandLine command = wrong.getCommandLine();
        PrintWriter err = command.getErr();
        if (System.getenv(DEBUG) != null) {
            wrong.printStackTrace(err);
        }
        err.println("How it is used: " + command.getCommandSpec().qualifiedName() + " --help");
        err.println(wrong.getMessage());
        CommandLine.UnmatchedArgumentException.printSuggestions(wrong, err);
        return ExitCode.WRONG_USE;
    }

    private static int fault(Exception fault, CommandLine command, CommandLine.ParseResult parsed) {
        PrintWriter err = command.getErr();
        if (System.getenv(DEBUG) != null) {
            fault.printStackTrace(err);
        }
        if (fault instanceof ScenarioException) {
            err.println(fault.getMessage());
            err.println("Nothing was written.");
            return ExitCode.SCENARIO_FAULTS;
        }
        if (fault instanceof OutputException) {
            err.println(fault.getMessage());
            return ExitCode.NOT_WRITTEN;
        }
        err.println(words(fault) + (isMemory(fault) ? "" : "\n" + REPORT));
        return ExitCode.FAULT_OF_PROGRAM;
    }

    /** What a fault of the program is told as. */
    static String words(Exception fault) {
        if (isMemory(fault)) {
            return NO_MEMORY;
        }
        String kind = fault instanceof SolverException
                ? "The solver failed: "
                : fault instanceof ModelDataException ? "The program's own data are wrong: " : "The program failed: ";
        return kind + fault.getMessage();
    }
}
