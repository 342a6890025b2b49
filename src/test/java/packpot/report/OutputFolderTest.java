package packpot.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFolderTest {
    @TempDir
    private Path parent;

    private long entries() throws IOException {
        try (Stream<Path> all = Files.walk(parent)) {
            return all.count() - 1;
        }
    }

    @Test
    void writesANewFolderAndAnEmptyOne() throws IOException {
        OutputFolder.write(parent.resolve("new"), Map.of("a.txt", new byte[] {1}), false);
        assertThat(parent.resolve("new/a.txt")).hasBinaryContent(new byte[] {1});
        Files.createDirectory(parent.resolve("empty"));
        OutputFolder.write(parent.resolve("empty"), Map.of("a.txt", new byte[] {2}), false);
        assertThat(parent.resolve("empty/a.txt")).hasBinaryContent(new byte[] {2});
        assertThat(entries()).isEqualTo(4);
    }

    @Test
    void leavesAFolderThatIsNotEmptyUnlessAsked() throws IOException {
        Path folder = Files.createDirectory(parent.resolve("mine"));
        Files.writeString(folder.resolve("letter.txt"), "mine");
        Files.writeString(folder.resolve("a.txt"), "old");
        assertThatThrownBy(() -> OutputFolder.write(folder, Map.of("a.txt", new byte[0]), false))
                .hasMessageContaining("is not empty", "--overwrite");
        assertThat(folder.resolve("a.txt")).hasContent("old");
        OutputFolder.write(folder, Map.of("a.txt", new byte[] {7}), true);
        assertThat(folder.resolve("a.txt")).hasBinaryContent(new byte[] {7});
        assertThat(folder.resolve("letter.txt")).hasContent("mine");
    }

    /** A file that cannot be written, here for want of its folder, stands for a full disk. */
    @Test
    void leavesNothingWhenItFailsInTheMiddle() throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("a.txt", new byte[] {1});
        files.put("nowhere/b.txt", new byte[] {1});
        assertThatThrownBy(() -> OutputFolder.write(parent.resolve("new"), files, false))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("could not be written");
        assertThat(entries()).isZero();
    }

    @Test
    void saysWhatStandsInTheWay() throws IOException {
        Path file = Files.writeString(parent.resolve("file"), "x");
        assertThatThrownBy(() -> OutputFolder.check(file, true)).hasMessageContaining("is a file");
        assertThatThrownBy(() -> OutputFolder.check(parent.resolve("no/where"), true))
                .hasMessageContaining("there is no folder");
    }
}
