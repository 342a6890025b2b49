package packpot.sheets;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import packpot.plan.FeedingCalendar;
import packpot.plan.Plan;

/** What is to be done on a day, in the language of the sheets. */
final class EventWords {

    private EventWords() {}

    /** The sentence; that of the calendar where the language has none of its own. */
    static String of(Sheets sheets, FeedingCalendar.Event event) {
        Plan.Batch batch = sheets.plan().batch();
        String bags = Texts.runs(event.bags());
        int count = event.bags().size();
        return switch (event.kind()) {
            case SHOP ->
                sheets.say("event.shop", sheets.money(sheets.plan().cost().atTheTill()));
            case COOK ->
                sheets.say(
                        "event.cook",
                        sheets.weight(batch.cookedGrams()),
                        batch.bags(),
                        sheets.grams(batch.gramsPerBag()),
                        batch.bags() - batch.bagsFrozen());
            case NEXT_COOK -> sheets.say("event.next");
            case FREEZE -> sheets.say("event.freeze", bags, count);
            case THAW -> sheets.say("event.thaw", bags, count);
            case WEIGH -> sheets.say("event.weigh", event.about());
            case LAST_DAY -> sheets.say("event.last");
            case BOWL -> bowls(sheets, event);
            case CHANGE_OF_FOOD, DOG -> event.title();
        };
    }

    private static String bowls(Sheets sheets, FeedingCalendar.Event event) {
        int day = (int) java.time.temporal.ChronoUnit.DAYS.between(sheets.plan().start(), event.date()) + 1;
        Map<String, List<String>> dogs = new LinkedHashMap<>();
        for (Plan.DogPlan dog : sheets.plan().dogs()) {
            for (Plan.Addition addition : dog.additions()) {
                boolean meant = event.title().contains(addition.label() + ", " + addition.dose());
                if (meant && addition.onDays().contains(day)) {
                    dogs.computeIfAbsent(
                                    sheets.food(addition.food()) + ", "
                                            + sheets.texts().amount(addition.dose()),
                                    key -> new ArrayList<>())
                            .add(dog.name());
                }
            }
        }
        List<String> sentences = new ArrayList<>();
        dogs.forEach((dose, names) -> sentences.add(sheets.say("event.bowl", String.join(", ", names), dose)));
        return sentences.isEmpty() ? event.title() : String.join(" ", sentences);
    }
}
