package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.Demo;
import packpot.SharedSolver;
import packpot.audit.PlanAudit;
import packpot.dog.Dog;
import packpot.dog.TestDogs;
import packpot.household.Freezer;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.household.TestItems;
import packpot.plan.Plan;
import packpot.solver.SolveLimits;

/** Dogs parted over pots. */
class PotsTest {
    private static final double GAP = 0.0005;
    /** The second pot begins with the packs that the first one opened, and first pots of one cost open other packs. */
    private static final double SAME_COST_PERCENT = 0.6;

    private static final double FREEZER_SHARE = 0.7;
    private static final SolveLimits LIMITS = new SolveLimits(200, GAP);
    private static final Household HOUSEHOLD =
            Demo.planned(Demo.file("growing-puppy")).household();
    private static List<Pots.UpTo> found;

    private static List<Pots.UpTo> find(Household household) {
        return new Pots(household, Demo.knowledge(), new SharedSolver(), LIMITS).find(3);
    }

    private static Pots.Way way(List<Pots.UpTo> all, int pots) {
        Pots.Way way = all.get(pots - 1).exactly();
        assertThat(way).isNotNull();
        return Objects.requireNonNull(way);
    }

    @BeforeAll
    static void partTheDogs() {
        found = find(HOUSEHOLD);
    }

    /** Numbers of partitions of a set: Bell numbers 1, 2, 5, 15, 52; of four into at most two: 8. */
    @Test
    void everyWayToPartThemIsThereOnce() {
        int[] bell = {1, 2, 5, 15, 52};
        for (int n = 1; n <= 5; n++) {
            List<Integer> all = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                all.add(i);
            }
            assertThat(Pots.partings(all, n)).hasSize(bell[n - 1]).doesNotHaveDuplicates();
        }
        assertThat(Pots.partings(List.of(1, 2, 3, 4), 2)).hasSize(8);
    }

    @Test
    void onePotIsThePlan() {
        assertThat(way(found, 1).cost())
                .isCloseTo(
                        Demo.planned(Demo.file("growing-puppy")).plan().cost().ofTheBatch(),
                        org.assertj.core.data.Percentage.withPercentage(0.5));
    }

    @Test
    void everyPotPassesItsAudit() {
        for (Pots.UpTo upTo : found) {
            for (Planner.Result.Planned pot : way(found, upTo.pots()).pots()) {
                assertThat(PlanAudit.check(pot.plan(), pot.household(), Demo.knowledge())
                                .findings())
                        .isEmpty();
            }
        }
        assertThat(found).hasSize(2);
        assertThat(way(found, 2).pots())
                .flatExtracting(pot -> pot.plan().dogs())
                .extracting(Plan.DogPlan::name)
                .containsExactlyInAnyOrder("Thistle", "Wren");
    }

    @Test
    void onePotMoreNeverCostsMoreAndNoneIsBelowTheBound() {
        double before = Double.POSITIVE_INFINITY;
        for (Pots.UpTo upTo : found) {
            Pots.Way best = Objects.requireNonNull(upTo.best());
            assertThat(best.cost()).isLessThanOrEqualTo(before);
            assertThat(upTo.noneBelow()).isPositive().isLessThanOrEqualTo(best.cost());
            before = best.cost();
        }
    }

    /** What the second pot takes out of the house is what was there, and what the first one opened. */
    @Test
    void packsAreSharedAndNothingIsUsedTwice() {
        List<Planner.Result.Planned> pots = way(found, 2).pots();
        for (PantryItem item : pots.get(1).household().pantry()) {
            double left = HOUSEHOLD.pantry().stream()
                    .filter(each -> each.food().equals(item.food()))
                    .mapToDouble(PantryItem::onHandGrams)
                    .sum();
            for (Plan.Purchase line : pots.get(0).plan().shopping()) {
                if (line.food().equals(item.food().id())) {
                    left += line.usedGrams() - line.fromHandGrams() + line.leftOverGrams() - line.usedGrams();
                }
            }
            assertThat(item.onHandGrams())
                    .as(item.food().label())
                    .isCloseTo(left, org.assertj.core.data.Offset.offset(1e-6));
        }
        assertThat(pots.get(1).plan().shopping()).anyMatch(line -> line.fromHandGrams() > 0);
    }

    @Test
    void theOrderOfDogsChangesNothing() {
        List<Dog> dogs = new ArrayList<>(HOUSEHOLD.dogs());
        Collections.reverse(dogs);
        List<Pots.UpTo> other = find(HOUSEHOLD.withDogs(dogs));
        for (int pots = 1; pots <= 2; pots++) {
            assertThat(way(other, pots).cost())
                    .isCloseTo(
                            way(found, pots).cost(),
                            org.assertj.core.data.Percentage.withPercentage(SAME_COST_PERCENT));
        }
    }

    @Test
    void doublePricesDoubleTheCost() {
        List<Pots.UpTo> doubled = find(HOUSEHOLD.withPantry(HOUSEHOLD.pantry().stream()
                .map(item -> TestItems.priced(item, 2 * item.packPrice()))
                .toList()));
        for (int pots = 1; pots <= 2; pots++) {
            assertThat(way(doubled, pots).cost())
                    .isCloseTo(
                            2 * way(found, pots).cost(),
                            org.assertj.core.data.Percentage.withPercentage(SAME_COST_PERCENT));
        }
    }

    /** What one dog must not get, the other eats from a pot of its own; in one pot nobody gets it. */
    @Test
    void whatOneDogAvoidsTheOtherGetsFromItsOwnPot() {
        Household household = HOUSEHOLD.withPantry(HOUSEHOLD.pantry().stream()
                .map(item -> item.food().label().startsWith("chicken thigh") ? item.withMustUse(1500) : item)
                .toList());
        List<Dog> dogs = household.dogs().stream()
                .map(dog -> dog.name().equals("Wren") ? TestDogs.avoiding(dog, "chicken") : dog)
                .toList();
        List<Pots.UpTo> parted = find(household.withDogs(dogs));
        assertThat(chicken(way(parted, 1).pots().get(0))).isFalse();
        for (Planner.Result.Planned pot : way(parted, 2).pots()) {
            assertThat(chicken(pot)).isEqualTo(pot.plan().dogs().get(0).name().equals("Thistle"));
        }
    }

    /** With and without food in the house: a quick bound is below the close one, and that below every way that is planned. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 800, 5000})
    void boundsHold(double chickenGrams) {
        Household household = HOUSEHOLD.withPantry(HOUSEHOLD.pantry().stream()
                .map(item -> item.food().label().startsWith("chicken thigh") ? item.withOnHand(chickenGrams) : item)
                .toList());
        PotBounds bounds = new PotBounds(household, Demo.knowledge(), new SharedSolver());
        PotPlans plans = new PotPlans(
                household,
                Demo.knowledge(),
                new Planner(Demo.knowledge(), new SharedSolver()),
                () -> LIMITS,
                new TimeBudget(LIMITS.seconds()));
        for (List<List<Dog>> groups : Pots.partings(household.dogs(), 2)) {
            PotBounds.Bound quick = bounds.quick(groups, LIMITS);
            PotBounds.Bound close = bounds.close(groups, quick, LIMITS);
            Pots.Way way = Objects.requireNonNull(plans.plan(groups, group -> bounds.ration(group, close)));
            assertThat(quick.cost()).isPositive().isLessThanOrEqualTo(close.cost());
            assertThat(close.cost()).isLessThan(way.cost()).isGreaterThan(0.8 * way.cost());
        }
    }

    /** What one pot after the other costs is what planning each once more begins with. */
    @Test
    void potsThatKnowOfEachOtherAreNoDearer() {
        Household two = HOUSEHOLD;
        Planner planner = new Planner(Demo.knowledge(), new SharedSolver());
        List<List<Dog>> groups = two.dogs().stream().map(List::of).toList();
        Pots.Way once =
                Objects.requireNonNull(new PotPlans(two, Demo.knowledge(), planner, () -> LIMITS, new TimeBudget(0))
                        .plan(groups, group -> null));
        Pots.Way again =
                Objects.requireNonNull(new PotPlans(two, Demo.knowledge(), planner, () -> LIMITS, new TimeBudget(200))
                        .plan(groups, group -> null));
        assertThat(again.cost()).isLessThanOrEqualTo(once.cost());
        assertThat(again.pots()).hasSize(2).allMatch(pot -> pot.verdict().passed());
    }

    /** More room never costs more: what fits into the small freezer fits into the large one. */
    @Test
    void aLargerFreezerCostsNoMore() {
        double before = Double.POSITIVE_INFINITY;
        for (double ml : new double[] {45_000, 90_000}) {
            List<Pots.UpTo> all = find(HOUSEHOLD.withKitchen(
                    HOUSEHOLD.kitchen().withFreezer(new Freezer(ml, FREEZER_SHARE, 0, FREEZER_SHARE))));
            double cost = Objects.requireNonNull(all.get(1).best()).cost();
            assertThat(cost).isLessThanOrEqualTo(before * (1 + SAME_COST_PERCENT / 100));
            before = cost;
        }
    }

    private static boolean chicken(Planner.Result.Planned pot) {
        return pot.plan().pot().stream().anyMatch(food -> food.label().startsWith("chicken"));
    }
}
