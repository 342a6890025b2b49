package packpot.household;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import packpot.units.Price;

/** Reads "horizon". */
final class HorizonReader {
    private static final int MOST_VEGETABLES = 20;

    private final KitchenFigures figures;
    private final JsonNode usual;
    private final LocalDate start;
    private final String currency;
    private final Kitchen kitchen;
    private final Notes notes;

    HorizonReader(
            KitchenFigures figures, JsonNode usual, LocalDate start, String currency, Kitchen kitchen, Notes notes) {
        this.figures = figures;
        this.usual = usual;
        this.start = start;
        this.currency = currency;
        this.kitchen = kitchen;
        this.notes = notes;
    }

    /**
     * Reads it; without one, cook days are as far apart as the kitchen's days allow.
     *
     * @param asked weeks that go before those of the scenario; null for these
     */
    Horizon read(@Nullable Fields given, @Nullable Integer asked) {
        Fields fields = given == null ? Fields.none("horizon") : given;
        Integer own = fields.whole("weeks", 1, Horizon.MOST_WEEKS);
        Integer weeks = asked == null ? own : asked;
        if (weeks == null) {
            weeks = usual.path("weeks").intValue();
            notes.filled("taken.weeks", weeks);
        }
        int days = 7 * weeks;
        List<Horizon.FrozenMeals> frozen = frozen(fields, days);
        int first = frozen.stream().mapToInt(Horizon.FrozenMeals::days).sum();
        Set<DayOfWeek> cookOn = cookOn(fields);
        Horizon.Choice choice = fields.choice(
                "choose",
                List.of(Horizon.Choice.FEWEST, Horizon.Choice.CHEAPEST),
                c -> c.name().toLowerCase(Locale.ROOT));
        double price = price(fields);
        List<Integer> cookDays = fields.has("cookDays") ? cookDays(fields, first, days) : List.of();
        boolean chosen = !cookOn.isEmpty() || choice != null;
        if (fields.has("cookDays") && chosen) {
            fields.fault(
                    "cookDays",
                    "stands beside \"cookOn\" or \"choose\"; give the cook days, or say on which days you can cook");
        }
        if (choice == null && chosen) {
            notes.filled("taken.cheapestCookDays");
        }
        if (cookDays.isEmpty() && !chosen) {
            cookDays = every(first, days);
            notes.filled("taken.evenCookDays", kitchen.days());
        }
        Horizon.Variety variety = variety(fields.object("variety"));
        fields.end();
        return new Horizon(
                days,
                cookDays,
                cookOn.isEmpty() ? EnumSet.allOf(DayOfWeek.class) : cookOn,
                chosen ? (choice == null ? Horizon.Choice.CHEAPEST : choice) : Horizon.Choice.FIXED,
                price,
                frozen,
                variety);
    }

    /** As few cook days as the kitchen's days allow, spread evenly: nobody cooks for the one day that is left over. */
    private List<Integer> every(int first, int days) {
        int fed = days - first;
        int count = (fed + kitchen.days() - 1) / kitchen.days();
        List<Integer> all = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            all.add(first + i * fed / count);
        }
        return all;
    }

    private int mostDays() {
        return (int) figures.freezerDays();
    }

    private List<Integer> cookDays(Fields fields, int first, int days) {
        List<Integer> all = new ArrayList<>();
        for (String text : fields.texts("cookDays")) {
            LocalDate date = fields.dateOf("cookDays", text);
            if (date == null) {
                continue;
            }
            int day = (int) ChronoUnit.DAYS.between(start, date);
            int before = all.isEmpty() ? -1 : all.get(all.size() - 1);
            if (!all.isEmpty() && day <= before) {
                fields.fault(
                        "cookDays",
                        text + " does not come after " + start.plusDays(before) + "; expected each cook day once, in"
                                + " order");
            } else if (all.isEmpty() && day < first) {
                fields.fault(
                        "cookDays",
                        text + " comes before the meals in the freezer are eaten, on " + start.plusDays(first)
                                + "; expected that day as the first cook day, or fewer days in \"frozen\"");
            } else if (all.isEmpty() && day > first) {
                fields.fault(
                        "cookDays",
                        text + " is the first cook day, and from " + start.plusDays(first)
                                + " on there is nothing to feed; expected " + start.plusDays(first)
                                + ", or another \"start\"");
            } else if (day >= days) {
                fields.fault(
                        "cookDays",
                        text + " comes after the " + days / 7 + " weeks that are planned, which end on "
                                + start.plusDays(days - 1L) + "; expected an earlier day, or more \"weeks\"");
            }
            all.add(day);
        }
        for (int i = 0; i < all.size(); i++) {
            int end = i + 1 < all.size() ? all.get(i + 1) : days;
            if (end - all.get(i) > mostDays()) {
                fields.fault(
                        "cookDays",
                        "the batch of " + start.plusDays(all.get(i)) + " would have to feed " + (end - all.get(i))
                                + " days, and frozen food keeps " + mostDays() + "; expected a cook day in between");
            }
        }
        if (all.isEmpty()
                && fields.raw("cookDays").isArray()
                && fields.raw("cookDays").isEmpty()) {
            fields.fault("cookDays", "names no day; expected dates such as [\"" + start + "\"]");
        }
        return all;
    }

    private static Set<DayOfWeek> cookOn(Fields fields) {
        Set<DayOfWeek> days = EnumSet.noneOf(DayOfWeek.class);
        Map<String, DayOfWeek> names = new LinkedHashMap<>();
        for (DayOfWeek day : DayOfWeek.values()) {
            names.put(day.name().toLowerCase(Locale.ROOT), day);
        }
        for (String text : fields.texts("cookOn")) {
            DayOfWeek day = names.get(text.toLowerCase(Locale.ROOT));
            if (day == null) {
                fields.fault(
                        "cookOn",
                        "read \"" + text + "\", expected a day of the week such as \"saturday\""
                                + Nearest.advice(text, names.keySet(), 1));
            } else {
                days.add(day);
            }
        }
        return days;
    }

    private double price(Fields fields) {
        String text = fields.text("pricePerSession");
        Price price = text == null ? null : fields.parsed("pricePerSession", text, t -> Price.parse(t, currency));
        if (price != null && price.per() != null) {
            fields.fault("pricePerSession", "read \"" + text + "\", expected an amount of money such as \"$15\"");
        }
        return price == null ? 0 : price.amount();
    }

    private List<Horizon.FrozenMeals> frozen(Fields horizon, int days) {
        List<Horizon.FrozenMeals> all = new ArrayList<>();
        int eaten = 0;
        int bags = 0;
        for (Fields fields : horizon.objects("frozen")) {
            String what = fields.requiredText("what", "what it is, such as \"beef and barley\"");
            LocalDate made = fields.date("made");
            Integer feeds = fields.whole("days", 1, 7 * Horizon.MOST_WEEKS);
            Integer count = fields.whole("bags", 1, 1000);
            missing(fields, "made", "the day on which it was cooked, such as \"" + start.minusDays(7) + "\"");
            missing(fields, "days", "how many days it feeds all dogs");
            missing(fields, "bags", "how many bags that are");
            if (made != null && made.isAfter(start)) {
                fields.fault("made", "read " + made + ", which is after the first day, " + start);
            }
            if (made != null && feeds != null) {
                long age = ChronoUnit.DAYS.between(made, start) + eaten + feeds;
                if (age > mostDays()) {
                    fields.fault(
                            "made",
                            "it would be " + age + " days old when the last of it is eaten, and frozen food keeps "
                                    + mostDays() + " days; leave it out, or eat it sooner");
                }
            }
            fields.end();
            eaten += feeds == null ? 0 : feeds;
            bags += count == null ? 0 : count;
            if (what != null && made != null && feeds != null && count != null) {
                all.add(new Horizon.FrozenMeals(what, (int) ChronoUnit.DAYS.between(start, made), feeds, count));
            }
        }
        if (eaten >= days) {
            horizon.fault(
                    "frozen",
                    "feeds " + eaten + " days, and " + days / 7 + " weeks are planned; expected more \"weeks\"");
        }
        Freezer freezer = kitchen.freezer();
        if (freezer != null && bags * kitchen.bagUsableMl() > freezer.freeForFoodMl()) {
            horizon.fault(
                    "frozen",
                    bags + " bags do not fit the freezer, which has room for "
                            + (int) (freezer.freeForFoodMl() / kitchen.bagUsableMl())
                            + "; correct the bags, or what the freezer holds beside them");
        }
        return all;
    }

    private static void missing(Fields fields, String name, String expected) {
        if (!fields.has(name)) {
            fields.fault(name, "is missing; expected " + expected);
        }
    }

    private Horizon.Variety variety(@Nullable Fields fields) {
        if (fields == null) {
            return Horizon.Variety.NONE;
        }
        boolean changes = fields.flag("mainProteinChanges", false);
        Integer vegetables = fields.whole("vegetables", 1, MOST_VEGETABLES);
        Double extra = fields.share("atMostExtra", 1);
        fields.end();
        return new Horizon.Variety(
                changes,
                vegetables == null ? 0 : vegetables,
                usual.path("newVegetableShare").doubleValue(),
                extra == null ? usual.path("varietyMostExtraShare").doubleValue() : extra);
    }
}
