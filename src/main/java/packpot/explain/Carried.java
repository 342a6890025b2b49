package packpot.explain;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.food.Keeps;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.plan.Plan;

/**
 * What an old plan leaves to a new one when it is bought or cooked already.
 *
 * @param paid money that is spent, whatever comes
 * @param fedDays days that were fed from the old batch before the change
 * @param coveredDays days after the change that what is left of the old batch still feeds; it goes by energy, and is fed
 *     first
 * @param daysToCook days that a new batch must feed; 0 when the old one lasts
 * @param cookAgain the day of the new batch, or the first one after the old plan
 * @param portions what each dog gets of the old batch until then; empty when none is cooked
 * @param notFed dogs that must not get the old batch
 * @param warnings about the old batch before the household as it is now, in sentences
 * @param waste what of the bought food spoils unused
 */
public record Carried(
        double paid,
        int fedDays,
        int coveredDays,
        int daysToCook,
        LocalDate cookAgain,
        List<Portion> portions,
        List<String> notFed,
        List<String> warnings,
        List<Waste> waste) {

    /** What sticks to the pack is no waste. */
    private static final double NOTICEABLE_GRAMS = 30;

    public Carried {
        portions = List.copyOf(portions);
        notFed = List.copyOf(notFed);
        warnings = List.copyOf(warnings);
        waste = List.copyOf(waste);
    }

    /**
     * What a dog gets of the old batch.
     *
     * @param gramsPerDay cooked food
     * @param kcalPerDay that this and its additions bring
     */
    public record Portion(String dog, int gramsPerDay, double kcalPerDay) {}

    /**
     * Bought food that nobody eats.
     *
     * @param grams edible
     * @param worth what was paid for it, where it was bought
     */
    public record Waste(String food, String label, double grams, double worth) {}

    /** After the shopping and before the cooking. */
    static Carried bought(Plan old) {
        return new Carried(
                old.cost().atTheTill(), 0, 0, old.days(), old.start(), List.of(), List.of(), List.of(), List.of());
    }

    /**
     * After the cooking: how long what is left of the old batch feeds the household as it is now, each dog with the portion
     * that brings it its energy of today.
     */
    static Carried cooked(Planner.Result.Planned old, Household changed, Knowledge knowledge, int fedDays) {
        Plan plan = old.plan();
        OldBatch batch = new OldBatch(old, changed, knowledge, fedDays);
        List<Portion> portions = batch.portions();
        int lasts = batch.lasts(portions);
        int planned = changed.kitchen().days() - fedDays;
        // What lasts longer than was planned is told in full.
        return new Carried(
                plan.cost().atTheTill(),
                fedDays,
                lasts,
                Math.max(0, planned - lasts),
                plan.start().plusDays((long) fedDays + lasts),
                portions,
                batch.notFed(),
                batch.warnings(portions),
                List.of());
    }

    /** The changed household with what was bought in the house. */
    static Household afterBuying(Household changed, Plan old) {
        Map<String, Plan.Purchase> bought = purchases(old);
        return changed.withPantry(changed.pantry().stream()
                .map(item -> item.withOnHand(
                        item.onHandGrams() + boughtGrams(bought.get(item.food().id()))))
                .toList());
    }

    /** The changed household with what the cooking left: opened food that spoils is not counted. */
    static Household afterCooking(Household changed, Plan old) {
        Map<String, Plan.Purchase> bought = purchases(old);
        return changed.withPantry(changed.pantry().stream()
                .map(item -> {
                    Plan.Purchase line = bought.get(item.food().id());
                    if (line == null) {
                        return item;
                    }
                    boolean spoils = item.food().kitchen().keeps() == Keeps.PERISHABLE
                            && !item.food().isSupplement();
                    double left = Math.max(0, item.onHandGrams() - line.fromHandGrams());
                    return item.withOnHand(left + (spoils ? 0 : line.leftOverGrams()))
                            .withMustUse(Math.min(left, Math.max(0, item.mustUseGrams() - line.usedGrams())));
                })
                .toList());
    }

    private static Map<String, Plan.Purchase> purchases(Plan plan) {
        Map<String, Plan.Purchase> purchases = new HashMap<>();
        plan.shopping().forEach(line -> purchases.put(line.food(), line));
        return purchases;
    }

    /** Edible grams that a line of the shopping list brings into the house. */
    private static double boughtGrams(Plan.@Nullable Purchase line) {
        return line == null ? 0 : line.usedGrams() - line.fromHandGrams() + line.leftOverGrams();
    }

    /** The same with what of the bought food spoils; without a new plan that is all of what is left over. */
    Carried withWaste(Plan old, Household now, @Nullable Plan next) {
        Map<String, PantryItem> items = new HashMap<>();
        now.pantry().forEach(item -> items.put(item.food().id(), item));
        Map<String, Plan.Purchase> used = next == null ? Map.of() : purchases(next);
        List<Waste> wasted = new ArrayList<>();
        for (Plan.Purchase line : old.shopping()) {
            PantryItem item = items.get(line.food());
            double bought = boughtGrams(line);
            if (item == null
                    || bought <= 0
                    || item.food().isSupplement()
                    || item.food().kitchen().keeps() != Keeps.PERISHABLE) {
                continue;
            }
            Plan.Purchase use = used.get(line.food());
            double unused = daysToCook == 0 || coveredDays + fedDays > 0
                    ? line.leftOverGrams()
                    : Math.min(bought, Math.max(0, item.onHandGrams() - (use == null ? 0 : use.usedGrams())));
            if (unused > NOTICEABLE_GRAMS) {
                wasted.add(new Waste(line.food(), line.label(), unused, line.pays() * unused / bought));
            }
        }
        return new Carried(paid, fedDays, coveredDays, daysToCook, cookAgain, portions, notFed, warnings, wasted);
    }
}
