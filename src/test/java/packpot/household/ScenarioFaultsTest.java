package packpot.household;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every mistake is told once, with its place, what was read and what was expected. */
class ScenarioFaultsTest {

    private static void oneFault(String scenario, String path, String... told) {
        List<Fault> faults = Scenarios.faults(scenario);
        assertThat(faults).as(scenario).hasSize(1);
        assertThat(faults.get(0).path()).isEqualTo(path);
        assertThat(faults.get(0).message()).contains(told);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            'weight': '0 lb'                | weight              | read 0.0 kg (0.0 lb)              | expected from 0.1 kg
            'weight': '-3 lb'               | weight              | read "-3 lb"                      | expected a weight with its unit
            'weight': '2000 lb'             | weight              | read 907.2 kg (2000.0 lb)         | to 150.0 kg
            'weight': '21 stone'            | weight              | "stone" is not a unit known here  | lb, oz
            'weight': '21'                  | weight              | read "21"                         | such as "21 lb"
            'weight': '2 cups'              | weight              | which is a volume                 | expected a weight
            'weight': 21                    | weight              | read 21                           | in quotes with its unit
            'weight': ''                    | weight              | read ""                           | expected a weight
            'weight': null                  | weight              | is missing                        | expected a weight
            'name': null                    | name                | is missing                        | the dog's name
            'age': '6 months', 'expectedAdultWeight': '19 lb' | expectedAdultWeight | read 8.6 kg                       | below today's 9.5 kg
            'expectedAdultWeight': '30 lb'  | expectedAdultWeight | has long been grown               | leave it out
            'goalWeight': '4 lb'            | goalWeight          | read 1.8 kg                       | between half and double
            'age': null, 'born': '2026-04-01'   | born            | read 2026-04-01                   | after the plan's first day, 2026-03-07
            'age': null, 'born': '1990-04-01'   | born            | is 36 years                       | at most 30
            'age': null, 'born': '1 April 2022' | born            | read "1 April 2022"               | a date such as "2026-03-07"
            'age': null, 'born': '2026-02-30'   | born            | read "2026-02-30"                 | a date such as
            'age': null                     | age                 | is missing                        | or "born": "2022-05-01"
            'born': '2022-05-01'            | age                 | is given beside "born"            | give one of the two
            'age': '90 years'               | age                 | is 90 years                       | at most 30
            'age': '4'                      | age                 | read "4"                          | a length of time
            'name': '  '                    | name                | read "  "                         | a text in quotes
            'name': 7                       | name                | read 7                            | a text in quotes
            'gestation': 3                  | gestation           | read 3                            | an object in braces
            'vetEnergy': '0 kcal'           | vetEnergy           | read 0 kcal                       | starves
            'sex': 'boy'                    | sex                 | read "boy"                        | male, female, unknown
            'neutered': 'yes'               | neutered            | read "yes"                        | true or false, without quotes
            'activity': 'moderat'           | activity            | near it: "moderate"               | low, moderate, high, working
            'conditionScore': 12            | conditionScore      | read 12                           | a whole number from 1 to 9
            'conditionScore': 4.5           | conditionScore      | read 4.5                          | a whole number
            'treats': '40 g'                | treats              | which is a weight                 | expected an energy
            'treats': '9000 kcal'           | treats              | read 9000 kcal a day              | at most 5000 kcal
            'vetEnergy': 600                | vetEnergy           | read 600                          | an energy in quotes
            'avoid': ['chiken']             | avoid               | "chiken" is neither a food nor a group | near it
            'avoid': 'beef'                 | avoid               | read "beef"                       | a list in square brackets
            'avoid': [3]                    | avoid               | read [3]                          | a list of texts in quotes
            'profile': 'aafco-2015'         | profile             | near it: "aafco-2016"             | fediaf
            'wieght': '3 lb'                | wieght              | near it: "weight"                 | is not a field known here
            'gestation': {'week': 12}, 'sex': 'female' | gestation.week | read 12                     | from 1 to 9
            'gestation': {}, 'sex': 'female'           | gestation.week | is missing                  | from 1 to 9
            'lactation': {'week': 2}, 'sex': 'female'  | lactation.puppies | is missing               | from 1 to 16
            'gestation': {'week': 2}, 'sex': 'male'    | gestation      | is given for a male dog     | male
            'gestation': {'week': 2, 'expectedPuppies': 30}, 'sex': 'female' | gestation.expectedPuppies | read 30 | from 1 to 16
            'weighIns': 5                   | weighIns            | read 5                            | a list in square brackets
            'weighIns': [3]                 | weighIns[0]         | read 3                            | an object in braces
            'weighIns': [{'weight': '21 lb'}]         | weighIns[0].date   | is missing            | the day of the weigh-in
            'weighIns': [{'date': '2026-03-01'}]      | weighIns[0].weight | is missing            | the weight that was read
            'weighIns': [{'date': 'today', 'weight': '21 lb'}] | weighIns[0].date | read "today"   | year-month-day
            'weighIns': [{'date': '2026-03-01', 'weight': '2 cups'}] | weighIns[0].weight | a volume | expected a weight
            'weighIns': [{'date': '2026-03-01', 'weight': '21 lb', 'wieght': 3}] | weighIns[0].wieght | near it: "weight" | is not a field
            'weighIns': [{'date': '2026-03-08', 'weight': '21 lb'}] | weighIns[0].date | after the plan's first day, 2026-03-07 | that have been
            'weighIns': [{'date': '2020-03-08', 'weight': '21 lb'}] | weighIns[0].date | was not born   | correct the date
            'weighIns': [{'date': '2026-03-05', 'weight': '21 lb'}, {'date': '2026-03-01', 'weight': '21 lb'}] | weighIns[1].date | comes before 2026-03-05 | oldest weigh-in first
            'weighIns': [{'date': '2026-03-05', 'weight': '21 lb'}, {'date': '2026-03-05', 'weight': '21 lb'}] | weighIns[1].date | stands there already | one weigh-in a day
            'weighIns': [{'date': '2026-03-01', 'weight': '8.1 kg'}, {'date': '2026-03-07', 'weight': '82 kg'}], 'weight': null | weighIns[1].weight | 8.1 kg (17.9 lb) on 2026-03-01, a change that no dog makes | did you mean 8.2 kg
            'weighIns': [{'date': '2026-02-21', 'weight': '0.93 kg'}, {'date': '2026-03-01', 'weight': '9.4 kg'}, {'date': '2026-03-07', 'weight': '9.5 kg'}] | weighIns[0].weight | read 0.9 kg | did you mean 9.3 kg
            'weighIns': [{'date': '2026-02-21', 'weight': '9.4 lb'}, {'date': '2026-03-01', 'weight': '9.4 kg'}, {'date': '2026-03-07', 'weight': '9.5 kg'}] | weighIns[0].weight | read 4.3 kg | did you mean 9.4 kg
            'weighIns': [{'date': '2026-02-21', 'weight': '12 kg'}, {'date': '2026-03-01', 'weight': '9.4 kg'}, {'date': '2026-03-07', 'weight': '9.5 kg'}] | weighIns[0].weight | read 12.0 kg | check the weight and the date
            'weighIns': [{'date': '2026-03-01', 'weight': '8.2 kg'}] | weight | read 9.5 kg (21.0 lb), but on 2026-03-01, 6 days before, it weighed 8.2 kg | leave "weight" out
            'fedEnergy': '500 kcal'         | fedEnergy           | without "weighIns"                | give them too
            'fedEnergy': '500 g', 'weighIns': [{'date': '2026-03-01', 'weight': '21 lb'}] | fedEnergy | which is a weight | expected an energy
            'weeklyChange': '1 %'           | weeklyChange        | without "goalWeight"              | the weight that it should come to
            'weeklyChange': 1, 'goalWeight': '19 lb'     | weeklyChange | read 1                      | a share
            'weeklyChange': '3 %', 'goalWeight': '19 lb' | weeklyChange | read 3 % a week; a safe loss | from 0.5 % to 2 %
            'weeklyChange': '3 %', 'goalWeight': '23 lb' | weeklyChange | read 3 % a week; a safe gain | from 0.5 % to 2 %
            'weeklyChange': '0.1 %', 'goalWeight': '19 lb' | weeklyChange | read 0.1 % a week         | from 0.5 % to 2 %
            'weeklyChange': '1 %', 'goalWeight': '19 lb', 'age': '5 months' | weeklyChange | that is growing | take it out
            'weeklyChange': '1 %', 'goalWeight': '19 lb', 'gestation': {'week': 2}, 'sex': 'female' | weeklyChange | in whelp | take it out
            'comes': 'soon'                 | comes               | read "soon"                       | a date such as
            'comes': '2026-04-01', 'leaves': '2026-03-20' | leaves | read 2026-03-20, but it comes on 2026-04-01 | a day after that
            'comes': '2026-01-01', 'leaves': '2026-02-20' | leaves | there is nothing to feed      | take the dog out
            'leaves': '2026-03-07'          | leaves              | 2026-03-07, it is gone            | correct the date
            """)
    void aFaultOfADogIsToldOnce(String fields, String field, String read, String expected) {
        oneFault(Scenarios.with("/dogs/0", fields), "dogs[0]." + field, read, expected);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            'food': 'chiken breast'          | food    | "chiken breast" is not a food known here | near it: "chicken breast
            'food': 'zzz'                    | food    | "zzz" is not a food known here           | packpot foods WORD
            'food': null                     | food    | is missing                               | the name of a food
            'food': 'onion powder', 'price': '$0.01'       | food | "onion powder" is refused      | harms dogs
            'food': 'GARLIC, dried, unsalted', 'price': null, 'onHand': '1 g' | food | is refused  | harms dogs
            'food': 'grapes', 'outOfStock': true           | food | "grapes" is refused            | kidney failure
            'food': 'dark chocolate', 'price': 'free'      | food | is refused                     | harms dogs
            'food': 'potassium iodide'       | food    | cannot be measured in a home kitchen     | take it out
            'price': null                    | price   | is missing                               | "price": "$4.49/lb", or "onHand"
            'price': null, 'pack': '2 lb'    | pack    | has no price beside it                   | give "price"
            'price': 'cheap'                 | price   | read "cheap"                             | a price such as
            'price': '€4'                    | price   | in EUR                                   | the household's currency is USD
            'price': '$4/day'                | price   | as what a price is for                   | a volume
            'price': '$4/0 lb'               | price   | is given for nothing                     | such as "$4.49/lb"
            'price': 4.49                    | price   | read 4.49                                | a text in quotes
            'price': '$-4'                   | price   | read "$-4"                               | a price such as
            'pack': '0 lb', 'price': '$4'    | pack    | read "0 lb"                              | more than nothing
            'pack': '3 bundles'              | pack    | "bundles" is not a unit known here       | a volume
            'onHand': '-2 lb'                | onHand  | read "-2 lb"                             | expected a weight
            'mustUse': true                  | mustUse | nothing is "onHand"                      | such as "2 lb"
            'mustUse': '2 lb', 'atMost': '1 lb' | atMost | is less than "mustUse"                | larger or smaller
            'onHand': '2 lb', 'mustUse': '5 lb', 'price': null | mustUse | is more than what is "onHand" | a smaller amount
            'cook': 'microwaved'             | cook    | read "microwaved"                        | expected one of simmered
            'where': 'bowl'                  | where   | goes into the pot                        | only supplements
            'where': 'plate'                 | where   | read "plate"                             | pot, bowl, either
            'outOfStock': 1                  | outOfStock | read 1                                | true or false
            'prise': '$4'                    | prise   | near it: "price"                         | is not a field known here
            """)
    void aFaultOfThePantryIsToldOnce(String fields, String field, String read, String expected) {
        oneFault(Scenarios.with("/pantry/0", fields), "pantry[0]." + field, read, expected);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            'kitchen': {'days': 0}                | kitchen.days          | read 0             | from 1 to 60
            'kitchen': {'days': '14'}             | kitchen.days          | read "14"          | a whole number
            'kitchen': {'pot': '20 lb'}           | kitchen.pot           | which is a weight  | expected a volume
            'kitchen': {'pot': '0 qt'}            | kitchen.pot           | read 0             | above zero
            'kitchen': {'bag': 'sack'}            | kitchen.bag           | read "sack"        | a volume
            'kitchen': {'fridgeDays': 9}          | kitchen.fridgeDays    | read 9             | a whole number from 0
            'kitchen': {'freezer': {}}            | kitchen.freezer.volume | is missing        | such as "5 cu ft"
            'kitchen': {'freezer': {'volume': '5 cu ft', 'kind': 'chst'}} | kitchen.freezer.kind | near it: "chest" | chest, upright, top
            'kitchen': {'freezer': {'volume': '10 l', 'holds': [{'volume': '50 l'}]}} | kitchen.freezer.holds | already takes | more than
            'kitchen': {'freezer': {'volume': '50 l', 'holds': [{'what': 'ice'}]}} | kitchen.freezer.holds[0].volume | is missing | "bags": 4
            'kitchen': {'freezer': {'volume': '50 l', 'packing': '120 %'}} | kitchen.freezer.packing | read "120 %" | from "0 %" to "100 %"
            'shape': {'oneFoodMost': '150 %'}     | shape.oneFoodMost     | read "150 %"       | to "100 %"
            'shape': {'oneFoodMost': 0.5}         | shape.oneFoodMost     | read 0.5           | a share from "0 %"
            'shape': {'fewestFoods': 9, 'mostFoods': 5} | shape.fewestFoods | is 9, more than | "mostFoods"
            'shape': {'shares': {'meat': {'least': '60 %', 'most': '40 %'}}} | shape.shares.meat.least | is more than | "most"
            'shape': {'shares': {'meet': {}}}     | shape.shares.meet     | near it: "meat"    | is not a field known here
            'margin': '80 %'                      | margin                | read "80 %"        | to "50 %"
            'budget': '40 GBP'                    | budget                | in GBP             | the household's currency is USD
            'budget': '$40/lb'                    | budget                | read "$40/lb"      | an amount of money
            'dogs': 5                             | dogs                  | read 5             | a list in square brackets
            'dogs': [3]                           | dogs[0]               | read 3             | an object in braces
            'pantry': 5                           | pantry                | read 5             | a list in square brackets
            'pantry': [3]                         | pantry[0]             | read 3             | an object in braces
            'kitchen': {'freezer': 3}             | kitchen.freezer       | read 3             | an object in braces
            'ownFoods': [{'name': 'Broth', 'group': 'other', 'per': '0 g', 'holds': {}}] | ownFoods[0].per | read 0 g | such as "100 g"
            'ownFoods': [{'name': 'Broth', 'group': 'other', 'per': '1 g', 'holds': {'protein_g': 5}}] | ownFoods[0].holds | more than the weight | check "per"
            'locale': 'deutsch_land'              | locale                | read "deutsch_land" | such as en-US or de-DE
            'currency': 'dollars'                 | currency              | read "dollars"     | three capitals
            'units': 'imperial'                   | units                 | read "imperial"    | us, metric
            'start': 'tomorrow'                   | start                 | read "tomorrow"    | a date such as
            'profile': 'fedaif'                   | profile               | near it: "fediaf"  | aafco-2016
            'energyEquation': 'by-ages'           | energyEquation        | near it: "by-age"  | by-activity
            'growthEquation': 'nrcc'              | growthEquation        | near it: "nrc"     | klein
            'foodEnergy': 'kcal'                  | foodEnergy            | read "kcal"        | atwater
            'packpot': 99                         | packpot               | of format 99       | get a newer program
            'packpot': 0                          | packpot               | read 0             | a whole number from 1
            'pantri': []                          | pantri                | near it: "pantry"  | is not a field known here
            'name': 3                             | name                  | read 3             | a text in quotes
            'dogs': []                            | dogs                  | no dog is given    | expected a list
            'pantry': []                          | pantry                | is empty           | expected a list of foods
            'ownFoods': [{'name': 'Broth', 'per': '100 g', 'holds': {}}] | ownFoods[0].group | is missing | meat, fish
            'ownFoods': [{'name': 'Broth', 'group': 'other', 'per': '100 g'}] | ownFoods[0].holds | is missing | "protein_g": 20
            'ownFoods': [{'name': 'Broth', 'group': 'other', 'per': '100 g', 'holds': {'protein_g': -1}}] | ownFoods[0].holds.protein_g | from zero | without quotes
            'ownFoods': [{'name': 'Broth', 'group': 'other', 'per': '100 g', 'holds': {'protien_g': 1}}] | ownFoods[0].holds.protien_g | near it: "protein_g" | is not a field known here
            """)
    void aFaultOfTheRestIsToldOnce(String fields, String path, String read, String expected) {
        oneFault(Scenarios.with("", fields), path, read, expected);
    }

    @Test
    void aFoodThatIsGivenTwiceIsTold() {
        oneFault(
                Scenarios.with("/pantry/1", "'food': 'Ground Turkey, 93 % lean', 'pack': null, 'price': '$6/lb'"),
                "pantry[1].food",
                "\"ground turkey, 93 % lean\" is in the pantry twice");
    }

    @Test
    void treatsThatLeaveNothingForTheBatchAreTold() {
        oneFault(
                Scenarios.with("/dogs/0", "'treats': '900 kcal'"),
                "dogs",
                "Moss: treats and other food bring 900 kcal");
    }

    @Test
    void aHouseholdWithoutADogOnItsFirstDayIsTold() {
        oneFault(
                Scenarios.with("/dogs/0", "'comes': '2026-04-01'"),
                "dogs",
                "none of them is there on the plan's first day, 2026-03-07",
                "\"start\": \"2026-04-01\"");
    }

    @Test
    void twoDogsOfOneNameAreTold() {
        String dog = "{'name': 'Moss', 'weight': '21 lb', 'age': '4 years'}";
        oneFault(
                Scenarios.with("", "'dogs': [" + dog + ", " + dog.replace("Moss", "moss") + "]"),
                "dogs[1].name",
                "two dogs are called \"moss\"");
    }

    @Test
    void aFoodThatNoDogMayGetIsTold() {
        oneFault(
                Scenarios.with("/dogs/0", "'avoid': ['turkey']"),
                "pantry",
                "every dog must avoid \"ground turkey, 93 % lean\"");
    }

    @Test
    void severalFaultsAreToldAtOnceEachWithItsPlace() {
        String scenario = """
                {'dogs': [{'name': 'Moss', 'weight': '21 stone', 'age': '4 years'}, {'name': 'Pip', 'weight': '9 lb'}],
                 'pantry': [{'food': 'onion', 'price': '$1/lb'}, {'food': 'carrots'}],
                 'margin': 5, 'kichen': {}}
                """;
        assertThat(Scenarios.faults(scenario).stream().map(Fault::path))
                .containsExactlyInAnyOrder(
                        "dogs[0].weight", "dogs[1].age", "pantry[0].food", "pantry[1].price", "margin", "kichen");
    }
}
