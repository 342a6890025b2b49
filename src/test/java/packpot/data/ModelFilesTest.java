package packpot.data;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Reference;
import packpot.Reference.Line;

class ModelFilesTest {
    private static final Pattern KEY_ROW = Pattern.compile("(?m)^\\| ([A-Za-z0-9+-]+) \\|");
    private static final Set<String> KEYS = KEY_ROW.matcher(ModelFiles.text("SOURCES.md"))
            .results()
            .map(match -> match.group(1))
            .collect(Collectors.toSet());

    static Stream<String> tables() throws IOException {
        return names(".csv");
    }

    static Stream<String> trees() throws IOException {
        return names(".json");
    }

    private static Stream<String> names(String ending) throws IOException {
        try (Stream<Path> files = Files.list(Path.of("models"))) {
            return files
                    .map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(ending))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    @ParameterizedTest
    @MethodSource("tables")
    void everyTableIsReadAndNoCellStandsBesideItsColumn(String name) {
        assertThat(ModelFiles.table(name)).isNotEmpty();
        Set<String> columns = Reference.models(name).get(0).cells().keySet();
        assertThat(Reference.models(name))
                .allSatisfy(row -> assertThat(row.cells().keySet()).isEqualTo(columns));
    }

    @ParameterizedTest
    @MethodSource("trees")
    void everyTreeIsRead(String name) {
        assertThat(ModelFiles.json(name).isObject()).isTrue();
    }

    @ParameterizedTest
    @MethodSource("tables")
    void everySourceOfATableIsResolved(String name) {
        for (Line row : Reference.models(name)) {
            for (Map.Entry<String, String> cell : row.cells().entrySet()) {
                if (cell.getKey().endsWith("source") && !cell.getValue().startsWith("near:")) {
                    assertThat(KEYS)
                            .as("%s, %s", name, row)
                            .containsAll(Stream.of(cell.getValue().strip().split("\\s+"))
                                    .filter(key -> !key.isEmpty())
                                    .toList());
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("trees")
    void everySourceOfATreeIsResolved(String name) {
        for (String keys : ModelFiles.json(name).findValuesAsText("source")) {
            assertThat(KEYS).as(name).containsAll(Set.of(keys.split(" ")));
        }
    }

    @ParameterizedTest
    @MethodSource("tables")
    void howAFigureWasFoundIsOneOfTheKnownWords(String name) {
        for (Line row : Reference.models(name)) {
            if (row.cells().containsKey("found")) {
                assertThat(row.text("found"))
                        .as("%s, %s", name, row)
                        .isIn("text", "data", "derived", "computed", "memory");
            }
        }
    }

    @Test
    void aFileThatIsNotPackagedIsToldByName() {
        assertThatThrownBy(() -> ModelFiles.table("nothing.csv"))
                .isInstanceOf(ModelDataException.class)
                .hasMessageContaining("models/nothing.csv cannot be read");
    }
}
