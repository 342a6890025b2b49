package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.ByHand.CHALK;
import static packpot.ration.ByHand.MEAT;
import static packpot.ration.ByHand.RICE;
import static packpot.ration.ByHand.gone;
import static packpot.ration.ByHand.household;
import static packpot.ration.ByHand.least;
import static packpot.ration.ByHand.loose;
import static packpot.ration.ByHand.need;
import static packpot.ration.ByHand.needs;

import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.food.Constituent;
import packpot.food.FoodGroup;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.needs.Needs;
import packpot.ration.RationPlanner.Outcome;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;
import packpot.solver.SolveLimits;

/** What a ration leaves to that of a household that differs a little. */
class ChosenTest {
    private static final String CHALK_GIVEN = "chalk for By hand ADULT given";
    private static final SolveLimits LIMITS = new SolveLimits(20, 0.001);
    /** Like meat, and dearer by a dollar a kg each. */
    private static final PantryItem TOFU = likeMeat("tofu", 0.005);

    private static final PantryItem EGG = likeMeat("egg", 0.006);

    private final Needs ash = needs(need("Ash", 1000, least("protein", 50), least("calcium", 1)));
    private final Asked solver = new Asked();
    private final RationPlanner planner = new RationPlanner(Demo.knowledge(), solver);
    private final Outcome.Found found = found(household(ash, MEAT, RICE, TOFU, EGG, CHALK));

    private static PantryItem likeMeat(String id, double pricePerGram) {
        return loose(ByHand.food(id, FoodGroup.PULSE, Map.of(Constituent.PROTEIN_G, 25.0)), pricePerGram);
    }

    private Outcome.Found found(Household household) {
        return (Outcome.Found) planner.plan(household, ash, LIMITS);
    }

    private RationModel model(PantryItem... pantry) {
        return RationModel.of(household(ash, pantry), Demo.knowledge(), ash, RationPlanner.sharesByNeed(ash));
    }

    private static Variable variable(LinearModel<Wish> model, String name) {
        return model.variables().stream()
                .filter(v -> v.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static void assertFixed(LinearModel<Wish> model, String name, double value) {
        assertThat(variable(model, name).lower()).as(name).isEqualTo(value);
        assertThat(variable(model, name).upper()).as(name).isEqualTo(value);
    }

    private static void assertOpen(LinearModel<Wish> model, String name) {
        assertThat(variable(model, name).lower()).as(name).isZero();
        assertThat(variable(model, name).upper()).as(name).isEqualTo(1);
    }

    @Test
    void theFoodsAndAdditionsOfARation() {
        assertThat(Chosen.of(found.model(), found.solution()))
                .isEqualTo(new Chosen(Set.of("meat used", "rice used"), Set.of(CHALK_GIVEN)));
    }

    @Test
    void whereAllFoodsAreToBeHadNoOthersAreOpen() {
        LinearModel<Wish> model = Chosen.of(found.model(), found.solution()).in(model(MEAT, RICE, TOFU, CHALK));
        assertFixed(model, "meat used", 1);
        assertFixed(model, "rice used", 1);
        assertFixed(model, "tofu used", 0);
        assertFixed(model, CHALK_GIVEN, 1);
        assertThat(model.rows()).noneMatch(row -> row.name().equals("stand-ins"));
        LinearModel<Wish> without = new Chosen(Set.of("meat used", "rice used"), Set.of()).in(model(MEAT, RICE, CHALK));
        assertFixed(without, CHALK_GIVEN, 0);
    }

    @Test
    void forAFoodThatIsGoneTwoOthersMayStandIn() {
        RationModel base = model(gone(MEAT, 0), RICE, TOFU, EGG, CHALK);
        LinearModel<Wish> model = Chosen.of(found.model(), found.solution()).in(base);
        assertFixed(model, "rice used", 1);
        assertOpen(model, "tofu used");
        assertOpen(model, "egg used");
        assertOpen(model, CHALK_GIVEN);
        Row<Wish> row = model.rows().stream()
                .filter(each -> each.name().equals("stand-ins"))
                .findFirst()
                .orElseThrow();
        assertThat(row.upper()).isEqualTo(2);
        assertThat(row.expression().coefficient(variable(model, "tofu used"))).isEqualTo(1);
        assertThat(row.expression().coefficient(variable(model, "egg used"))).isEqualTo(1);
        assertThat(row.expression().coefficient(variable(model, "rice used"))).isZero();
    }

    @Test
    void whatIsInTheHouseIsNotGone() {
        LinearModel<Wish> model = Chosen.of(found.model(), found.solution()).in(model(gone(MEAT, 3000), RICE, CHALK));
        assertFixed(model, "meat used", 1);
        assertThat(model.rows()).noneMatch(row -> row.name().equals("stand-ins"));
    }

    @Test
    void aFoodThatIsNotInThePantryIsGone() {
        LinearModel<Wish> model = Chosen.of(found.model(), found.solution()).in(model(RICE, TOFU, CHALK));
        assertOpen(model, "tofu used");
        assertThat(model.rows()).anyMatch(row -> row.name().equals("stand-ins"));
    }

    /** 2 kg of tofu for $10, 8 kg of rice, and three spoons of chalk on ten days for 30 cents. */
    @Test
    void aSimilarHouseholdIsPlannedFromIt() {
        Household noMeat = household(ash, gone(MEAT, 0), RICE, TOFU, EGG, CHALK);
        solver.questions.clear();
        Outcome.Found from = (Outcome.Found) planner.planFrom(found, noMeat, ash, LIMITS);
        assertThat(from.amounts().cost()).isCloseTo(18.3, within(1e-6));
        // Begun with what stands in, then searched whole.
        assertThat(solver.questions.get(0).model().rows())
                .anyMatch(row -> row.name().equals("stand-ins"));
        assertThat(solver.questions.get(1).start())
                .isEqualTo(solver.questions.get(0).answer().values());
    }

    @Test
    void atOnceNothingIsProvedOfIt() {
        // Tofu has come to cost less than meat, which a ration of the same foods does not find.
        Household cheapTofu = household(ash, MEAT, RICE, likeMeat("tofu", 0.002), CHALK);
        Outcome.Found atOnce = planner.atOnce(found, cheapTofu, ash).orElseThrow();
        assertThat(atOnce.amounts().cost()).isCloseTo(16.3, within(1e-6));
        assertThat(atOnce.amounts().bound()).isZero();
        assertThat(atOnce.amounts().proved()).isFalse();
        assertThat(((Outcome.Found) planner.planFrom(found, cheapTofu, ash, LIMITS))
                        .amounts()
                        .cost())
                .isCloseTo(12.3, within(1e-6));
    }

    @Test
    void atOnceThereIsNoneWhereTheSameFoodsDoNotDo() {
        assertThat(planner.atOnce(found, household(ash, RICE, CHALK), ash)).isEmpty();
    }
}
