package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.household.Household;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;
import packpot.needs.Needs;
import packpot.plan.Plan;
import packpot.profile.Limit;

/** What each food of a plan is worth. */
class LossesTest {
    private static Household household;
    private static Losses.Result.Ranked ranked;
    private static final AtomicInteger STARTED = new AtomicInteger();
    private static final List<Integer> DONE = Collections.synchronizedList(new ArrayList<>());

    @BeforeAll
    static void rank() throws ScenarioException {
        household = AskedScenario.household();
        ranked = (Losses.Result.Ranked) Losses.rank(
                household,
                AskedScenario.KNOWLEDGE,
                AskedScenario.SOLVER,
                AskedScenario.LIMITS,
                STARTED::set,
                DONE::add);
    }

    private static final Map<String, Planner.Result> ALONE = new HashMap<>();

    /** The plan without a food, solved by itself on this thread. */
    private static Planner.Result without(String food) {
        return ALONE.computeIfAbsent(food, LossesTest::planWithout);
    }

    private static Planner.Result planWithout(String food) {
        Household rest = household.withPantry(household.pantry().stream()
                .filter(item -> !item.food().id().equals(food))
                .toList());
        return new Planner(AskedScenario.KNOWLEDGE, AskedScenario.SOLVER).plan(rest, AskedScenario.LIMITS);
    }

    @Test
    void everyFoodOfThePlanIsRankedOnce() {
        assertThat(ranked.losses())
                .extracting(Losses.Loss::food)
                .containsExactlyInAnyOrderElementsOf(ranked.base().plan().shopping().stream()
                        .map(Plan.Purchase::food)
                        .toList());
        assertThat(STARTED.get()).isEqualTo(ranked.losses().size());
        assertThat(DONE)
                .hasSize(ranked.losses().size())
                .contains(ranked.losses().size());
    }

    @Test
    void solvedOneAfterTheOtherThePlansCostTheSameAndNeverLessThanWithTheFood() {
        Plan.Proof base = ranked.base().plan().proof();
        for (Losses.Loss loss : ranked.losses()) {
            Planner.Result alone = without(loss.food());
            if (loss.end() == Losses.End.IMPOSSIBLE) {
                assertThat(alone).as(loss.label()).isInstanceOf(Planner.Result.NoPlan.class);
                continue;
            }
            assertThat(loss.end()).as(loss.label()).isEqualTo(Losses.End.PLANNED);
            double cost = ((Planner.Result.Planned) alone).plan().proof().cost();
            assertThat(cost).as(loss.label()).isGreaterThanOrEqualTo(base.noPlanBelow() - 1e-6);
            assertThat(loss.extraCost())
                    .as(loss.label())
                    .isCloseTo(Math.max(0, cost - base.cost()), within(0.002 * cost));
        }
    }

    @Test
    void whatCannotBeLostStandsFirstAndThenTheDearestLoss() {
        List<Losses.Loss> losses = ranked.losses();
        int impossible = (int) losses.stream()
                .filter(loss -> loss.end() == Losses.End.IMPOSSIBLE)
                .count();
        assertThat(losses.subList(0, impossible)).extracting(Losses.Loss::label).contains("eggshell powder");
        List<Double> costs = new ArrayList<>();
        losses.subList(impossible, losses.size()).forEach(loss -> {
            Double extra = loss.extraCost();
            costs.add(extra == null ? 0 : extra);
        });
        assertThat(costs).isSortedAccordingTo(Collections.reverseOrder());
        assertThat(costs.get(0)).isPositive();
    }

    @Test
    void theStandInBringsMostMoreOfWhatWasLost() {
        assertThat(ranked.losses()).filteredOn(loss -> loss.standIn() != null).isNotEmpty();
        for (Losses.Loss loss : ranked.losses()) {
            StandIn standIn = loss.standIn();
            if (standIn != null) {
                assertThat(standIn.food()).isNotEqualTo(loss.food());
                assertThat(standIn.after()).isGreaterThan(standIn.before());
                assertThat(standIn.lost()).isPositive();
                Planner.Result.Planned alone = (Planner.Result.Planned) without(loss.food());
                assertThat(alone.plan().shopping())
                        .extracting(Plan.Purchase::food)
                        .contains(standIn.food());
            }
        }
        Losses.Loss meat = ranked.losses().stream()
                .filter(loss -> loss.label().startsWith("chicken thigh"))
                .findFirst()
                .orElseThrow();
        StandIn standIn = meat.standIn();
        assertThat(standIn == null ? "" : standIn.of()).isEqualTo("energy");
    }

    @Test
    void aHouseholdWithoutAPlanHasNothingToRank() throws ScenarioException {
        Losses.Result none = Losses.rank(
                AskedScenario.withoutPlan().unchanged(),
                AskedScenario.KNOWLEDGE,
                AskedScenario.SOLVER,
                AskedScenario.LIMITS,
                started -> {},
                done -> {});
        assertThat(none).isInstanceOf(Losses.Result.NoBase.class);
    }

    @Test
    void whatALossCostsLiesBetweenTheLeastAndTheMostThatTheProofsLeaveOpen() {
        Plan.Proof base = ranked.base().plan().proof();
        int planned = 0;
        for (Losses.Loss loss : ranked.losses()) {
            if (loss.end() != Losses.End.PLANNED) {
                continue;
            }
            planned++;
            Plan.Proof now =
                    ((Planner.Result.Planned) without(loss.food())).plan().proof();
            assertThat(loss.extraAtLeast()).isBetween(0.0, loss.extraCost() + 1e-9);
            assertThat(loss.extraAtMost()).isGreaterThanOrEqualTo(loss.extraCost() - 1e-9);
            // Whatever was found is within its gap, so the most is the found plan's cost over the base's bound.
            double gaps = base.cost() - base.noPlanBelow() + now.cost() * AskedScenario.LIMITS.relativeGap();
            assertThat(loss.extraAtMost())
                    .as(loss.label())
                    .isCloseTo(Math.max(0, now.cost() - base.noPlanBelow()), within(gaps + 1e-9));
            if (loss.extraCost() > 0) {
                assertThat(loss.extraAtMost() - loss.extraCost())
                        .as(loss.label())
                        .isCloseTo(base.cost() - base.noPlanBelow(), within(1e-9));
            }
        }
        assertThat(planned).isPositive();
        assertThat(base.cost() - base.noPlanBelow())
                .as("a base whose gap can be seen")
                .isGreaterThan(1e-6);
    }

    @Test
    void aStandInIsOfEnergyOrOfANutrientThatADogMustGet() {
        List<String> wanted = Needs.of(household, AskedScenario.KNOWLEDGE).dogs().stream()
                .flatMap(dog -> dog.requirements().stream())
                .map(requirement -> requirement.limit())
                .filter(limit -> limit.kind() == Limit.Kind.MINIMUM)
                .filter(limit -> !AskedScenario.KNOWLEDGE.nutrients().isRatio(limit.nutrient()))
                .map(limit -> AskedScenario.KNOWLEDGE
                        .nutrients()
                        .get(limit.nutrient())
                        .label())
                .toList();
        assertThat(ranked.losses()).anyMatch(loss -> loss.standIn() != null);
        for (Losses.Loss loss : ranked.losses()) {
            StandIn standIn = loss.standIn();
            if (standIn != null && !standIn.of().equals("energy")) {
                assertThat(wanted).as(loss.label()).contains(standIn.of());
            }
        }
    }

    /** Spinach brings most of a pot's vitamin K, of which no dog of the scenario has a minimum. */
    @Test
    void whatNoDogMustGetIsNoPurposeOfAFood() throws ScenarioException {
        Household home =
                new ScenarioReader(AskedScenario.KNOWLEDGE, LocalDate.of(2026, 3, 7)).read(Demo.file("tiny-freezer"));
        String spinach = home.pantry().stream()
                .map(item -> item.food())
                .filter(food -> food.label().startsWith("spinach"))
                .map(food -> food.id())
                .findFirst()
                .orElseThrow();
        Household without = home.withPantry(home.pantry().stream()
                .filter(item -> !item.food().id().equals(spinach))
                .toList());
        Planner planner = new Planner(AskedScenario.KNOWLEDGE, AskedScenario.SOLVER);
        StandIn standIn = StandIn.of(
                spinach,
                (Planner.Result.Planned) planner.plan(home, AskedScenario.LIMITS),
                (Planner.Result.Planned) planner.plan(without, AskedScenario.LIMITS),
                AskedScenario.KNOWLEDGE);
        assertThat(standIn).isNotNull();
        assertThat(standIn.of()).isNotEqualTo("vitamin K");
    }
}
