package packpot.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.JarURLConnection;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.jar.JarEntry;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Unpacks some files of another library's jar, which is as good as the solver's and smaller. */
class NativeLibraryTest {
    private static final String PLATFORM = "any";
    private static List<JarEntry> entries = List.of();

    @TempDir
    private Path cache;

    @BeforeAll
    static void someFilesOfAJar() throws IOException {
        URL url = NativeLibraryTest.class.getResource("/picocli/CommandLine.class");
        assertThat(url).isNotNull();
        JarURLConnection connection = (JarURLConnection) url.openConnection();
        entries = connection.getJarFile().stream()
                .filter(entry -> entry.getName().matches("picocli/CommandLine\\$Help.*class"))
                .toList();
        assertThat(entries).hasSizeGreaterThan(5);
    }

    private Path unpacked() throws IOException {
        return NativeLibrary.unpacked(cache, PLATFORM, entries);
    }

    private static Path one(Path folder) {
        JarEntry entry = entries.get(0);
        return folder.resolve(entry.getName().substring(entry.getName().indexOf('/') + 1));
    }

    private void hasNothingButTheFolder(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(cache)) {
            assertThat(all).containsExactly(folder);
        }
    }

    @Test
    void theSecondTimeNothingIsUnpacked() throws IOException {
        Path folder = unpacked();
        var at = Files.getLastModifiedTime(one(folder));
        var key = Files.readAttributes(one(folder), java.nio.file.attribute.BasicFileAttributes.class)
                .fileKey();
        assertThat(unpacked()).isEqualTo(folder);
        assertThat(Files.getLastModifiedTime(one(folder))).isEqualTo(at);
        assertThat(Files.readAttributes(one(folder), java.nio.file.attribute.BasicFileAttributes.class)
                        .fileKey())
                .isEqualTo(key);
        hasNothingButTheFolder(folder);
    }

    @Test
    void aChangedByteIsMended() throws IOException {
        Path file = one(unpacked());
        byte[] right = Files.readAllBytes(file);
        byte[] wrong = right.clone();
        wrong[wrong.length / 2] ^= 1;
        Files.write(file, wrong);
        Path folder = unpacked();
        assertThat(Files.readAllBytes(one(folder))).isEqualTo(right);
        hasNothingButTheFolder(folder);
    }

    @Test
    void aFileCutOffOrGoneIsMended() throws IOException {
        Path file = one(unpacked());
        long size = Files.size(file);
        Files.write(file, new byte[0]);
        assertThat(Files.size(one(unpacked()))).isEqualTo(size);
        Files.delete(file);
        assertThat(Files.size(one(unpacked()))).isEqualTo(size);
    }

    @Test
    void aFolderThatOthersMayWriteIntoIsNotTrusted() throws IOException {
        Path folder = unpacked();
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxrwxrwx"));
        Files.writeString(folder.resolve("stranger"), "");
        unpacked();
        assertThat(folder.resolve("stranger")).doesNotExist();
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder)))
                .isEqualTo("rwx------");
    }

    @Test
    void aLinkIsNotFollowed() throws IOException {
        Path folder = unpacked();
        Path elsewhere = Files.move(folder, cache.resolveSibling(cache.getFileName() + "-elsewhere"));
        Files.createSymbolicLink(folder, elsewhere);
        unpacked();
        assertThat(Files.isSymbolicLink(folder)).isFalse();
        assertThat(one(elsewhere)).exists();
    }

    @Test
    void manyAtOnceGetOneFolder() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(8);
        try {
            Callable<Path> unpack = this::unpacked;
            for (Future<Path> each : threads.invokeAll(java.util.Collections.nCopies(16, unpack))) {
                assertThat(one(each.get())).exists();
            }
        } finally {
            threads.shutdownNow();
        }
        hasNothingButTheFolder(unpacked());
    }

    @Test
    void whatAKilledProcessLeftIsTakenAwayInTime() throws IOException {
        Path left = Files.createDirectory(cache.resolve("unpacking-123"));
        Files.writeString(left.resolve("half"), "of it");
        Path young = Files.createDirectory(cache.resolve("unpacking-456"));
        Files.setLastModifiedTime(left, FileTime.from(Instant.now().minusSeconds(7200)));
        unpacked();
        assertThat(left).doesNotExist();
        assertThat(young).exists();
    }

    @Test
    void theFolderChosenWins() {
        assertThat(NativeLibrary.cache("/tmp/of-my-own")).isEqualTo(Path.of("/tmp/of-my-own"));
        assertThat(NativeLibrary.cache(" ").getFileName()).hasToString("packpot");
    }
}
