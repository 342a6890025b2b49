package packpot.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.Records;
import packpot.dog.Dog;
import packpot.dog.TestDogs;
import packpot.food.Dosing;
import packpot.food.Food;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.plan.Plan;

/** What must not be in a plan is found, whoever put it there. */
class SmuggledFoodTest {
    private final Demo.Planned demo = Demo.planned("tiny-freezer");

    @Test
    void aFoodThatADogMustAvoid() {
        Plan.Ingredient first = demo.plan().pot().get(0);
        List<Dog> dogs = new ArrayList<>(demo.household().dogs());
        dogs.set(1, avoiding(dogs.get(1), first.food()));
        Verdict verdict = check(demo.plan(), demo.household().withDogs(dogs));
        assertThat(verdict.findings())
                .anyMatch(finding -> finding.where().equals(first.label())
                        && finding.message().contains(dogs.get(1).name() + " must not get it"));
    }

    @Test
    void anAdditionThatADogMustAvoid() {
        Plan.DogPlan bowls = demo.plan().dogs().stream()
                .filter(dog -> !dog.additions().isEmpty())
                .findFirst()
                .orElseThrow();
        Plan.Addition addition = bowls.additions().get(0);
        List<Dog> dogs = demo.household().dogs().stream()
                .map(dog -> dog.name().equals(bowls.name()) ? avoiding(dog, addition.food()) : dog)
                .toList();
        Verdict verdict = check(demo.plan(), demo.household().withDogs(dogs));
        assertThat(verdict.findings())
                .anyMatch(finding -> finding.where().equals(addition.label())
                        && finding.message().contains(bowls.name() + " must not get it"));
    }

    @Test
    void anIngredientThatIsNotInThePantry() {
        Plan.Ingredient first = demo.plan().pot().get(0);
        Verdict verdict = check(demo.plan(), withoutFood(first.food()));
        assertThat(verdict.findings())
                .anyMatch(finding -> finding.where().equals(first.label())
                        && finding.message().contains("not in the pantry"));
    }

    @Test
    void anAdditionThatIsNotInThePantry() {
        Plan.Addition addition = demo.plan().dogs().stream()
                .flatMap(dog -> dog.additions().stream())
                .findFirst()
                .orElseThrow();
        assertThat(check(demo.plan(), withoutFood(addition.food())).findings())
                .anyMatch(finding -> finding.where().equals(addition.label())
                        && finding.message().contains("no supplement of the pantry"));
    }

    @Test
    void aPoisonousFoodUnderTheIdOfAnInnocentOne() {
        String food = demo.plan().pot().get(0).food();
        for (String poison : List.of("onion powder", "Macadamia nuts", "sultana raisins", "garlic")) {
            List<PantryItem> pantry = demo.household().pantry().stream()
                    .map(item -> item.food().id().equals(food) ? named(item, poison) : item)
                    .toList();
            Verdict verdict = check(demo.plan(), demo.household().withPantry(pantry));
            assertThat(verdict.findings())
                    .as(poison)
                    .anyMatch(finding ->
                            finding.where().equals(poison) && finding.message().contains("harms dogs"));
        }
    }

    @Test
    void aPoisonousAddition() {
        String food = demo.plan().dogs().get(0).additions().get(0).food();
        List<PantryItem> pantry = demo.household().pantry().stream()
                .map(item -> item.food().id().equals(food) ? named(item, "garlic oil") : item)
                .toList();
        assertThat(check(demo.plan(), demo.household().withPantry(pantry)).findings())
                .anyMatch(finding -> finding.where().equals("garlic oil")
                        && finding.message().contains("harms dogs"));
    }

    @Test
    void whatOneDogMustAvoidAnotherMayGet() {
        Plan.Addition addition = demo.plan().dogs().get(0).additions().get(0);
        List<Dog> dogs = new ArrayList<>(demo.household().dogs());
        dogs.set(1, avoiding(dogs.get(1), addition.food()));
        Plan without = Records.with(demo.plan(), "dogs[1].additions", List.of());
        assertThat(check(without, demo.household().withDogs(dogs)).findings())
                .noneMatch(finding -> finding.message().contains("must not get it"));
    }

    @Test
    void aPlanForAnotherHousehold() {
        Household other = Demo.read(Demo.text(Demo.file("three-adults")));
        Set<String> where = new HashSet<>();
        check(demo.plan(), other).findings().forEach(finding -> where.add(finding.where()));
        assertThat(where).contains("dogs", "Bramble", "Moss");
    }

    @Test
    void aPlanForTheSameDogsAtAnotherWeight() {
        List<Dog> heavier =
                demo.household().dogs().stream().map(SmuggledFoodTest::heavier).toList();
        Verdict verdict = check(demo.plan(), demo.household().withDogs(heavier));
        for (Dog dog : heavier) {
            assertThat(verdict.findings()).anyMatch(finding -> finding.where().equals(dog.name()));
        }
    }

    @Test
    void aDailySupplementInDoubleDosesOnHalfOfTheDays() {
        Plan plan = demo.plan();
        List<Plan.DogPlan> dogs = plan.dogs().stream().map(this::everyOtherDay).toList();
        assertThat(dogs).isNotEqualTo(plan.dogs());
        assertThat(check(with(plan, dogs), demo.household()).findings())
                .anyMatch(finding -> finding.message().contains("every day"));
    }

    private Plan.DogPlan everyOtherDay(Plan.DogPlan dog) {
        List<Plan.Addition> additions = dog.additions().stream()
                .map(each -> dosing(each) == Dosing.DAILY
                        ? new Plan.Addition(each.food(), each.label(), each.dose(), 2 * each.gramsPerDose(), oddDays())
                        : each)
                .toList();
        return new Plan.DogPlan(
                dog.name(),
                dog.weightKg(),
                dog.lifeStage(),
                dog.energyNeedKcalPerDay(),
                dog.otherFoodKcalPerDay(),
                dog.energyEquation(),
                dog.energyFound(),
                dog.energySource(),
                dog.profile(),
                dog.minimumsRaisedBy(),
                dog.batchKcalPerDay(),
                dog.firstDay(),
                dog.daysFed(),
                dog.potGramsPerDay(),
                dog.potGramsPerMeal(),
                dog.scoopPerMeal(),
                additions);
    }

    private List<Integer> oddDays() {
        return IntStream.rangeClosed(1, demo.plan().days())
                .filter(day -> day % 2 == 1)
                .boxed()
                .toList();
    }

    private Dosing dosing(Plan.Addition addition) {
        return demo.household().pantry().stream()
                .filter(item -> item.food().id().equals(addition.food()))
                .findFirst()
                .orElseThrow()
                .food()
                .supplement()
                .dosing();
    }

    private static Plan with(Plan plan, List<Plan.DogPlan> dogs) {
        return new Plan(
                plan.household(),
                plan.start(),
                plan.days(),
                plan.mealsPerDay(),
                plan.currency(),
                plan.foodEnergyRule(),
                plan.marginShare(),
                dogs,
                plan.shopping(),
                plan.pot(),
                plan.batch(),
                plan.cost(),
                plan.proof(),
                plan.atTheirLimit(),
                plan.defaults(),
                plan.cautions());
    }

    private Household withoutFood(String food) {
        List<PantryItem> pantry = demo.household().pantry().stream()
                .filter(item -> !item.food().id().equals(food))
                .toList();
        return demo.household().withPantry(pantry);
    }

    private static PantryItem named(PantryItem item, String name) {
        Food food = item.food();
        return new PantryItem(
                new Food(
                        food.id(),
                        name,
                        name,
                        food.state(),
                        food.group(),
                        food.composition(),
                        food.kitchen(),
                        food.supplement(),
                        List.of(),
                        food.source(),
                        food.found()),
                item.preparation(),
                item.packGrams(),
                item.packAsBoughtGrams(),
                item.packName(),
                item.packPrice(),
                item.onHandGrams(),
                item.mustUseGrams(),
                item.atMostGrams(),
                item.wholePacksOnly(),
                item.outOfStock(),
                item.place());
    }

    private static Dog avoiding(Dog dog, String food) {
        return TestDogs.avoiding(dog, food);
    }

    private static Dog heavier(Dog dog) {
        return TestDogs.like(dog, 1.1 * dog.weightKg(), dog.avoids(), dog.profile());
    }

    private static Verdict check(Plan plan, Household household) {
        return PlanAudit.check(plan, household, Demo.knowledge());
    }
}
