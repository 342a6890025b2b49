package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.explain.AskedScenario.compared;
import static packpot.explain.AskedScenario.question;
import static packpot.explain.AskedScenario.terms;

import org.junit.jupiter.api.Test;
import packpot.household.ScenarioException;
import packpot.plan.Plan;

/** What becomes of food that is bought or cooked already when things change. */
class WhatIfCarriedTest {

    private static WhatIf.Outcome.NewPlan newPlan(WhatIf.Alternative alternative) {
        return (WhatIf.Outcome.NewPlan) alternative.outcome();
    }

    private static Carried carried(WhatIf.Alternative alternative) {
        Carried carried = alternative.carried();
        if (carried == null) {
            throw new AssertionError("nothing is carried over");
        }
        return carried;
    }

    @Test
    void whatIsBoughtCostsNothingMoreAndSpoilsWhereItIsNotUsed() throws ScenarioException {
        WhatIf.Answer.Compared answer = compared(terms(Mode.BOUGHT), question("Pip: leaves"));
        WhatIf.Alternative alternative = answer.alternatives().get(0);
        Carried carried = carried(alternative);
        assertThat(carried.paid()).isEqualTo(answer.base().plan().cost().atTheTill());
        assertThat(carried.waste()).isNotEmpty();
        WhatIf.Outcome.NewPlan plan = newPlan(alternative);
        assertThat(plan.planned().verdict().findings()).isEmpty();
        assertThat(plan.comparison().after().atTheTill()).as("to pay once more").isLessThan(1);
        assertThat(plan.comparison().shopping())
                .as("nothing can be put back")
                .allSatisfy(line -> assertThat(line.gramsAsBought()).isPositive());
        // Grams bought of each food: used and wasted are never more.
        for (Carried.Waste waste : carried.waste()) {
            Plan.Purchase bought = answer.base().plan().shopping().stream()
                    .filter(line -> line.food().equals(waste.food()))
                    .findFirst()
                    .orElseThrow();
            double used = plan.planned().plan().shopping().stream()
                    .filter(line -> line.food().equals(waste.food()))
                    .mapToDouble(Plan.Purchase::usedGrams)
                    .sum();
            assertThat(used + waste.grams()).isCloseTo(bought.usedGrams() + bought.leftOverGrams(), within(0.01));
            assertThat(waste.worth()).isPositive().isLessThanOrEqualTo(bought.pays() + 1e-9);
        }
    }

    @Test
    void theOldPlanStandsWhereTheShoppingIsDoneAndNothingBarsIt() throws ScenarioException {
        WhatIf.Outcome.NewPlan plan = newPlan(compared(terms(Mode.BOUGHT), question("all chicken: out of stock"))
                .alternatives()
                .get(0));
        WhatIf.Nearness nearness = plan.nearness();
        assertThat(nearness)
                .isNotNull()
                .satisfies(n -> assertThat(n.oldPlanStands()).isTrue());
        assertThat(plan.comparison().distance()).isLessThan(0.005);
        assertThat(plan.planned().plan().cost().atTheTill()).isZero();
    }

    @Test
    void ofBoughtFoodTheOneThatSpoilsIsUsedFirst() throws ScenarioException {
        WhatIf.Answer.Compared answer = compared(terms(Mode.BOUGHT), question("days: 7"));
        WhatIf.Outcome.NewPlan plan = newPlan(answer.alternatives().get(0));
        // With seven tenths of the days, seven tenths of the food is eaten whichever it is, and perishables go first.
        double wasted = carried(answer.alternatives().get(0)).waste().stream()
                .mapToDouble(Carried.Waste::worth)
                .sum();
        assertThat(wasted).isLessThan(0.3 * answer.base().plan().cost().atTheTill());
        assertThat(plan.planned().verdict().findings()).isEmpty();
    }

    @Test
    void whatIsCookedIsFedFirstAndTheRestIsCookedAnew() throws ScenarioException {
        WhatIf.Alternative alternative = compared(terms(Mode.COOKED), question("Rook: comes, 21 lb, 6 years"))
                .alternatives()
                .get(0);
        Carried carried = carried(alternative);
        assertThat(carried.coveredDays()).isBetween(5, 7);
        assertThat(carried.coveredDays() + carried.daysToCook()).isEqualTo(10);
        Plan next = newPlan(alternative).planned().plan();
        assertThat(next.days()).isEqualTo(carried.daysToCook());
        assertThat(next.start()).isEqualTo(carried.cookAgain());
    }

    @Test
    void aBatchThatLastsNeedsNoCooking() throws ScenarioException {
        WhatIf.Alternative alternative = compared(terms(Mode.COOKED), question("Pip: leaves"))
                .alternatives()
                .get(0);
        assertThat(alternative.outcome()).isInstanceOf(WhatIf.Outcome.NothingToCook.class);
        assertThat(carried(alternative).coveredDays()).isGreaterThan(10);
    }

    @Test
    void aDogIsNotFedFromABatchThatHoldsWhatItMustNotGet() throws ScenarioException {
        WhatIf.Terms terms = new WhatIf.Terms(Mode.COOKED, 3, null, 0.2);
        Carried carried = carried(
                compared(terms, question("Pip: avoids chicken")).alternatives().get(0));
        assertThat(carried.notFed()).containsExactly("Pip");
        assertThat(carried.portions()).extracting(Carried.Portion::dog).containsExactly("Moss");
        assertThat(carried.warnings())
                .singleElement()
                .asString()
                .contains("Pip must not get the old batch", "chicken thigh");
    }

    @Test
    void bagsThatASmallerFreezerDoesNotHoldAreToldOf() throws ScenarioException {
        WhatIf.Answer.Compared answer =
                compared(terms(Mode.COOKED), question("freezer: 0.2 cu ft chest"), question("freezer: 7 cu ft chest"));
        assertThat(carried(answer.alternatives().get(0)).warnings())
                .singleElement()
                .asString()
                .contains("does not hold the old batch: its ", "are free");
        assertThat(carried(answer.alternatives().get(1)).warnings()).isEmpty();
    }

    @Test
    void anOldBatchIsHeldAgainstTheDogsAsTheyAreNow() throws ScenarioException {
        WhatIf.Answer.Compared answer =
                compared(terms(Mode.COOKED), question("Pip: age 4 months", "Pip: adult weight 30 lb"));
        Carried carried = carried(answer.alternatives().get(0));
        assertThat(carried.warnings())
                .singleElement()
                .asString()
                .startsWith("Pip does not get")
                .contains("of at least");
        // A dog that needs more gets more of it, the other goes on as it was.
        Plan old = answer.base().plan();
        for (Carried.Portion portion : carried.portions()) {
            int before = old.dogs().stream()
                    .filter(dog -> dog.name().equals(portion.dog()))
                    .mapToInt(Plan.DogPlan::potGramsPerDay)
                    .sum();
            if (portion.dog().equals("Pip")) {
                assertThat(portion.gramsPerDay()).isGreaterThan(before);
            } else {
                assertThat(portion.gramsPerDay()).isEqualTo(before);
            }
        }
    }

    @Test
    void daysFedAlreadyAreTakenOffTheBatch() throws ScenarioException {
        WhatIf.Terms terms = new WhatIf.Terms(Mode.COOKED, 4, null, 0.2);
        Carried carried = carried(compared(terms, question("Rook: comes, 21 lb, 6 years"))
                .alternatives()
                .get(0));
        assertThat(carried.fedDays()).isEqualTo(4);
        assertThat(carried.coveredDays()).isBetween(3, 5);
        assertThat(carried.fedDays() + carried.coveredDays() + carried.daysToCook())
                .isEqualTo(10);
        assertThat(carried.cookAgain().toString()).isEqualTo("2026-03-" + (7 + 4 + carried.coveredDays()));
    }

    @Test
    void anUnchangedHouseholdIsFedByItsBatchForAllItsDays() throws ScenarioException {
        WhatIf.Alternative alternative = compared(terms(Mode.COOKED), question("bags: 400"))
                .alternatives()
                .get(0);
        assertThat(carried(alternative).coveredDays()).isEqualTo(10);
        assertThat(alternative.outcome()).isInstanceOf(WhatIf.Outcome.NothingToCook.class);
    }
}
