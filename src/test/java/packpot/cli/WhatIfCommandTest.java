package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
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
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The commands what-if and losses, as they are typed. */
class WhatIfCommandTest {
    private static final String SCENARIO = "scenarios/tiny-freezer.json";

    private static List<String> schemaErrors(String schema, String json) throws IOException {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Files.readString(Path.of("models", schema)))
                .validate(json, InputFormat.JSON)
                .stream()
                .map(Error::toString)
                .toList();
    }

    @Test
    void oldAndNewPlanStandSideBySideInEightyColumns() {
        Run run = Run.of("what-if", SCENARIO, "--change", "chicken liver: out of stock", "--change", "Rusk: leaves");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
        assertThat(run.out())
                .contains("A: chicken liver: out of stock; Rusk: leaves")
                .contains("put back")
                .contains("distance from the recipe now")
                .contains("not a veterinarian");
    }

    @Test
    void theNewPlanIsToldWithWhatIsNewAboutIt() {
        Run run = Run.of(
                "what-if",
                SCENARIO,
                "--change",
                "Rook: comes, 5 kg, 3 years",
                "--change",
                "freezer: no limit",
                "--change",
                "pot: no limit");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
        assertThat(run.out())
                .contains("Energy a day", "A, taken for granted anew", "A, Rook: ", "per 1000 kcal", "--show A");
    }

    @Test
    void aNewPlanIsShownWhole() {
        Run run = Run.of("what-if", SCENARIO, "--change", "days: 5", "--show", "a");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out()).contains("feeds 5 days", "Shopping list", "Cautions");
        assertThat(Run.of("what-if", SCENARIO, "--change", "days: 5", "--show", "B")
                        .err())
                .contains("--show is the letter of a new plan, which is A; read \"B\"");
    }

    @Test
    void alternativesAreShownBesideEachOther() {
        Run run = Run.of(
                "what-if",
                SCENARIO,
                "--alternatives",
                "--change",
                "days: 10",
                "--change",
                "days: 7",
                "--change",
                "days: 5",
                "--change",
                "days: 3");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
        assertThat(run.out()).contains("B: days: 7").contains("D: days: 3");
    }

    @ParameterizedTest
    @ValueSource(strings = {"before", "bought", "cooked"})
    void whatIsPrintedForProgramsIsAsDescribed(String when) throws IOException {
        Run run = Run.of(
                "what-if",
                SCENARIO,
                "--json",
                "--when",
                when,
                "--near",
                "5%",
                "--change",
                "Rook: comes, 5 kg, 3 years",
                "--change",
                "freezer: no limit",
                "--change",
                "pot: no limit");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(schemaErrors("what-if.schema.json", run.out())).isEmpty();
        JsonNode root = new JsonMapper().readTree(run.out());
        assertThat(root.path("mode").textValue()).isEqualTo(when);
        JsonNode alternative = root.path("alternatives").path(0);
        assertThat(alternative.path("outcome").textValue()).isEqualTo("plan");
        assertThat(alternative.path("nearness").path("mostCost").doubleValue()).isNotNegative();
        assertThat(alternative.has("carried")).isEqualTo(!when.equals("before"));
    }

    @Test
    void theSchemaOfTheOutputRefusesWhatIsNotInIt() throws IOException {
        assertThat(schemaErrors("what-if.schema.json", "{\"packpotWhatIf\": 1}"))
                .isNotEmpty();
        assertThat(schemaErrors("losses.schema.json", "{\"packpotLosses\": 1}")).isNotEmpty();
    }

    @Test
    void theRankingOfLossesIsPrintedForPeople() {
        Run run = Run.of("losses", SCENARIO);
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
        assertThat(run.out()).contains("stand-in").doesNotContain("failed the check");
    }

    @Test
    void theRankingOfLossesIsPrintedForPrograms() throws IOException {
        Run run = Run.of("losses", SCENARIO, "--json", "--gap", "1");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(schemaErrors("losses.schema.json", run.out())).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --change=Clovr: leaves | 3 | near it: "Clover"
            --change=days | 3 | expected SUBJECT: WHAT
            --moved=10 | 2 | What changes?
            --change=days: 7 --fed=3 | 2 | --fed counts days
            --change=days: 7 --near=lots | 2 | --near: read
            --change=days: 7 --time-limit=0 | 2 | --time-limit is
            --change=days: 7 --when=later | 2 | --when
            --changes=no-such.json | 3 | there is no such file
            --change=Rusk: leaves --when=cooked --fed=14 | 2 | --fed must be less
            """, quoteCharacter = '`')
    void wrongUseIsTold(String options, int exitCode, String expected) {
        String[] split = options.split(" (?=--)", -1);
        String[] arguments = new String[split.length + 2];
        arguments[0] = "what-if";
        arguments[1] = SCENARIO;
        System.arraycopy(split, 0, arguments, 2, split.length);
        Run run = Run.of(arguments);
        assertThat(run.exitCode()).as(run.err()).isEqualTo(exitCode);
        assertThat(run.err()).contains(expected);
        assertThat(run.err().lines().count())
                .as("the message stays on the screen")
                .isLessThan(8);
    }

    @Test
    void aChangeWithoutAPlanEndsWithItsOwnCode() {
        Run run = Run.of("what-if", SCENARIO, "--change", "budget: €1");
        assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.NO_PLAN);
        assertThat(run.out()).contains("there is no plan", "spend at most €1.00 - at least", "told by packpot why-not");
        assertThat(run.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
    }

    @Test
    void aScenarioWithoutAPlanIsNotCompared(@TempDir Path folder) throws IOException {
        Path scenario = folder.resolve("poor.json");
        Files.writeString(
                scenario,
                Files.readString(Path.of(SCENARIO)).replace("\"currency\"", "\"budget\": \"€1\",\n  \"currency\""));
        Run run = Run.of("what-if", scenario.toString(), "--change", "days: 7");
        assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.NO_PLAN);
        assertThat(run.err())
                .contains("The scenario has no plan as it stands, so there is nothing to compare with. Why:");
        assertThat(run.out()).contains("spend at most", "What would mend it", "spend up to");
        Run losses = Run.of("losses", scenario.toString(), "--json");
        assertThat(losses.exitCode()).isEqualTo(ExitCode.NO_PLAN);
        assertThat(schemaErrors("losses.schema.json", losses.out())).isEmpty();
        assertThat(schemaErrors(
                        "why-not.schema.json",
                        new JsonMapper().readTree(losses.out()).path("whyNot").toString()))
                .isEmpty();
    }

    @Test
    void aChangeWithoutAPlanIsPrintedForProgramsAsDescribed() throws IOException {
        Run run = Run.of("what-if", SCENARIO, "--json", "--change", "budget: €1");
        assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.NO_PLAN);
        assertThat(schemaErrors("what-if.schema.json", run.out())).isEmpty();
        assertThat(new JsonMapper()
                        .readTree(run.out())
                        .path("alternatives")
                        .path(0)
                        .path("clashes")
                        .size())
                .isEqualTo(1);
    }
}
