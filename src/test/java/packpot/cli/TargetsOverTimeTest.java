package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.Demo;
import packpot.data.ModelFiles;

/** {@code packpot targets --weeks}. */
class TargetsOverTimeTest {
    private static final String EVERYTHING = """
            {"start": "2026-03-07", "units": "metric", "profile": "nrc-2006", "dogs": [
              {"name": "Rook", "age": "9 weeks", "expectedAdultWeight": "30 kg", "weighIns": [
                {"date": "2026-02-14", "weight": "2.6 kg"}, {"date": "2026-02-21", "weight": "3.4 kg"},
                {"date": "2026-02-28", "weight": "4.4 kg"}, {"date": "2026-03-05", "weight": "5.2 kg"}]},
              {"name": "Sol", "age": "4 years", "weight": "30 kg", "goalWeight": "29 kg", "weeklyChange": "1.5 %",
                "fedEnergy": "1100 kcal", "weighIns": [
                {"date": "2026-01-14", "weight": "30.8 kg"}, {"date": "2026-02-14", "weight": "30.4 kg"},
                {"date": "2026-03-05", "weight": "30.1 kg"}]},
              {"name": "Ada", "age": "4 years", "sex": "female", "weight": "20 kg",
                "gestation": {"week": 9, "expectedPuppies": 6}},
              {"name": "Bo", "age": "4 years", "weight": "20 kg", "comes": "2026-03-20", "leaves": "2026-04-20"}],
             "pantry": [{"food": "carrots", "price": "$1/lb"}, {"food": "egg, whole", "price": "$3"}]}
            """;

    private static List<Error> schemaErrors(String schema, String json) {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(ModelFiles.text(schema), InputFormat.JSON)
                .validate(json, InputFormat.JSON);
    }

    private static String everything(Path folder) throws IOException {
        return Files.writeString(folder.resolve("all.json"), EVERYTHING).toString();
    }

    @Test
    void everyDogHasALineAWeekAndWhatMustBeTold(@TempDir Path folder) throws IOException {
        Run run = Run.of("targets", everything(folder), "--weeks", "12");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.lines()).allMatch(line -> line.length() <= 80);
        assertThat(run.lines().stream().filter(line -> line.contains("2026-05-30")))
                .hasSize(4);
        assertThat(run.out())
                .containsPattern("2026-03-07 +9 weeks +5\\.5 kg +growing +\\d+ +growth-4-14-weeks")
                .containsPattern("2026-03-07 .* in whelp, week 9")
                .containsPattern("2026-03-14 .* nursing, week 1")
                .containsPattern("2026-05-09 +4\\.2 years +\\d+\\.\\d kg +adult +[\\d,]+ +adult")
                .containsPattern("2026-03-14 +not there")
                .contains("lose 1.5 % of its weight a week", "2026-03-20: comes into the household", "weigh-ins");
    }

    @Test
    void aCorrectionStandsWithTheEnergyItCorrects(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("lean.json");
        Files.writeString(file, EVERYTHING.replace("\"1100 kcal\"", "\"1500 kcal\""));
        Run run = Run.of("targets", file.toString());
        assertThat(run.lines()).allMatch(line -> line.length() <= 80);
        assertThat(run.out().replaceAll("\\s+", " "))
                .contains(
                        "times 1.10 by its weigh-ins (AAHA2014 HAND2010, memory)",
                        "on the 1,500 kcal a day that it ate");
        assertThat(Run.of("targets", file.toString(), "--json").out())
                .contains("\"energyCorrection\"", "\"factor\" : 1.1");
        assertThat(Run.of("targets", "scenarios/growing-puppy.json", "--json").out())
                .doesNotContain("energyCorrection");
    }

    @Test
    void weightsAreInTheHouseholdsMeasure(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("us.json");
        Files.writeString(file, EVERYTHING.replace("\"metric\"", "\"us\""));
        assertThat(Run.of("targets", file.toString(), "--weeks", "2").out())
                .contains("44.1 lb")
                .doesNotContain(" kg");
    }

    @Test
    void whatIsPrintedForProgramsFollowsItsSchema(@TempDir Path folder) throws IOException {
        Run run = Run.of("targets", everything(folder), "--weeks", "12", "--json");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(schemaErrors("targets-over-time.schema.json", run.out())).isEmpty();
        assertThat(schemaErrors("targets-over-time.schema.json", run.out().replace("\"weightKg\"", "\"weight\"")))
                .isNotEmpty();
        assertThat(schemaErrors("scenario.schema.json", EVERYTHING)).isEmpty();
    }

    static List<Path> demos() {
        return Demo.files();
    }

    @ParameterizedTest
    @MethodSource("demos")
    void everyDemoHasAHalfYear(Path file) {
        Run run = Run.of("targets", file.toString(), "--weeks", "26");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.lines()).allMatch(line -> line.length() <= 80);
    }

    @ParameterizedTest
    @ValueSource(strings = {"aafco-2016", "fediaf", "nrc-2006"})
    void theFullTableKeepsToEightyColumnsForEveryProfile(String profile, @TempDir Path folder) throws IOException {
        Path file = folder.resolve("profile.json");
        Files.writeString(file, EVERYTHING.replace("nrc-2006", profile));
        assertThat(Run.of("targets", file.toString()).lines()).allMatch(line -> line.length() <= 80);
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "-1", "53", "soon"})
    void weeksOutOfRangeAreWrongUse(String weeks) {
        Run run = Run.of("targets", "scenarios/growing-puppy.json", "--weeks=" + weeks);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("--weeks");
    }
}
