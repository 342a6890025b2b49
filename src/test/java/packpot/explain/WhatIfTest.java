package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static packpot.explain.AskedScenario.compared;
import static packpot.explain.AskedScenario.question;
import static packpot.explain.AskedScenario.terms;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.household.ScenarioException;
import packpot.household.Wish;
import packpot.plan.Plan;
import packpot.solver.LinearModel;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/** What becomes of a plan when things change. */
class WhatIfTest {

    private static WhatIf.Outcome.NewPlan newPlan(WhatIf.Alternative alternative) {
        return (WhatIf.Outcome.NewPlan) alternative.outcome();
    }

    private static Map<String, Double> shares(Plan plan) {
        return plan.pot().stream().collect(Collectors.toMap(Plan.Ingredient::food, Plan.Ingredient::shareOfCookedMass));
    }

    @Test
    void aFoodOutOfStockIsPutBackAndTheNewPlanPassesTheAudit() throws ScenarioException {
        WhatIf.Answer.Compared answer = compared(terms(Mode.BEFORE), question("chicken thigh: out of stock"));
        WhatIf.Outcome.NewPlan plan = newPlan(answer.alternatives().get(0));
        assertThat(plan.planned().verdict().findings()).isEmpty();
        assertThat(answer.base().verdict().findings()).isEmpty();
        PlanComparison comparison = plan.comparison();
        assertThat(comparison.after().perDay())
                .isGreaterThan(comparison.before().perDay());
        assertThat(comparison.pot())
                .filteredOn(line -> line.label().startsWith("chicken thigh"))
                .singleElement()
                .satisfies(line -> {
                    assertThat(line.gramsBefore()).isPositive();
                    assertThat(line.gramsAfter()).isNull();
                    assertThat(line.shareAfter()).isZero();
                });
        assertThat(comparison.shopping())
                .filteredOn(line -> line.label().startsWith("chicken thigh"))
                .singleElement()
                .satisfies(line -> assertThat(line.packs()).isNegative());
    }

    @Test
    void theComparisonAddsUp() throws ScenarioException {
        WhatIf.Answer.Compared answer =
                compared(terms(Mode.BEFORE), question("chicken thigh: out of stock", "Pip: leaves"));
        PlanComparison comparison = newPlan(answer.alternatives().get(0)).comparison();
        Plan old = answer.base().plan();
        Plan now = newPlan(answer.alternatives().get(0)).planned().plan();
        double paid = comparison.shopping().stream()
                .mapToDouble(PlanComparison.ShoppingLine::pays)
                .sum();
        assertThat(paid).isCloseTo(now.cost().atTheTill() - old.cost().atTheTill(), within(1e-6));
        Map<String, Double> before = shares(old);
        Map<String, Double> after = shares(now);
        double common = before.keySet().stream()
                .mapToDouble(food -> Math.min(before.getOrDefault(food, 0.0), after.getOrDefault(food, 0.0)))
                .sum();
        assertThat(comparison.distance()).as("what is not common").isCloseTo(1 - common, within(1e-9));
        assertThat(comparison.portions())
                .filteredOn(line -> line.dog().equals("Pip"))
                .singleElement()
                .satisfies(line -> {
                    assertThat(line.gramsPerDayBefore()).isPositive();
                    assertThat(line.gramsPerDayAfter()).isNull();
                });
        assertThat(comparison.nutrients()).allSatisfy(move -> {
            assertThat(move.dog()).isEqualTo("Moss");
            Double by = move.byShare();
            assertThat(by == null || Math.abs(by) > 0.2).isTrue();
        });
    }

    @Test
    void whatChangesNothingComparesAsTheSame() throws ScenarioException {
        PlanComparison comparison = newPlan(compared(terms(Mode.BEFORE), question("bags: 400"))
                        .alternatives()
                        .get(0))
                .comparison();
        assertThat(comparison.distance()).isLessThan(1e-9);
        assertThat(comparison.shopping()).isEmpty();
        assertThat(comparison.nutrients()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "egg: price +40 %",
                "carrots: pack 5 lb",
                "Moss: weight 25 lb",
                "Moss: activity high",
                "Moss: goal weight 18 lb",
                "Rook: comes, 30 lb, 3 years",
                "days: 7",
                "margin: 8 %",
                "profile: fediaf",
                "budget: $120"
            })
    void everyKindOfChangeLeadsToAnAuditedPlanOrToReasons(String change) throws ScenarioException {
        WhatIf.Alternative alternative =
                compared(terms(Mode.BEFORE), question(change)).alternatives().get(0);
        if (alternative.outcome() instanceof WhatIf.Outcome.NoPlan none) {
            assertThat(none.provedImpossible()).isTrue();
            assertThat(none.clash()).isNotNull();
        } else {
            assertThat(newPlan(alternative).planned().verdict().findings()).isEmpty();
        }
    }

    @Test
    void alternativesStandSideBySideInTheOrderOfTheQuestion() throws ScenarioException {
        WhatIf.Answer.Compared answer =
                compared(terms(Mode.BEFORE), question("days: 5"), question("days: 8"), question("days: 12"));
        assertThat(answer.alternatives())
                .extracting(alternative -> newPlan(alternative).planned().plan().days())
                .containsExactly(5, 8, 12);
    }

    @Test
    void aNearPlanWithMoneyToSpareSpendsNoneOfItForNothing() throws ScenarioException {
        WhatIf.Terms near = new WhatIf.Terms(Mode.BEFORE, 0, new WhatIf.Extra(5, 0), 0.2);
        WhatIf.Answer.Compared answer = compared(near, question("days: 9"));
        WhatIf.Outcome.NewPlan plan = newPlan(answer.alternatives().get(0));
        assertThat(plan.comparison().distance()).isLessThan(0.03);
        double perDay = answer.base().plan().cost().perDay();
        assertThat(plan.comparison().after().perDay()).isLessThan(1.1 * perDay);
    }

    @Test
    void aNearPlanIsNearerAndKeepsToItsCost() throws ScenarioException {
        String change = "chicken thigh: price +80 %";
        WhatIf.Outcome.NewPlan cheapest = newPlan(
                compared(terms(Mode.BEFORE), question(change)).alternatives().get(0));
        WhatIf.Terms near = new WhatIf.Terms(Mode.BEFORE, 0, new WhatIf.Extra(0.1, 0), 0.2);
        WhatIf.Outcome.NewPlan nearer =
                newPlan(compared(near, question(change)).alternatives().get(0));
        WhatIf.Nearness nearness = nearer.nearness();
        if (nearness == null) {
            throw new AssertionError("nothing is said of the nearness");
        }
        assertThat(nearness.found()).isTrue();
        assertThat(nearer.planned().verdict().findings()).isEmpty();
        assertThat(cheapest.comparison().distance())
                .as("there is something to gain")
                .isGreaterThan(0.05);
        assertThat(nearer.comparison().distance())
                .isLessThan(cheapest.comparison().distance() - 0.01);
        Plan.Proof proof = nearer.planned().plan().proof();
        assertThat(proof.cost()).isLessThanOrEqualTo(nearness.mostCost() + 1e-3);
        assertThat(nearness.mostCost()).isCloseTo(1.1 * nearness.cheapest(), within(1e-9));
        assertThat(proof.noPlanBelow()).isLessThanOrEqualTo(nearness.cheapest() + 1e-6);
    }

    @Test
    void aScenarioWithoutAPlanIsNotCompared() throws ScenarioException {
        WhatIf.Answer answer = new WhatIf(AskedScenario.KNOWLEDGE, AskedScenario.SOLVER, AskedScenario.LIMITS)
                .ask(AskedScenario.withoutPlan(), List.of(question("days: 7")), terms(Mode.BEFORE), done -> {});
        assertThat(answer).isInstanceOf(WhatIf.Answer.NoBase.class);
        WhatIf.Answer.NoBase none = (WhatIf.Answer.NoBase) answer;
        assertThat(none.base().provedImpossible()).isTrue();
    }

    @Test
    void aChangeThatLeavesNoPlanSaysWhatStandsInTheWay() throws ScenarioException {
        WhatIf.Alternative alternative = compared(terms(Mode.BEFORE), question("budget: $1"))
                .alternatives()
                .get(0);
        WhatIf.Outcome.NoPlan none = (WhatIf.Outcome.NoPlan) alternative.outcome();
        assertThat(none.provedImpossible()).isTrue();
        Clash clash = none.clash();
        if (clash == null) {
            throw new AssertionError("no clash is told");
        }
        assertThat(clash.parts()).anySatisfy(part -> {
            assertThat(part.wish().kind()).isEqualTo(Wish.Kind.BUDGET);
            assertThat(part.asked()).isEqualTo(1);
            assertThat(part.reached()).isGreaterThan(1);
        });
    }

    @Test
    void faultsOfAChangeAreToldBeforeAnythingIsSolved() {
        Solver never = new Solver() {
            @Override
            public <T> Solution solve(LinearModel<T> model, SolveLimits limits) {
                throw new AssertionError("nothing is to be solved");
            }
        };
        WhatIf whatIf = new WhatIf(AskedScenario.KNOWLEDGE, never, AskedScenario.LIMITS);
        assertThatThrownBy(() -> whatIf.ask(
                        AskedScenario.changes(),
                        List.of(question("days: 7"), question("Mos: leaves")),
                        terms(Mode.BEFORE),
                        done -> {}))
                .isInstanceOf(ScenarioException.class)
                .hasMessageContaining("near it: \"Moss\"");
    }

    @Test
    void whenTimeRunsOutTheBestThatWasFoundIsShownWithItsGap() throws ScenarioException {
        Solver late = new Solver() {
            @Override
            public <T> Solution solve(LinearModel<T> model, SolveLimits limits) {
                Solution solution = AskedScenario.SOLVER.solve(model, limits);
                return new Solution(
                        Solution.Status.FEASIBLE,
                        solution.values(),
                        solution.objective(),
                        0.9 * solution.objective(),
                        limits.seconds());
            }
        };
        WhatIf.Answer.Compared answer =
                (WhatIf.Answer.Compared) new WhatIf(AskedScenario.KNOWLEDGE, late, AskedScenario.LIMITS)
                        .ask(AskedScenario.changes(), List.of(question("days: 7")), terms(Mode.BEFORE), done -> {});
        PlanComparison.Figures figures =
                newPlan(answer.alternatives().get(0)).comparison().after();
        assertThat(figures.provedOptimal()).isFalse();
        // The bound is that of the search, before amounts are brought to what a scale shows.
        assertThat(figures.gapShare()).isCloseTo(0.1, within(2e-3));
    }

    @Test
    void whenTimeRunsOutWithoutAPlanThatIsNotCalledImpossible() throws ScenarioException {
        Solver idle = new Solver() {
            @Override
            public <T> Solution solve(LinearModel<T> model, SolveLimits limits) {
                return new Solution(Solution.Status.UNKNOWN, List.of(), Double.NaN, Double.NaN, limits.seconds());
            }
        };
        WhatIf.Answer answer = new WhatIf(AskedScenario.KNOWLEDGE, idle, AskedScenario.LIMITS)
                .ask(AskedScenario.changes(), List.of(question("days: 7")), terms(Mode.BEFORE), done -> {});
        WhatIf.Answer.NoBase none = (WhatIf.Answer.NoBase) answer;
        assertThat(none.base().provedImpossible()).isFalse();
    }

    @Test
    void everyPlanThatIsReadyIsCounted() throws ScenarioException {
        List<Integer> done = Collections.synchronizedList(new ArrayList<>());
        new WhatIf(AskedScenario.KNOWLEDGE, AskedScenario.SOLVER, AskedScenario.LIMITS)
                .ask(
                        AskedScenario.changes(),
                        List.of(question("days: 7"), question("days: 8")),
                        terms(Mode.BEFORE),
                        done::add);
        assertThat(done).containsExactlyInAnyOrder(1, 2, 3);
    }

    /** A search without anything to begin with would be that for the old plan. */
    @Test
    void aPlanThatIsKnownIsNotSearchedForAgain() throws ScenarioException {
        Planner.Searched old = new Planner(AskedScenario.KNOWLEDGE, AskedScenario.SOLVER)
                .search(AskedScenario.household(), AskedScenario.LIMITS);
        List<List<Double>> starts = Collections.synchronizedList(new ArrayList<>());
        Solver counting = new Solver() {
            @Override
            public <T> Solution solve(LinearModel<T> model, SolveLimits limits) {
                return AskedScenario.SOLVER.solve(model, limits);
            }

            @Override
            public <T> Solution solve(LinearModel<T> model, SolveLimits limits, List<Double> start) {
                starts.add(start);
                return AskedScenario.SOLVER.solve(model, limits, start);
            }
        };
        WhatIf.Answer.Compared answer =
                (WhatIf.Answer.Compared) new WhatIf(AskedScenario.KNOWLEDGE, counting, AskedScenario.LIMITS)
                        .askFrom(
                                old,
                                AskedScenario.changes(),
                                List.of(question("chicken thigh: out of stock")),
                                terms(Mode.BEFORE),
                                done -> {});
        assertThat(answer.base()).isSameAs(old.result());
        assertThat(newPlan(answer.alternatives().get(0)).planned().verdict().findings())
                .isEmpty();
        assertThat(starts).isNotEmpty().noneMatch(List::isEmpty);
    }
}
