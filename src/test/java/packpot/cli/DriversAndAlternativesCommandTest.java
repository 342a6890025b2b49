package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.Demo;

/** The two commands, from arguments to output and exit code. */
class DriversAndAlternativesCommandTest {
    private static final JsonMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();
    private static final String QUICK = Demo.file("tiny-freezer").toString();

    @Test
    void driversFitATerminalAndSpeakInWishes() {
        Run run = Run.of("drivers", QUICK, "--time-limit", "60");
        assertThat(run.exitCode()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.lines()).allMatch(line -> line.length() <= 80);
        assertThat(run.out())
                .contains("room for 13 bags in the freezer", "one more, planned anew: saves", "/kg", "at the margin");
    }

    private static void assertFollows(String schema, String json) {
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(Demo.text(Path.of("models", schema)), InputFormat.JSON)
                        .validate(json, InputFormat.JSON))
                .isEmpty();
    }

    @Test
    void driversForProgramsHoldEveryLimitWithItsUnit() throws IOException {
        Run run = Run.of("drivers", QUICK, "--json", "--time-limit", "4");
        assertThat(run.exitCode()).isZero();
        JsonNode root = JSON.readTree(run.out());
        assertFollows("drivers.schema.json", run.out());
        assertThat(root.path("packpotDrivers").asInt()).isEqualTo(1);
        assertThat(root.path("auditPassed").asBoolean()).isTrue();
        assertThat(root.path("limits").size()).isPositive();
        root.path("limits").forEach(limit -> {
            assertThat(limit.path("wish").asText()).isNotEmpty();
            assertThat(limit.path("step").asDouble()).isNotZero();
            assertThat(limit.has("unit")).isTrue();
        });
        assertThat(root.path("leftOut").size()).isPositive();
    }

    @Test
    void alternativesStandSideBySideAndOneCanBeShown() throws IOException {
        Run run = Run.of("alternatives", QUICK, "--plans", "3", "--time-limit", "60");
        assertThat(run.exitCode()).isZero();
        assertThat(run.lines()).allMatch(line -> line.length() <= 80);
        assertThat(run.out()).contains("cheapest", "plan 2", "plan 3", "cost a week", "Every one passed the check");
        Run json = Run.of("alternatives", QUICK, "--plans", "2", "--json", "--within", "3", "--time-limit", "60");
        JsonNode plans = JSON.readTree(json.out()).path("plans");
        assertThat(plans.size()).isEqualTo(2);
        assertFollows("alternatives.schema.json", json.out());
        plans.forEach(plan -> {
            assertThat(plan.path("auditPassed").asBoolean()).isTrue();
            assertThat(plan.path("costsMoreShare").asDouble()).isLessThanOrEqualTo(0.03);
        });
        Run one = Run.of("alternatives", QUICK, "--plans", "2", "--show", "2", "--time-limit", "60");
        assertThat(one.exitCode()).isZero();
        assertThat(one.out()).contains("Shopping list", "Into the pot", "Checked");
    }

    @ParameterizedTest
    @CsvSource({
        "--within,abc,percentage",
        "--within,0,percentage",
        "--within,250%,percentage",
        "--plans,1,2 to 5",
        "--plans,9,2 to 5",
        "--show,6,1 to 5",
        "--time-limit,0,86400"
    })
    void wrongOptionsAreToldAsWrongUse(String option, String value, String told) {
        Run run = Run.of("alternatives", QUICK, option, value);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains(told);
        assertThat(run.out()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"drivers", "alternatives"})
    void withoutAPlanItSaysWhyNotAndWhatWouldMendIt(String command) throws IOException {
        String scenario = "src/test/resources/why-not/nutrient-minimum.json";
        Run run = Run.of(command, scenario);
        assertThat(run.exitCode()).isEqualTo(4);
        assertThat(run.err()).contains("The scenario has no plan as it stands");
        assertThat(run.out()).contains("iodine at least", "What would mend it", "add kelp");
        assertThat(run.lines()).allMatch(line -> line.length() <= 80);
        Run json = Run.of(command, scenario, "--json");
        assertThat(json.exitCode()).isEqualTo(4);
        assertFollows(command + ".schema.json", json.out());
        assertFollows(
                "why-not.schema.json", JSON.readTree(json.out()).path("whyNot").toString());
    }
}
