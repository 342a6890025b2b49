package packpot.audit;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import packpot.household.Freezer;
import packpot.household.Household;
import packpot.household.Kitchen;
import packpot.household.PantryItem;
import packpot.plan.Plan;

/** Mass, volume, pot, bags and freezer. */
final class KitchenCheck {
    private static final double CLOSE = 1e-6;

    private final Household household;
    private final Plan plan;
    private final Map<String, PantryItem> pantry;
    private final List<Finding> findings;

    KitchenCheck(Household household, Plan plan, Map<String, PantryItem> pantry, List<Finding> findings) {
        this.household = household;
        this.plan = plan;
        this.pantry = pantry;
        this.findings = findings;
    }

    void check() {
        double grams = 0;
        for (Plan.Ingredient ingredient : plan.pot()) {
            PantryItem item = pantry.get(ingredient.food());
            grams += item == null ? 0 : ingredient.grams() * item.preparation().yieldCookedOverRaw();
        }
        Kitchen kitchen = household.kitchen();
        Plan.Batch batch = plan.batch();
        double ml = grams / kitchen.mixDensityGramsPerMl();
        same("cooked mass in g", batch.cookedGrams(), grams);
        same("volume in ml", batch.millilitres(), ml);
        double eaten = 0;
        for (Plan.DogPlan dog : plan.dogs()) {
            eaten += (double) dog.potGramsPerDay() * dog.daysFed();
        }
        same("spare grams", batch.spareGrams(), grams - eaten);
        if (eaten > grams + 0.01) {
            find("portions", "take %.0f g, the batch has %.0f g", eaten, grams);
        }
        if (plan.days() != kitchen.days() || plan.mealsPerDay() != kitchen.mealsPerDay()) {
            find("days", "the plan is for %d days, wished are %d", plan.days(), kitchen.days());
        }
        pot(kitchen, ml);
        bags(kitchen, ml, grams);
    }

    private void pot(Kitchen kitchen, double ml) {
        Double pot = kitchen.potMl();
        Integer loads = plan.batch().potLoads();
        if (pot != null) {
            double perLoad = pot * kitchen.potFillShare();
            if (loads == null
                    || loads > kitchen.mostPotLoads()
                    || loads * perLoad < ml * (1 - CLOSE)
                    || (loads - 1) * perLoad >= ml) {
                find("pot", "%.0f ml do not fit the stated loads of %.0f ml", ml, perLoad);
            }
        }
        Double bin = kitchen.binMl();
        if (bin != null && ml > bin * (1 + CLOSE)) {
            find("bin", "%.0f ml do not fit a bin of %.0f ml", ml, bin);
        }
    }

    private void bags(Kitchen kitchen, double ml, double grams) {
        Plan.Batch batch = plan.batch();
        double bagDays = (double) kitchen.days() / batch.bags();
        boolean needed = (batch.bags() - 1) * kitchen.bagUsableMl() < ml
                || (double) kitchen.days() / (batch.bags() - 1) > Math.max(1, kitchen.fridgeDays());
        if (batch.bags() * kitchen.bagUsableMl() < ml * (1 - CLOSE) || !needed) {
            find("bags", "%.0f ml do not make %d bags of %.0f ml", ml, batch.bags(), kitchen.bagUsableMl());
        }
        same("grams per bag", batch.gramsPerBag(), grams / batch.bags());
        Integer most = kitchen.mostBags();
        if (most != null && batch.bags() > most) {
            find("bags", "%d bags, at most %d are wished", batch.bags(), most);
        }
        double frozenDays = Math.max(kitchen.days() - kitchen.fridgeDays(), 0);
        int inFridge = batch.bags() - batch.bagsFrozen();
        if (batch.fridgeDays() != kitchen.fridgeDays()
                || inFridge * bagDays < Math.min(kitchen.fridgeDays(), kitchen.days()) * (1 - CLOSE)
                || (inFridge - 1) * bagDays >= kitchen.days() - frozenDays) {
            find("freezer", "%d bags in the fridge do not feed the first %d days", inFridge, kitchen.fridgeDays());
        }
        Freezer freezer = kitchen.freezer();
        Double stated = batch.freezerMl();
        if (freezer != null) {
            double free = freezer.ratedMl() * freezer.usableShare() - freezer.takenMl();
            double taken = batch.bagsFrozen() * (ml / batch.bags()) / freezer.packingShare();
            Double statedFree = batch.freezerFreeMl();
            if (statedFree == null || Math.abs(statedFree - free) > 1) {
                find("freezer", "free are %.0f ml, the plan says another figure", free);
            }
            if (stated == null || Math.abs(stated - taken) > 1 || taken > free * (1 + CLOSE)) {
                find("freezer", "%d bags take %.0f ml, free are %.0f ml", batch.bagsFrozen(), taken, free);
            }
        }
    }

    private void same(String what, double stated, double reckoned) {
        if (Math.abs(stated - reckoned) > 0.01 + CLOSE * Math.abs(reckoned)) {
            find(what, "is %.2f, the plan says %.2f", reckoned, stated);
        }
    }

    private void find(String where, String format, Object... figures) {
        findings.add(new Finding(where, String.format(Locale.ROOT, format, figures)));
    }
}
