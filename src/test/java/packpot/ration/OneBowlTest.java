package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static packpot.ration.ByHand.CHALK;
import static packpot.ration.ByHand.RICE;
import static packpot.ration.ByHand.least;
import static packpot.ration.ByHand.most;
import static packpot.ration.ByHand.need;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.food.Constituent;
import packpot.food.Dosing;
import packpot.food.Place;
import packpot.household.PantryItem;
import packpot.needs.DogNeed;

/** Doses of one dog that gets half of a pot of 10 kg: 500 kcal a day. */
class OneBowlTest {
    private static final String CHALK_GIVEN = "chalk for By hand ADULT given";
    private static final String SHELL_GIVEN = "shell for By hand ADULT given";
    /** Half the calcium of chalk. */
    private static final PantryItem SHELL = shell(0.004);

    private static PantryItem shell(double pricePerGram) {
        return ByHand.loose(
                ByHand.supplement("shell", Map.of(Constituent.CALCIUM_MG, 20_000.0), Dosing.DAILY, Place.BOWL, 12),
                pricePerGram);
    }

    private static Optional<Map<PantryItem, Integer>> doses(DogNeed dog, Set<String> additions, PantryItem... pantry) {
        return OneBowl.doses(
                ByHand.household(ByHand.needs(dog), pantry),
                Demo.knowledge(),
                new Asked(),
                Map.of(RICE, 10_000.0),
                dog,
                0.5,
                additions);
    }

    @Test
    void asManyDosesAsItNeeds() {
        // 1 g of calcium per 1000 kcal is half a gram a day: two spoons of 0.4 g.
        assertThat(doses(need("Ash", 500, least("calcium", 1)), Set.of(CHALK_GIVEN), RICE, CHALK))
                .contains(Map.of(CHALK, 2));
        // Three are 1.2 g a day, 2.4 g per 1000 kcal.
        assertThat(doses(
                        need("Ash", 500, least("calcium", 1.7), most("calcium", 2.4)),
                        Set.of(CHALK_GIVEN),
                        RICE,
                        CHALK))
                .contains(Map.of(CHALK, 3));
        assertThat(doses(
                        need("Ash", 500, least("calcium", 1.7), most("calcium", 2.3)),
                        Set.of(CHALK_GIVEN),
                        RICE,
                        CHALK))
                .isEmpty();
    }

    @Test
    void nothingThatWasNotChosen() {
        assertThat(doses(need("Ash", 500, least("calcium", 1)), Set.of(), RICE, CHALK))
                .isEmpty();
        assertThat(doses(need("Ash", 500, least("calcium", 1)), Set.of(SHELL_GIVEN), RICE, CHALK, SHELL))
                .contains(Map.of(SHELL, 3));
    }

    @Test
    void nothingThatItDoesNotNeedEvenForNothing() {
        assertThat(doses(need("Ash", 500), Set.of(SHELL_GIVEN), RICE, shell(0))).contains(Map.of());
    }

    @Test
    void theCheapestThatWillDo() {
        // Half a gram is in two spoons of chalk for 2 cents or in three of shell for 1.2; where a spoon of shell costs
        // 0.8
        // cents, in one of either for 1.8.
        PantryItem dearer = shell(0.008);
        Set<String> both = Set.of(CHALK_GIVEN, SHELL_GIVEN);
        assertThat(doses(need("Ash", 500, least("calcium", 1)), both, RICE, CHALK, SHELL))
                .contains(Map.of(SHELL, 3));
        assertThat(doses(need("Ash", 500, least("calcium", 1)), both, RICE, CHALK, dearer))
                .contains(Map.of(CHALK, 1, dearer, 1));
    }

    @Test
    void aDoseCostsByItsGrams() {
        PantryItem drops = ByHand.loose(
                ByHand.supplement("drops", Map.of(Constituent.CALCIUM_MG, 80_000.0), Dosing.SPREAD, Place.BOWL, 12),
                0.02);
        // 5 g of calcium over ten days: two daily spoons of chalk for 20 cents, or seven drops of 1 g for 14.
        assertThat(doses(
                        need("Ash", 500, least("calcium", 1)),
                        Set.of(CHALK_GIVEN, "drops for By hand ADULT given"),
                        RICE,
                        CHALK,
                        drops))
                .contains(Map.of(drops, 7));
    }

    @Test
    void noEnergyOutsideItsBand() {
        // Half of the pot is 500 kcal a day.
        assertThat(doses(need("Ash", 510), Set.of(), RICE, CHALK)).isEmpty();
        assertThat(doses(need("Ash", 490), Set.of(), RICE, CHALK)).isEmpty();
        assertThat(doses(need("Ash", 500), Set.of(), RICE, CHALK)).contains(Map.of());
    }
}
