package packpot.plan;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import packpot.household.Freezer;
import packpot.household.Kitchen;
import packpot.household.KitchenFigures;

/**
 * When each bag is frozen, thawed and eaten. Days are counted from the cook day, which is 0.
 *
 * <p>A bag that is eaten on day e is moved to the fridge on the morning of day {@code e - thaw}, so that thawed food is as
 * young as can be; it must have been frozen the night before that at least. Bags that the plan keeps in the fridge stay
 * there, unless they would be older than the days that the kitchen keeps food in the fridge, and the freezer has room. The freezer takes so many
 * bags a night as it can freeze, those eaten first before the others.
 *
 * @param thawDays from the freezer until a bag is ready
 * @param bags in the order in which they are eaten
 * @param perNight bags that are frozen in one night
 * @param hurried whether these are more than the freezer freezes well
 */
record BagSchedule(int thawDays, List<Bag> bags, int perNight, boolean hurried) {
    /** The day of what does not happen. */
    static final int NEVER = -1;

    private static final double CLOSE_GRAMS = 1e-6;
    private static final int HOURS_PER_DAY = 24;

    /**
     * One bag.
     *
     * @param frozenDay the night on which it goes into the freezer
     * @param thawDay the morning on which it goes back into the fridge
     * @param readyDay the day from which it can be fed
     * @param firstDay the day on which it is opened
     * @param lastDay the day on which it is emptied
     */
    record Bag(int number, int frozenDay, int thawDay, int readyDay, int firstDay, int lastDay) {}

    BagSchedule {
        bags = List.copyOf(bags);
    }

    /**
     * The schedule.
     *
     * @param eatenGrams of cooked food on each day
     */
    static BagSchedule of(Plan.Batch batch, List<Double> eatenGrams, Kitchen kitchen, KitchenFigures figures) {
        double hours = Math.max(
                figures.number("thawFridgeHoursMin"),
                figures.number("thawFridgeHoursPerKilogram") * batch.gramsPerBag() / 1000);
        int thaw = (int) Math.ceil(hours / HOURS_PER_DAY - 1e-9);
        int keeps = Math.max(1, kitchen.fridgeDays());
        int inFridge = batch.bags() - batch.bagsFrozen();
        List<int[]> spans = new ArrayList<>();
        List<Integer> toFreeze = new ArrayList<>();
        for (int bag = 0; bag < batch.bags(); bag++) {
            int first = dayOf(eatenGrams, bag * batch.gramsPerBag() + CLOSE_GRAMS);
            int last = first == NEVER ? NEVER : lastDayOf(eatenGrams, (bag + 1) * batch.gramsPerBag());
            spans.add(new int[] {first, last});
            boolean canThaw = first == NEVER || first - thaw >= 1;
            boolean keepsUntilEaten = first != NEVER && last <= keeps;
            if (canThaw && !(bag < inFridge && keepsUntilEaten)) {
                toFreeze.add(bag);
            }
        }
        int mostDays = (int) figures.number("fridgeDaysMax");
        for (int room = room(batch, kitchen); toFreeze.size() > room; ) {
            int next = toFreeze.get(0);
            if (spans.get(next)[0] == NEVER || spans.get(next)[1] > mostDays) {
                break;
            }
            toFreeze.remove(0);
        }
        int careful = perNight(batch, kitchen.freezer(), figures);
        int perNight = Math.max(careful, (toFreeze.size() + keeps - 1) / keeps);
        List<Bag> bags = new ArrayList<>();
        for (int bag = 0; bag < batch.bags(); bag++) {
            int turn = toFreeze.indexOf(bag);
            int night = turn < 0 ? NEVER : turn / perNight;
            int first = spans.get(bag)[0];
            boolean frozen = night != NEVER && (first == NEVER || first - thaw > night);
            int moved = frozen && first != NEVER ? first - thaw : NEVER;
            bags.add(new Bag(
                    bag + 1, frozen ? night : NEVER, moved, moved == NEVER ? 0 : first, first, spans.get(bag)[1]));
        }
        return new BagSchedule(thaw, bags, perNight, careful < perNight);
    }

    /** The most that the days before it is frozen and after it is thawed come to, of any bag that is eaten. */
    int oldestDays() {
        return bags.stream()
                .filter(bag -> bag.firstDay() != NEVER)
                .mapToInt(bag -> ageDays(bag, bag.lastDay()))
                .max()
                .orElse(0);
    }

    /** Days in the fridge, thawing left out, when a bag is fed on a day. */
    static int ageDays(Bag bag, int day) {
        return Math.max(0, bag.frozenDay()) + day - bag.readyDay();
    }

    /** Bags that the freezer has room for. */
    private static int room(Plan.Batch batch, Kitchen kitchen) {
        Freezer freezer = kitchen.freezer();
        return freezer == null
                ? Integer.MAX_VALUE
                : (int) Math.floor(freezer.freeForFoodMl() / batch.millilitresPerBag() + 1e-9);
    }

    private static int perNight(Plan.Batch batch, @Nullable Freezer freezer, KitchenFigures figures) {
        if (freezer == null) {
            return batch.bags();
        }
        double grams = figures.number("freezingRateUpperGramsPerLitreDay") * freezer.ratedMl() / 1000;
        return Math.max(1, (int) Math.floor(grams / batch.gramsPerBag() + 1e-9));
    }

    /** The day on which the batch has been eaten beyond a mass. */
    private static int dayOf(List<Double> eatenGrams, double grams) {
        double eaten = 0;
        for (int day = 0; day < eatenGrams.size(); day++) {
            eaten += eatenGrams.get(day);
            if (eaten > grams) {
                return day;
            }
        }
        return NEVER;
    }

    /** The day on which the batch has been eaten down to a mass, or the last on which anything is. */
    private static int lastDayOf(List<Double> eatenGrams, double grams) {
        double eaten = 0;
        for (int day = 0; day < eatenGrams.size(); day++) {
            eaten += eatenGrams.get(day);
            if (eaten >= grams - CLOSE_GRAMS) {
                return day;
            }
        }
        return eatenGrams.size() - 1;
    }
}
