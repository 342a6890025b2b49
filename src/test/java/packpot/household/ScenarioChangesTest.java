package packpot.household;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.dog.Activity;
import packpot.dog.Dog;
import packpot.dog.Reproduction;

/** Changes in words become the household that they speak of, or a fault that says why not. */
class ScenarioChangesTest {
    private static final String SCENARIO = """
            {'start': '2026-03-07',
             'dogs': [{'name': 'Moss', 'weight': '21 lb', 'age': '4 years', 'sex': 'female', 'goalWeight': '20 lb'},
                      {'name': 'Pip', 'weight': '5 kg', 'born': '2020-01-01', 'treats': '20 kcal'}],
             'kitchen': {'days': 14, 'mostBags': 40, 'pot': '20 qt',
                         'freezer': {'volume': '7 cu ft', 'kind': 'chest', 'holds': [{'volume': '20 l'}]}},
             'budget': '$90',
             'pantry': [{'food': 'ground turkey, 93 % lean', 'price': '$5/lb'},
                        {'food': 'chicken thigh, skinless', 'pack': '3 lb', 'price': '$8.40'},
                        {'food': 'chicken liver', 'pack': '20 oz', 'price': '$2.90'},
                        {'food': 'eggshell powder', 'onHand': '100 g'},
                        {'food': 'white rice, enriched, dry', 'price': '$4', 'pack': '5 lb'}]}
            """;

    private static Household with(String... changes) throws ScenarioException {
        List<Change> asked = new ArrayList<>();
        for (String words : changes) {
            asked.add(Change.of(words));
        }
        return scenario().with(asked, List.of());
    }

    private static ScenarioChanges scenario() {
        return new ScenarioChanges(
                Scenarios.KNOWLEDGE,
                new ScenarioReader(Scenarios.KNOWLEDGE, Scenarios.TODAY),
                "test.json",
                SCENARIO.replace('\'', '"').getBytes(StandardCharsets.UTF_8));
    }

    private static List<String> faults(String... changes) {
        ScenarioException refused = catchThrowableOfType(ScenarioException.class, () -> with(changes));
        return refused == null
                ? List.of()
                : refused.faults().stream().map(Fault::toString).toList();
    }

    private static Dog dog(Household household, String name) {
        return household.dogs().stream()
                .filter(dog -> dog.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static PantryItem food(Household household, String id) {
        return household.pantry().stream()
                .filter(item -> item.food().label().startsWith(id))
                .findFirst()
                .orElseThrow();
    }

    static Stream<Arguments> changes() {
        return Stream.of(
                change(
                        "ground turkey, 93 % lean: out of stock",
                        h -> food(h, "ground turkey").outOfStock(), true),
                change("turkey: out of stock", h -> food(h, "ground turkey").outOfStock(), true),
                change(
                        "chicken liver: price +10 %",
                        h -> food(h, "chicken liver").packPrice(), 3.19),
                change(
                        "chicken liver: price down by 50 %",
                        h -> food(h, "chicken liver").packPrice(), 1.45),
                change(
                        "chicken liver: price $3.33",
                        h -> food(h, "chicken liver").packPrice(),
                        3.33),
                change("turkey: price up 20 %", h -> food(h, "ground turkey").packPrice(), 6 / 453.59237),
                change("rice: pack 10 lb", h -> food(h, "white rice").packGrams(), 4535.9237),
                change("rice: on hand 2 lb", h -> food(h, "white rice").onHandGrams(), 907.18474),
                change(
                        "chicken liver: at most 300 g",
                        h -> food(h, "chicken liver").atMostGrams(),
                        300.0),
                change(
                        "chicken liver: must use 200 g",
                        h -> food(h, "chicken liver").mustUseGrams(),
                        200.0),
                change("eggshell powder: must use all", h -> food(h, "eggshell").mustUseGrams(), 100.0),
                change("Moss: weight 10 kg", h -> dog(h, "Moss").weightKg(), 10.0),
                change("moss: weighs 11 kg", h -> dog(h, "Moss").weightKg(), 11.0),
                change("Moss: goal weight 9 kg", h -> dog(h, "Moss").goalKg(), 9.0),
                change(
                        "Moss: goal weight none",
                        h -> String.valueOf(dog(h, "Moss").goalKg()),
                        "null"),
                change("Moss: activity high", h -> dog(h, "Moss").activity(), Activity.HIGH),
                change("Moss: age 8 months", h -> Math.round(dog(h, "Moss").ageMonths()), 8L),
                change("Pip: age 2 years", h -> Math.round(dog(h, "Pip").ageMonths()), 24L),
                change("Pip: treats none", h -> dog(h, "Pip").otherKcalPerDay(), 0.0),
                change("Pip: treats 55 kcal", h -> dog(h, "Pip").otherKcalPerDay(), 55.0),
                change("Pip: vet energy 300 kcal", h -> dog(h, "Pip").vetKcalPerDay(), 300.0),
                change("Pip: condition 6", h -> dog(h, "Pip").conditionScore(), 6),
                change("Pip: profile nrc-2006", h -> h.profileOf(dog(h, "Pip")), "nrc-2006"),
                change("Pip: avoids turkey", h -> dog(h, "Pip").avoids(), List.of("turkey")),
                change("Moss: in whelp, week 5", h -> dog(h, "Moss").reproduction(), new Reproduction.Gestation(5)),
                change(
                        "Moss: nursing week 2 with 5 puppies",
                        h -> dog(h, "Moss").reproduction(),
                        new Reproduction.Lactation(2, 5)),
                change("Pip: leaves", h -> h.dogs().stream().map(Dog::name).toList(), List.of("Moss")),
                change("days: 10", h -> h.kitchen().days(), 10),
                change("meals: 3", h -> h.kitchen().mealsPerDay(), 3),
                change("bags: 30", h -> h.kitchen().mostBags(), 30),
                change("bags: no limit", h -> String.valueOf(h.kitchen().mostBags()), "null"),
                change("bag: gallon", h -> h.kitchen().bagName(), "gallon"),
                change("pot: 10 l", h -> h.kitchen().potMl(), 10_000.0),
                change("pot loads: 2", h -> h.kitchen().mostPotLoads(), 2),
                change("bin: 30 l", h -> h.kitchen().binMl(), 30_000.0),
                change("fridge days: 2", h -> h.kitchen().fridgeDays(), 2),
                change("freezer: 100 l upright", h -> freezer(h).ratedMl(), 100_000.0),
                change("freezer: holds 30 l", h -> freezer(h).takenMl(), 30_000.0),
                change("freezer: no limit", h -> String.valueOf(h.kitchen().freezer()), "null"),
                change("profile: fediaf", h -> h.profile(), "fediaf"),
                change("margin: 10 %", h -> h.rules().margin(), 0.1),
                change("budget: $60", h -> h.budget(), 60.0),
                change("budget: no limit", h -> String.valueOf(h.budget()), "null"),
                change("start: 2026-04-01", h -> h.start().toString(), "2026-04-01"));
    }

    private static Freezer freezer(Household household) {
        Freezer freezer = household.kitchen().freezer();
        if (freezer == null) {
            throw new AssertionError("no freezer");
        }
        return freezer;
    }

    private static Arguments change(String words, Function<Household, Object> seen, Object expected) {
        return Arguments.of(words, seen, expected);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("changes")
    void aChangeMakesTheHouseholdThatItSpeaksOf(String words, Function<Household, Object> seen, Object expected)
            throws ScenarioException {
        Object got = seen.apply(with(words));
        if (expected instanceof Double number) {
            assertThat((Double) got).isCloseTo(number, within(1e-6 * number + 1e-9));
        } else {
            assertThat(got).isEqualTo(expected);
        }
        assertThat(String.valueOf(seen.apply(scenario().unchanged()))).isNotEqualTo(String.valueOf(got));
    }

    @Test
    void aNameThatNoFileHasIsTold() {
        assertThatThrownBy(() -> Change.of("Rook: comes from rook\0.json"))
                .isInstanceOf(ScenarioException.class)
                .hasMessageContaining("is no name that a file can have here");
    }

    @Test
    void aDogComesWithWhatIsSaidOfIt() throws ScenarioException {
        Dog rook = dog(with("Rook: comes, 30 lb, 3 years old, high activity, female, intact"), "Rook");
        assertThat(rook.weightKg()).isCloseTo(13.6078, within(1e-3));
        assertThat(rook.ageMonths()).isCloseTo(36, within(1e-6));
        assertThat(rook.activity()).isEqualTo(Activity.HIGH);
        assertThat(rook.sex()).isEqualTo(Dog.Sex.FEMALE);
        assertThat(rook.neutered()).isFalse();
    }

    @Test
    void allFoodsOfAWordAreMeantWhenAllAreAskedFor() throws ScenarioException {
        Household household = with("all chicken: out of stock");
        assertThat(household.pantry().stream()
                        .filter(PantryItem::outOfStock)
                        .map(item -> item.food().label()))
                .containsExactly("chicken thigh, skinless", "chicken liver", "eggshell powder");
    }

    @Test
    void changesHoldTogetherAndADogThatComesCanBeSpokenOf() throws ScenarioException {
        Household household = with("Rook: avoids beef", "Rook: comes, 12 kg, 2 years", "Pip: leaves", "days: 7");
        assertThat(dog(household, "Rook").avoids()).containsExactly("beef");
        assertThat(household.dogs()).hasSize(2);
        assertThat(household.kitchen().days()).isEqualTo(7);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            Mos: leaves | "Mos" is no dog, food or part of the kitchen
            Mos: leaves | near it: "Moss"
            ground turky: out of stock | near it: "ground turkey, 93 % lean"
            freezr: 5 l | "freezer"
            chicken: out of stock | may be any of "chicken thigh, skinless", "chicken liver"
            chicken: out of stock | "all chicken"
            Moss leaves | expected SUBJECT: WHAT
            Moss: flies | nothing that is known of a dog
            Moss: weigt 3 kg | near it: "weight"
            Moss: comes, 3 kg, 2 years | is in the scenario already
            Rook: comes | expected its weight and age
            Rook: comes, 30 lb, purple | "purple" does not describe a dog
            Rook: comes, 30 lb | dogs[2].age: is missing
            rice: sold out | nothing that a food can do
            eggshell powder: price +10 % | has no price in the scenario
            rice: price -120 % | cannot fall by more than 100 %
            days: no limit | cannot be without a limit
            days: many | kitchen.days: read "many", expected a whole number
            Moss: weight heavy | dogs[0].weight
            Pip: profile aafko | profile
            margin: 80 % | margin
            bag: huge | kitchen.bag
            onion: in stock | "onion" is not for dogs
            Pip: avoids plastic | "plastic" is neither a food
            """)
    void whatCannotBeDoneIsSaid(String change, String expected) {
        assertThat(String.join("\n", faults(change))).contains(expected);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            days: 7 | days: 10
            Moss: weight 9 kg | moss: weighs 10 kg
            Moss: leaves | Moss: activity high
            Moss: in whelp week 5 | Moss: nursing week 2 with 3 puppies
            rice: out of stock | rice: price +10 %
            white rice, enriched, dry: price $5 | rice: price +10 %
            rice: out of stock | rice: in stock
            freezer: no limit | freezer: holds 10 l
            bags: 10 | bags: no limit
            Rook: comes, 12 kg, 2 years | Rook: leaves
            """)
    void twoChangesOfOneThingContradictEachOther(String one, String other) {
        assertThat(faults(one, other)).singleElement().asString().contains("contradicts");
        assertThat(faults(other, one)).singleElement().asString().contains("contradicts");
    }

    @Test
    void aChangeThatIsThereTwiceIsSaidToBe() {
        assertThat(faults("days: 10", "days: 10")).singleElement().asString().contains("is there twice");
    }

    @Test
    void aNameMayHoldAColon() throws ScenarioException {
        Household household = with("Pip: junior: comes, 3 kg, 2 years", "Pip: junior: activity high", "Pip: leaves");
        assertThat(household.dogs()).extracting(Dog::name).containsExactly("Moss", "Pip: junior");
        assertThat(dog(household, "Pip: junior").activity()).isEqualTo(Activity.HIGH);
        assertThat(faults("Pip: junior: flies")).singleElement().asString().contains("nothing that is known of a dog");
    }

    @Test
    void everyFaultOfTheChangesIsToldAtOnce() {
        assertThat(faults("Mos: leaves", "rise: out of stock", "days: 7")).hasSize(2);
    }

    @Test
    void anUnchangedDogMayNotBeTheLastToLeave() {
        assertThat(String.join("\n", faults("Moss: leaves", "Pip: leaves"))).contains("no dog is given");
    }

    @Test
    void aFileHoldsOnePlanOrSeveral(@TempDir Path folder) throws IOException, ScenarioException {
        Path file = folder.resolve("asked.json");
        Files.writeString(file, """
                {"changes": ["days: 7"],
                 "alternatives": [
                   {"name": "without Pip", "changes": ["Pip: leaves"]},
                   {"changes": [{"comes": {"name": "Rook", "weight": "12 kg", "age": "2 years"}}]}]}
                """);
        List<Change.Question> questions = Change.read(file);
        assertThat(questions).extracting(Change.Question::name).containsExactly("without Pip", "Rook: comes");
        Household rook = scenario().with(questions.get(1).changes(), List.of());
        assertThat(rook.kitchen().days()).isEqualTo(7);
        assertThat(dog(rook, "Rook").weightKg()).isEqualTo(12);
    }

    @Test
    void aDogComesFromAFile(@TempDir Path folder) throws IOException, ScenarioException {
        Path file = folder.resolve("rook.json");
        Files.writeString(
                file, "{\"name\": \"other\", \"weight\": \"12 kg\", \"age\": \"2 years\", \"activity\": \"low\"}");
        assertThat(dog(with("Rook: comes from " + file), "Rook").activity()).isEqualTo(Activity.LOW);
        ScenarioException missing = catchThrowableOfType(
                ScenarioException.class, () -> Change.of("Rook: comes from " + folder.resolve("no.json")));
        assertThat(missing).hasMessageContaining("there is no such file");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            {} | changes: is empty
            {"chnges": ["days: 7"]} | near it: "changes"
            {"changes": [7]} | read 7, expected a text
            {"changes": "days: 7"} | expected a list
            {"alternatives": [{"name": "x"}]} | alternatives[0].changes: is empty
            [] | expected an object
            {"changes": | is not valid JSON
            """)
    void aFileWithFaultsIsToldWhatIsWrong(String text, String expected, @TempDir Path folder) throws IOException {
        Path file = folder.resolve("asked.json");
        Files.writeString(file, text);
        ScenarioException refused = catchThrowableOfType(ScenarioException.class, () -> Change.read(file));
        assertThat(refused).hasMessageContaining(expected);
    }
}
