package packpot.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static packpot.audit.TinyPlan.CHICKEN;
import static packpot.audit.TinyPlan.HOUSEHOLD;
import static packpot.audit.TinyPlan.PLAN;
import static packpot.audit.TinyPlan.SPINACH;
import static packpot.audit.TinyPlan.VITAMIN_E;
import static packpot.audit.TinyPlan.household;
import static packpot.audit.TinyPlan.item;
import static packpot.audit.TinyPlan.line;
import static packpot.audit.TinyPlan.plan;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.Records;
import packpot.dog.Course;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.plan.Plan;

/** The smallest plan once, and twice in a row, followed as one series; then with errors in it. */
class SessionsAuditTest {
    private static final double TILL = PLAN.cost().atTheTill();

    private static SessionsAudit.Batch batch(Household household, Plan plan) {
        return new SessionsAudit.Batch(household, plan);
    }

    private static List<String> findings(
            SessionsAudit.Stated stated, Household household, SessionsAudit.Batch... batches) {
        return SessionsAudit.check(household, Demo.knowledge(), List.of(batches), stated).stream()
                .map(Finding::toString)
                .toList();
    }

    private static SessionsAudit.Stated once(double till, double worth) {
        return new SessionsAudit.Stated(0, 14, till, worth);
    }

    private static double worth(String food) {
        PantryItem item = TinyPlan.pantry(food);
        if (item.packGrams() == null) {
            return 0;
        }
        double perGram = item.packPrice() / item.packGrams();
        return item.food().isSupplement()
                ? perGram
                : perGram * HOUSEHOLD.rules().leftoverWorthShare();
    }

    /** What is left of everything that was bought, beside what spoils; what was in the house is used up first. */
    private static double left(int times) {
        double worth = 0;
        for (Plan.Purchase line : PLAN.shopping()) {
            worth += TinyPlan.pantry(line.food()).keeps() ? times * line.leftOverGrams() * worth(line.food()) : 0;
        }
        return worth;
    }

    private static List<String> one(Household household, Plan plan) {
        return findings(once(TILL, left(1)), household, batch(household, plan));
    }

    @Test
    void oneBatchIsASeries() {
        assertThat(one(HOUSEHOLD, PLAN)).isEmpty();
        assertThat(left(1)).isGreaterThan(40);
    }

    @Test
    void moneyIsAddedUpToTheCent() {
        for (int sign : new int[] {-1, 1}) {
            assertThat(findings(once(TILL + sign * 0.009, left(1) + sign * 0.009), HOUSEHOLD, batch(HOUSEHOLD, PLAN)))
                    .isEmpty();
            assertThat(findings(once(TILL + sign * 0.011, left(1)), HOUSEHOLD, batch(HOUSEHOLD, PLAN)))
                    .singleElement()
                    .asString()
                    .startsWith("at the till: the batches pay 105.57, stated is 105.5");
            assertThat(findings(once(TILL, left(1) + sign * 0.011), HOUSEHOLD, batch(HOUSEHOLD, PLAN)))
                    .singleElement()
                    .asString()
                    .matches("left over: what is left is worth .*, stated is .*");
        }
    }

    @Test
    void batchesFollowEachOtherToTheLastDay() {
        assertThat(findings(new SessionsAudit.Stated(0, 15, TILL, left(1)), HOUSEHOLD, batch(HOUSEHOLD, PLAN)))
                .containsExactly("days: the batches feed until day 14, planned are 15");
        assertThat(findings(new SessionsAudit.Stated(2, 16, TILL, left(1)), HOUSEHOLD, batch(HOUSEHOLD, PLAN)))
                .containsExactly("batch of 2026-06-20: is expected on 2026-06-22, the day after the last that is fed");
        assertThat(findings(
                        new SessionsAudit.Stated(0, 28, 2 * TILL, left(2)),
                        HOUSEHOLD,
                        batch(HOUSEHOLD, PLAN),
                        batch(HOUSEHOLD, PLAN)))
                .contains("batch of 2026-06-20: is expected on 2026-07-04, the day after the last that is fed");
    }

    /** The same batch again on what the first left; spinach of the house is gone, so 150 g less of it are left of packs. */
    @Test
    void aSecondBatchFindsWhatTheFirstLeft() {
        Map<String, Double> left = new HashMap<>();
        PLAN.shopping()
                .forEach(line ->
                        left.put(line.food(), TinyPlan.pantry(line.food()).keeps() ? line.leftOverGrams() : 0.0));
        Household later = Records.with(HOUSEHOLD, "start", PLAN.start().plusDays(14))
                .withPantry(HOUSEHOLD.pantry().stream()
                        .map(item ->
                                item.withOnHand(left.getOrDefault(item.food().id(), 0.0)))
                        .toList());
        Plan second = plan("start", PLAN.start().plusDays(14));
        List<String> findings = findings(
                new SessionsAudit.Stated(0, 28, 2 * TILL, left(2) - 200 * worth(SPINACH)),
                HOUSEHOLD,
                batch(HOUSEHOLD, PLAN),
                batch(later, second));
        // Its own lines do not say that something of it was in the house; the series adds up all the same.
        assertThat(findings).isNotEmpty().allMatch(told -> told.startsWith("batch of 2026-07-04, "));

        Household richer = later.withPantry(later.pantry().stream()
                .map(item -> item.food().id().equals(VITAMIN_E) ? item.withOnHand(item.onHandGrams() + 0.06) : item)
                .toList());
        assertThat(findings(
                        new SessionsAudit.Stated(0, 28, 2 * TILL, left(2)),
                        HOUSEHOLD,
                        batch(HOUSEHOLD, PLAN),
                        batch(richer, second)))
                .contains(
                        "batch of 2026-07-04: counts on 49.2 g of vitamin-e-oil-400iu-per-g in the house, there are 49.2 g");
        Household spoilt = later.withPantry(later.pantry().stream()
                .map(item -> item.food().id().equals("chicken-liver-raw") ? item.withOnHand(1) : item)
                .toList());
        assertThat(findings(
                        new SessionsAudit.Stated(0, 28, 2 * TILL, left(2)),
                        HOUSEHOLD,
                        batch(HOUSEHOLD, PLAN),
                        batch(spoilt, second)))
                .contains("batch of 2026-07-04: counts on 1.0 g of chicken-liver-raw in the house, there are 0.0 g");
    }

    @Test
    void whatIsUsedWasThere() {
        Plan nothing = Records.with(PLAN, line(CHICKEN) + ".buyGramsAsBought", 0.0);
        assertThat(one(HOUSEHOLD, nothing))
                .contains("batch of 2026-06-20: uses 4574.0 g of chicken-thigh-meat-skin-raw, there are 0.0 g");
        Plan half = Records.with(PLAN, line(CHICKEN) + ".buyGramsAsBought", 5000.0);
        assertThat(one(HOUSEHOLD, half))
                .contains("batch of 2026-06-20: uses 4574.0 g of chicken-thigh-meat-skin-raw, there are 4000.0 g");
        // 5720 g as bought are 4576 g to eat.
        double least = 4574 / 0.8;
        assertThat(one(HOUSEHOLD, Records.with(PLAN, line(CHICKEN) + ".buyGramsAsBought", least - 0.05)))
                .noneMatch(told -> told.contains("uses"));
        assertThat(one(HOUSEHOLD, Records.with(PLAN, line(CHICKEN) + ".buyGramsAsBought", least - 0.07)))
                .anyMatch(told -> told.contains("uses"));
    }

    @Test
    void everyDogThatIsThereIsFedWhatItNeedsOnAverage() {
        String needs =
                "batch of 2026-06-20, Clover: needs %d kcal a day on average over these days, the plan is for 796";
        Household treated = household("dogs[0].otherKcalPerDay", 40.0);
        assertThat(findings(once(TILL, left(1)), treated, batch(HOUSEHOLD, PLAN)))
                .containsExactly(needs.formatted(756));
        Household vet = household("dogs[0].vetKcalPerDay", 796.1386570940426 * (1 + 0.5e-6));
        assertThat(findings(once(TILL, left(1)), vet, batch(HOUSEHOLD, PLAN))).isEmpty();
        vet = household("dogs[0].vetKcalPerDay", 796.1386570940426 * (1 - 2e-6));
        assertThat(findings(once(TILL, left(1)), vet, batch(HOUSEHOLD, PLAN))).containsExactly(needs.formatted(796));
        Household gone = household("dogs[1].course", new Course(List.of(), null, null, null, 0, null));
        assertThat(findings(once(TILL, left(1)), gone, batch(HOUSEHOLD, PLAN)))
                .containsExactly("batch of 2026-06-20: feeds [Clover, Rusk], there are [Clover]");
        Household half = household("dogs[1].course", new Course(List.of(), null, null, 13, null, null));
        assertThat(findings(once(TILL, left(1)), half, batch(HOUSEHOLD, PLAN))).isEmpty();
        Household late = household("dogs[1].course", new Course(List.of(), null, null, 14, null, null));
        assertThat(findings(once(TILL, left(1)), late, batch(HOUSEHOLD, PLAN))).hasSize(1);
    }

    @Test
    void anErrorOfOneBatchIsToldWithItsDate() {
        assertThat(one(HOUSEHOLD, plan("batch.bags", 99)))
                .anyMatch(told -> told.startsWith("batch of 2026-06-20, bags: "));
        assertThat(one(household(item(CHICKEN) + ".outOfStock", true), PLAN))
                .containsExactly("batch of 2026-06-20, chicken thigh, with skin: is bought although the shop has none");
    }
}
