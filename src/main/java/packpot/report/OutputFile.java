package packpot.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes files whole or not at all, and never over a file of the user's unless asked. */
public final class OutputFile {

    private OutputFile() {}

    /**
     * Writes text to a file through a temporary file beside it.
     *
     * @throws IOException with a message for people
     */
    public static void write(Path file, String text, boolean overwrite) throws IOException {
        Path target = file.toAbsolutePath();
        Path folder = target.getParent();
        if (folder == null || Files.isDirectory(target)) {
            throw new IOException(file + " is a folder; give the name of a file");
        }
        if (Files.exists(target) && !overwrite) {
            throw new IOException(file + " exists already; nothing was written. Give another name, or --overwrite");
        }
        Path temporary = null;
        try {
            temporary = Files.createTempFile(folder, ".packpot-", ".tmp");
            Files.writeString(temporary, text, StandardCharsets.UTF_8);
            move(temporary, target, overwrite);
        } catch (NoSuchFileException e) {
            throw new IOException("there is no folder " + folder + "; make it first", e);
        } catch (AccessDeniedException e) {
            throw new IOException("the folder " + folder + " may not be written to", e);
        } catch (FileAlreadyExistsException e) {
            throw new IOException(file + " exists already; nothing was written", e);
        } finally {
            if (temporary != null) {
                Files.deleteIfExists(temporary);
            }
        }
    }

    private static void move(Path from, Path to, boolean overwrite) throws IOException {
        try {
            if (overwrite) {
                Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } else {
                Files.move(from, to);
            }
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}
