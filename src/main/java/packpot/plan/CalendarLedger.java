package packpot.plan;

import java.util.ArrayList;
import java.util.List;

/** Where the food of a batch is at the end of each day. */
final class CalendarLedger {

    private CalendarLedger() {}

    static List<FeedingCalendar.Day> of(Plan plan, BagSchedule schedule, List<Double> eatenGrams) {
        List<FeedingCalendar.Day> days = new ArrayList<>();
        double left = plan.batch().cookedGrams();
        for (int day = 0; day < plan.days(); day++) {
            double eaten = eatenGrams.get(day);
            left -= eaten;
            int freezer = 0;
            int thawing = 0;
            int oldest = 0;
            for (BagSchedule.Bag bag : schedule.bags()) {
                boolean moved = bag.thawDay() != BagSchedule.NEVER && bag.thawDay() <= day;
                boolean frozen = bag.frozenDay() != BagSchedule.NEVER && bag.frozenDay() <= day;
                freezer += frozen && !moved ? 1 : 0;
                thawing += moved && bag.readyDay() > day ? 1 : 0;
                boolean eatenToday =
                        bag.firstDay() != BagSchedule.NEVER && bag.firstDay() <= day && bag.lastDay() >= day;
                oldest = Math.max(oldest, eatenToday ? BagSchedule.ageDays(bag, day) : 0);
            }
            days.add(new FeedingCalendar.Day(
                    plan.start().plusDays(day),
                    eaten,
                    left - (freezer + thawing) * plan.batch().gramsPerBag(),
                    thawing,
                    freezer,
                    oldest));
        }
        return days;
    }
}
