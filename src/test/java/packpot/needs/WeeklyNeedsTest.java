package packpot.needs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;

/** The needs of later days follow from the dogs of those days. */
class WeeklyNeedsTest {
    private static final Knowledge KNOWLEDGE = Knowledge.load();

    private static Household household(String... dogs) throws ScenarioException {
        String text = "{'dogs': [" + String.join(", ", dogs) + "], 'pantry': [{'food': 'carrots', 'price': '$1/lb'}]}";
        return new ScenarioReader(KNOWLEDGE, LocalDate.of(2026, 3, 7))
                .read("test.json", text.replace('\'', '"').getBytes(StandardCharsets.UTF_8));
    }

    private static List<String> columns(Household household, int weeks) {
        return WeeklyNeeds.of(household, KNOWLEDGE, weeks).dogs().get(0).days().stream()
                .map(day -> Objects.requireNonNull(day.need()).profile().stage())
                .toList();
    }

    @Test
    void onTheFirstDayTheyAreTheNeedsOfTheHousehold() throws ScenarioException {
        Household household = household(
                "{'name': 'Moss', 'weight': '10 kg', 'age': '5 years', 'goalWeight': '9 kg'}",
                "{'name': 'Rook', 'weight': '6 kg', 'age': '10 weeks', 'expectedAdultWeight': '30 kg'}",
                "{'name': 'Ada', 'weight': '20 kg', 'age': '3 years', 'sex': 'female', 'gestation': {'week': 6}}");
        assertThat(Needs.on(0, household, KNOWLEDGE)).isEqualTo(Needs.of(household, KNOWLEDGE));
    }

    @Test
    void aPuppyPassesFromEarlyToLateGrowthAtFourteenWeeks() throws ScenarioException {
        String puppy =
                "{'name': 'Rook', 'weight': '6 kg', 'age': '12 weeks', 'expectedAdultWeight': '30 kg', 'profile': ";
        assertThat(columns(household(puppy + "'fediaf'}"), 3))
                .containsExactly("early-growth", "early-growth", "late-growth", "late-growth");
        assertThat(columns(household(puppy + "'nrc-2006'}"), 3))
                .containsExactly(
                        "growth-4-14-weeks", "growth-4-14-weeks", "growth-over-14-weeks", "growth-over-14-weeks");
    }

    @Test
    void aPuppyPassesToTheAdultColumnAndItsEquationAtTwelveMonths() throws ScenarioException {
        Household household =
                household("{'name': 'Rook', 'weight': '29 kg', 'age': '51 weeks', 'expectedAdultWeight': '30 kg'}");
        assertThat(columns(household, 2)).containsExactly("growth", "growth", "adult");
        DogNeed grown = Needs.on(14, household, KNOWLEDGE).dogs().get(0);
        assertThat(grown.energy().kcalPerDay())
                .isCloseTo(110 * Math.pow(grown.dog().weightKg(), 0.75), within(1e-9));
    }

    @Test
    void dogsAreNeededForOnlyOnTheDaysThatTheyAreThere() throws ScenarioException {
        Household household = household(
                "{'name': 'Moss', 'weight': '10 kg', 'age': '5 years', 'leaves': '2026-03-21'}",
                "{'name': 'Pip', 'weight': '5 kg', 'age': '5 years', 'comes': '2026-03-14'}");
        assertThat(Needs.on(0, household, KNOWLEDGE).dogs())
                .extracting(n -> n.dog().name())
                .containsExactly("Moss");
        assertThat(Needs.on(13, household, KNOWLEDGE).dogs()).hasSize(2);
        assertThat(Needs.on(14, household, KNOWLEDGE).dogs())
                .extracting(n -> n.dog().name())
                .containsExactly("Pip");
        WeeklyNeeds weekly = WeeklyNeeds.of(household, KNOWLEDGE, 3);
        assertThat(weekly.dogs().get(0).days()).extracting(WeeklyNeeds.Day::day).containsExactly(0, 7, 14, 21);
        assertThat(weekly.dogs().get(0).days().get(3).date()).isEqualTo("2026-03-28");
        assertThat(weekly.dogs().get(0).notes())
                .singleElement()
                .satisfies(note -> assertThat(note.day()).isEqualTo(14));
        assertThat(weekly.dogs().get(0).days())
                .extracting(day -> day.need() != null)
                .containsExactly(true, true, false, false);
    }
}
