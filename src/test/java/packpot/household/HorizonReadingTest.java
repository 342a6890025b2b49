package packpot.household;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.DayOfWeek;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** For how long is planned, and on which days is cooked. The first day is Saturday 7 March 2026. */
class HorizonReadingTest {

    private static Horizon read(String fields, Integer weeks) throws ScenarioException {
        byte[] text = Scenarios.with("", fields).getBytes(StandardCharsets.UTF_8);
        return new ScenarioReader(Scenarios.KNOWLEDGE, Scenarios.TODAY)
                .readWithHorizon("test.json", text, weeks)
                .horizon();
    }

    @Test
    void withoutOneCookDaysAreSpreadAsFarAsTheKitchensDaysAllow() throws ScenarioException {
        Horizon usual = read("'kitchen': {'days': 10}", null);
        assertThat(usual.days()).isEqualTo(56);
        assertThat(usual.cookDays()).containsExactly(0, 9, 18, 28, 37, 46);
        assertThat(usual.choice()).isEqualTo(Horizon.Choice.FIXED);
        assertThat(read("'horizon': {'weeks': 3}", 2).days()).isEqualTo(14);
    }

    @Test
    void whatIsFrozenIsEatenFirst() throws ScenarioException {
        Horizon horizon = read(
                "'horizon': {'weeks': 4, 'cookDays': ['2026-03-12', '2026-03-26'],"
                        + " 'frozen': [{'what': 'beef and barley', 'made': '2026-02-20', 'days': 5, 'bags': 4}]}",
                null);
        assertThat(horizon.firstCookDay()).isEqualTo(5);
        assertThat(horizon.cookDays()).containsExactly(5, 19);
        assertThat(horizon.frozen()).containsExactly(new Horizon.FrozenMeals("beef and barley", -15, 5, 4));
    }

    @Test
    void cookDaysCanBeChosen() throws ScenarioException {
        Horizon horizon = read("'horizon': {'cookOn': ['Sunday'], 'pricePerSession': '$12'}", null);
        assertThat(horizon.choice()).isEqualTo(Horizon.Choice.CHEAPEST);
        assertThat(horizon.cookOn()).containsExactly(DayOfWeek.SUNDAY);
        assertThat(horizon.pricePerSession()).isEqualTo(12);
        assertThat(horizon.cookDays()).isEmpty();
        assertThat(read("'horizon': {'choose': 'fewest'}", null).cookOn()).hasSize(7);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "'weeks': 27                                          | horizon.weeks    | from 1 to 26",
                "'cookDays': ['2026-03-07', '2026-03-07']             | horizon.cookDays | does not come after",
                "'cookDays': ['2026-03-07', '2026-03-21', '2026-03-14'] | horizon.cookDays | does not come after",
                "'cookDays': ['2026-03-09']                           | horizon.cookDays | nothing to feed",
                "'cookDays': ['2026-03-01']                           | horizon.cookDays | before the meals",
                "'cookDays': ['2026-03-07', '2027-03-07']             | horizon.cookDays | after the 8 weeks",
                "'cookDays': ['7 March']                              | horizon.cookDays | expected a date",
                "'cookDays': []                                       | horizon.cookDays | names no day",
                "'weeks': 26, 'cookDays': ['2026-03-07']              | horizon.cookDays | frozen food keeps",
                "'cookDays': ['2026-03-07'], 'cookOn': ['sunday']     | horizon.cookDays | stands beside",
                "'cookOn': ['sonday']                                 | horizon.cookOn   | expected a day of the week",
                "'choose': 'best'                                     | horizon.choose   | fewest, cheapest",
                "'pricePerSession': '$5/lb'                           | horizon.pricePerSession | an amount of money",
                "'frozen': [{'what': 'x', 'made': '2026-03-01', 'days': 3}] | horizon.frozen[0].bags | is missing",
                "'frozen': [{'what': 'x', 'made': '2026-03-09', 'days': 3, 'bags': 2}] | horizon.frozen[0].made | after the first day",
                "'frozen': [{'what': 'x', 'made': '2025-03-01', 'days': 3, 'bags': 2}] | horizon.frozen[0].made | days old when the last",
                "'weeks': 1, 'frozen': [{'what': 'x', 'made': '2026-03-01', 'days': 7, 'bags': 2}] | horizon.frozen | feeds 7 days",
                "'cookDays': ['2026-03-07'], 'frozen': [{'what': 'x', 'made': '2026-03-01', 'days': 3, 'bags': 2}] | horizon.cookDays | before the meals in the freezer are eaten",
                "'variety': {'vegetables': 0}                         | horizon.variety.vegetables | from 1 to 20",
                "'every': 14                                          | horizon.every    | is not a field"
            })
    void whatMakesNoSenseIsRefused(String fields, String path, String told) {
        List<Fault> faults = Scenarios.faults(Scenarios.with("", "'horizon': {" + fields + "}"));
        assertThat(faults).anySatisfy(fault -> {
            assertThat(fault.path()).isEqualTo(path);
            assertThat(fault.message()).contains(told);
        });
    }

    @Test
    void aFreezerThatIsTooFullIsRefused() {
        String frozen = "'frozen': [{'what': 'x', 'made': '2026-03-01', 'days': 9, 'bags': 90}]";
        assertThat(Scenarios.faults(
                        Scenarios.with("", "'kitchen': {'freezer': {'volume': '30 l'}}, 'horizon': {" + frozen + "}")))
                .anySatisfy(fault -> assertThat(fault.message()).contains("90 bags do not fit the freezer"));
    }

    @Test
    void onEveryDayThereMustBeADog() {
        ScenarioException refused = org.assertj.core.api.Assertions.catchThrowableOfType(
                ScenarioException.class,
                () -> new ScenarioReader(Scenarios.KNOWLEDGE, Scenarios.TODAY)
                        .readWithHorizon(
                                "test.json",
                                Scenarios.with("/dogs/0", "'leaves': '2026-04-01'")
                                        .getBytes(StandardCharsets.UTF_8),
                                null));
        assertThat(refused).isNotNull();
        assertThat(refused.faults())
                .anySatisfy(fault -> assertThat(fault.message()).contains("none of them is there on 2026-04-01"));
    }
}
