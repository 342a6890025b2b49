package packpot.audit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import packpot.dog.Dog;
import packpot.food.Keeps;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.plan.Plan;

/**
 * Follows batches that are cooked one after the other, from the first day's household and the printed plans alone: every
 * dog is fed on every day by the batch of that day, what is used was there or was bought, nothing that spoils waits for a
 * later batch, and the money adds up. It shares no arithmetic with what made the plans.
 */
public final class SessionsAudit {
    private static final double CLOSE_GRAMS = 0.05;
    private static final double CLOSE_MONEY = 0.01;
    private static final double CLOSE_SHARE = 1e-6;

    /**
     * One batch.
     *
     * @param household as it was planned for
     */
    public record Batch(Household household, Plan plan) {}

    /**
     * What was said of all of them.
     *
     * @param firstDay first day that is fed from the first batch, in days from the household's first
     * @param days that are planned, from the household's first day
     * @param atTheTill money
     * @param leftWorth money
     */
    public record Stated(int firstDay, int days, double atTheTill, double leftWorth) {}

    private final Household household;
    private final Knowledge knowledge;
    private final List<Finding> findings = new ArrayList<>();
    /** Grams in the house, and of these what was paid for since the first day. */
    private final Map<String, Double> inHouse = new HashMap<>();

    private final Map<String, Double> paidFor = new HashMap<>();

    private SessionsAudit(Household household, Knowledge knowledge) {
        this.household = household;
        this.knowledge = knowledge;
    }

    /** Everything that is wrong; nothing when the batches can be followed. */
    public static List<Finding> check(Household household, Knowledge knowledge, List<Batch> batches, Stated stated) {
        return new SessionsAudit(household, knowledge).check(batches, stated);
    }

    private List<Finding> check(List<Batch> batches, Stated stated) {
        household.pantry().forEach(item -> inHouse.put(item.food().id(), item.onHandGrams()));
        int day = stated.firstDay();
        double till = 0;
        for (Batch batch : batches) {
            Plan plan = batch.plan();
            String name = "batch of " + plan.start();
            if (!plan.start().equals(household.start().plusDays(day))) {
                find(
                        name,
                        "is expected on %s, the day after the last that is fed",
                        household.start().plusDays(day));
            }
            PlanAudit.check(plan, batch.household(), knowledge)
                    .findings()
                    .forEach(finding -> findings.add(new Finding(name + ", " + finding.where(), finding.message())));
            dogs(name, batch, day);
            stock(name, batch);
            till += plan.cost().atTheTill();
            day += plan.days();
        }
        if (day != stated.days()) {
            find("days", "the batches feed until day %d, planned are %d", day, stated.days());
        }
        double worth = 0;
        for (PantryItem item : household.pantry()) {
            worth += paidFor.getOrDefault(item.food().id(), 0.0) * worthPerGram(item);
        }
        if (Math.abs(till - stated.atTheTill()) > CLOSE_MONEY) {
            find("at the till", "the batches pay %.2f, stated is %.2f", till, stated.atTheTill());
        }
        if (Math.abs(worth - stated.leftWorth()) > CLOSE_MONEY) {
            find("left over", "what is left is worth %.2f, stated is %.2f", worth, stated.leftWorth());
        }
        return List.copyOf(findings);
    }

    /** Each dog that is there on one of the batch's days, as it is then; and no other. */
    private void dogs(String name, Batch batch, int firstDay) {
        List<String> expected = new ArrayList<>();
        for (Dog dog : household.allDogs()) {
            double kcal = 0;
            int there = 0;
            for (int day = firstDay; day < firstDay + batch.plan().days(); day++) {
                Dog then = knowledge.overTime().on(dog, day).orElse(null);
                if (then != null) {
                    kcal += knowledge
                                    .energy()
                                    .need(then, household.maintenance(), household.growth())
                                    .kcalPerDay()
                            - then.otherKcalPerDay();
                    there++;
                }
            }
            if (there == 0) {
                continue;
            }
            expected.add(dog.name());
            for (Plan.DogPlan portion : batch.plan().dogs()) {
                double average = kcal / there;
                if (portion.name().equals(dog.name())
                        && Math.abs(portion.batchKcalPerDay() - average) > CLOSE_SHARE * average) {
                    find(
                            name + ", " + dog.name(),
                            "needs %.0f kcal a day on average over these days, the plan is for %.0f",
                            average,
                            portion.batchKcalPerDay());
                }
            }
        }
        List<String> fed = batch.plan().dogs().stream().map(Plan.DogPlan::name).toList();
        if (!fed.equals(expected)) {
            find(name, "feeds %s, there are %s", fed, expected);
        }
    }

    private void stock(String name, Batch batch) {
        Map<String, Plan.Purchase> lines = new HashMap<>();
        batch.plan().shopping().forEach(line -> lines.put(line.food(), line));
        for (PantryItem item : batch.household().pantry()) {
            String food = item.food().id();
            double there = inHouse.getOrDefault(food, 0.0);
            if (item.onHandGrams() > there + CLOSE_GRAMS) {
                find(name, "counts on %.1f g of %s in the house, there are %.1f g", item.onHandGrams(), food, there);
            }
            Plan.Purchase line = lines.get(food);
            double bought = line == null ? 0 : line.buyGramsAsBought() * edible(item);
            double used = line == null ? 0 : line.usedGrams();
            double left = there + bought - used;
            if (left < -CLOSE_GRAMS) {
                find(name, "uses %.1f g of %s, there are %.1f g", used, food, there + bought);
            }
            boolean spoils =
                    !item.food().isSupplement() && item.food().kitchen().keeps() == Keeps.PERISHABLE;
            // What was in the house on the first day is used up before what was paid for.
            double paid = Math.min(Math.max(0, left), paidFor.getOrDefault(food, 0.0) + bought);
            inHouse.put(food, spoils ? 0 : Math.max(0, left));
            paidFor.put(food, spoils ? 0 : paid);
        }
    }

    private static double edible(PantryItem item) {
        Double pack = item.packGrams();
        Double asBought = item.packAsBoughtGrams();
        return pack == null || asBought == null ? item.food().kitchen().edibleShare() : pack / asBought;
    }

    private double worthPerGram(PantryItem item) {
        if (item.food().isSupplement()) {
            return item.pricePerGram();
        }
        return item.packGrams() == null
                ? 0
                : item.pricePerGram() * household.rules().leftoverWorthShare();
    }

    private void find(String where, String format, Object... figures) {
        findings.add(new Finding(where, String.format(Locale.ROOT, format, figures)));
    }
}
