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
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/** Writes files whole or not at all, and never over a file of the user's unless asked. */
public final class OutputFile {

    private OutputFile() {}

    /**
     * Says whether a file could be written, and where it lies.
     *
     * @throws IOException with a message for people, when it could not
     */
    public static Path check(Path file, boolean overwrite) throws IOException {
        Path target = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
        Path folder = target.getParent();
        if (folder == null || Files.isDirectory(target)) {
            throw new IOException(file + " is a folder; give the name of a file");
        }
        if (!Files.isDirectory(folder)) {
            throw new IOException("there is no folder " + folder + "; make it first");
        }
        if (!Files.isWritable(folder)) {
            throw new IOException("the folder " + folder + " may not be written to");
        }
        if (Files.exists(target) && !Files.isRegularFile(target)) {
            throw new IOException(file + " is no ordinary file; nothing was written. Give another name");
        }
        if (Files.exists(target) && !overwrite) {
            throw new IOException(file + " exists already; nothing was written. Give another name, or --overwrite");
        }
        return target;
    }

    /**
     * Writes text to a file through a temporary file beside it.
     *
     * @throws IOException with a message for people
     */
    public static void write(Path file, String text, boolean overwrite) throws IOException {
        write(file, text.getBytes(StandardCharsets.UTF_8), overwrite);
    }

    /** The same for bytes. */
    public static void write(Path file, byte[] bytes, boolean overwrite) throws IOException {
        Path target = check(file, overwrite);
        Path folder = target.getParent();
        if (folder == null) {
            throw new IOException(file + " lies in no folder");
        }
        Path temporary = null;
        try {
            // Made by hand, since a temporary file of the library's may be read by its owner alone.
            temporary = folder.resolve(".packpot-" + UUID.randomUUID() + ".tmp");
            Files.write(temporary, bytes, StandardOpenOption.CREATE_NEW);
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
