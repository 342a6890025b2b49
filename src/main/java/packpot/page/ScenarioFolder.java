package packpot.page;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import packpot.report.OutputFile;

/**
 * The scenario files of one folder, and beside each the unsaved work of every page that has it open. Nothing outside of the
 * folder is read or written. A file is saved over the version alone that the page has read.
 */
final class ScenarioFolder {
    static final int MOST_BYTES = 2_000_000;
    private static final int MOST_FILES = 1000;
    private static final String END = ".json";
    private static final String DRAFT = ".draft";
    private static final String LOCK = ".packpot.lock";
    /** A name in the folder itself: no path, nothing hidden, nothing that a system reads as something else. */
    private static final String NAME = "[\\p{L}\\p{N}_][\\p{L}\\p{N} _.,()-]{0,100}\\.json";

    private static final String PAGE = "[0-9a-f]{8,40}";

    private final Path folder;

    ScenarioFolder(Path folder) throws IOException {
        this.folder = folder.toRealPath();
    }

    Path folder() {
        return folder;
    }

    /** A file as it was read. */
    record Version(String text, String hash) {}

    /** Unsaved work of a page on a file, in the page's own form. */
    record Draft(String page, String savedAt, String text) {}

    /** Names of the scenario files, in order. */
    List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
                    .map(file -> String.valueOf(file.getFileName()))
                    .filter(name -> name.matches(NAME))
                    .sorted()
                    .limit(MOST_FILES)
                    .toList();
        }
    }

    private Path file(String name) throws Refused {
        if (!name.matches(NAME)) {
            throw new Refused(
                    Refused.BAD_REQUEST,
                    "\"" + name + "\" is no name for a scenario here; use letters, digits, spaces and - _ . with " + END
                            + " at the end, and no folder");
        }
        Path file = folder.resolve(name);
        if (Files.exists(file, LinkOption.NOFOLLOW_LINKS) && !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new Refused(Refused.FORBIDDEN, name + " is no ordinary file of this folder");
        }
        return file;
    }

    Version open(String name) throws Refused {
        Path file = file(name);
        if (!Files.exists(file)) {
            throw new Refused(Refused.NOT_FOUND, "there is no " + name + " in this folder any more");
        }
        return read(file, name);
    }

    private static Version read(Path file, String name) throws Refused {
        try {
            if (Files.size(file) > MOST_BYTES) {
                throw new Refused(
                        Refused.TOO_LARGE, name + " is larger than " + MOST_BYTES / 1_000_000 + " MB; no scenario is");
            }
            byte[] text = Files.readAllBytes(file);
            return new Version(new String(text, StandardCharsets.UTF_8), hash(text));
        } catch (IOException e) {
            throw new Refused(Refused.FORBIDDEN, name + " cannot be read; check its permissions");
        }
    }

    /**
     * Saves a file, whole or not at all.
     *
     * @param base hash of the version that the page read; empty for a new file
     * @throws Refused with the hash on disk, when that is another version
     */
    String save(String name, byte[] text, String base) throws Refused {
        Path file = file(name);
        // The file lock is between processes; within this one it would be refused and not waited for.
        synchronized (ScenarioFolder.class) {
            try (FileChannel channel = FileChannel.open(
                            folder.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
                    FileLock lock = channel.lock()) {
                String there = Files.exists(file) ? read(file, name).hash() : "";
                if (!there.equals(base) && lock.isValid()) {
                    throw new Refused(
                            Refused.CONFLICT,
                            there.isEmpty()
                                    ? name + " was removed since it was opened here"
                                    : base.isEmpty()
                                            ? name + " exists already; choose another name"
                                            : name
                                                    + " was changed since it was opened here, by another page or program",
                            Map.of("version", there));
                }
                OutputFile.write(file, text, true);
                return hash(text);
            } catch (IOException e) {
                throw new Refused(Refused.FORBIDDEN, "not saved: " + e.getMessage());
            }
        }
    }

    private Path draft(String name, String page) throws Refused {
        file(name);
        if (!page.matches(PAGE)) {
            throw new Refused(Refused.BAD_REQUEST, "a page is named by digits");
        }
        return folder.resolve("." + name + "." + page + DRAFT);
    }

    /** Keeps the unsaved work of a page. */
    void keep(String name, String page, byte[] text) throws Refused {
        try {
            OutputFile.write(draft(name, page), text, true);
        } catch (IOException e) {
            throw new Refused(Refused.FORBIDDEN, "unsaved work cannot be kept in this folder: " + e.getMessage());
        }
    }

    void forget(String name, String page) throws Refused {
        try {
            Files.deleteIfExists(draft(name, page));
        } catch (IOException e) {
            throw new Refused(Refused.FORBIDDEN, "the unsaved work cannot be removed: " + e.getMessage());
        }
    }

    /** The unsaved work on a file, the newest first. */
    List<Draft> drafts(String name) throws Refused {
        file(name);
        String begin = "." + name + ".";
        List<Path> paths;
        try (Stream<Path> files = Files.list(folder)) {
            paths = files.filter(file -> String.valueOf(file.getFileName()).startsWith(begin))
                    .filter(file -> String.valueOf(file.getFileName()).endsWith(DRAFT))
                    .filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
                    .toList();
        } catch (IOException e) {
            throw new Refused(Refused.FORBIDDEN, "the folder cannot be read: " + e.getMessage());
        }
        List<Draft> drafts = new ArrayList<>();
        for (Path path : paths) {
            String file = String.valueOf(path.getFileName());
            String page = file.substring(begin.length(), file.length() - DRAFT.length());
            if (page.matches(PAGE)) {
                try {
                    String time = Files.getLastModifiedTime(path).toInstant().toString();
                    drafts.add(new Draft(page, time, new String(Files.readAllBytes(path), StandardCharsets.UTF_8)));
                } catch (IOException goneMeanwhile) {
                    // Its page saved or threw it away.
                }
            }
        }
        drafts.sort((a, b) -> b.savedAt().compareTo(a.savedAt()));
        return drafts;
    }

    static String hash(byte[] text) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(text));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
