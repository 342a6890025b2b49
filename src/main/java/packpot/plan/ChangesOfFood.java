package packpot.plan;

import java.util.ArrayList;
import java.util.List;
import packpot.dog.Dog;
import packpot.dog.Transition;
import packpot.household.Household;
import packpot.household.KitchenFigures;
import packpot.units.Show;

/**
 * Dogs that go over to the batch from another food: what they get on which day. Their bowl additions begin when they are
 * fed the batch alone, since the other food is taken to bring its own.
 */
final class ChangesOfFood {
    private final Plan plan;
    private final Household household;
    private final KitchenFigures figures;

    ChangesOfFood(Plan plan, Household household, KitchenFigures figures) {
        this.plan = plan;
        this.household = household;
        this.figures = figures;
    }

    /** Whether a dog is there and is fed the batch alone on a day. */
    boolean isFedAlone(Plan.DogPlan portion, int day) {
        Dog dog = Eaten.dog(household, portion.name());
        return dog.course().isThere(day) && dog.course().newShareOn(day) >= 1;
    }

    /** One event for each step. */
    List<FeedingCalendar.Event> events() {
        List<FeedingCalendar.Event> events = new ArrayList<>();
        for (Plan.DogPlan portion : plan.dogs()) {
            Dog dog = Eaten.dog(household, portion.name());
            Transition change = dog.course().transition();
            if (change != null) {
                steps(portion, dog, change, events);
            }
        }
        return events;
    }

    private void steps(Plan.DogPlan portion, Dog dog, Transition change, List<FeedingCalendar.Event> events) {
        for (int day = 0; day <= Math.min(change.fullDay(), plan.days() - 1); day++) {
            double share = change.shareOn(day);
            boolean first = day == portion.firstDay() - 1;
            boolean begins = first || share > change.shareOn(day - 1);
            if (begins && dog.course().isThere(day)) {
                int end = day;
                while (share < 1
                        && end + 1 < plan.days()
                        && dog.course().isThere(end + 1)
                        && change.shareOn(end + 1) <= share) {
                    end++;
                }
                events.add(new FeedingCalendar.Event(
                        household.start().plusDays(day),
                        FeedingCalendar.Kind.CHANGE_OF_FOOD,
                        portion.name(),
                        title(portion, dog, change, day, end),
                        details(portion, share, first),
                        List.of()));
            }
        }
    }

    private String title(Plan.DogPlan portion, Dog dog, Transition change, int day, int end) {
        double share = change.shareOn(day);
        int grams = (int) Eaten.grams(portion, dog, day);
        List<String> meals = Rounding.meals(grams, plan.mealsPerDay()).stream()
                .map(String::valueOf)
                .toList();
        String food = Show.grams(grams) + " of the batch a day"
                + (meals.size() == 1 ? "" : " (" + String.join(" + ", meals) + ")");
        if (share >= 1) {
            return portion.name() + " is fed the batch alone from today, " + food + ".";
        }
        return portion.name() + ", " + (day == end ? "today" : "today and the next " + days(end - day)) + ": "
                + food + ", " + percent(share) + " of its full portion, and " + percent(1 - share) + " of its usual "
                + change.from() + ".";
    }

    private List<String> details(Plan.DogPlan portion, double share, boolean first) {
        List<String> details = new ArrayList<>();
        if (!portion.additions().isEmpty() && share >= 1) {
            details.add("Its additions to the bowl begin today.");
        }
        if (first && share < 1) {
            details.add("Go back one step for " + days((int) figures.number("transitionPauseDays", "max"))
                    + " if it vomits, has loose stool or refuses.");
            if (!portion.additions().isEmpty()) {
                details.add("No additions to its bowl until it is fed the batch alone.");
            }
        }
        return details;
    }

    /** What is left of the batch for that, and where the figures are from. */
    List<String> notes() {
        List<String> notes = new ArrayList<>();
        for (Plan.DogPlan portion : plan.dogs()) {
            Dog dog = Eaten.dog(household, portion.name());
            Transition change = dog.course().transition();
            if (change == null) {
                continue;
            }
            double less = 0;
            for (int day = 0; day < plan.days(); day++) {
                less += dog.course().isThere(day) ? portion.potGramsPerDay() - Eaten.grams(portion, dog, day) : 0;
            }
            notes.add(portion.name() + " eats " + Show.weight(less, household.units())
                    + " less of this batch than it is planned for while it goes over from " + change.from()
                    + "; so much is left at the end, and is fed first from the next cook day on"
                    + (change.fullDay() < plan.days()
                            ? ""
                            : "; it is not fed the batch alone before "
                                    + household.start().plusDays(change.fullDay()) + ", in the next batch"));
        }
        if (!notes.isEmpty()) {
            notes.add(
                    "a change of food goes by a quarter, a half and three quarters of the new food, in ten days unless"
                            + " the scenario says otherwise (S-TRANS); that additions to the bowl wait until its end is common"
                            + " practice, no source; shares are of its portion, so of its energy");
        }
        return notes;
    }

    private static String days(int days) {
        return days == 1 ? "day" : days + " days";
    }

    private static String percent(double share) {
        return Math.round(share * 100) + " %";
    }
}
