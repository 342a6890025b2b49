package packpot.horizon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Demo;
import packpot.GeneratedScenarios;
import packpot.dog.Dog;
import packpot.explain.Planner;
import packpot.household.Freezer;
import packpot.household.Horizon;
import packpot.household.HorizonScenario;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;
import packpot.household.TestItems;
import packpot.search.Search;
import packpot.solver.SolveLimits;

/**
 * What must hold for several cook days of any household, on small ones drawn at random. Costs are held against proved bounds:
 * what is a relaxation can have no bound above the cost of what it relaxes.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SessionsPropertyTest {
    private static final int HOUSEHOLDS = 3;
    private static final int SEEDS = 80;
    private static final int MOST_DOGS = 3;
    private static final int DAYS = 18;
    /** Packs make a small household's batches dear or cheap by chance. */
    private static final double ALIKE_PERCENT = 8;

    private static final SolveLimits LIMITS = new SolveLimits(300, 0.002);
    private static final Horizon TWO_BATCHES = fixed(DAYS, 0, DAYS / 2);

    private final List<Case> cases = new ArrayList<>();

    /** A household with its plan. */
    private record Case(String name, Household household, HorizonPlan plan) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static Horizon fixed(int days, Integer... cookDays) {
        return new Horizon(
                days,
                List.of(cookDays),
                Set.of(DayOfWeek.values()),
                Horizon.Choice.FIXED,
                0,
                List.of(),
                Horizon.Variety.NONE);
    }

    @BeforeAll
    void draw() {
        IntStream.rangeClosed(1, SEEDS)
                .mapToObj(SessionsPropertyTest::household)
                .flatMap(Optional::stream)
                .filter(household -> household.dogs().size() <= MOST_DOGS)
                .flatMap(household ->
                        planned(household, TWO_BATCHES)
                                .map(plan -> new Case(household.name(), household, plan))
                                .stream())
                .limit(HOUSEHOLDS)
                .forEach(cases::add);
        assertThat(cases).hasSize(HOUSEHOLDS);
    }

    private static Optional<Household> household(int seed) {
        try {
            Household read =
                    new ScenarioReader(Demo.knowledge(), LocalDate.of(2026, 3, 7)).read(GeneratedScenarios.file(seed));
            return Optional.of(read.withKitchen(read.kitchen().withDays(DAYS / 2)));
        } catch (ScenarioException e) {
            return Optional.empty();
        }
    }

    private static Optional<HorizonPlan> planned(Household household, Horizon horizon) {
        return new Sessions(Demo.knowledge(), new Search())
                                .plan(new HorizonScenario(household, horizon), LIMITS, done -> {})
                        instanceof Sessions.Answer.Planned planned
                ? Optional.of(planned.plan())
                : Optional.empty();
    }

    private static HorizonPlan plan(Household household, Horizon horizon) {
        return planned(household, horizon).orElseThrow();
    }

    List<Case> cases() {
        return cases;
    }

    private static void assertNoDearer(HorizonPlan looser, HorizonPlan tighter) {
        assertThat(looser.cost().noPlanBelow())
                .isLessThanOrEqualTo(tighter.cost().total());
        assertThat(looser.cost().total()).isLessThan(tighter.cost().total() * (1 + ALIKE_PERCENT / 100));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void oneBatchCostsWhatThePlanOfOneCookDayDoes(Case each) {
        HorizonPlan one = plan(each.household(), fixed(DAYS / 2, 0));
        Household then = Then.of(each.household(), Demo.knowledge(), new Interval(0, DAYS / 2));
        Planner.Result.Planned single =
                (Planner.Result.Planned) new Planner(Demo.knowledge(), new Search()).plan(then, LIMITS);
        double gap = single.plan().proof().gapShare() + LIMITS.relativeGap();
        assertThat(one.cost().total()).isCloseTo(single.plan().cost().ofTheBatch(), withPercentage(100 * gap + 0.1));
        assertThat(one.cost().noPlanBelow())
                .isLessThanOrEqualTo(single.plan().cost().ofTheBatch());
    }

    @ParameterizedTest
    @MethodSource("cases")
    void threefoldPricesCostThreefold(Case each) {
        HorizonPlan dear = plan(
                each.household()
                        .withPantry(each.household().pantry().stream()
                                .map(item -> TestItems.priced(item, 3 * item.packPrice()))
                                .toList()),
                TWO_BATCHES);
        assertThat(dear.cost().noPlanBelow())
                .isLessThanOrEqualTo(3 * each.plan().cost().total());
        assertThat(3 * each.plan().cost().noPlanBelow())
                .isLessThanOrEqualTo(dear.cost().total());
        assertThat(dear.cost().total()).isCloseTo(3 * each.plan().cost().total(), withPercentage(ALIKE_PERCENT));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void aCheaperFoodCostsNoMore(Case each) {
        String used = each.plan().sessions().get(0).plan().pot().get(0).food();
        assertNoDearer(
                plan(
                        each.household()
                                .withPantry(each.household().pantry().stream()
                                        .map(item -> item.food().id().equals(used)
                                                ? TestItems.priced(item, item.packPrice() / 2)
                                                : item)
                                        .toList()),
                        TWO_BATCHES),
                each.plan());
    }

    /** A freezer that the plan just fills is as good as none; a larger one is no worse. */
    @ParameterizedTest
    @MethodSource("cases")
    void aLargerFreezerCostsNoMore(Case each) {
        HorizonPlan huge = plan(withFreezer(each.household(), 1e6), TWO_BATCHES);
        double most = huge.sessions().stream()
                .map(session -> session.plan().batch().freezerMl())
                .mapToDouble(Objects::requireNonNull)
                .max()
                .orElseThrow();
        Optional<HorizonPlan> small = planned(withFreezer(each.household(), 0.8 * most), TWO_BATCHES);
        HorizonPlan filled = plan(withFreezer(each.household(), 1.05 * most), TWO_BATCHES);
        small.ifPresent(tight -> assertNoDearer(filled, tight));
        assertNoDearer(huge, filled);
    }

    private static Household withFreezer(Household household, double ml) {
        return household.withKitchen(household.kitchen().withFreezer(new Freezer(ml, 1, 0, 1)));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void theOrderOfDogsAndFoodsChangesNothing(Case each) {
        List<PantryItem> pantry = new ArrayList<>(each.household().pantry());
        Collections.reverse(pantry);
        List<Dog> dogs = new ArrayList<>(each.household().dogs());
        Collections.reverse(dogs);
        HorizonPlan other = plan(each.household().withPantry(pantry).withDogs(dogs), TWO_BATCHES);
        assertThat(other.cost().noPlanBelow())
                .isLessThanOrEqualTo(each.plan().cost().total());
        assertThat(each.plan().cost().noPlanBelow())
                .isLessThanOrEqualTo(other.cost().total());
        assertThat(other.cost().total()).isCloseTo(each.plan().cost().total(), withPercentage(ALIKE_PERCENT));
    }

    /** Where one may cook on more days of the week, or more often, no choice is lost; the two batches are one of them. */
    @ParameterizedTest
    @MethodSource("cases")
    void moreDaysToCookOnCostNoMore(Case each) {
        HorizonPlan twoDays = plan(each.household(), chosen(EnumSet.of(DayOfWeek.SATURDAY, DayOfWeek.MONDAY)));
        HorizonPlan anyDay = plan(each.household(), chosen(EnumSet.allOf(DayOfWeek.class)));
        assertNoDearer(twoDays, each.plan());
        assertNoDearer(anyDay, twoDays);
        assertThat(anyDay.audit(Demo.knowledge())).isEmpty();
    }

    private static Horizon chosen(Set<DayOfWeek> on) {
        return new Horizon(DAYS, List.of(), on, Horizon.Choice.CHEAPEST, 0, List.of(), Horizon.Variety.NONE);
    }
}
