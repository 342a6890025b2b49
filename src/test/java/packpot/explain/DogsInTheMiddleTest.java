package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.SharedSolver;
import packpot.dog.Course;
import packpot.dog.Dog;
import packpot.household.GuessedPrices;
import packpot.household.Household;
import packpot.household.Recipe;
import packpot.household.ScenarioChanges;
import packpot.household.ScenarioException;
import packpot.plan.Plan;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/** What is told of a plan in which Moss leaves after 5 of 14 days; the others stay. */
class DogsInTheMiddleTest {
    private static final int LEAVES_DAY = 5;
    private static final Planner.Result.Planned LEAVES = planned();

    private static Planner.Result.Planned planned() {
        Household all = Demo.planned("three-adults").household();
        List<Dog> dogs = all.dogs().stream()
                .map(dog -> dog.name().equals("Moss")
                        ? dog.withCourse(new Course(List.of(), null, null, null, LEAVES_DAY, null))
                        : dog)
                .toList();
        return (Planner.Result.Planned) new Planner(Demo.knowledge(), new SharedSolver())
                .plan(all.withDogs(dogs), new SolveLimits(60, Demo.GAP));
    }

    private static Carried cooked(int fedDays) {
        return Carried.cooked(LEAVES, LEAVES.household(), Demo.knowledge(), fedDays);
    }

    @Test
    void anUnchangedBatchLastsForAllItsDaysWhenACookLooks() {
        for (int fed : new int[] {0, 3, LEAVES_DAY, 9}) {
            assertThat(cooked(fed).coveredDays()).as("fed on " + fed + " days").isEqualTo(14 - fed);
            assertThat(cooked(fed).daysToCook()).isZero();
        }
    }

    @Test
    void nothingIsCookedForDaysOnWhichNobodyIsThere() {
        Household left = LEAVES.household()
                .withDogs(LEAVES.household().dogs().stream()
                        .filter(dog -> dog.name().equals("Moss"))
                        .toList());
        for (int fed : new int[] {2, LEAVES_DAY, 9}) {
            assertThat(Carried.cooked(LEAVES, left, Demo.knowledge(), fed).daysToCook())
                    .as("fed on " + fed + " days")
                    .isZero();
        }
    }

    /** By the next cook day Moss has left, which is no fault of the scenario. */
    @Test
    void theNextBatchIsPlannedWithoutADogThatLeftBefore() throws ScenarioException {
        ScenarioChanges changes = AskedScenario.changes(Demo.text(Demo.file("three-adults"))
                .replace("\"name\": \"Moss\",", "\"name\": \"Moss\", \"leaves\": \"2026-03-12\","));
        WhatIf.Answer.Compared answer =
                (WhatIf.Answer.Compared) new WhatIf(Demo.knowledge(), new SharedSolver(), new SolveLimits(60, Demo.GAP))
                        .ask(
                                changes,
                                List.of(AskedScenario.question("Rook: comes, 40 lb, 6 years")),
                                AskedScenario.terms(Mode.COOKED),
                                done -> {});
        WhatIf.Outcome.NewPlan plan =
                (WhatIf.Outcome.NewPlan) answer.alternatives().get(0).outcome();
        assertThat(plan.planned().plan().dogs())
                .extracting(Plan.DogPlan::name)
                .containsExactly("Bramble", "Pip", "Rook");
        assertThat(plan.planned().verdict().findings()).isEmpty();
    }

    @Test
    void aDogThatIsGoneGetsNothingOfIt() {
        assertThat(cooked(LEAVES_DAY - 1).portions())
                .extracting(Carried.Portion::dog)
                .contains("Moss");
        assertThat(cooked(LEAVES_DAY).portions())
                .extracting(Carried.Portion::dog)
                .containsExactly("Bramble", "Pip");
    }

    @Test
    void nobodyIsToldThatItLacksWhatItGets() {
        assertThat(cooked(0).warnings()).isEmpty();
    }

    @Test
    void dosesAreThoseOfADayOnWhichItIsFed() {
        PlanComparison comparison = PlanComparison.of(LEAVES, LEAVES, false, 0.2);
        Plan.DogPlan moss = LEAVES.plan().dogs().stream()
                .filter(dog -> dog.name().equals("Moss"))
                .findFirst()
                .orElseThrow();
        assertThat(moss.additions()).isNotEmpty();
        for (Plan.Addition addition : moss.additions()) {
            assertThat(comparison.additions())
                    .filteredOn(line -> line.dog().equals("Moss") && line.food().equals(addition.food()))
                    .singleElement()
                    .satisfies(line -> {
                        assertThat(line.gramsPerDayBefore()).isEqualTo(addition.gramsInBatch() / LEAVES_DAY);
                        assertThat(String.valueOf(line.doseBefore()).endsWith(" a day"))
                                .isEqualTo(addition.onDays().size() == LEAVES_DAY);
                    });
        }
    }

    @Test
    void aRecipeFeedsItsDogsOnAllItsDays() {
        Household household = LEAVES.household();
        Recipe recipe = new Recipe("test", 14, household.dogs(), List.of(), List.of(), List.of());
        assertThat(recipe.in(household).dogs())
                .allMatch(dog -> dog.course().isThere(0) && dog.course().isThere(13));
    }

    /** What is cooked for Moss's first five days alone does not feed it longer without taking from the others. */
    @Test
    void theBatchIsEatenUpSoonerWhenItStaysAfterAll() {
        Household stays = Demo.planned("three-adults").household();
        double all = LEAVES.plan().dogs().stream()
                .mapToInt(Plan.DogPlan::potGramsPerDay)
                .sum();
        double left = LEAVES.plan().dogs().stream()
                .mapToInt(dog -> dog.potGramsPerDay() * dog.daysFed())
                .sum();
        int lasts = Carried.cooked(LEAVES, stays, Demo.knowledge(), 0).coveredDays();
        assertThat(lasts).isEqualTo((int) Math.floor(left / all)).isLessThan(14);
    }

    @Test
    void aSecondCookDayFeedsThoseWhoAreThereByThen() {
        Solver solver = new SharedSolver();
        TimeBudget time = new TimeBudget(60);
        Repair repair = new Repair(Demo.knowledge(), solver, new Loosening(GuessedPrices.load(Demo.knowledge())), time);
        for (int leaves : new int[] {LEAVES_DAY, 9}) {
            Household household = LEAVES.household()
                    .withDogs(LEAVES.household().dogs().stream()
                            .map(dog -> dog.name().equals("Moss")
                                    ? dog.withCourse(new Course(List.of(), null, null, null, leaves, null))
                                    : dog)
                            .toList());
            Mend mend = new OtherWays(household, Demo.knowledge(), solver, repair, time)
                    .secondSession()
                    .orElseThrow();
            int days = mend.plans().stream()
                    .flatMap(plan -> plan.dogs().stream())
                    .filter(dog -> dog.name().equals("Moss"))
                    .mapToInt(Plan.DogPlan::daysFed)
                    .sum();
            assertThat(days).isEqualTo(leaves);
        }
    }
}
