package packpot.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.net.BindException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import packpot.household.Knowledge;
import packpot.page.PageServer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The whole job in a browser, on this machine alone. */
@Command(
        name = "page",
        mixinStandardHelpOptions = true,
        description = {
            "Open the scenarios of a folder in the browser: enter dogs, pantry, kitchen and wishes, see the plan follow,"
                    + " ask what would mend it, check a recipe, plan several cook days, print sheets.",
            "",
            "The page is served on this machine's loopback alone, under an address with a token of its own for every"
                    + " start. It opens and saves scenario files of that one folder and keeps unsaved work beside them in"
                    + " hidden files. Ctrl-C ends it; unsaved work is there again at the next start."
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "1:a fault of the program",
            "2:the command was used wrongly, or the port is in use",
            "7:the folder cannot be read or written",
            "130:ended by Ctrl-C"
        },
        footerHeading = "%nExample:%n",
        footer = {"  packpot page scenarios", "  packpot page scenarios/three-adults.json --no-browser --port 8642"})
final class PageCommand implements Callable<Integer> {
    private static final int MOST_PORT = 65_535;

    @Parameters(
            paramLabel = "FOLDER",
            arity = "0..1",
            defaultValue = ".",
            description = "a folder with scenario files, or one of these; default: this folder")
    private Path folder;

    @Option(
            names = "--port",
            paramLabel = "NUMBER",
            defaultValue = "0",
            description = "port to listen on; default: one that is free")
    private int port;

    @Option(names = "--no-browser", description = "print the address and open no browser")
    private boolean noBrowser;

    @Spec
    private CommandSpec spec;

    @SuppressWarnings("NullAway.Init")
    PageCommand() {}

    @Override
    public Integer call() throws OutputException {
        if (port < 0 || port > MOST_PORT) {
            throw wrongUse("--port: read " + port + ", expected a number from 0 to " + MOST_PORT, null);
        }
        boolean oneFile = Files.isRegularFile(folder);
        Path opened = oneFile ? folder.toAbsolutePath().getParent() : folder;
        if (opened == null || !Files.isDirectory(opened)) {
            throw wrongUse("there is no folder " + folder + "; make it first, or name another", null);
        }
        PrintWriter out = spec.commandLine().getOut();
        try (PageServer server = PageServer.start(opened, port, Knowledge.load())) {
            URI address = server.address(oneFile ? String.valueOf(folder.getFileName()) : null);
            out.println("The page is at");
            out.println(address);
            out.println(
                    "until you press Ctrl-C here. Do not pass the address on: it lets programs of this machine in.");
            out.flush();
            if (!noBrowser && !opened(address)) {
                out.println("No browser could be opened; type the address into one.");
            }
            new CountDownLatch(1).await();
        } catch (BindException e) {
            throw wrongUse(
                    "port " + port + " is in use by another program, perhaps by a page that runs already; leave --port"
                            + " out for one that is free",
                    e);
        } catch (IOException e) {
            throw new OutputException("The page cannot be served from " + opened + ": " + e.getMessage(), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return ExitCode.DONE;
    }

    /** Asks the system to show an address. */
    private static boolean opened(URI address) {
        String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        String[] command = system.contains("win")
                ? new String[] {"rundll32", "url.dll,FileProtocolHandler", address.toString()}
                : new String[] {system.contains("mac") ? "open" : "xdg-open", address.toString()};
        try {
            new ProcessBuilder(command)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    private ParameterException wrongUse(String sentence, @Nullable Throwable cause) {
        return new ParameterException(spec.commandLine(), sentence, cause);
    }
}
