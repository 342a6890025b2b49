package packpot.household;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import packpot.data.ModelFiles;
import packpot.dog.Transition;

/** From what food a dog comes. */
class TransitionReadingTest {

    private static List<Double> published(String key) {
        List<Double> shares = new ArrayList<>();
        for (JsonNode step : ModelFiles.json("kitchen.json").path(key).path("value")) {
            int from = step.path("fromDay").intValue();
            for (int day = from; day <= step.path("toDay").asInt(from); day++) {
                shares.add(step.path("newShare").doubleValue());
            }
        }
        return shares;
    }

    @Test
    void tenDaysAndSevenDaysAreThePublishedOnes() {
        assertThat(Scenarios.KNOWLEDGE.kitchen().newFoodShares(10)).isEqualTo(published("transitionTenDays"));
        assertThat(Scenarios.KNOWLEDGE.kitchen().newFoodShares(7)).isEqualTo(published("transitionSevenDays"));
        assertThat(Scenarios.KNOWLEDGE.kitchen().newFoodShares(4)).containsExactly(0.25, 0.5, 0.75, 1.0);
    }

    @Test
    void tenDaysAreUsual() throws ScenarioException {
        Household household = Scenarios.read(Scenarios.with("/dogs/0", "'comesFrom': 'dry food'"));
        Transition transition = household.dogs().get(0).course().transition();
        assertThat(transition).isNotNull();
        assertThat(transition.from()).isEqualTo("dry food");
        assertThat(transition.fullDay()).isEqualTo(9);
        Household other = Scenarios.read(Scenarios.with("/dogs/0", "'comesFrom': 'dry food', 'transitionDays': 7"));
        assertThat(other.dogs().get(0).course().transition())
                .isNotNull()
                .extracting(Transition::fullDay)
                .isEqualTo(6);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'comesFrom': ''                        | dogs[0].comesFrom      | expected a text in quotes",
                "'comesFrom': 7                         | dogs[0].comesFrom      | expected a text in quotes",
                "'comesFrom': 'x', 'transitionDays': 3  | dogs[0].transitionDays | expected a whole number from 4 to 28",
                "'comesFrom': 'x', 'transitionDays': 29 | dogs[0].transitionDays | expected a whole number from 4 to 28",
                "'transitionDays': 7                    | dogs[0].transitionDays | is given without \"comesFrom\""
            },
            quoteCharacter = '`')
    void whatMakesNoSenseIsRefused(String fields, String path, String told) {
        assertThat(Scenarios.faults(Scenarios.with("/dogs/0", fields)))
                .singleElement()
                .satisfies(fault -> {
                    assertThat(fault.path()).isEqualTo(path);
                    assertThat(fault.message()).contains(told);
                });
    }

    @ParameterizedTest
    @CsvSource({"-1", "15", "'\"two\"'"})
    void daysFromShoppingToCookingAreAFew(String days) {
        String scenario = Scenarios.SMALL.replaceFirst("\\{", "{'kitchen': {'shopDaysBefore': " + days + "},");
        assertThat(Scenarios.faults(scenario)).singleElement().satisfies(fault -> {
            assertThat(fault.path()).isEqualTo("kitchen.shopDaysBefore");
            assertThat(fault.message()).contains("a whole number from 0 to 14");
        });
    }
}
