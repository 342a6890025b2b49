package packpot.household;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import packpot.dog.Course;
import packpot.dog.Dog;
import packpot.dog.EnergyCorrection;
import packpot.dog.Reproduction;
import packpot.dog.WeighIn;

/** What a scenario says of a dog beyond the first day. */
class CourseReadingTest {

    private static Dog dog(String fields) throws ScenarioException {
        return Scenarios.read(Scenarios.with("/dogs/0", fields)).dogs().get(0);
    }

    @Test
    void aPlainDogHasNoCourse() throws ScenarioException {
        assertThat(dog("").course()).isEqualTo(Course.NONE);
    }

    @Test
    void weighInsAreCountedFromTheFirstDay() throws ScenarioException {
        Dog dog = dog(
                "'weighIns': [{'date': '2026-02-28', 'weight': '9.6 kg'}, {'date': '2026-03-07', 'weight': '9.5 kg'}]");
        assertThat(dog.course().weighIns()).containsExactly(new WeighIn(-7, 9.6), new WeighIn(0, 9.5));
        assertThat(dog.weightKg()).isCloseTo(9.5254, within(1e-4));
    }

    @Test
    void theLatestWeighInIsTheWeightOfAnAdultThatGivesNone() throws ScenarioException {
        String scenario =
                Scenarios.with("/dogs/0", "'weight': null, 'weighIns': [{'date': '2026-02-28', 'weight': '9.6 kg'}]");
        Household household = Scenarios.read(scenario);
        assertThat(household.dogs().get(0).weightKg()).isEqualTo(9.6);
        assertThat(household.defaults())
                .anyMatch(each -> each.toString().contains("taken from the weigh-in of 2026-02-28"));
    }

    @Test
    void aPuppyIsGrownFromItsLatestWeighInToTheFirstDay() throws ScenarioException {
        Dog dog = dog("'weight': null, 'age': '4 months', 'expectedAdultWeight': '30 kg',"
                + " 'weighIns': [{'date': '2026-02-28', 'weight': '12 kg'}]");
        assertThat(dog.weightKg()).isCloseTo(30 * Math.exp(-Math.log(2.5) * Math.exp(-7 / 54.0)), within(1e-9));
    }

    @Test
    void whatADogAteAndWeighedCorrectsItsEnergyAndIsTold() throws ScenarioException {
        String scenario = Scenarios.with(
                "/dogs/0",
                "'weight': '10 kg', 'fedEnergy': '620 kcal', 'weighIns': [{'date': '2026-01-10', 'weight': '10.8 kg'},"
                        + " {'date': '2026-01-24', 'weight': '10.6 kg'}, {'date': '2026-02-07', 'weight': '10.4 kg'},"
                        + " {'date': '2026-02-21', 'weight': '10.2 kg'}, {'date': '2026-03-07', 'weight': '10 kg'}]");
        Household household = Scenarios.read(scenario);
        EnergyCorrection correction = household.dogs().get(0).course().correction();
        assertThat(correction).isNotNull().extracting(EnergyCorrection::factor).isEqualTo(1.1);
        assertThat(household.cautions()).anyMatch(each -> each.toString().contains("energy target is taken times 1.1"));
    }

    @Test
    void aDogThatComesLaterIsNotPlannedForAndThatIsSaid() throws ScenarioException {
        Household household = Scenarios.read(Scenarios.with(
                "",
                "'dogs': [{'name': 'Moss', 'weight': '21 lb', 'age': '4 years'},"
                        + " {'name': 'Pip', 'weight': '9 lb', 'age': '3 years', 'comes': '2026-03-14'}]"));
        assertThat(household.dogs()).extracting(Dog::name).containsExactly("Moss");
        assertThat(household.coming()).extracting(Dog::name).containsExactly("Pip");
        assertThat(household.allDogs()).hasSize(2);
        assertThat(household.cautions()).anyMatch(each -> each.toString().contains("Pip (9.0 lb) comes on 2026-03-14"));
    }

    @Test
    void aDogThatLeavesBeforeTheBatchEndsIsPlannedAndThatIsSaid() throws ScenarioException {
        Household household = Scenarios.read(Scenarios.with("/dogs/0", "'leaves': '2026-03-17'"));
        assertThat(household.dogs()).hasSize(1);
        assertThat(household.cautions())
                .anyMatch(each ->
                        each.toString().contains("Moss leaves on 2026-03-17, so it is planned for on 10 days of 14"));
        assertThat(Scenarios.read(Scenarios.with("/dogs/0", "'leaves': '2026-03-21'"))
                        .cautions())
                .noneMatch(each -> each.toString().contains("leaves"));
    }

    @Test
    void aPuppyMayComeThatIsTooYoungToday() throws ScenarioException {
        Household household = Scenarios.read(Scenarios.with(
                "",
                "'dogs': [{'name': 'Moss', 'weight': '21 lb', 'age': '4 years'}, {'name': 'Pip', 'weight': '1 lb', 'age':"
                        + " '3 weeks', 'expectedAdultWeight': '9 lb', 'comes': '2026-04-14'}]"));
        assertThat(household.coming()).hasSize(1);
    }

    @Test
    void aLitterIsKnownBeforeItIsBorn() throws ScenarioException {
        assertThat(dog("'sex': 'female', 'gestation': {'week': 8, 'expectedPuppies': 4}")
                        .reproduction())
                .isEqualTo(new Reproduction.Gestation(8, 4));
    }

    @Test
    void aSupposedWeightPutsTheWeighInsAside() throws ScenarioException {
        String scenario = Scenarios.with("/dogs/0", "'weighIns': [{'date': '2026-02-28', 'weight': '9.6 kg'}]");
        Household household = new ScenarioChanges(
                        Scenarios.KNOWLEDGE,
                        new ScenarioReader(Scenarios.KNOWLEDGE, Scenarios.TODAY),
                        "test.json",
                        scenario.getBytes(StandardCharsets.UTF_8))
                .with(List.of(Change.of("Moss: weight 12 kg")), List.of());
        assertThat(household.dogs().get(0).weightKg()).isEqualTo(12);
        assertThat(household.dogs().get(0).course().weighIns()).isEmpty();
    }
}
