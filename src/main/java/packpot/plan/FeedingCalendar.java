package packpot.plan;

import java.time.LocalDate;
import java.util.List;
import packpot.words.Sentence;

/**
 * What is to be done on which day for one plan, and where its food is on each of them. Pure data, made by
 * {@link CalendarBuilder}. Bags are numbered from 1 in the order in which they are eaten.
 *
 * @param start cook day, and the first day fed
 * @param days that are fed
 * @param bags of the batch
 * @param gramsPerBag of cooked food
 * @param events in the order of their dates
 * @param ledger one line for every day fed
 * @param leftGrams of cooked food that nobody eats in these days
 * @param notes what a person must know of this calendar
 */
public record FeedingCalendar(
        String household,
        LocalDate start,
        int days,
        int bags,
        double gramsPerBag,
        List<Event> events,
        List<Day> ledger,
        double leftGrams,
        List<Sentence> notes) {

    public FeedingCalendar {
        events = List.copyOf(events);
        ledger = List.copyOf(ledger);
        notes = List.copyOf(notes);
    }

    /** What an event is about, in the order in which the events of one day are told. */
    public enum Kind {
        SHOP,
        COOK,
        NEXT_COOK,
        FREEZE,
        THAW,
        CHANGE_OF_FOOD,
        BOWL,
        WEIGH,
        DOG,
        LAST_DAY
    }

    /**
     * Something to do or to know on one day.
     *
     * @param about the dog, or empty where it is about the whole household
     * @param title what to do, in one sentence
     * @param details further sentences
     * @param bags numbers of the bags that are filled, frozen or moved; empty for other kinds
     */
    public record Event(
            LocalDate date, Kind kind, String about, Sentence title, List<Sentence> details, List<Integer> bags) {
        public Event {
            details = List.copyOf(details);
            bags = List.copyOf(bags);
        }
    }

    /**
     * Where the food is at the end of one day.
     *
     * @param eatenGrams of cooked food on this day
     * @param fridgeGrams that are ready to be fed, or wait to be frozen
     * @param thawingBags in the fridge and not ready yet
     * @param freezerBags in the freezer
     * @param oldestDays most days that food eaten on this day has been in the fridge since it was cooked or thawed, the
     *     days before it was frozen included
     */
    public record Day(
            LocalDate date, double eatenGrams, double fridgeGrams, int thawingBags, int freezerBags, int oldestDays) {}

    /** The last day that this batch feeds. */
    public LocalDate lastDay() {
        return start.plusDays(days - 1L);
    }
}
