package packpot.household;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import packpot.dog.Activity;
import packpot.dog.Dog;
import packpot.dog.EnergyMethod;
import packpot.food.FoodEnergy;
import packpot.food.Place;
import packpot.units.UnitSystem;

class ScenarioDefaultsTest {

    @Test
    void nameWeightAgeAndFoodsWithPricesAreEnough() throws ScenarioException {
        Household household = Scenarios.read(Scenarios.SMALL);
        assertThat(household.start()).isEqualTo(Scenarios.TODAY);
        assertThat(household.currency()).isEqualTo("USD");
        assertThat(household.locale()).isEqualTo(java.util.Locale.US);
        assertThat(household.units()).isEqualTo(UnitSystem.US);
        assertThat(household.profile()).isEqualTo("aafco-2016");
        assertThat(household.maintenance()).isEqualTo(EnergyMethod.Maintenance.BY_ACTIVITY);
        assertThat(household.growth()).isEqualTo(EnergyMethod.Growth.KLEIN);
        assertThat(household.foodEnergy()).isEqualTo(FoodEnergy.Method.ATWATER);
        assertThat(household.budget()).isNull();
        assertThat(household.kitchen().days()).isEqualTo(14);
        assertThat(household.kitchen().mealsPerDay()).isEqualTo(2);
        assertThat(household.kitchen().freezer()).isNull();
        Dog dog = household.dogs().get(0);
        assertThat(dog.weightKg()).isCloseTo(9.525, within(1e-3));
        assertThat(dog.ageDays()).isEqualTo(4 * 365.25);
        assertThat(dog.activity()).isEqualTo(Activity.MODERATE);
        assertThat(dog.neutered()).isTrue();
        assertThat(dog.otherKcalPerDay()).isZero();
    }

    @Test
    void everyDefaultThatMattersIsStated() throws ScenarioException {
        assertThat(Scenarios.read(Scenarios.SMALL).defaults())
                .anyMatch(note -> note.toString().contains("Moss: activity is not given, taken as moderate"))
                .anyMatch(note -> note.toString().contains("Moss: neutered is not given"))
                .anyMatch(note -> note.toString().contains("14 days"))
                .anyMatch(note -> note.toString().contains("2 meals a day"))
                .anyMatch(note -> note.toString().contains("quart freezer bags"))
                .anyMatch(note -> note.toString().contains("no freezer is given"))
                .anyMatch(note -> note.toString().contains("fridge"));
    }

    @Test
    void whatIsGivenIsNotCalledADefault() throws ScenarioException {
        Household household = Scenarios.read(Scenarios.with(
                "/dogs/0", "'activity': 'high', 'neutered': false, 'treats': '40 kcal', 'otherFood': '60 kcal'"));
        assertThat(household.defaults()).noneMatch(note -> note.toString().startsWith("Moss"));
        assertThat(household.dogs().get(0).otherKcalPerDay()).isEqualTo(100);
    }

    @Test
    void aPackThatIsNotGivenIsTakenAsTheShopsAndStated() throws ScenarioException {
        Household household = Scenarios.read(Scenarios.with("/pantry/1", "'pack': null"));
        assertThat(household.pantry().get(1).packGrams()).isNotNull();
        assertThat(household.defaults()).anyMatch(note -> note.toString().contains("pack is not given, taken as"));
    }

    @Test
    void pricesAreOfTheEdibleFood() throws ScenarioException {
        Household household = Scenarios.read(Scenarios.with("/pantry/0", "'food': 'egg, whole', 'price': '$4/kg'"));
        PantryItem egg = household.pantry().get(0);
        assertThat(egg.isLoose()).isTrue();
        assertThat(egg.pricePerGram())
                .isCloseTo(4.0 / 1000 / egg.food().kitchen().edibleShare(), within(1e-12));
        PantryItem rice = household.pantry().get(1);
        assertThat(rice.packAsBoughtGrams()).isCloseTo(5 * 453.59237, within(1e-9));
        assertThat(rice.pricePerGram()).isCloseTo(4 / (5 * 453.59237), within(1e-12));
    }

    @Test
    void whatIsOnHandWithoutAPriceCannotBeBought() throws ScenarioException {
        PantryItem item = Scenarios.read(
                        Scenarios.with("/pantry/0", "'price': null, 'onHand': '2 lb', 'mustUse': true"))
                .pantry()
                .get(0);
        assertThat(item.outOfStock()).isTrue();
        assertThat(item.onHandGrams()).isCloseTo(907.18474, within(1e-6));
        assertThat(item.mustUseGrams()).isEqualTo(item.onHandGrams());
    }

    @Test
    void supplementsGoWhereTheirTableSaysAndFoodsIntoThePot() throws ScenarioException {
        Household household = Scenarios.read(
                Scenarios.with(
                        "",
                        "'pantry': [{'food': 'vitamin D3 drops', 'price': '$9', 'pack': '300 drops'}, {'food': 'carrots', 'price': '$1/lb'}]"));
        assertThat(household.pantry().get(0).place()).isEqualTo(Place.BOWL);
        assertThat(household.pantry().get(1).place()).isEqualTo(Place.POT);
    }

    @Test
    void whatOneDogMustAvoidStaysOutOfTheSharedPot() throws ScenarioException {
        String dogs = "'dogs': [{'name': 'Moss', 'weight': '21 lb', 'age': '4 years', 'avoid': ['turkey']},"
                + " {'name': 'Pip', 'weight': '9 lb', 'age': '4 years'}]";
        Household household = Scenarios.read(Scenarios.with("", dogs));
        assertThat(household.mayGoIntoPot(household.pantry().get(0))).isFalse();
        assertThat(household.mayGoIntoPot(household.pantry().get(1))).isTrue();
        assertThat(household.avoiders(household.pantry().get(0)))
                .extracting(Dog::name)
                .containsExactly("Moss");
    }

    @Test
    void aFoodOfTheHouseholdsOwnHoldsWhatItsLabelSaysAndNothingElseIsKnown() throws ScenarioException {
        String own = "'ownFoods': [{'name': 'Green bites', 'group': 'vegetable', 'per': '50 g',"
                + " 'holds': {'protein_g': 2, 'fat_g': 0}}], 'pantry': [{'food': 'green bites', 'price': '$1/lb'}]";
        PantryItem item = Scenarios.read(Scenarios.with("", own)).pantry().get(0);
        var composition = item.food().composition();
        assertThat(composition.perGram(packpot.food.Constituent.PROTEIN_G)).isCloseTo(0.04, within(1e-12));
        assertThat(composition.knows(packpot.food.Constituent.FAT_G)).isTrue();
        assertThat(composition.knows(packpot.food.Constituent.ZINC_MG)).isFalse();
    }

    @Test
    void anOwnFoodThatIsAPoisonIsRefused() {
        String own =
                "'ownFoods': [{'name': 'Raisin bites', 'group': 'fruit', 'per': '50 g', 'holds': {'protein_g': 2}}],"
                        + " 'pantry': [{'food': 'raisin bites', 'price': '$1/lb'}]";
        assertThat(Scenarios.faults(Scenarios.with("", own)))
                .anyMatch(fault ->
                        fault.path().equals("pantry[0].food") && fault.message().contains("is refused"));
    }

    @Test
    void aShareGivenOnOneSideMovesTheUsualFigureOfTheOther() throws ScenarioException {
        Household household = Scenarios.read(Scenarios.with("", "'shape': {'shares': {'meat': {'least': '70 %'}}}"));
        assertThat(household.shape().bands()).allMatch(band -> band.least() <= band.most());
    }

    @Test
    void notesMayStandAnywhere() throws ScenarioException {
        assertThat(Scenarios.read(Scenarios.with("/dogs/0", "'note': 'sleeps a lot'"))
                        .dogs())
                .hasSize(1);
    }
}
