package packpot.explain;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import packpot.audit.DogAudit;
import packpot.audit.NutrientLine;
import packpot.explain.PlanComparison.AdditionLine;
import packpot.explain.PlanComparison.Figures;
import packpot.explain.PlanComparison.FoodLine;
import packpot.explain.PlanComparison.NutrientMove;
import packpot.explain.PlanComparison.PortionLine;
import packpot.explain.PlanComparison.ShoppingLine;
import packpot.plan.Plan;

/** Lays an old and a new plan side by side. */
final class PlanComparer {
    private static final double NOTHING = 1e-6;

    private PlanComparer() {}

    static PlanComparison compare(
            Planner.Result.Planned before, Planner.Result.Planned after, boolean shoppingUndone, double movedShare) {
        Plan old = before.plan();
        Plan now = after.plan();
        List<FoodLine> pot = pot(old, now);
        double distance = distance(pot);
        return new PlanComparison(
                figures(old),
                figures(now),
                distance,
                pot,
                shopping(shoppingUndone ? old.shopping() : List.of(), now.shopping()),
                portions(old, now),
                additions(old, now),
                nutrients(before.verdict().dogs(), after.verdict().dogs(), movedShare));
    }

    /** Half the sum of the differences of all shares of cooked mass. */
    static double distance(Plan old, Plan now) {
        return distance(pot(old, now));
    }

    private static double distance(List<FoodLine> pot) {
        return pot.stream()
                .mapToDouble(line -> Math.abs(line.shareAfter() - line.shareBefore()) / 2)
                .sum();
    }

    private static Figures figures(Plan plan) {
        return new Figures(
                plan.days(),
                plan.cost().atTheTill(),
                plan.cost().ofTheBatch(),
                plan.cost().perDay(),
                plan.batch().cookedGrams(),
                plan.batch().bags(),
                plan.batch().bagsFrozen(),
                plan.batch().freezerMl(),
                plan.proof().provedOptimal(),
                plan.proof().gapShare());
    }

    private static List<FoodLine> pot(Plan old, Plan now) {
        Map<String, Plan.Ingredient> before = new LinkedHashMap<>();
        Map<String, Plan.Ingredient> after = new LinkedHashMap<>();
        old.pot().forEach(each -> before.put(each.food(), each));
        now.pot().forEach(each -> after.put(each.food(), each));
        List<FoodLine> lines = new ArrayList<>();
        for (String food : either(before.keySet(), after.keySet())) {
            Plan.Ingredient was = before.get(food);
            Plan.Ingredient is = after.get(food);
            lines.add(new FoodLine(
                    food,
                    is != null ? is.label() : was != null ? was.label() : food,
                    was == null ? null : (Double) was.grams(),
                    is == null ? null : (Double) is.grams(),
                    was == null ? 0 : was.shareOfCookedMass(),
                    is == null ? 0 : is.shareOfCookedMass()));
        }
        return lines;
    }

    private static Set<String> either(Set<String> before, Set<String> after) {
        Set<String> all = new LinkedHashSet<>(before);
        all.addAll(after);
        return all;
    }

    private static List<ShoppingLine> shopping(List<Plan.Purchase> old, List<Plan.Purchase> now) {
        Map<String, Plan.Purchase> before = new LinkedHashMap<>();
        Map<String, Plan.Purchase> after = new LinkedHashMap<>();
        old.forEach(each -> before.put(each.food(), each));
        now.forEach(each -> after.put(each.food(), each));
        List<ShoppingLine> lines = new ArrayList<>();
        for (String food : either(before.keySet(), after.keySet())) {
            Plan.Purchase was = before.get(food);
            Plan.Purchase is = after.get(food);
            boolean otherPack = was != null && is != null && !was.pack().equals(is.pack());
            if (was != null && (is == null || otherPack)) {
                add(lines, was, -1, null);
            }
            if (is != null) {
                add(lines, is, 1, otherPack ? null : was);
            }
        }
        return lines;
    }

    /** One line, unless nothing of the food is bought or nothing changes. */
    private static void add(List<ShoppingLine> lines, Plan.Purchase line, int sign, Plan.@Nullable Purchase instead) {
        Integer packs = line.packs();
        Integer fewer = instead == null ? (Integer) 0 : instead.packs();
        double grams = sign * line.buyGramsAsBought() - (instead == null ? 0 : instead.buyGramsAsBought());
        if (Math.abs(grams) < NOTHING) {
            return;
        }
        lines.add(new ShoppingLine(
                line.food(),
                line.label(),
                line.pack(),
                packs == null ? null : (Integer) (sign * packs - (fewer == null ? 0 : fewer)),
                grams,
                sign * line.pays() - (instead == null ? 0 : instead.pays())));
    }

    private static List<PortionLine> portions(Plan old, Plan now) {
        Map<String, Plan.DogPlan> before = dogs(old);
        Map<String, Plan.DogPlan> after = dogs(now);
        List<PortionLine> lines = new ArrayList<>();
        for (String dog : either(before.keySet(), after.keySet())) {
            Plan.DogPlan was = before.get(dog);
            Plan.DogPlan is = after.get(dog);
            lines.add(new PortionLine(
                    dog,
                    was == null ? null : (Integer) was.potGramsPerDay(),
                    is == null ? null : (Integer) is.potGramsPerDay(),
                    was == null ? null : (Double) was.batchKcalPerDay(),
                    is == null ? null : (Double) is.batchKcalPerDay()));
        }
        return lines;
    }

    private static Map<String, Plan.DogPlan> dogs(Plan plan) {
        Map<String, Plan.DogPlan> dogs = new LinkedHashMap<>();
        plan.dogs().forEach(dog -> dogs.put(dog.name(), dog));
        return dogs;
    }

    private static List<AdditionLine> additions(Plan oldPlan, Plan newPlan) {
        Map<String, Plan.DogPlan> before = dogs(oldPlan);
        Map<String, Plan.DogPlan> after = dogs(newPlan);
        List<AdditionLine> lines = new ArrayList<>();
        for (String dog : either(before.keySet(), after.keySet())) {
            Plan.DogPlan old = before.get(dog);
            Plan.DogPlan now = after.get(dog);
            Map<String, Plan.Addition> was = additions(old);
            Map<String, Plan.Addition> is = additions(now);
            for (String food : either(was.keySet(), is.keySet())) {
                Plan.Addition one = was.get(food);
                Plan.Addition other = is.get(food);
                lines.add(new AdditionLine(
                        dog,
                        food,
                        other != null ? other.label() : one != null ? one.label() : food,
                        one == null || old == null ? null : dose(one, old),
                        other == null || now == null ? null : dose(other, now),
                        one == null || old == null ? 0 : one.gramsInBatch() / old.daysFed(),
                        other == null || now == null ? 0 : other.gramsInBatch() / now.daysFed()));
            }
        }
        return lines;
    }

    private static Map<String, Plan.Addition> additions(Plan.@Nullable DogPlan dog) {
        Map<String, Plan.Addition> additions = new LinkedHashMap<>();
        if (dog != null) {
            dog.additions().forEach(each -> additions.put(each.food(), each));
        }
        return additions;
    }

    private static String dose(Plan.Addition addition, Plan.DogPlan dog) {
        int times = addition.onDays().size();
        return times == dog.daysFed() ? addition.dose() + " a day" : times + " x " + addition.dose();
    }

    private static List<NutrientMove> nutrients(List<DogAudit> old, List<DogAudit> now, double movedShare) {
        Map<String, NutrientLine> before = new HashMap<>();
        old.forEach(dog -> dog.nutrients().forEach(line -> before.put(dog.dog() + "/" + line.key(), line)));
        List<NutrientMove> moves = new ArrayList<>();
        for (DogAudit dog : now) {
            for (NutrientLine line : dog.nutrients()) {
                NutrientLine was = before.get(dog.dog() + "/" + line.key());
                if (was != null && moved(was.got(), line.got(), movedShare)) {
                    moves.add(new NutrientMove(
                            dog.dog(),
                            line.key(),
                            line.label(),
                            line.unit(),
                            was.got(),
                            line.got(),
                            was.got() > 0 ? (Double) (line.got() / was.got() - 1) : null,
                            line.minimum(),
                            line.maximum()));
                }
            }
        }
        return moves;
    }

    private static boolean moved(double before, double after, double share) {
        return before > 0 ? Math.abs(after / before - 1) > share : after > 0;
    }
}
