package packpot.needs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;
import packpot.profile.Limit;

class NeedsTest {
    private static final Knowledge KNOWLEDGE = Knowledge.load();

    private static DogNeed need(String fields) throws ScenarioException {
        String text = "{'dogs': [{'name': 'Moss', 'weight': '10 kg', 'neutered': true, "
                + (fields.contains("'age'") ? "" : "'age': '5 years', ") + fields
                + "}], 'pantry': [{'food': 'carrots', 'price': '$1/lb'}]}";
        Household household = new ScenarioReader(KNOWLEDGE, LocalDate.of(2026, 3, 7))
                .read("test.json", text.replace('\'', '"').getBytes(StandardCharsets.UTF_8));
        return Needs.of(household, KNOWLEDGE).dogs().get(0);
    }

    private static Requirement only(DogNeed need, String nutrient, Limit.Kind kind) {
        return need.requirements().stream()
                .filter(r -> r.limit().nutrient().equals(nutrient) && r.limit().kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void treatsAndOtherFoodAreTakenOffWhatTheBatchMustBring() throws ScenarioException {
        DogNeed plain = need("'activity': 'moderate'");
        DogNeed treated = need("'activity': 'moderate', 'treats': '40 kcal', 'otherFood': '60 kcal'");
        assertThat(treated.energy().kcalPerDay()).isEqualTo(plain.energy().kcalPerDay());
        assertThat(treated.kcalPerDay()).isCloseTo(plain.kcalPerDay() - 100, within(1e-9));
    }

    @Test
    void aVeterinariansFigureOverridesTheEquations() throws ScenarioException {
        assertThat(need("'activity': 'moderate', 'vetEnergy': '512 kcal'").kcalPerDay())
                .isEqualTo(512);
    }

    @Test
    void aDogThatEatsLessThanTheProfileAssumesGetsItsMinimumsRaisedInProportion() throws ScenarioException {
        DogNeed frugal = need("'activity': 'moderate', 'vetEnergy': '400 kcal'");
        double intake = 400 / Math.pow(10, 0.75);
        double reference = frugal.profile().referenceKcalPerKg075();
        assertThat(frugal.raisedBy())
                .isCloseTo(reference / intake, within(1e-9))
                .isGreaterThan(1);
        Requirement zinc = only(frugal, "zinc", Limit.Kind.MINIMUM);
        assertThat(zinc.raised()).isTrue();
        assertThat(zinc.per1000Kcal()).isCloseTo(zinc.limit().value() * frugal.raisedBy(), within(1e-9));
        // The same grams a day as a dog that eats as much as is assumed.
        assertThat(zinc.per1000Kcal() * 400)
                .isCloseTo(zinc.limit().value() * reference * Math.pow(10, 0.75), within(1e-6));
    }

    /** 10 kg on their way to 8: the minimums are those of 8 kg on 95 kcal per kg^0.75, in 1.0 x 70 x 8^0.75 kcal. */
    @Test
    void aDogThatLosesWeightIsReckonedAtItsGoal() throws ScenarioException {
        assertThat(need("'goalWeight': '8 kg'").raisedBy()).isCloseTo(95.0 / 70, within(1e-9));
        double maintenance =
                need("'goalWeight': '12 kg', 'vetEnergy': '300 kcal'").raisedBy();
        assertThat(maintenance).isCloseTo(95 * Math.pow(10, 0.75) / 300, within(1e-9));
    }

    @Test
    void aProfileThatNamesNoIntakeIsNotRaised() throws ScenarioException {
        DogNeed puppy = need("'age': '12 weeks', 'expectedAdultWeight': '20 kg', 'vetEnergy': '300 kcal'");
        assertThat(puppy.profile().referenceKcalPerKg075()).isNull();
        assertThat(puppy.raisedBy()).isEqualTo(1);
    }

    @Test
    void maximumsAndRatiosAreNeverRaised() throws ScenarioException {
        DogNeed frugal = need("'activity': 'moderate', 'vetEnergy': '400 kcal'");
        assertThat(frugal.requirements())
                .filteredOn(r -> r.limit().kind() == Limit.Kind.MAXIMUM
                        || r.limit().nutrient().endsWith("-ratio"))
                .isNotEmpty()
                .allMatch(r -> !r.raised() && r.per1000Kcal() == r.limit().value());
    }

    @Test
    void aDogThatEatsMoreIsHeldToThePublishedFigures() throws ScenarioException {
        DogNeed hungry = need("'activity': 'working'");
        assertThat(hungry.raisedBy()).isEqualTo(1);
        assertThat(hungry.requirements()).noneMatch(Requirement::raised);
    }

    @Test
    void ofTwoMaximumsTheLowerHoldsAndEachFigureStandsOnce() throws ScenarioException {
        DogNeed need = need("'activity': 'moderate'");
        assertThat(need.requirements())
                .extracting(r -> r.limit().kind() + " " + r.limit().nutrient())
                .doesNotHaveDuplicates();
        KNOWLEDGE
                .profiles()
                .ceilings(need.dog())
                .forEach(ceiling -> assertThat(
                                only(need, ceiling.nutrient(), ceiling.kind()).per1000Kcal())
                        .isLessThanOrEqualTo(ceiling.value()));
    }

    @Test
    void everyFigureHasASource() throws ScenarioException {
        assertThat(need("'activity': 'moderate'").requirements())
                .allMatch(
                        r -> !r.limit().source().isBlank() && !r.limit().found().isBlank());
    }
}
