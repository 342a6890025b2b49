package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.ByHand.CHALK;
import static packpot.ration.ByHand.MEAT;
import static packpot.ration.ByHand.RICE;
import static packpot.ration.ByHand.gone;
import static packpot.ration.ByHand.household;
import static packpot.ration.ByHand.least;
import static packpot.ration.ByHand.need;
import static packpot.ration.ByHand.needs;
import static packpot.ration.ByHand.yielding;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.food.Constituent;
import packpot.food.Dosing;
import packpot.food.FoodGroup;
import packpot.food.Place;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.needs.Needs;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;

/** What is read out of a model, and the model in which foods are weighed. */
class RationModelTest {
    private static final PantryItem EGG =
            ByHand.loose(ByHand.food("egg", FoodGroup.EGG, Map.of(Constituent.PROTEIN_G, 25.0)), 0.002);

    private final Needs ash = needs(need("Ash", 1000, least("protein", 50), least("calcium", 1)));

    private RationModel model(PantryItem... pantry) {
        return RationModel.of(household(ash, pantry), Demo.knowledge(), ash, RationPlanner.sharesByNeed(ash));
    }

    private static Variable variable(LinearModel<Wish> model, String name) {
        return model.variables().stream()
                .filter(v -> v.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name));
    }

    private static Row<Wish> row(LinearModel<Wish> model, String name) {
        return model.rows().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name));
    }

    private static Solution solved(RationModel model) {
        return new Asked().solve(model.linearModel(), new SolveLimits(20, 1e-6));
    }

    @Test
    void foodsAndTheirChoices() {
        RationModel model = model(yielding(MEAT, 0.8), RICE, CHALK);
        assertThat(model.potChoices().values().stream().map(Variable::name)).containsExactly("meat used", "rice used");
        assertThat(model.bowlChoices().stream().map(Variable::name)).containsExactly("chalk for By hand ADULT given");
        var cooked = model.potCookedGrams().values().iterator().next();
        assertThat(cooked.coefficient(variable(model.linearModel(), "meat g"))).isEqualTo(0.8);
        assertThat(cooked.size()).isEqualTo(1);
        assertThat(model.usualCookedGrams()).isCloseTo(10_000, within(1e-6));
        assertThat(model.levers()).isNotEmpty().hasSizeGreaterThan(5);
        assertThat(model.costOf(RICE).coefficient(variable(model.linearModel(), "rice from packs")))
                .isEqualTo(0.001);
        assertThat(model(gone(MEAT, 900), RICE).costOf(gone(MEAT, 900)).isEmpty())
                .isTrue();
    }

    @Test
    void amountsOfASolution() {
        RationModel model = model(MEAT, RICE, CHALK);
        Solution solution = solved(model);
        // 2 kg of meat, 8 kg of rice, three spoons on ten days.
        assertThat(model.pot(solution)).containsOnlyKeys(MEAT, RICE);
        var amounts = model.amounts(solution, 16, 0.02, 7);
        assertThat(amounts.cost()).isCloseTo(16.3, within(1e-6));
        assertThat(amounts.bound()).isEqualTo(16);
        assertThat(amounts.solveSeconds()).isEqualTo(7);
        assertThat(amounts.doses().get(ash.dogs().get(0))).containsExactly(Map.entry(CHALK, 3));
        // 30 cents of $16.30 are 1.8 %.
        assertThat(amounts.proved()).isTrue();
        assertThat(model.amounts(solution, 16, 0.018, 7).proved()).isFalse();
        assertThat(model.amounts(solution, 16.3, 0, 7).proved()).isTrue();
    }

    @Test
    void theEnergyOfAdditions() {
        PantryItem paste = ByHand.loose(
                ByHand.supplement(
                        "paste",
                        Map.of(Constituent.CARBOHYDRATE_G, 50.0, Constituent.CALCIUM_MG, 20_000.0),
                        Dosing.DAILY,
                        Place.BOWL,
                        12),
                0.01);
        RationModel model = model(MEAT, RICE, paste);
        // Five spoons of 2 kcal a day.
        assertThat(model.additionKcal(ash.dogs().get(0), solved(model))).isCloseTo(100, within(1e-6));
    }

    @Test
    void weighedInWholeStepsWithTheSameChoices() {
        PantryItem meat = ByHand.packs(MEAT, 1500, 6);
        RationModel model = model(meat, RICE, EGG.withMustUse(100), CHALK);
        Solution found = solved(model);
        LinearModel<Wish> measured = model.measured(found, 5);
        for (String choice :
                List.of("meat used", "rice used", "egg used", "meat packs", "chalk for By hand ADULT given")) {
            Variable fixed = variable(measured, choice);
            assertThat(fixed.lower()).as(choice).isEqualTo(found.value(variable(model.linearModel(), choice)));
            assertThat(fixed.upper()).as(choice).isEqualTo(fixed.lower());
        }
        // Eggs are the cheaper protein, so no meat is weighed; what must be used is wished to the gram.
        assertThat(measured.variables().stream().map(Variable::name).filter(name -> name.endsWith("weighed")))
                .containsExactly("rice weighed");
        Row<Wish> rice = row(measured, "rice weighed");
        assertThat(rice.expression().coefficient(variable(measured, "rice g"))).isEqualTo(1);
        assertThat(rice.expression().coefficient(variable(measured, "rice weighed")))
                .isEqualTo(-5);
        assertThat(List.of(rice.lower(), rice.upper())).containsExactly(0.0, 0.0);
        // 10 500 g at the most.
        assertThat(variable(measured, "rice weighed").upper()).isEqualTo(2100);
        assertThat(variable(model.measured(found, 1), "rice weighed").upper()).isEqualTo(10_500);
        assertThat(variable(measured, "rice weighed").integer()).isTrue();
    }

    @Test
    void withAPotAndDosesThatAreGivenPacksAloneAreOpen() {
        RationModel model = model(ByHand.packs(MEAT, 1500, 6), RICE, CHALK);
        Solution found = solved(model);
        LinearModel<Wish> rest = model.with(found, Map.of(ash.dogs().get(0), Map.of(CHALK, 4)));
        for (String name : List.of("meat g", "rice g", "meat used", "rice used", "chalk for By hand ADULT given")) {
            double value = found.value(variable(model.linearModel(), name));
            assertThat(variable(rest, name).lower()).as(name).isEqualTo(value);
            assertThat(variable(rest, name).upper()).as(name).isEqualTo(value);
        }
        assertThat(variable(rest, "chalk for Ash doses").lower()).isEqualTo(4);
        assertThat(variable(rest, "chalk for Ash doses").upper()).isEqualTo(4);
        assertThat(variable(rest, "meat packs").lower()).isZero();
        assertThat(variable(model.with(found, Map.of()), "chalk for Ash doses").upper())
                .isZero();
    }

    /** Half a percent of the pot is shown as none; where money is least, so is a millionth of it. */
    @Test
    void differencesThatNobodyNotices() {
        Near near = new Near(Map.of("meat", 0.5, "rice", 0.5), 22, 16, Map.of(), null);
        Needs protein = needs(need("Ash", 1000, least("protein", 50)));
        assertThat(provedBelow(protein, near, 0.004)).isTrue();
        assertThat(provedBelow(protein, near, 0.006)).isFalse();
        assertThat(provedBelow(protein, near.within(0.2), 0.004)).isFalse();
        assertThat(provedBelow(protein, null, 0.004)).isFalse();
        assertThat(provedBelow(protein, null, 5e-7)).isTrue();
    }

    private static boolean provedBelow(Needs needs, @Nullable Goal goal, double below) {
        RationModel model = RationModel.of(
                household(needs, MEAT, RICE), Demo.knowledge(), needs, RationPlanner.sharesByNeed(needs), goal);
        Solution found = solved(model);
        return model.amounts(found, found.objective() - below, 0, 0).proved();
    }

    /** Less than a kg is weighed to the gram even where steps of five are asked for. */
    @Test
    void smallAmountsAreWeighedFinely() {
        Needs little = needs(need("Ash", 100, least("protein", 50)));
        var household = household(little, MEAT, RICE);
        RationModel model = RationModel.of(household, Demo.knowledge(), little, RationPlanner.sharesByNeed(little));
        LinearModel<Wish> measured = model.measured(solved(model), 5);
        assertThat(row(measured, "meat weighed").expression().coefficient(variable(measured, "meat weighed")))
                .isEqualTo(-1);
    }

    @Test
    void limitsAsRowsKeepGoalsToo() {
        var household = household(ash, MEAT, RICE, CHALK);
        var shares = RationPlanner.sharesByNeed(ash);
        RationModel rows = RationModel.withLimitsAsRows(household, Demo.knowledge(), ash, shares);
        assertThat(rows.linearModel().rows())
                .anyMatch(row -> row.name().startsWith("a batch holds at least"))
                .noneMatch(row -> row.name().startsWith("cost at most"));
        Near near = new Near(Map.of("meat", 1.0), 20, 10, Map.of(), null);
        assertThat(RationModel.withLimitsAsRows(household, Demo.knowledge(), ash, shares, near)
                        .linearModel()
                        .rows())
                .anyMatch(row -> row.name().startsWith("cost at most"));
    }
}
