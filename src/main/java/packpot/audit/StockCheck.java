package packpot.audit;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import packpot.food.Keeps;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.plan.Plan;

/** What is bought and in the house covers what is used, and costs what the plan says. */
final class StockCheck {
    private static final double CLOSE_GRAMS = 0.01;
    private static final double CLOSE_MONEY = 0.005;

    private final Household household;
    private final Plan plan;
    private final Map<String, PantryItem> pantry;
    private final List<Finding> findings;

    StockCheck(Household household, Plan plan, Map<String, PantryItem> pantry, List<Finding> findings) {
        this.household = household;
        this.plan = plan;
        this.pantry = pantry;
        this.findings = findings;
    }

    void check() {
        Map<String, Double> used = new HashMap<>();
        plan.pot().forEach(ingredient -> used.merge(ingredient.food(), ingredient.grams(), Double::sum));
        plan.dogs()
                .forEach(dog -> dog.additions()
                        .forEach(addition -> used.merge(
                                addition.food(),
                                addition.gramsPerDose() * addition.onDays().size(),
                                Double::sum)));
        double till = 0;
        double batch = 0;
        Map<String, Double> bought = new HashMap<>();
        Map<String, Integer> lines = new HashMap<>();
        plan.shopping().forEach(line -> lines.merge(line.food(), 1, Integer::sum));
        lines.forEach((food, count) -> {
            if (count > 1 || !used.containsKey(food)) {
                find(
                        food,
                        "has " + count + " lines on the shopping list" + (used.containsKey(food) ? "" : " but no use"));
            }
        });
        used.keySet().stream()
                .filter(food -> !lines.containsKey(food))
                .forEach(food ->
                        find(food, "is used but not on the shopping list, which names what is in the house too"));
        for (Plan.Purchase line : plan.shopping()) {
            PantryItem item = pantry.get(line.food());
            if (item == null) {
                find(line.label(), "is on the shopping list but not in the pantry");
                continue;
            }
            double edible = edible(line, item);
            bought.merge(line.food(), edible, Double::sum);
            double pays = item.packGrams() == null ? edible * item.packPrice() : packs(line) * item.packPrice();
            double left = item.onHandGrams() + edible - used.getOrDefault(line.food(), 0.0);
            double leftOfPacks = Math.min(left, edible);
            line(line, item, edible, pays, leftOfPacks, used.getOrDefault(line.food(), 0.0));
            till += pays;
            batch += pays - leftOfPacks * worth(item);
        }
        used.forEach((food, grams) -> covered(food, grams, bought.getOrDefault(food, 0.0)));
        money("at the till", plan.cost().atTheTill(), till);
        money("of the batch", plan.cost().ofTheBatch(), batch);
        money("a day", plan.cost().perDay(), batch / plan.days());
        double dogs = 0;
        for (Plan.DogCost cost : plan.cost().perDogPerDay()) {
            for (Plan.DogPlan dog : plan.dogs()) {
                dogs += dog.name().equals(cost.dog()) ? cost.perDay() * dog.daysFed() : 0;
            }
        }
        money("of all dogs a day", dogs / plan.days(), batch / plan.days());
        Double budget = household.budget();
        if (budget != null && till > budget + CLOSE_MONEY) {
            find("budget", String.format(Locale.ROOT, "%.2f at the till, at most %.2f are wished", till, budget));
        }
    }

    private static int packs(Plan.Purchase line) {
        Integer packs = line.packs();
        return packs == null ? 0 : packs;
    }

    private static double edible(Plan.Purchase line, PantryItem item) {
        Double pack = item.packGrams();
        return pack == null ? line.buyGramsAsBought() * item.food().kitchen().edibleShare() : packs(line) * pack;
    }

    private void line(
            Plan.Purchase line, PantryItem item, double edible, double pays, double leftOfPacks, double used) {
        if (edible > 0 && item.outOfStock()) {
            find(line.label(), "is bought although the shop has none");
        }
        Double packAsBought = item.packAsBoughtGrams();
        double fromHand = Math.min(item.onHandGrams(), used);
        boolean asStated = Math.abs(line.pays() - pays) <= CLOSE_MONEY
                && Math.abs(line.usedGrams() - used) <= CLOSE_GRAMS
                && Math.abs(line.fromHandGrams() - fromHand) <= CLOSE_GRAMS
                && Math.abs(line.leftOverGrams() - leftOfPacks) <= CLOSE_GRAMS
                && (packAsBought == null
                        || Math.abs(line.buyGramsAsBought() - packs(line) * packAsBought) <= CLOSE_GRAMS);
        if (!asStated) {
            find(
                    line.label(),
                    String.format(
                            Locale.ROOT,
                            "the shopping list does not add up: %.1f g used, %.1f g left of packs, %.2f to pay",
                            used,
                            leftOfPacks,
                            pays));
        }
        Double pack = item.packGrams();
        if (pack != null && leftOfPacks >= pack - CLOSE_GRAMS && packs(line) > 0) {
            find(line.label(), "a whole pack is bought that nobody needs");
        }
        if (item.wholePacksOnly() && leftOfPacks > CLOSE_GRAMS) {
            find(line.label(), "a pack is opened and not used up");
        }
        Double atMost = item.atMostGrams();
        if (atMost != null && used > atMost + CLOSE_GRAMS) {
            find(line.label(), String.format(Locale.ROOT, "%.0f g used, at most %.0f g are wished", used, atMost));
        }
    }

    private void covered(String food, double grams, double bought) {
        PantryItem item = pantry.get(food);
        if (item != null && grams > item.onHandGrams() + bought + CLOSE_GRAMS) {
            find(
                    item.food().label(),
                    String.format(
                            Locale.ROOT,
                            "%.1f g are used, but only %.1f g in the house and %.1f g bought",
                            grams,
                            item.onHandGrams(),
                            bought));
        }
    }

    private double worth(PantryItem item) {
        Double pack = item.packGrams();
        if (item.food().isSupplement()) {
            return pack == null ? item.packPrice() : item.packPrice() / pack;
        }
        boolean spoils = item.food().kitchen().keeps() == Keeps.PERISHABLE;
        return pack == null || spoils
                ? 0
                : item.packPrice() / pack * household.rules().leftoverWorthShare();
    }

    private void money(String what, double stated, double reckoned) {
        if (Math.abs(stated - reckoned) > CLOSE_MONEY) {
            find("cost", String.format(Locale.ROOT, "%s is %.2f, the plan says %.2f", what, reckoned, stated));
        }
    }

    private void find(String where, String message) {
        findings.add(new Finding(where, message));
    }
}
