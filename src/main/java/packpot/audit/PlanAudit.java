package packpot.audit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import packpot.dog.Dog;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.plan.Plan;

/**
 * Reckons a plan again from its printed amounts, the household and the food data. It shares no arithmetic with the
 * model that found the plan, and it holds the plan to the published limits themselves, without margin.
 */
public final class PlanAudit {

    private PlanAudit() {}

    /** The verdict on a plan. */
    public static Verdict check(Plan plan, Household household, Knowledge knowledge) {
        List<Finding> findings = new ArrayList<>();
        Map<String, PantryItem> pantry = new HashMap<>();
        household.pantry().forEach(item -> pantry.put(item.food().id(), item));
        new FoodCheck(household, knowledge, plan, pantry, findings).check();
        new StockCheck(household, plan, pantry, findings).check();
        new KitchenCheck(household, plan, pantry, findings).check();
        DogCheck dogCheck = new DogCheck(household, knowledge, plan, pantry, findings);
        List<DogAudit> dogs = new ArrayList<>();
        int there = 0;
        for (Dog dog : household.dogs()) {
            boolean fed = dogCheck.daysThere(dog) > 0;
            there += fed ? 1 : 0;
            List<Plan.DogPlan> bowls = plan.dogs().stream()
                    .filter(each -> each.name().equals(dog.name()))
                    .toList();
            if (fed && bowls.size() == 1) {
                dogs.add(dogCheck.check(dog, bowls.get(0)));
            } else if (fed || !bowls.isEmpty()) {
                findings.add(new Finding(
                        dog.name(),
                        "has " + bowls.size() + " portions in the plan"
                                + (fed ? "" : ", and is there on none of its days")));
            }
        }
        if (plan.dogs().size() != there) {
            findings.add(
                    new Finding("dogs", "the plan feeds " + plan.dogs().size() + " dogs, the household has " + there));
        }
        proof(plan.proof(), findings);
        return new Verdict(findings, dogs);
    }

    /** The bound itself is the solver's word; what is said of it must at least agree with itself. */
    private static void proof(Plan.Proof proof, List<Finding> findings) {
        double gap = Math.max(0, proof.cost() - proof.noPlanBelow()) / Math.max(1e-9, proof.cost());
        if (!(Math.abs(proof.gapShare() - gap) <= 1e-9)) {
            findings.add(new Finding(
                    "proof",
                    String.format(
                            Locale.ROOT,
                            "the gap is %.4f %%, the plan says %.4f %%",
                            100 * gap,
                            100 * proof.gapShare())));
        }
    }
}
