package packpot.sheets;

import packpot.plan.FeedingCalendar;
import packpot.plan.Plan;
import packpot.words.Sentence;
import packpot.words.Texts;

/** What is to be done on a day, in the language of the sheets. */
final class EventWords {

    private EventWords() {}

    /** The sentence; shorter than that of the calendar where the sheets say the rest elsewhere. */
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
            case BOWL -> sheets.texts().say(bowl(event.title()));
            case CHANGE_OF_FOOD, DOG -> sheets.texts().say(event.title());
        };
    }

    /** For which dogs, and which dose. */
    private static Sentence bowl(Sentence title) {
        Object dogs = title.values().get(0);
        return Sentence.of(
                "event.bowl",
                dogs instanceof Sentence.And and ? and.items() : dogs,
                title.values().get(1));
    }
}
