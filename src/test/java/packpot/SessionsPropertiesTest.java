package packpot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.dog.Dog;
import packpot.horizon.HorizonPlan;
import packpot.horizon.Sessions;
import packpot.household.Freezer;
import packpot.household.Horizon;
import packpot.household.HorizonScenario;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.household.TestItems;
import packpot.solver.SolveLimits;

/**
 * What holds for batches that follow each other, on households drawn at random. Costs are compared by what is proved: the
 * better household's bound is never above the cost of the other.
 */
class SessionsPropertiesTest {
    private static final double GAP = 0.005;
    private static final SolveLimits LIMITS = new SolveLimits(120, GAP);
    private static final Sessions SESSIONS = new Sessions(Demo.knowledge(), new SharedSolver());
    private static final Map<Integer, Optional<HorizonPlan>> PLANS = new HashMap<>();

    /** Households that have a plan for one batch; the seeds 1 to 12 are those of the properties of one batch. */
    static Stream<Integer> seeds() {
        return IntStream.of(1, 2, 4, 6).boxed();
    }

    private static Household household(int seed) {
        return Demo.read(RandomHouseholds.scenario(seed));
    }

    private static Horizon twoBatches(Household household) {
        int days = household.kitchen().days();
        return new Horizon(
                2 * days, List.of(0, days), Set.of(), Horizon.Choice.FIXED, 0, List.of(), Horizon.Variety.NONE);
    }

    private static Optional<HorizonPlan> planned(Household household, Horizon horizon) {
        return SESSIONS.plan(new HorizonScenario(household, horizon), LIMITS, done -> {})
                        instanceof Sessions.Answer.Planned planned
                ? Optional.of(planned.plan())
                : Optional.empty();
    }

    private static HorizonPlan plan(int seed) {
        Household household = household(seed);
        return PLANS.computeIfAbsent(seed, key -> planned(household, twoBatches(household)))
                .orElseThrow();
    }

    private static HorizonPlan plan(Household household) {
        return planned(household, twoBatches(household)).orElseThrow();
    }

    private static void notDearer(HorizonPlan better, HorizonPlan old) {
        assertThat(better.audit(Demo.knowledge())).isEmpty();
        assertThat(better.cost().noPlanBelow()).isLessThanOrEqualTo(old.cost().total());
        // A chain of batches is proved less sharply than one batch, so that the cost itself has more room.
        assertThat(better.cost().total())
                .isLessThanOrEqualTo(old.cost().total()
                        * (1 + old.cost().gapShare() + better.cost().gapShare()));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void batchesPassTheirAudits(int seed) {
        HorizonPlan plan = plan(seed);
        assertThat(plan.audit(Demo.knowledge())).isEmpty();
        assertThat(plan.cost().noPlanBelow())
                .isPositive()
                .isLessThanOrEqualTo(plan.cost().total());
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void aLargerFreezerNeverCostsMore(int seed) {
        Household open = household(seed);
        // The narrow one takes a tenth less than what a kitchen without a freezer's limit makes.
        double ml = 0.9
                * plan(seed).sessions().get(0).plan().batch().millilitres()
                * open.kitchen().frozenShare();
        Household narrow = open.withKitchen(open.kitchen().withFreezer(new Freezer(ml, 1, 0, 1)));
        Household wide = open.withKitchen(open.kitchen().withFreezer(new Freezer(2 * ml, 1, 0, 1)));
        HorizonPlan inWide = plan(wide);
        planned(narrow, twoBatches(narrow)).ifPresent(inNarrow -> notDearer(inWide, inNarrow));
        notDearer(plan(seed), inWide);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void aLowerPriceNeverCostsMore(int seed) {
        Household old = household(seed);
        notDearer(
                plan(old.withPantry(old.pantry().stream()
                        .map(item -> item.food().isSupplement() ? item : TestItems.priced(item, 0.7 * item.packPrice()))
                        .toList())),
                plan(seed));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void doublePricesDoubleTheCost(int seed) {
        Household old = household(seed);
        HorizonPlan doubled = plan(old.withPantry(old.pantry().stream()
                .map(item -> TestItems.priced(item, 2 * item.packPrice()))
                .toList()));
        HorizonPlan once = plan(seed);
        assertThat(doubled.cost().noPlanBelow())
                .isLessThanOrEqualTo(2 * once.cost().total());
        assertThat(doubled.cost().total())
                .isGreaterThanOrEqualTo(2 * once.cost().noPlanBelow());
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void theOrderOfDogsAndFoodsChangesNothing(int seed) {
        Household old = household(seed);
        List<PantryItem> pantry = new ArrayList<>(old.pantry());
        List<Dog> dogs = new ArrayList<>(old.dogs());
        Collections.reverse(pantry);
        Collections.reverse(dogs);
        HorizonPlan other = plan(old.withPantry(pantry).withDogs(dogs));
        notDearer(other, plan(seed));
        notDearer(plan(seed), other);
    }

    /** Who may cook on any day finds cook days as good as those of one weekday. */
    @ParameterizedTest
    @MethodSource("seeds")
    void oneMoreDayToCookOnNeverCostsMore(int seed) {
        Household household = household(seed);
        int days = 2 * household.kitchen().days();
        DayOfWeek one = household.start().plusDays(household.kitchen().days()).getDayOfWeek();
        Optional<HorizonPlan> few = planned(household, chosen(days, EnumSet.of(one)));
        HorizonPlan more =
                planned(household, chosen(days, EnumSet.allOf(DayOfWeek.class))).orElseThrow();
        few.ifPresent(plan -> notDearer(more, plan));
    }

    private static Horizon chosen(int days, Set<DayOfWeek> on) {
        return new Horizon(days, List.of(), on, Horizon.Choice.CHEAPEST, 1.5, List.of(), Horizon.Variety.NONE);
    }
}
