package packpot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import packpot.audit.NutrientLine;
import packpot.audit.PlanAudit;
import packpot.audit.Verdict;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.needs.Needs;
import packpot.plan.Amounts;
import packpot.plan.Plan;
import packpot.plan.PlanBuilder;
import packpot.ration.RationPlanner;

/**
 * A batch as people cook it by rule of thumb: common practice, no source. One dog of about 12 kg, two weeks, 3.6 kg of
 * lean ground turkey, 4.5 kg of frozen mixed vegetables and one large can of beans (29 oz, about 500 g drained) are told
 * to fill about 12 quart bags. Surveys find home-made recipes without supplements short of the nutrients below (Stockman
 * et al. 2013, J Am Vet Med Assoc 242:1500-1505, read second-hand).
 */
class KitchenReckoningTest {
    private static final Household HOUSEHOLD = Demo.read("""
            {"packpot": 1, "name": "By rule of thumb", "profile": "aafco-2016",
             "dogs": [{"name": "Ash", "weight": "12 kg", "age": "4 years", "activity": "moderate", "neutered": true}],
             "kitchen": {"days": 14, "bag": "quart"},
             "pantry": [{"food": "ground turkey, 93 % lean", "price": "$9/kg"},
                        {"food": "mixed vegetables, frozen", "price": "$3/kg"},
                        {"food": "black turtle beans, canned", "pack": "29 oz", "price": "$2"}]}""");
    private static final Plan PLAN = plan();

    @Test
    void theBatchFillsAboutTwelveQuartBags() {
        assertThat(PLAN.batch().bags()).isBetween(10, 14);
    }

    @Test
    void theCanIsDrained() {
        double drained = item("black turtle beans, canned").packGrams();
        assertThat(drained).isBetween(470.0, 530.0);
        assertThat(PLAN.shopping())
                .anyMatch(line -> line.food().equals("black-turtle-beans-canned")
                        && Integer.valueOf(1).equals(line.packs()));
    }

    @Test
    void withoutSupplementsItIsShortOfWhatTheSurveysFound() {
        Map<String, NutrientLine> lines = lines();
        for (String nutrient : List.of("calcium", "zinc", "iodine", "vitamin-d", "vitamin-e")) {
            NutrientLine line = lines.get(nutrient);
            assertThat(line.got()).as(nutrient).isLessThan(line.minimum());
        }
    }

    @Test
    void proteinIsNotWhatItLacks() {
        assertThat(lines().get("protein").got())
                .isGreaterThan(lines().get("protein").minimum());
    }

    @Test
    void theAuditNamesEachShortNutrient() {
        List<String> messages =
                verdict().findings().stream().map(finding -> finding.message()).toList();
        for (String label : List.of("calcium", "zinc", "iodine", "vitamin D", "vitamin E")) {
            assertThat(messages).anyMatch(message -> message.startsWith(label + " is ") && message.contains("below"));
        }
    }

    private static Map<String, NutrientLine> lines() {
        return verdict().dogs().get(0).nutrients().stream()
                .collect(Collectors.toMap(NutrientLine::key, Function.identity()));
    }

    private static Verdict verdict() {
        return PlanAudit.check(PLAN, HOUSEHOLD, Demo.knowledge());
    }

    private static Plan plan() {
        Needs needs = Needs.of(HOUSEHOLD, Demo.knowledge());
        Map<PantryItem, Double> pot = Map.of(
                item("ground turkey, 93 % lean"),
                3600.0,
                item("mixed vegetables, frozen"),
                4500.0,
                item("black turtle beans, canned"),
                item("black turtle beans, canned").packGrams());
        Amounts amounts = new Amounts(RationPlanner.sharesByNeed(needs), pot, Map.of(), 1, 1, true, 0);
        return PlanBuilder.build(HOUSEHOLD, Demo.knowledge(), needs, amounts);
    }

    private static PantryItem item(String label) {
        return HOUSEHOLD.pantry().stream()
                .filter(item -> item.food().label().equals(label))
                .findFirst()
                .orElseThrow();
    }
}
