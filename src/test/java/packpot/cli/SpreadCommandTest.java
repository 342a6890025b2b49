package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import packpot.Demo;

/** The command, from arguments to output and exit code. */
class SpreadCommandTest {
    private static final JsonMapper JSON = new JsonMapper();
    private static final String QUICK = Demo.file("tiny-freezer").toString();

    private static List<?> schemaErrors(String schema, String json) {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Demo.text(Path.of("models", schema)), InputFormat.JSON)
                .validate(json, InputFormat.JSON);
    }

    @Test
    void thePageSaysHowSureThePlanIsAndWhatWouldBuyMore() {
        Run run = Run.once("spread", QUICK);
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.lines()).allMatch(line -> line.length() <= 80);
        assertThat(run.out())
                .contains(
                        "10,000 draws, seed 1; margin 5 %",
                        "no promise; ask your",
                        "minimums are met in",
                        "Which margin buys 95 %",
                        "vitamin B12",
                        "is not a veterinarian")
                .containsPattern("A margin of \\d+ % is enough")
                .doesNotContain("100.0 %  ");
    }

    @Test
    void programsGetEveryFigureAndTheWorstStandsFirst() throws IOException {
        Run run = Run.of("spread", QUICK, "--json", "--no-margin", "--draws", "2000", "--seed", "-3");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(schemaErrors("spread.schema.json", run.out())).isEmpty();
        assertThat(schemaErrors("spread.schema.json", run.out().replace("\"allMet\"", "\"met\"")))
                .isNotEmpty();
        JsonNode root = JSON.readTree(run.out());
        assertThat(root.path("searched").asBoolean()).isFalse();
        assertThat(root.path("tried").size()).isEqualTo(1);
        assertThat(root.path("odds").path("draws").asInt()).isEqualTo(2000);
        assertThat(root.path("odds").path("seed").asInt()).isEqualTo(-3);
        for (JsonNode dog : root.path("odds").path("dogs")) {
            int last = 0;
            for (JsonNode minimum : dog.path("minimums")) {
                int met = minimum.path("met").asInt();
                assertThat(met).isGreaterThanOrEqualTo(last);
                assertThat(minimum.path("share").asDouble()).isEqualTo(met / 2000.0);
                last = met;
            }
            assertThat(dog.path("allMet").asInt())
                    .isLessThanOrEqualTo(dog.path("minimums").get(0).path("met").asInt());
        }
    }

    @Test
    void theSameSeedGivesTheSamePageAndAnotherDoesNot() {
        String[] seven = {"spread", QUICK, "--no-margin", "--seed", "7"};
        String first = Run.of(seven).out();
        assertThat(Run.of(seven).out()).isEqualTo(first);
        assertThat(Run.of("spread", QUICK, "--no-margin", "--seed", "8").out()).isNotEqualTo(first);
    }

    @Test
    void whatIsStatedWinsAndIsNamed() throws IOException {
        Run sure = Run.of(
                "spread",
                QUICK,
                "--spread",
                "all=0",
                "--supplement-spread=0 %",
                "--weighing-error=0",
                "--scale-step=0",
                "--measuring-error=0%");
        assertThat(sure.exitCode()).isZero();
        assertThat(sure.out())
                .contains(
                        "is met in 100.0 % of the draws",
                        "The margin that the scenario has is enough.", "--spread all=0")
                .doesNotContain("Recalled");
        Run none = Run.of("spread", QUICK, "--no-margin", "--spread", "all=0", "--json");
        Run zinc = Run.of("spread", QUICK, "--no-margin", "--spread", "all=0", "--spread", "Zinc=30%", "--json");
        assertThat(zinc.out()).contains("--spread Zinc=30%");
        Map<String, Double> before = spreads(none.out());
        Map<String, Double> after = spreads(zinc.out());
        assertThat(after.keySet()).isEqualTo(before.keySet()).contains("zinc", "protein");
        after.forEach((key, spread) -> {
            if (key.equals("zinc")) {
                assertThat(spread).isGreaterThan(1.2 * before.getOrDefault(key, 0.0));
            } else {
                assertThat(spread).as(key).isEqualTo(before.get(key));
            }
        });
    }

    private static Map<String, Double> spreads(String json) throws IOException {
        Map<String, Double> spreads = new HashMap<>();
        for (JsonNode minimum :
                JSON.readTree(json).path("odds").path("dogs").get(0).path("minimums")) {
            spreads.put(minimum.path("key").asText(), minimum.path("spread").asDouble());
        }
        return spreads;
    }

    @Test
    void whereNoMarginIsEnoughThatIsSaid() {
        Run run = Run.of("spread", QUICK, "--largest-margin", "6%", "--draws", "1000");
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("No margin that was tried buys 95 %");
        Run ninety = Run.of("spread", QUICK, "--share", "60", "--no-margin");
        assertThat(ninety.out()).contains("for 60 %").doesNotContain("Which margin buys");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "--draws=0; --draws is from 1 to 10000000; read 0",
                "--draws=20000000; --draws is from 1 to 10000000; read 20000000",
                "--seed=soon; --seed is a whole number, such as 7; read \"soon\"",
                "--spread=zink=20%; no nutrient is called \"zink\"; near it: \"zinc\"",
                "--spread=zinc; --spread is a nutrient and a percentage, such as zinc=20%; read \"zinc\"",
                "--spread=zinc=-5%; --spread zinc is a percentage from 0 to 100, such as 20%; read \"-5%\"",
                "--spread=zinc=120; --spread zinc is a percentage from 0 to 100, such as 20%; read \"120\"",
                "--spread=zinc=NaN; --spread zinc is a percentage from 0 to 100, such as 20%; read \"NaN\"",
                "--supplement-spread=-1; --supplement-spread is a percentage from 0 to 100",
                "--weighing-error=101; --weighing-error is a percentage from 0 to 100, such as 20%; read \"101\"",
                "--measuring-error=much; --measuring-error is a percentage from 0 to 100",
                "--scale-step=-1; --scale-step is from 0 to 100 grams; read -1",
                "--share=40; --share is from 50 to 99.9; read 40",
                "--share=most; --share is a percentage, such as 20%; read \"most\"",
                "--largest-margin=200; --largest-margin is from 0 to 50; read 200"
            })
    void wrongUseIsTold(String option, String told) {
        Run run = Run.of("spread", QUICK, option);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains(told);
        assertThat(run.out()).isEmpty();
    }

    @Test
    void withoutAPlanItSaysWhyNotAndWhatWouldMendIt() throws IOException {
        String scenario = "src/test/resources/why-not/nutrient-minimum.json";
        Run run = Run.of("spread", scenario);
        assertThat(run.exitCode()).isEqualTo(4);
        assertThat(run.err()).contains("The scenario has no plan as it stands, so there is nothing to draw");
        assertThat(run.out()).contains("iodine at least", "What would mend it", "add kelp");
        Run json = Run.of("spread", scenario, "--json");
        assertThat(json.exitCode()).isEqualTo(4);
        assertThat(schemaErrors("spread.schema.json", json.out())).isEmpty();
        assertThat(schemaErrors(
                        "why-not.schema.json",
                        JSON.readTree(json.out()).path("whyNot").toString()))
                .isEmpty();
    }
}
