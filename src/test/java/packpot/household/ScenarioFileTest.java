package packpot.household;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertTimeout;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ScenarioFileTest {
    private static final ScenarioReader READER = new ScenarioReader(Scenarios.KNOWLEDGE, Scenarios.TODAY);

    @TempDir
    private Path folder;

    private void refused(Path file, String told) {
        assertThatThrownBy(() -> READER.read(file))
                .isInstanceOf(ScenarioException.class)
                .hasMessageStartingWith(file + " has a fault:")
                .hasMessageContaining(told);
    }

    @Test
    void aMissingFileIsTold() {
        refused(folder.resolve("none.json"), "there is no such file");
    }

    @Test
    void aFolderIsTold() {
        refused(folder, "is a folder; expected a scenario file");
    }

    @Test
    void aFileTooLargeIsTold() throws IOException {
        Path file = folder.resolve("large.json");
        Files.writeString(file, " ".repeat(2_100_000));
        refused(file, "is larger than 2 MB");
    }

    /** A file of a gigabyte that takes no room on the disk. */
    @Test
    void aGigabyteIsRefusedAtOnce() throws IOException {
        Path file = folder.resolve("huge.json");
        try (FileChannel channel = FileChannel.open(
                file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE, StandardOpenOption.SPARSE)) {
            channel.write(ByteBuffer.wrap(new byte[1]), 1_000_000_000L);
        }
        assertTimeout(Duration.ofSeconds(2), () -> refused(file, "is larger than 2 MB"));
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void aSourceWithoutEndIsRefusedAtOnce() {
        assertTimeout(Duration.ofSeconds(2), () -> refused(Path.of("/dev/zero"), "is larger than 2 MB"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"9e99999999999", "0e-99999999999", "1e-2147483648"})
    void aNumberWhoseExponentNoNumberCanHaveIsTold(String number) throws IOException {
        Path file = Files.writeString(
                folder.resolve("number.json"), "{'packpot': 1,\n'margin': ".replace('\'', '"') + number + "}");
        refused(file, "is not valid JSON; line 2, column 11: a number in it has too many digits behind its \"e\"");
    }

    @Test
    void bytesThatAreNoTextAreTold() throws IOException {
        Path file = folder.resolve("picture.json");
        Files.write(file, new byte[] {(byte) 0x89, 'P', 'N', 'G', 0, (byte) 0xff, (byte) 0xfe});
        refused(file, "is not valid JSON");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            ``                                  | is empty; expected a scenario
            {'dogs': [}                         | is not valid JSON; line 1, column
            {'dogs': [], 'dogs': []}            | line 1, column 20: the field "dogs" stands twice
            {} {}                               | goes on after
            [1]                                 | expected an object in braces
            'Moss'                              | expected an object in braces
            {'dogs': [], }                      | is not valid JSON
            """)
    void textThatIsNoScenarioIsToldAsOneFault(String text, String told) throws IOException {
        Path file = folder.resolve("scenario.json");
        Files.writeString(file, text.replace('\'', '"'), StandardCharsets.UTF_8);
        refused(file, told);
    }

    @Test
    void nestingWithoutEndIsToldAndNotFollowed() throws IOException {
        Path file = folder.resolve("deep.json");
        Files.writeString(file, "{\"shape\": " + "[".repeat(100_000));
        refused(file, "is not valid JSON");
    }

    static Stream<Path> packagedScenarios() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("scenarios"))) {
            return files.filter(file -> file.toString().endsWith(".json")).toList().stream();
        }
    }

    @ParameterizedTest
    @MethodSource("packagedScenarios")
    void everyScenarioOfTheProgramIsValid(Path file) throws ScenarioException {
        assertThat(READER.read(file).dogs()).isNotEmpty();
    }
}
