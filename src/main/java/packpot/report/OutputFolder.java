package packpot.report;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;

/** Writes a folder of files whole or not at all, and never over files of the user's unless asked. */
public final class OutputFolder {

    private OutputFolder() {}

    /**
     * Says whether a folder could be written.
     *
     * @throws IOException with a message for people, when it could not
     */
    public static Path check(Path folder, boolean overwrite) throws IOException {
        Path target = Files.exists(folder)
                ? folder.toRealPath()
                : folder.toAbsolutePath().normalize();
        Path parent = target.getParent();
        if (Files.exists(target) && !Files.isDirectory(target)) {
            throw new IOException(folder + " is a file; give the name of a folder");
        }
        if (parent == null || !Files.isDirectory(parent)) {
            throw new IOException("there is no folder " + (parent == null ? folder : parent) + "; make it first");
        }
        Path written = Files.exists(target) ? target : parent;
        if (!Files.isWritable(written) || !Files.isWritable(parent)) {
            throw new IOException("the folder " + written + " may not be written to");
        }
        if (Files.isDirectory(target) && !overwrite && !isEmpty(target)) {
            throw new IOException(
                    "the folder " + folder
                            + " is not empty; nothing was written. Give another name, or --overwrite to replace the sheets in it");
        }
        return target;
    }

    /**
     * Writes files into a folder, through a temporary folder beside it. Files of other names stay.
     *
     * @throws IOException with a message for people
     */
    public static void write(Path folder, Map<String, byte[]> files, boolean overwrite) throws IOException {
        Path target = check(folder, overwrite);
        Path temporary = target.resolveSibling(".packpot-" + UUID.randomUUID() + ".tmp");
        try {
            Files.createDirectory(temporary);
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                Files.write(temporary.resolve(file.getKey()), file.getValue());
            }
            if (Files.isDirectory(target) && !isEmpty(target)) {
                for (String name : files.keySet()) {
                    Files.move(temporary.resolve(name), target.resolve(name), StandardCopyOption.REPLACE_EXISTING);
                }
            } else {
                Files.deleteIfExists(target);
                Files.move(temporary, target);
            }
        } catch (AccessDeniedException | NotDirectoryException e) {
            throw new IOException("the folder " + folder + " may not be written to", e);
        } catch (IOException e) {
            throw new IOException(
                    "the folder " + folder + " could not be written (" + e.getMessage()
                            + "); no half of a file is left there",
                    e);
        } finally {
            delete(temporary);
        }
    }

    private static boolean isEmpty(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.findAny().isEmpty();
        }
    }

    private static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> entries = Files.walk(folder)) {
                List<Path> all = entries.sorted(Comparator.reverseOrder()).toList();
                for (Path each : all) {
                    Files.deleteIfExists(each);
                }
            }
        }
    }
}
