package packpot.sheets;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.plan.FeedingCalendar;
import packpot.words.Amount;
import packpot.words.Sentence;
import packpot.words.Texts;

/** The labels of a batch's bags, in the order in which the bags are eaten. */
public final class Labels {

    private Labels() {}

    /**
     * One label.
     *
     * @param number of the bag
     * @param frozenOn the night on which it goes into the freezer; null for a bag that is never frozen
     * @param thawOn the morning on which it leaves the freezer; null for a bag that is never frozen
     * @param daysOnceThawed for which it then keeps; nights that it waited for the freezer are taken off
     * @param useBy the last day on which it may be fed, for a frozen bag as long as it stays frozen
     * @param code a QR code of the same words, as a PNG in a data URL
     */
    public record Label(
            int number,
            @Nullable LocalDate frozenOn,
            @Nullable LocalDate thawOn,
            int daysOnceThawed,
            LocalDate useBy,
            String code) {}

    /** One label for each bag. */
    public static List<Label> of(SheetSource source, Texts texts) {
        FeedingCalendar calendar = source.calendar();
        var figures = source.knowledge().kitchen();
        Map<Integer, LocalDate> thaw = new HashMap<>();
        Map<Integer, LocalDate> frozen = new HashMap<>();
        for (FeedingCalendar.Event event : calendar.events()) {
            if (event.kind() == FeedingCalendar.Kind.THAW) {
                event.bags().forEach(bag -> thaw.put(bag, event.date()));
            } else if (event.kind() == FeedingCalendar.Kind.FREEZE) {
                event.bags().forEach(bag -> frozen.put(bag, event.date()));
            }
        }
        int fridgeDays = Math.max(1, source.household().kitchen().fridgeDays());
        int onceThawed = (int) figures.number("daysAfterFridgeThawDefault");
        int freezerDays = (int) figures.freezerDays();
        List<Label> labels = new ArrayList<>();
        for (int bag = 1; bag <= calendar.bags(); bag++) {
            LocalDate until = frozen.containsKey(bag)
                    ? calendar.start().plusDays(freezerDays)
                    : calendar.start().plusDays(fridgeDays);
            LocalDate frozenOn = frozen.get(bag);
            int waited = frozenOn == null ? 0 : (int) ChronoUnit.DAYS.between(calendar.start(), frozenOn);
            labels.add(new Label(
                    bag,
                    frozenOn,
                    thaw.get(bag),
                    Math.max(1, onceThawed - waited),
                    until,
                    QrCode.png(words(source, texts, bag, until))));
        }
        return labels;
    }

    /** What the code says: plain words that any telephone shows. */
    static String words(SheetSource source, Texts texts, int bag, LocalDate useBy) {
        FeedingCalendar calendar = source.calendar();
        return texts.say(Sentence.of(
                "labels.coded",
                bag,
                calendar.bags(),
                calendar.start().toString(),
                useBy.toString(),
                new Amount(Math.round(calendar.gramsPerBag()) + " g")));
    }
}
