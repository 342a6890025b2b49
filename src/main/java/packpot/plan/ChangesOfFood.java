package packpot.plan;

import java.util.ArrayList;
import java.util.List;
import packpot.dog.Dog;
import packpot.dog.Transition;
import packpot.household.Household;
import packpot.household.KitchenFigures;
import packpot.units.Show;
import packpot.words.Amount;
import packpot.words.Sentence;

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

    private Sentence title(Plan.DogPlan portion, Dog dog, Transition change, int day, int end) {
        double share = change.shareOn(day);
        int grams = (int) Eaten.grams(portion, dog, day);
        List<String> meals = Rounding.meals(grams, plan.mealsPerDay()).stream()
                .map(String::valueOf)
                .toList();
        Amount all = new Amount(Show.grams(grams));
        Sentence food = meals.size() == 1
                ? Sentence.of("todo.grams", all)
                : Sentence.of("todo.gramsByMeal", all, new Amount(String.join(" + ", meals)));
        if (share >= 1) {
            return Sentence.of("todo.fedAlone", portion.name(), food);
        }
        return Sentence.of(
                "todo.newFood", portion.name(), end - day, food, percent(share), percent(1 - share), change.from());
    }

    private List<Sentence> details(Plan.DogPlan portion, double share, boolean first) {
        List<Sentence> details = new ArrayList<>();
        if (!portion.additions().isEmpty() && share >= 1) {
            details.add(Sentence.of("todo.additionsBegin"));
        }
        if (first && share < 1) {
            details.add(Sentence.of("todo.goBack", (int) figures.number("transitionPauseDays", "max")));
            if (!portion.additions().isEmpty()) {
                details.add(Sentence.of("todo.noAdditions"));
            }
        }
        return details;
    }

    /** What is left of the batch for that, and where the figures are from. */
    List<Sentence> notes() {
        List<Sentence> notes = new ArrayList<>();
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
            Amount left = new Amount(Show.weight(less, household.units()));
            notes.add(
                    change.fullDay() < plan.days()
                            ? Sentence.of("know.eatsLess", portion.name(), left, change.from())
                            : Sentence.of(
                                    "know.eatsLessOnward",
                                    portion.name(),
                                    left,
                                    change.from(),
                                    household.start().plusDays(change.fullDay())));
        }
        if (!notes.isEmpty()) {
            notes.add(Sentence.of("know.changeOfFood"));
        }
        return notes;
    }

    private static Amount percent(double share) {
        return new Amount(Math.round(share * 100) + " %");
    }
}
