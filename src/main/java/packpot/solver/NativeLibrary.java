package packpot.solver;

import com.google.ortools.Loader;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.JarURLConnection;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.jar.JarEntry;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import java.util.zip.CheckedInputStream;
import org.jspecify.annotations.Nullable;

/**
 * The solver's native code, unpacked once per user into a cache folder and checked before each use. Unpacking 60 MB
 * takes half a second of every start, checking them a few hundredths.
 *
 * <p>The folder must belong to the user alone, and every file in it must have the length and the CRC-32 that the jar's
 * own directory states: the checksum finds what was cut off or damaged, the owner keeps strangers out. It is filled
 * under another name and moved into place, so that two processes do not disturb each other and a killed one leaves no
 * half of it. Where a cache cannot be had, the library unpacks itself into a temporary folder.
 */
final class NativeLibrary {
    private static final String FOLDER_VARIABLE = "PACKPOT_CACHE";
    private static final String UNDER_WAY = "unpacking-";
    /** No process is so long at it. */
    private static final Duration ABANDONED = Duration.ofHours(1);

    private NativeLibrary() {}

    /**
     * Loads the native code.
     *
     * @throws RuntimeException as the library throws when there is none for this system
     */
    static void load() {
        if (!fromCache(System.getenv(FOLDER_VARIABLE))) {
            Loader.loadNativeLibraries();
        }
    }

    private static boolean fromCache(@Nullable String chosen) {
        String platform = platform();
        URL packed = NativeLibrary.class.getResource("/ortools-" + platform + "/");
        if (packed == null || !"jar".equals(packed.getProtocol())) {
            return false;
        }
        try {
            List<JarEntry> entries = entries(packed);
            Path folder = unpacked(cache(chosen), platform, entries);
            System.load(folder.resolve(System.mapLibraryName("jniortools")).toString());
            return true;
        } catch (IOException | UncheckedIOException | UnsatisfiedLinkError | SecurityException e) {
            return false;
        }
    }

    /** As the library names the folders of its jars. */
    private static String platform() {
        String os = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        String name = os.startsWith("win") ? "win32" : os.startsWith("mac") ? "darwin" : "linux";
        String arch = System.getProperty("os.arch");
        return name + "-" + (arch.equals("amd64") || arch.equals("x86_64") ? "x86-64" : arch);
    }

    private static List<JarEntry> entries(URL packed) throws IOException {
        JarURLConnection connection = (JarURLConnection) packed.openConnection();
        String prefix = connection.getEntryName();
        return connection.getJarFile().stream()
                .filter(entry -> entry.getName().startsWith(prefix) && !entry.isDirectory())
                .sorted(Comparator.comparing(JarEntry::getName))
                .toList();
    }

    /** The user's cache folder: the one chosen, or the one that the system has for this. */
    static Path cache(@Nullable String chosen) {
        if (chosen != null && !chosen.isBlank()) {
            return Path.of(chosen);
        }
        String xdg = System.getenv("XDG_CACHE_HOME");
        String local = System.getenv("LOCALAPPDATA");
        Path home = Path.of(System.getProperty("user.home"));
        Path caches = xdg != null && Path.of(xdg).isAbsolute()
                ? Path.of(xdg)
                : local != null ? Path.of(local) : home.resolve(".cache");
        return caches.resolve("packpot");
    }

    /** The folder with the files of these entries, filled when it is not there or not as it should be. */
    static Path unpacked(Path cache, String platform, List<JarEntry> entries) throws IOException {
        Path folder = cache.resolve("solver-" + platform + "-" + fingerprint(entries));
        if (isSound(folder, entries)) {
            return folder;
        }
        Files.createDirectories(cache);
        sweep(cache);
        Path fresh = Files.createTempDirectory(cache, UNDER_WAY);
        try {
            for (JarEntry entry : entries) {
                try (InputStream in = NativeLibrary.class.getResourceAsStream("/" + entry.getName())) {
                    if (in == null) {
                        throw new IOException(entry.getName() + " is gone");
                    }
                    Files.copy(in, fresh.resolve(fileName(entry)));
                }
            }
            put(fresh, folder, entries);
        } finally {
            delete(fresh);
        }
        return folder;
    }

    /** Takes away what killed processes left. */
    private static void sweep(Path cache) throws IOException {
        Instant before = Instant.now().minus(ABANDONED);
        List<Path> old = new ArrayList<>();
        try (DirectoryStream<Path> folders = Files.newDirectoryStream(cache, UNDER_WAY + "*")) {
            for (Path folder : folders) {
                if (Files.getLastModifiedTime(folder, LinkOption.NOFOLLOW_LINKS)
                        .toInstant()
                        .isBefore(before)) {
                    old.add(folder);
                }
            }
        }
        for (Path folder : old) {
            delete(folder);
        }
    }

    private static void put(Path fresh, Path folder, List<JarEntry> entries) throws IOException {
        if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
            if (isSound(folder, entries)) {
                return; // Another process was quicker.
            }
            // What lies there is no good; processes that have it loaded keep it.
            Path aside = Files.createTempDirectory(folder.toAbsolutePath().getParent(), UNDER_WAY);
            Files.move(folder, aside.resolve("solver"));
            delete(aside);
        }
        try {
            Files.move(fresh, folder, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            if (!isSound(folder, entries)) {
                throw e;
            }
        }
    }

    /** Names what was packed: another version of the library has another folder. */
    private static String fingerprint(List<JarEntry> entries) {
        CRC32 crc = new CRC32();
        for (JarEntry entry : entries) {
            crc.update(
                    (fileName(entry) + entry.getSize() + ":" + entry.getCrc() + ";").getBytes(StandardCharsets.UTF_8));
        }
        return Long.toHexString(crc.getValue());
    }

    private static boolean isSound(Path folder, List<JarEntry> entries) throws IOException {
        if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS) || !isTheUsersOwn(folder)) {
            return false;
        }
        for (JarEntry entry : entries) {
            Path file = folder.resolve(fileName(entry));
            if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                    || Files.size(file) != entry.getSize()
                    || crc(file) != entry.getCrc()) {
                return false;
            }
        }
        return true;
    }

    private static long crc(Path file) throws IOException {
        byte[] buffer = new byte[1 << 16];
        try (CheckedInputStream in = new CheckedInputStream(Files.newInputStream(file), new CRC32())) {
            int read = 0;
            while (read >= 0) {
                read = in.read(buffer);
            }
            return in.getChecksum().getValue();
        }
    }

    /** Nobody else may write into it. Systems without such permissions keep a user's folders apart by themselves. */
    private static boolean isTheUsersOwn(Path folder) throws IOException {
        if (!Files.getFileStore(folder).supportsFileAttributeView("posix")) {
            return true;
        }
        PosixFileAttributes attributes =
                Files.readAttributes(folder, PosixFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
        Set<PosixFilePermission> allowed = attributes.permissions();
        return attributes.owner().getName().equals(System.getProperty("user.name"))
                && !allowed.contains(PosixFilePermission.GROUP_WRITE)
                && !allowed.contains(PosixFilePermission.OTHERS_WRITE);
    }

    private static String fileName(JarEntry entry) {
        String name = entry.getName().substring(entry.getName().lastIndexOf('/') + 1);
        if (name.isEmpty() || name.startsWith(".")) {
            throw new UncheckedIOException(new IOException("no name for a file: " + entry.getName()));
        }
        return name;
    }

    private static void delete(Path folder) throws IOException {
        if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(file);
            }
        }
    }
}
