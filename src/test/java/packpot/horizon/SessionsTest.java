package packpot.horizon;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.SharedSolver;
import packpot.audit.Finding;
import packpot.audit.SessionsAudit;
import packpot.dog.Course;
import packpot.dog.Dog;
import packpot.explain.Planner;
import packpot.food.Keeps;
import packpot.household.Horizon;
import packpot.household.HorizonScenario;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;
import packpot.plan.FeedingCalendar;
import packpot.plan.Plan;
import packpot.solver.SolveLimits;

/** Batches that follow each other: a growing puppy and an adult over four weeks, cooked for at most ten days. */
class SessionsTest {
    private static final SolveLimits LIMITS = new SolveLimits(300, 0.002);
    private static final Sessions SESSIONS = new Sessions(Demo.knowledge(), new SharedSolver());
    private static HorizonScenario scenario;
    private static HorizonPlan plan;

    private static HorizonScenario read(String demo, int weeks) throws ScenarioException {
        return new ScenarioReader(Demo.knowledge(), LocalDate.of(2026, 3, 7))
                .readWithHorizon(Path.of(Demo.file(demo).toString()), weeks);
    }

    private static HorizonPlan planned(HorizonScenario scenario) {
        return ((Sessions.Answer.Planned) SESSIONS.plan(scenario, LIMITS, done -> {})).plan();
    }

    private static HorizonScenario with(HorizonScenario scenario, Household household) {
        return new HorizonScenario(household, scenario.horizon());
    }

    @BeforeAll
    static void plan() throws ScenarioException {
        scenario = read("growing-puppy", 4);
        plan = planned(scenario);
    }

    @Test
    void everyBatchPassesItsAuditAndSoDoAllTogether() {
        assertThat(plan.sessions())
                .extracting(HorizonPlan.Session::interval)
                .containsExactly(new Interval(0, 9), new Interval(9, 9), new Interval(18, 10));
        assertThat(plan.sessions()).allMatch(session -> session.verdict().passed());
        assertThat(plan.audit(Demo.knowledge())).isEmpty();
        assertThat(HorizonCalendar.of(plan, Demo.knowledge()).findings()).isEmpty();
    }

    @Test
    void aPuppyThatGrowsGetsMoreFromBatchToBatch() {
        List<Double> kcal = plan.sessions().stream()
                .map(session -> session.plan().dogs().get(0).batchKcalPerDay())
                .toList();
        assertThat(kcal).isSorted().doesNotHaveDuplicates();
        assertThat(plan.sessions().get(0).plan().dogs().get(0).energyEquation().toString())
                .contains("on average");
        assertThat(plan.sessions().get(0).plan().dogs().get(1).energyEquation().toString())
                .doesNotContain("on average");
    }

    @Test
    void theBoundHolds() {
        assertThat(plan.cost().noPlanBelow())
                .isPositive()
                .isLessThanOrEqualTo(plan.cost().total());
        // Packs that are left at the end of so short a time are most of what is open.
        assertThat(plan.cost().noPlanBelow()).isGreaterThan(0.9 * plan.cost().total());
    }

    /** Nothing that spoils is taken from the house after the first batch, and nothing is used twice. */
    @Test
    void onlyWhatKeepsPassesToTheNextBatch() {
        for (HorizonPlan.Session session : plan.sessions().subList(1, 3)) {
            for (PantryItem item : session.household().pantry()) {
                if (item.food().kitchen().keeps() == Keeps.PERISHABLE
                        && !item.food().isSupplement()) {
                    assertThat(item.onHandGrams()).as(item.food().label()).isZero();
                }
            }
        }
        assertThat(plan.sessions().get(1).household().pantry()).anyMatch(item -> item.onHandGrams() > 0);
    }

    @Test
    void oneBatchIsThePlanOfOneCookDay() {
        Household household =
                scenario.household().withKitchen(scenario.household().kitchen().withDays(7));
        Horizon week = new Horizon(
                7, List.of(0), scenario.horizon().cookOn(), Horizon.Choice.FIXED, 0, List.of(), Horizon.Variety.NONE);
        HorizonPlan one = planned(new HorizonScenario(household, week));
        Household then = Then.of(household, Demo.knowledge(), new Interval(0, 7));
        Plan single =
                ((Planner.Result.Planned) new Planner(Demo.knowledge(), new SharedSolver()).plan(then, LIMITS)).plan();
        assertThat(one.cost().total())
                .isCloseTo(single.cost().ofTheBatch(), org.assertj.core.data.Percentage.withPercentage(0.5));
    }

    @Test
    void cheaperFoodCostsNoMore() {
        Household cheaper = scenario.household()
                .withPantry(scenario.household().pantry().stream()
                        .map(item -> item.food().label().startsWith("chicken thigh") ? item.partOf(0.8) : item)
                        .toList());
        // Packs of four fifths at four fifths of the price leave less over at the same price by weight.
        HorizonPlan other = planned(with(scenario, cheaper));
        assertThat(other.cost().noPlanBelow()).isLessThanOrEqualTo(plan.cost().total());
    }

    @Test
    void theOrderOfDogsAndFoodsChangesNothing() {
        Household household = scenario.household();
        List<PantryItem> pantry = new ArrayList<>(household.pantry());
        Collections.reverse(pantry);
        List<Dog> dogs = new ArrayList<>(household.dogs());
        Collections.reverse(dogs);
        HorizonPlan other = planned(with(scenario, household.withPantry(pantry).withDogs(dogs)));
        // Each is within its gap of the same optimum.
        assertThat(other.cost().total()).isGreaterThanOrEqualTo(plan.cost().noPlanBelow());
        assertThat(plan.cost().total()).isGreaterThanOrEqualTo(other.cost().noPlanBelow());
    }

    /** What is in the house saves money, which the bound must grant; and it is used but once. */
    @Test
    void theBoundHoldsWithFoodInTheHouse() {
        Household stocked = scenario.household()
                .withPantry(scenario.household().pantry().stream()
                        .map(item -> item.food().label().contains("rice")
                                        || item.food().label().contains("oats")
                                ? item.withOnHand(5000)
                                : item)
                        .toList());
        HorizonPlan cheaper = planned(with(scenario, stocked));
        assertThat(cheaper.audit(Demo.knowledge())).isEmpty();
        assertThat(cheaper.cost().total()).isLessThan(0.97 * plan.cost().total());
        assertThat(cheaper.cost().noPlanBelow())
                .isLessThanOrEqualTo(cheaper.cost().total());
        // What was not paid for is worth nothing at the end.
        assertThat(cheaper.cost().atTheTill()).isLessThan(plan.cost().atTheTill());
    }

    @Test
    void batchesDifferAsWished() {
        Horizon horizon = scenario.horizon();
        Horizon.Variety wish = new Horizon.Variety(true, 3, 0.04, 0.5);
        HorizonPlan varied = planned(new HorizonScenario(
                scenario.household(),
                new Horizon(
                        horizon.days(), horizon.cookDays(), horizon.cookOn(), horizon.choice(), 0, List.of(), wish)));
        assertThat(varied.audit(Demo.knowledge())).isEmpty();
        assertThat(Varied.unmet(wish, varied.sessions(), "")).isEmpty();
        assertThat(Varied.unmet(wish, plan.sessions(), "")).isNotEmpty();
        assertThat(varied.cost().total()).isLessThanOrEqualTo(1.5 * plan.cost().total());
    }

    @Test
    void whatIsFrozenIsThawedBeforeTheFirstCookDay() {
        Horizon.FrozenMeals meals = new Horizon.FrozenMeals("beef and barley", -10, 4, 2);
        Horizon horizon = new Horizon(
                14,
                List.of(4),
                scenario.horizon().cookOn(),
                Horizon.Choice.FIXED,
                0,
                List.of(meals),
                Horizon.Variety.NONE);
        HorizonPlan later = planned(new HorizonScenario(scenario.household(), horizon));
        assertThat(later.audit(Demo.knowledge())).isEmpty();
        assertThat(later.sessions()).extracting(HorizonPlan.Session::interval).containsExactly(new Interval(4, 10));
        LocalDate start = scenario.household().start();
        List<FeedingCalendar.Event> thaw = HorizonCalendar.of(later, Demo.knowledge()).calendar().events().stream()
                .filter(event -> event.title().toString().contains("beef and barley"))
                .toList();
        assertThat(thaw).extracting(FeedingCalendar.Event::date).containsExactly(start.minusDays(1), start.plusDays(1));
        assertThat(HorizonCalendar.of(later, Demo.knowledge()).calendar().notes())
                .anyMatch(note -> note.toString().contains("not in the table"));
        assertThat(thaw.get(0).title().toString()).contains("made on " + start.minusDays(10), "fed from " + start);
    }

    /** A dog that comes in the middle of a batch is fed from that day on, and one that leaves until then. */
    @Test
    void dogsComeAndLeaveInTheMiddle() {
        List<Dog> dogs = scenario.household().dogs().stream()
                .map(dog -> dog.name().equals("Wren")
                        ? dog.withCourse(new Course(List.of(), null, null, null, 13, null))
                        : dog)
                .toList();
        HorizonPlan left = planned(with(scenario, scenario.household().withDogs(dogs)));
        assertThat(left.audit(Demo.knowledge())).isEmpty();
        assertThat(HorizonCalendar.of(left, Demo.knowledge()).findings()).isEmpty();
        assertThat(left.sessions())
                .extracting(session -> session.plan().dogs().stream()
                        .filter(dog -> dog.name().equals("Wren"))
                        .mapToInt(Plan.DogPlan::daysFed)
                        .sum())
                .containsExactly(9, 4, 0);
        assertThat(left.cost().total()).isLessThan(plan.cost().total());
    }

    private static List<Finding> findings(List<HorizonPlan.Session> sessions, SessionsAudit.Stated stated) {
        return SessionsAudit.check(
                scenario.household(),
                Demo.knowledge(),
                sessions.stream()
                        .map(session -> new SessionsAudit.Batch(session.household(), session.plan()))
                        .toList(),
                stated);
    }

    private static SessionsAudit.Stated stated(double till, double worth, int days) {
        return new SessionsAudit.Stated(0, days, till, worth);
    }

    @Test
    void theAuditFindsAPlantedError() {
        double till = plan.cost().atTheTill();
        double worth = plan.cost().leftWorth();
        List<HorizonPlan.Session> sessions = plan.sessions();
        assertThat(findings(sessions, stated(till, worth, 28))).isEmpty();
        assertThat(findings(sessions, stated(till + 0.05, worth, 28)))
                .extracting(Finding::where)
                .containsExactly("at the till");
        assertThat(findings(sessions, stated(till, worth - 0.05, 28)))
                .extracting(Finding::where)
                .containsExactly("left over");
        assertThat(findings(sessions, stated(till, worth, 30)))
                .extracting(Finding::where)
                .containsExactly("days");
        List<HorizonPlan.Session> swapped = List.of(sessions.get(1), sessions.get(0), sessions.get(2));
        assertThat(findings(swapped, stated(till, worth, 28))).isNotEmpty();
        HorizonPlan.Session second = sessions.get(1);
        Household richer = second.household()
                .withPantry(second.household().pantry().stream()
                        .map(item -> item.withOnHand(item.onHandGrams() + 10))
                        .toList());
        List<HorizonPlan.Session> invented = List.of(
                sessions.get(0),
                new HorizonPlan.Session(second.interval(), richer, second.plan(), second.verdict()),
                sessions.get(2));
        assertThat(findings(invented, stated(till, worth, 28)))
                .anySatisfy(finding -> assertThat(finding.message()).contains("in the house, there are"));
    }
}
