package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.ByHand.CHALK;
import static packpot.ration.ByHand.MEAT;
import static packpot.ration.ByHand.RICE;
import static packpot.ration.ByHand.household;
import static packpot.ration.ByHand.least;
import static packpot.ration.ByHand.most;
import static packpot.ration.ByHand.need;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.food.Constituent;
import packpot.food.Dosing;
import packpot.food.FoodGroup;
import packpot.food.Place;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.household.Rules;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.plan.Amounts;
import packpot.ration.RationPlanner.Outcome;
import packpot.solver.SolveLimits;

/** Kennels of dogs alike, whose rations follow by hand. */
class KennelByHandTest {
    private static final double GAP = 0.01;
    /** 1 kcal and 0.02 g of calcium a gram, $10 a kg. */
    private static final PantryItem FISH = ByHand.loose(
            ByHand.food(
                    "fish", FoodGroup.FISH, Map.of(Constituent.CARBOHYDRATE_G, 25.0, Constituent.CALCIUM_MG, 2000.0)),
            0.01);

    static Needs dogs(int count, IntFunction<DogNeed> dog) {
        return new Needs(IntStream.range(0, count).mapToObj(dog).toList());
    }

    private static Outcome plan(Household household, Needs needs) {
        return plan(household, needs, GAP);
    }

    private static Outcome plan(Household household, Needs needs, double gap) {
        return new RationPlanner(Demo.knowledge(), new Asked()).plan(household, needs, new SolveLimits(20, gap));
    }

    private static Outcome.Found found(Household household, Needs needs) {
        return (Outcome.Found) plan(household, needs);
    }

    /** Dogs that stand for themselves in a model, or for others too. */
    static long dogsOf(RationModel model) {
        return model.linearModel().rows().stream()
                .filter(row -> row.name().startsWith("energy target of "))
                .count();
    }

    @Test
    void dogsAlikeAreOneFromTwelveOn() {
        Needs few = dogs(11, i -> need("Dog " + i, 100 * (1 + i), least("protein", 50)));
        Needs many = dogs(25, i -> need("Dog " + i, 100 * (1 + i), least("protein", 50)));
        assertThat(dogsOf(found(household(few, MEAT, RICE), few).model())).isEqualTo(11);
        Needs dozen = dogs(12, i -> need("Dog " + i, 100 * (1 + i), least("protein", 50)));
        assertThat(dogsOf(found(household(dozen, MEAT, RICE), dozen).model())).isEqualTo(1);
        Outcome.Found found = found(household(many, MEAT, RICE), many);
        assertThat(dogsOf(found.model())).isEqualTo(1);
        // 32 500 kcal a day: 65 kg of meat at $4 and 260 kg of rice at $1.
        assertThat(found.amounts().cost()).isCloseTo(520, within(1e-6));
        assertThat(found.amounts().potGrams().get(MEAT)).isCloseTo(65_000, within(1e-3));
        assertThat(found.amounts().proved()).isTrue();
        assertThat(found.amounts().shares().get(many.dogs().get(24))).isCloseTo(2500 / 32_500.0, within(1e-12));
        assertThat(found.amounts().doses()).hasSize(25);
    }

    /** As one they need 30 spoons a day, by themselves three each: 120 kg of rice and 36 spoons on ten days. */
    @Test
    void aDozenAreProvedEachForItself() {
        Needs dozen = dogs(12, i -> need("Dog " + i, 1000, least("calcium", 1)));
        Amounts amounts = ((Outcome.Found) new RationPlanner(Demo.knowledge(), new Asked())
                        .plan(household(dozen, RICE, CHALK), dozen, new SolveLimits(20, 0.001)))
                .amounts();
        dozen.dogs().forEach(dog -> assertThat(amounts.doses().get(dog)).containsExactly(Map.entry(CHALK, 3)));
        assertThat(amounts.cost()).isCloseTo(120 + 3.6, within(1e-6));
        assertThat(amounts.bound()).isGreaterThan(0.999 * 123.6);
        assertThat(amounts.proved()).isTrue();
    }

    @Test
    void everyDogHasWholeDosesOfItsOwn() {
        Needs many = dogs(25, i -> need("Dog " + i, 1000, least("calcium", 1)));
        Household household = household(many, RICE, CHALK);
        Outcome.Found found = found(household, many);
        many.dogs().forEach(dog -> assertThat(found.amounts().doses().get(dog)).containsExactly(Map.entry(CHALK, 3)));
        // 250 kg of rice and 75 spoons on ten days; all dogs as one need 63 spoons, which is the bound.
        assertThat(found.amounts().cost()).isCloseTo(250 + 7.5, within(1e-6));
        assertThat(found.amounts().bound()).isBetween(0.99 * 256.3, 256.3 + 1e-6);
        assertThat(found.amounts().proved()).isTrue();
        // That is 0.47 % apart.
        assertThat(((Outcome.Found) plan(household, many, 0.004)).amounts().proved())
                .isFalse();
    }

    @Test
    void thePotMakesRoomForADogWhoseDosesAreTooCoarse() {
        // A spoon a day is 4 g of calcium per 1000 kcal for the smallest.
        Needs many = dogs(25, i -> need("Dog " + i, i == 0 ? 100 : 1000, least("calcium", 1), most("calcium", 3)));
        Outcome.Found found = found(household(many, RICE, FISH, CHALK), many);
        assertThat(dogsOf(found.model())).isEqualTo(2);
        // So a twentieth of the pot is fish, 12.05 of 241 kg, and nobody needs a spoon.
        assertThat(found.amounts().potGrams().get(FISH)).isCloseTo(12_050, within(1e-3));
        assertThat(found.amounts().cost()).isCloseTo(228.95 + 120.5, within(1e-6));
        found.amounts().doses().values().forEach(doses -> assertThat(doses).isEmpty());
        // Without fish there is nothing for it.
        Outcome none = plan(household(many, RICE, CHALK), many);
        assertThat(none).isInstanceOf(Outcome.None.class);
        assertThat(((Outcome.None) none).provedImpossible()).isTrue();
    }

    @Test
    void allDosesTogetherKeepToWhatIsWishedOfTheBatch() {
        Needs many = dogs(25, i -> need("Dog " + i, 1000, least("calcium", 1)));
        // 630 g would do for all as one, and 750 g are needed.
        assertThat(plan(household(many, RICE, CHALK.withAtMost(750.0)), many)).isInstanceOf(Outcome.Found.class);
        Outcome none = plan(household(many, RICE, CHALK.withAtMost(740.0)), many);
        assertThat(none).isInstanceOf(Outcome.None.class);
        assertThat(((Outcome.None) none).provedImpossible()).isFalse();
    }

    @Test
    void whatNoFoodBringsIsProvedImpossible() {
        Needs many = dogs(25, i -> need("Dog " + i, 1000, least("protein", 251)));
        Outcome none = plan(household(many, MEAT, RICE), many);
        assertThat(((Outcome.None) none).provedImpossible()).isTrue();
    }

    @Test
    void dogsThatAreHeldToOtherThingsAreNotAlike() {
        Needs many = dogs(25, i -> switch (i) {
            case 1 -> need("More", 1000, least("protein", 60));
            case 2 -> need("Other", 1000, least("fat", 0));
            case 3 -> need(ByHand.dog("Without", "chalk"), 1000, least("protein", 50));
            case 4 -> fewerDays(need("Guest", 1000, least("protein", 50)));
            // A word that names no food of the pantry sets nobody apart.
            case 5 -> need(ByHand.dog("Careful", "squid"), 1000, least("protein", 50));
            default -> need("Dog " + i, 1000, least("protein", 50));
        });
        assertThat(dogsOf(found(household(many, MEAT, RICE, CHALK), many).model()))
                .isEqualTo(5);
    }

    private static DogNeed fewerDays(DogNeed dog) {
        return new DogNeed(1, dog.dog(), dog.energy(), dog.kcalPerDay(), 0, 5, dog.profile(), 1, dog.requirements());
    }

    /** Half of the dogs have 45 of 500 kcal from a paste; what they have from it they need not have from the pot. */
    @Test
    void sharesFollowTheEnergyOfAdditions() {
        PantryItem paste = ByHand.loose(
                ByHand.supplement(
                        "paste",
                        Map.of(Constituent.CARBOHYDRATE_G, 125.0, Constituent.CALCIUM_MG, 10_000.0),
                        Dosing.DAILY,
                        Place.BOWL,
                        12),
                0.02);
        List<DogNeed> dogs = new ArrayList<>();
        IntStream.range(0, 13).forEach(i -> dogs.add(need("With " + i, 500, least("calcium", 1.9))));
        IntStream.range(0, 13).forEach(i -> dogs.add(need("Without " + i, 500)));
        Needs many = new Needs(dogs);
        Outcome.Found found = found(household(many, RICE, paste).withRules(new Rules(0, 0.1, 0, 100, 0.5, 5, 1)), many);
        Map<DogNeed, Double> shares = found.amounts().shares();
        assertThat(shares.values().stream().mapToDouble(share -> share).sum()).isCloseTo(1, within(1e-9));
        assertThat(shares.get(dogs.get(12))).isCloseTo(shares.get(dogs.get(0)), within(1e-12));
        assertThat(shares.get(dogs.get(25))).isCloseTo(shares.get(dogs.get(13)), within(1e-12));
        assertThat(shares.get(dogs.get(0)) / shares.get(dogs.get(13))).isCloseTo(455 / 500.0, within(0.008));
        dogs.subList(0, 13)
                .forEach(dog -> assertThat(found.amounts().doses().get(dog)).containsKey(paste));
        dogs.subList(13, 26)
                .forEach(dog -> assertThat(found.amounts().doses().get(dog)).isEmpty());
    }
}
