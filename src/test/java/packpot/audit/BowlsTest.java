package packpot.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.audit.TinyPlan.HOUSEHOLD;
import static packpot.audit.TinyPlan.PLAN;
import static packpot.audit.TinyPlan.VITAMIN_E;
import static packpot.audit.TinyPlan.findings;
import static packpot.audit.TinyPlan.household;
import static packpot.audit.TinyPlan.item;
import static packpot.audit.TinyPlan.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import packpot.Records;
import packpot.dog.Course;
import packpot.dog.Reproduction;
import packpot.food.Constituent;
import packpot.household.Household;
import packpot.plan.Plan;

/** What one dog gets: its energy, its additions, its supplements and its days, each at its bound and a little beyond. */
class BowlsTest {
    /** Reckoned anew for each test. */
    private final DogAudit clover = TinyPlan.verdict(PLAN, HOUSEHOLD).dogs().get(0);

    private static List<String> about(String words, Plan plan, Household household) {
        return findings(plan, household).stream()
                .filter(finding -> finding.contains(words))
                .toList();
    }

    /** The plan and the household of a dog that needs so much, as a veterinarian says. */
    private static List<String> energyFindings(Plan plan, double kcalPerDay) {
        return about(": energy is", plan, household("dogs[0].vetKcalPerDay", kcalPerDay));
    }

    @ParameterizedTest
    @CsvSource({"0.0099, 0", "0.0101, 1", "-0.0099, 0", "-0.0101, 1"})
    void energyLiesWithinAPercentOfItsTarget(double off, int found) {
        double target = clover.kcalPerDay() / (1 + off);
        List<String> findings = energyFindings(PLAN, target);
        assertThat(findings).hasSize(found);
        if (found > 0) {
            assertThat(findings)
                    .containsExactly(String.format(
                            Locale.ROOT,
                            "Clover: energy is 792.6 kcal a day, more than 1 %% off the target of %.1f",
                            target));
        }
    }

    @Test
    void otherFoodIsTakenOffTheTarget() {
        Household treated = household("dogs[0].otherKcalPerDay", 40.0);
        assertThat(about(": energy is", PLAN, treated)).hasSize(1);
        assertThat(TinyPlan.verdict(PLAN, treated).dogs().get(0).targetKcalPerDay())
                .isCloseTo(clover.targetKcalPerDay() - 40, within(1e-9));
    }

    /** 30 g of the pot are about 44 kcal, and one gram of it is 1.5 kcal, more than a percent. */
    @Test
    void forAVerySmallPortionOneGramIsNoFault() {
        Plan small = plan("dogs[0].potGramsPerDay", 30);
        double kcal = TinyPlan.verdict(small, HOUSEHOLD).dogs().get(0).kcalPerDay();
        double perGram = kcal / 30;
        assertThat(energyFindings(small, kcal + perGram - 0.01)).isEmpty();
        assertThat(energyFindings(small, kcal + perGram + 0.01)).hasSize(1);
        assertThat(energyFindings(plan("dogs[0].potGramsPerDay", 0), 800)).hasSize(1);
    }

    /** The dog's part of the dry matter of the pot, and its additions, reckoned here from the water of each food. */
    @Test
    void dryMatterIsWhatIsNotWater() {
        double dry = 0;
        double cooked = 0;
        for (Plan.Ingredient each : PLAN.pot()) {
            double water = TinyPlan.pantry(each.food()).food().composition().perGram(Constituent.WATER_G);
            dry += each.grams() * (1 - water);
            cooked += each.cookedGrams();
        }
        double ofThePot = dry * 537 * 14 / cooked / 14;
        assertThat(clover.dryGramsPerDay()).isBetween(ofThePot, ofThePot + 0.04);
        assertThat(clover.kcalPer100GramsDry()).isCloseTo(100 * 792.573 / clover.dryGramsPerDay(), within(0.01));
    }

    @Test
    void additionsAreNoMoreOfTheBowlThanWished() {
        // 14 drops of 0.03 g and one more, on 302 g of the pot for 14 days; the other dog's bowl is larger.
        double share = 0.45 / (0.45 + 302 * 14);
        assertThat(findings(household("shape.additionsMostMassShare", share))).isEmpty();
        assertThat(findings(household("shape.additionsMostMassShare", share * 0.9999)))
                .containsExactly("Rusk: additions are 0.0 % of the bowl's mass");
        // Drops of oil of 8.84 and 9 kcal a gram.
        assertThat(about("of the bowl's energy", PLAN, household("shape.additionsMostEnergyShare", 0.0005)))
                .isEmpty();
        assertThat(about("of the bowl's energy", PLAN, household("shape.additionsMostEnergyShare", 0.0)))
                .containsExactly(
                        "Clover: additions are 0.0 % of the bowl's energy",
                        "Rusk: additions are 0.0 % of the bowl's energy");
    }

    /** A hundred grams of oil a day, so that shares are figures that can be told apart. */
    @Test
    void sharesOfLargeAdditionsAreTold() {
        Plan oily = plan("dogs[0].additions[0].gramsPerDose", 100.0);
        double grams = 14 * 100 + 0.03;
        double share = grams / (grams + 537 * 14);
        assertThat(share).isBetween(0.15, 0.16);
        String mass = "of the bowl's mass";
        assertThat(about(mass, oily, household("shape.additionsMostMassShare", share + 1e-9)))
                .isEmpty();
        assertThat(about(mass, oily, household("shape.additionsMostMassShare", share - 1e-6)))
                .contains("Clover: additions are 15.7 % " + mass);
        String energy = "of the bowl's energy";
        double kcal = TinyPlan.verdict(oily, HOUSEHOLD).dogs().get(0).kcalPerDay();
        double without = TinyPlan.verdict(plan("dogs[0].additions", List.of()), HOUSEHOLD)
                .dogs()
                .get(0)
                .kcalPerDay();
        double energyShare = (kcal - without) / kcal;
        assertThat(about(energy, oily, household("shape.additionsMostEnergyShare", energyShare / 1.0099)))
                .noneMatch(told -> told.startsWith("Clover"));
        assertThat(about(energy, oily, household("shape.additionsMostEnergyShare", energyShare / 1.0101)))
                .contains(String.format(
                        Locale.ROOT, "Clover: additions are %.1f %% of the bowl's energy", 100 * energyShare));
    }

    @Test
    void asManyAdditionsAsWished() {
        assertThat(findings(household("shape.mostAdditions", 2))).isEmpty();
        assertThat(findings(household("shape.mostAdditions", 1)))
                .containsExactly(
                        "Clover: 2 different additions, at most 1 are wished",
                        "Rusk: 2 different additions, at most 1 are wished");
    }

    private static List<String> capped(String food, String cap, double most, Household household) {
        return about(
                " of " + TinyPlan.pantry(food).food().label() + " per 1000 kcal",
                PLAN,
                Records.with(household, item(food) + ".food.supplement." + cap, most));
    }

    /** 14 drops of 0.03 g in 14 days of 792.57 kcal; 47 g of calcium carbonate, 14 x 537 / 11752.37 of it this dog's. */
    @Test
    void supplementsStayBelowTheirCap() {
        double days = 14 * clover.kcalPerDay() / 1000;
        double drops = 14 * 0.03 / days;
        assertThat(capped(VITAMIN_E, "mostGramsPer1000Kcal", 1, HOUSEHOLD)).isEmpty();
        assertThat(capped(VITAMIN_E, "mostGramsPer1000Kcal", drops, HOUSEHOLD))
                .noneMatch(told -> told.startsWith("Clover"));
        assertThat(capped(VITAMIN_E, "mostGramsPer1000Kcal", drops * 0.9999, HOUSEHOLD))
                .contains("Clover: 0.04 g of vitamin e oil per 1000 kcal, at most 0.04 g");
        double carbonate = 47 * 14 * 537 / 11752.3673 / days;
        assertThat(capped(TinyPlan.CALCIUM, "mostGramsPer1000Kcal", carbonate, HOUSEHOLD))
                .noneMatch(told -> told.startsWith("Clover"));
        assertThat(capped(TinyPlan.CALCIUM, "mostGramsPer1000Kcal", carbonate * 0.9999, HOUSEHOLD))
                .contains(String.format(
                        Locale.ROOT,
                        "Clover: %.2f g of calcium carbonate per 1000 kcal, at most %.2f g",
                        carbonate,
                        carbonate * 0.9999));
    }

    @Test
    void aDogThatGrowsOrBreedsHasCapsOfItsOwn() {
        Household puppy = household("dogs[0].ageDays", 100.0);
        Household inWhelp = household("dogs[0].reproduction", new Reproduction.Gestation(5));
        Household nursing = household("dogs[0].reproduction", new Reproduction.Lactation(2, 4));
        for (Household builds : List.of(puppy, inWhelp, nursing)) {
            assertThat(capped(VITAMIN_E, "mostGramsPer1000Kcal", 0, builds))
                    .noneMatch(told -> told.startsWith("Clover"));
            assertThat(capped(VITAMIN_E, "mostGramsPer1000KcalGrowing", 0, builds))
                    .anyMatch(told -> told.startsWith("Clover"));
        }
        assertThat(capped(VITAMIN_E, "mostGramsPer1000KcalGrowing", 0, HOUSEHOLD))
                .isEmpty();
    }

    private static Household there(Integer comes, Integer leaves) {
        return household("dogs[0].course", new Course(List.of(), null, null, comes, leaves, null));
    }

    @ParameterizedTest
    @CsvSource({
        ", , ",
        "0, , ",
        "-3, , ",
        ", 14, ",
        ", 20, ",
        "2, , 'Clover: is there on 12 days, the plan feeds it on 14, from day 1 of the batch on'",
        ", 9, 'Clover: is there on 9 days, the plan feeds it on 14, from day 1 of the batch on'",
        "2, 9, 'Clover: is there on 7 days, the plan feeds it on 14, from day 1 of the batch on'",
        "14, , 'Clover: has 1 portions in the plan, and is there on none of its days'",
        "13, , 'Clover: is there on 1 days, the plan feeds it on 14, from day 1 of the batch on'",
        ", 0, 'Clover: has 1 portions in the plan, and is there on none of its days'"
    })
    void aDogIsFedOnTheDaysOnWhichItIsThere(Integer comes, Integer leaves, String told) {
        List<String> findings = findings(there(comes, leaves));
        if (told == null) {
            assertThat(findings).isEmpty();
        } else {
            assertThat(findings).contains(told);
        }
    }

    @Test
    void everyDogHasOnePortion() {
        Plan one = plan("dogs", PLAN.dogs().subList(0, 1));
        assertThat(findings(one))
                .contains("Rusk: has 0 portions in the plan", "dogs: the plan feeds 1 dogs, the household has 2");
        List<Plan.DogPlan> twice = new ArrayList<>(PLAN.dogs());
        twice.add(PLAN.dogs().get(0));
        assertThat(findings(plan("dogs", twice))).contains("Clover: has 2 portions in the plan");
        List<Plan.DogPlan> stranger = new ArrayList<>(PLAN.dogs());
        stranger.add(Records.with(PLAN.dogs().get(0), "name", "Stranger"));
        assertThat(findings(plan("dogs", stranger))).contains("dogs: the plan feeds 3 dogs, the household has 2");
        assertThat(findings(one, there(null, null).withDogs(HOUSEHOLD.dogs().subList(0, 1))))
                .noneMatch(told -> told.startsWith("dogs"));
        Household gone = household("dogs[1].course", new Course(List.of(), null, null, 20, null, null));
        assertThat(findings(one, gone)).noneMatch(told -> told.startsWith("dogs") || told.startsWith("Rusk"));
    }
}
