package packpot.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import packpot.report.OutputFile;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** Where a result goes. */
final class Output {
    @Option(
            names = "--json",
            description = "print for programs; models/ holds a schema of the fields for each command that plans")
    private boolean json;

    @Option(names = "--out", paramLabel = "FILE", description = "write to this file, not to the terminal")
    private @Nullable Path file;

    @Option(names = "--overwrite", description = "replace files that exist")
    private boolean overwrite;

    boolean overwrite() {
        return overwrite;
    }

    boolean json() {
        return json;
    }

    /** Refuses a file that could not be written, before any work is done. */
    void check() throws OutputException {
        Path target = file;
        if (target != null) {
            check(target);
        }
    }

    /** The file that the result goes to; null for the terminal. */
    @Nullable
    Path file() {
        return file;
    }

    /** Refuses another file that could not be written. */
    void check(Path target) throws OutputException {
        try {
            OutputFile.check(target, overwrite);
        } catch (IOException e) {
            throw new OutputException(String.valueOf(e.getMessage()), e);
        }
    }

    void write(CommandSpec spec, String text) throws OutputException {
        Path target = file;
        if (target == null) {
            PrintWriter out = spec.commandLine().getOut();
            out.print(text);
            if (out.checkError()) {
                throw new OutputException("The output could not be written: the disk is full, or nobody reads it.");
            }
            return;
        }
        write(target, text);
    }

    /** Writes another file. */
    void write(Path target, String text) throws OutputException {
        try {
            OutputFile.write(target, text, overwrite);
        } catch (IOException e) {
            throw new OutputException(String.valueOf(e.getMessage()), e);
        }
    }
}
