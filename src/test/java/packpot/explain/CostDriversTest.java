package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.SharedSolver;
import packpot.explain.CostDrivers.Ending;
import packpot.explain.CostDrivers.LimitCost;
import packpot.explain.CostDrivers.Margin;
import packpot.explain.CostDrivers.Turn;
import packpot.household.Freezer;
import packpot.household.Household;
import packpot.household.Kitchen;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.plan.Plan;
import packpot.ration.Lever;
import packpot.search.Search;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import packpot.solver.Variant;

/** What drives the cost of the demo whose freezer is full, each claim tried by planning or solving again. */
class CostDriversTest {
    private static final Solver SOLVER = new SharedSolver();
    /** Nearer than the turns themselves are known. */
    private static final SolveLimits CLOSE = new SolveLimits(60, 1e-5);

    private static final Search UNSHARED = new Search();
    private static final Household HOUSEHOLD = Demo.read(Demo.text(Demo.file("tiny-freezer")));
    private static final SolveLimits LIMITS = new SolveLimits(60, 2e-4);
    private static final double SECONDS = 240;

    private static CostDrivers drivers;

    @BeforeAll
    static void search() {
        CostDrivers.Result result =
                new DriverSearch(Demo.knowledge(), SOLVER, UNSHARED).find(HOUSEHOLD, LIMITS, SECONDS);
        drivers = ((CostDrivers.Result.Driven) result).drivers();
    }

    @Test
    void theFreezerIsWhatHoldsTheCostUpMost() {
        assertThat(drivers.base().verdict().passed()).isTrue();
        assertThat(drivers.limits().get(0).wish().kind()).isEqualTo(Wish.Kind.FREEZER);
        assertThat(drivers.limits()).isSortedAccordingTo((a, b) -> Double.compare(b.saves(), a.saves()));
    }

    /** From the household, by the usual way of planning, and not through the moved row. */
    @Test
    void oneMoreBagInTheFreezerSavesWhatIsSaid() {
        LimitCost freezer = limit(Wish.Kind.FREEZER);
        CostDrivers.Replanned said = freezer.replanned();
        assertThat(said).isNotNull();
        assertThat(said.figure()).isEqualTo(freezer.figure() + 1);
        Plan larger = plan(withBags((int) said.figure()));
        double saved = drivers.base().plan().cost().ofTheBatch() - larger.cost().ofTheBatch();
        // Weighing in whole steps and the bowls, which are open here, move it by cents.
        assertThat(saved).isCloseTo(said.saves(), within(0.15));
        assertThat(said.saves()).isGreaterThan(0.3).isLessThanOrEqualTo(said.savesAtMost() + 1e-9);
    }

    @Test
    void everyPriceCalledExactHoldsWhenTheLimitIsMovedHalfWay() {
        SolvedPlan base = solved();
        List<LimitCost> exact = new ArrayList<>();
        for (LimitCost limit : new LimitCosts(base, UNSHARED, new TimeBudget(SECONDS)).atTheMargin()) {
            Margin margin = limit.atTheMargin();
            if (margin == null || !margin.exact()) {
                continue;
            }
            exact.add(limit);
            Lever lever = base.model().levers().stream()
                    .filter(each -> each.wish().equals(limit.wish()))
                    .findFirst()
                    .orElseThrow();
            double half = (limit.figure() + margin.triedAt()) / 2;
            double saved = fixed(base, lever, limit.figure()) - fixed(base, lever, half);
            double said = -margin.perUnit() * (half - limit.figure());
            assertThat(saved).as(limit.wish().sentence()).isCloseTo(said, within(0.01 * Math.abs(said) + 1e-7));
            assertThat(margin.from()).isLessThanOrEqualTo(limit.figure());
            assertThat(margin.to()).isGreaterThanOrEqualTo(limit.figure());
        }
        assertThat(exact).isNotEmpty();
    }

    /** Choices fixed, solved as whole numbers by the other backend: it knows nothing of duals. */
    private static double fixed(SolvedPlan base, Lever lever, double figure) {
        Variant<Wish> variant = base.variant();
        base.model().linearModel().variables().stream()
                .filter(v -> v.integer())
                .forEach(v -> variant.bound(
                        v, base.solution().value(v), base.solution().value(v)));
        return UNSHARED.solve(lever.moved(variant, figure).model(), new SolveLimits(20, 1e-9))
                .objective();
    }

    @Test
    void aFoodLeftOutComesInBelowItsPriceAndNotAboveIt() {
        int tried = 0;
        for (CostDrivers.EntryPrice entry : drivers.leftOut()) {
            if (entry.down().ending() == Ending.FOUND) {
                double factor = entry.down().price() / entry.food().price();
                assertThat(foods(plan(withPrice(entry.food().food(), factor * 0.95))))
                        .as("below the price of " + entry.food().label())
                        .contains(entry.food().food());
                assertThat(foods(plan(withPrice(entry.food().food(), factor * 1.05))))
                        .as("above the price of " + entry.food().label())
                        .doesNotContain(entry.food().food());
                tried++;
            }
        }
        assertThat(tried).isGreaterThanOrEqualTo(2);
    }

    /** Planned with the same bowls, as the search is: the foods stay just inside a range and pay to change beyond it. */
    @Test
    void thePotKeepsItsFoodsInsideTheRangeAndNotBeyondIt() {
        SolvedPlan base = solved();
        int tried = 0;
        for (CostDrivers.PriceRange range : drivers.prices()) {
            for (Turn turn : List.of(range.down(), range.up())) {
                boolean up = turn == range.up();
                if (turn.ending() != Ending.FOUND) {
                    continue;
                }
                double factor = turn.price() / range.food().price();
                double unsure = turn.precision() / range.food().price();
                double beyond = factor * (up ? 1.05 : 0.95) + (up ? unsure : -unsure);
                double inside = 1 + 0.95 * (factor - 1);
                PantryItem item = item(range.food().food());
                assertThat(base.foods(cheapest(base, item, inside)))
                        .as(range.food().label() + " inside " + turn)
                        .isEqualTo(base.foods(base.solution()));
                assertThat(base.foods(cheapest(base, item, beyond)))
                        .as(range.food().label() + " beyond " + turn)
                        .isNotEqualTo(base.foods(base.solution()));
                tried++;
            }
        }
        assertThat(tried).isGreaterThanOrEqualTo(4);
    }

    @Test
    void whatDoesNotFitIntoTheTimeIsMarkedAndNotLeftOut() {
        CostDrivers hurried = ((CostDrivers.Result.Driven)
                        new DriverSearch(Demo.knowledge(), UNSHARED, UNSHARED).find(HOUSEHOLD, LIMITS, 1e-3))
                .drivers();
        assertThat(hurried.base().verdict().passed()).isTrue();
        assertThat(hurried.limits()).isNotEmpty().allMatch(limit -> limit.replanned() == null);
        assertThat(hurried.prices()).hasSameSizeAs(drivers.prices());
        assertThat(hurried.leftOut())
                .hasSameSizeAs(drivers.leftOut())
                .allMatch(entry -> entry.down().ending() == Ending.OUT_OF_TIME
                        && entry.down().price() == entry.food().price());
    }

    private static SolvedPlan solved() {
        return ((SolvedPlan.Outcome.Solved) SolvedPlan.of(HOUSEHOLD, Demo.knowledge(), SOLVER, LIMITS)).plan();
    }

    private static packpot.solver.Solution cheapest(SolvedPlan base, PantryItem item, double factor) {
        return base.solve(base.model().atPrice(base.sameBowls(), item, factor).model(), CLOSE);
    }

    private static LimitCost limit(Wish.Kind kind) {
        return drivers.limits().stream()
                .filter(limit -> limit.wish().kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    private static Plan plan(Household household) {
        return ((Planner.Result.Planned) new Planner(Demo.knowledge(), SOLVER).plan(household, LIMITS)).plan();
    }

    private static Set<String> foods(Plan plan) {
        return plan.pot().stream()
                .filter(food -> !food.stirredIn())
                .map(Plan.Ingredient::food)
                .collect(Collectors.toSet());
    }

    private static PantryItem item(String food) {
        return HOUSEHOLD.pantry().stream()
                .filter(item -> item.food().id().equals(food))
                .findFirst()
                .orElseThrow();
    }

    private static Household withPrice(String food, double factor) {
        return HOUSEHOLD.withPantry(HOUSEHOLD.pantry().stream()
                .map(item -> item.food().id().equals(food)
                        ? new PantryItem(
                                item.food(),
                                item.preparation(),
                                item.packGrams(),
                                item.packAsBoughtGrams(),
                                item.packName(),
                                item.packPrice() * factor,
                                item.onHandGrams(),
                                item.mustUseGrams(),
                                item.atMostGrams(),
                                item.wholePacksOnly(),
                                item.outOfStock(),
                                item.place())
                        : item)
                .toList());
    }

    /** A freezer that takes so many bags and half of one more. */
    private static Household withBags(int bags) {
        Kitchen kitchen = HOUSEHOLD.kitchen();
        Freezer freezer = new Freezer((bags + 0.5) * kitchen.bagUsableMl(), 1, 0, 1);
        return HOUSEHOLD.withKitchen(new Kitchen(
                kitchen.days(),
                kitchen.mealsPerDay(),
                kitchen.potMl(),
                kitchen.potFillShare(),
                kitchen.mostPotLoads(),
                kitchen.binMl(),
                kitchen.bagName(),
                kitchen.bagUsableMl(),
                kitchen.mostBags(),
                freezer,
                kitchen.fridgeDays(),
                kitchen.mixDensityGramsPerMl(),
                kitchen.shopDaysBefore()));
    }
}
