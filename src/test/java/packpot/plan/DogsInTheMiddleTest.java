package packpot.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.SharedSolver;
import packpot.audit.CalendarCheck;
import packpot.audit.PlanAudit;
import packpot.dog.Course;
import packpot.dog.Dog;
import packpot.explain.Planner;
import packpot.household.Household;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.solver.SolveLimits;

/** A batch feeds each dog on the days on which it is there; Moss, Bramble and Pip are there on all 14 otherwise. */
class DogsInTheMiddleTest {
    private static final Household ALL_DAYS =
            Demo.planned(Demo.file("three-adults")).household();
    private static final Planner.Result.Planned LEAVES = planned("Moss", null, 5);
    private static final Planner.Result.Planned COMES = planned("Moss", 4, null);

    private static Planner.Result.Planned planned(String name, Integer comes, Integer leaves) {
        List<Dog> dogs = ALL_DAYS.dogs().stream()
                .map(dog -> dog.name().equals(name)
                        ? dog.withCourse(new Course(List.of(), null, null, comes, leaves, null))
                        : dog)
                .toList();
        return (Planner.Result.Planned) new Planner(Demo.knowledge(), new SharedSolver())
                .plan(ALL_DAYS.withDogs(dogs), new SolveLimits(60, Demo.GAP));
    }

    private static Plan.DogPlan moss(Planner.Result.Planned planned) {
        return planned.plan().dogs().stream()
                .filter(dog -> dog.name().equals("Moss"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void itIsFedOnItsDaysAlone() {
        assertThat(moss(LEAVES).firstDay()).isEqualTo(1);
        assertThat(moss(LEAVES).daysFed()).isEqualTo(5);
        assertThat(moss(COMES).firstDay()).isEqualTo(5);
        assertThat(moss(COMES).daysFed()).isEqualTo(10);
        assertThat(moss(LEAVES).additions())
                .flatExtracting(Plan.Addition::onDays)
                .allMatch(day -> day >= 1 && day <= 5);
        assertThat(moss(COMES).additions())
                .flatExtracting(Plan.Addition::onDays)
                .allMatch(day -> day >= 5 && day <= 14);
    }

    @Test
    void theAuditAndTheCalendarPass() {
        for (Planner.Result.Planned planned : List.of(LEAVES, COMES)) {
            assertThat(planned.verdict().findings()).isEmpty();
            FeedingCalendar calendar = CalendarBuilder.of(planned.plan(), planned.household(), Demo.knowledge());
            assertThat(CalendarCheck.check(planned.plan(), planned.household(), Demo.knowledge(), calendar))
                    .isEmpty();
            // Only what rounding to whole grams leaves.
            assertThat(calendar.leftGrams()).isBetween(0.0, 14.0 * 3);
        }
    }

    /** Cooked for by energy: a dog that is there on 5 of 14 days takes 9/14 of its share out of the pot. */
    @Test
    void noMoreIsCookedThanIsEaten() {
        double moss = moss(LEAVES).batchKcalPerDay();
        double all = ALL_DAYS.dogs().size() == 3
                ? LEAVES.plan().dogs().stream()
                        .mapToDouble(Plan.DogPlan::batchKcalPerDay)
                        .sum()
                : 0;
        double full = Demo.planned(Demo.file("three-adults")).plan().batch().cookedGrams();
        assertThat(LEAVES.plan().batch().cookedGrams() / full).isCloseTo(1 - moss / all * 9 / 14, within(0.03));
        assertThat(LEAVES.plan().cost().ofTheBatch())
                .isLessThan(
                        Demo.planned(Demo.file("three-adults")).plan().cost().ofTheBatch());
    }

    @Test
    void theAuditFindsADogThatIsFedOnOtherDays() {
        assertThat(PlanAudit.check(LEAVES.plan(), COMES.household(), Demo.knowledge())
                        .findings())
                .anySatisfy(finding -> assertThat(finding.message()).contains("is there on 10 days"));
    }

    @Test
    void itsShareIsByEnergyAndDays() {
        Needs needs = Needs.of(LEAVES.household(), Demo.knowledge());
        DogNeed moss = needs.dogs().stream()
                .filter(need -> need.dog().name().equals("Moss"))
                .findFirst()
                .orElseThrow();
        double all = needs.dogs().stream()
                .mapToDouble(need -> need.kcalPerDay() * need.days())
                .sum();
        assertThat(moss.days()).isEqualTo(5);
        assertThat(needs.share(moss)).isCloseTo(moss.kcalPerDay() * 5 / all, within(1e-12));
        assertThat(needs.kcalPerBatch()).isCloseTo(all, within(1e-6));
        assertThat(needs.dogs().stream().mapToDouble(needs::share).sum()).isCloseTo(1, within(1e-12));
    }

    @Test
    void gramsThatGoInAreGramsThatComeOut() {
        for (Plan plan : List.of(LEAVES.plan(), COMES.plan())) {
            double fed = plan.dogs().stream()
                    .mapToDouble(dog -> (double) dog.potGramsPerDay() * dog.daysFed())
                    .sum();
            assertThat(fed).isLessThanOrEqualTo(plan.batch().cookedGrams() + 0.01);
            assertThat(fed + plan.batch().spareGrams()).isCloseTo(plan.batch().cookedGrams(), within(0.01));
            double paid = 0;
            for (Plan.DogPlan dog : plan.dogs()) {
                paid += dog.daysFed()
                        * plan.cost().perDogPerDay().stream()
                                .filter(cost -> cost.dog().equals(dog.name()))
                                .mapToDouble(Plan.DogCost::perDay)
                                .sum();
            }
            assertThat(paid).isCloseTo(plan.cost().ofTheBatch(), within(1e-6));
        }
    }

    /** A model that differs in its last digit may be answered with another plan. */
    @Test
    void withoutSuchDogsTheSharesAreThoseOfADayToTheLastDigit() {
        Needs needs = Needs.of(ALL_DAYS, Demo.knowledge());
        double day = needs.kcalPerDay();
        assertThat(needs.kcalPerBatch()).isEqualTo(day * ALL_DAYS.kitchen().days());
        assertThat(needs.dogs()).allMatch(dog -> needs.share(dog) == dog.kcalPerDay() / day);
    }

    @Test
    void aDogThatIsThereOnNoDayOfTheBatchIsNotPlannedFor() {
        Planner.Result.Planned planned = planned("Moss", 14, null);
        assertThat(Needs.of(planned.household(), Demo.knowledge()).dogs())
                .extracting(need -> need.dog().name())
                .containsExactly("Bramble", "Pip");
        assertThat(planned.verdict().findings()).isEmpty();
        assertThat(PlanAudit.check(LEAVES.plan(), planned.household(), Demo.knowledge())
                        .findings())
                .anySatisfy(finding -> assertThat(finding.message()).contains("none of its days"));
    }

    @Test
    void theAuditFindsADogThatIsFedADayTooLongThoughThePlanSaysSo() {
        Planner.Result.Planned longer = planned("Moss", null, 6);
        assertThat(longer.verdict().findings()).isEmpty();
        assertThat(PlanAudit.check(longer.plan(), LEAVES.household(), Demo.knowledge())
                        .findings())
                .anySatisfy(finding -> assertThat(finding.message()).contains("is there on 5 days"));
    }
}
