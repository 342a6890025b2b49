package packpot.sheets;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.audit.DogAudit;
import packpot.audit.NutrientLine;
import packpot.dog.Dog;
import packpot.food.FoodEnergy;
import packpot.plan.FeedingCalendar;
import packpot.plan.Plan;

/** What is drawn, in figures; the templates draw it. Positions are shares of the width or height of the drawing. */
public final class Charts {
    /** Weeks over which a dog that changes is drawn. */
    private static final int WEEKS = 12;

    private static final int DAYS_PER_WEEK = 7;
    /** Ends of the scale of a nutrient chart, in times the minimum. */
    private static final double LEAST_TIMES = 0.5;

    private static final double MOST_TIMES = 50;

    private Charts() {}

    /**
     * A bar.
     *
     * @param share of the longest bar
     */
    public record Bar(String label, double value, double share) {}

    /**
     * A nutrient of a dog on a scale of times the minimum, which is logarithmic.
     *
     * @param index in the dog's audit
     * @param minimum where it lies
     * @param got where what the dog gets lies
     * @param maximum where it lies; null where there is none, or it is beyond the scale
     */
    public record Band(
            int index,
            String label,
            double minimum,
            double got,
            @Nullable Double maximum) {}

    /**
     * A day of the calendar.
     *
     * @param stacked parts from the ground up, as shares of the height
     */
    public record Column(FeedingCalendar.Day day, List<Double> stacked) {
        public Column {
            stacked = List.copyOf(stacked);
        }
    }

    /**
     * A dog in one of the coming weeks.
     *
     * @param weight share of the largest
     * @param energy share of the largest
     */
    public record Week(int week, double weightKg, double kcalPerDay, double weight, double energy) {}

    /** Energy of the whole batch by food, the largest first, in kcal. */
    public static List<Bar> energy(SheetSource source) {
        Map<String, Double> grams = new LinkedHashMap<>();
        source.plan().pot().forEach(each -> grams.merge(each.food(), each.grams(), Double::sum));
        source.plan()
                .dogs()
                .forEach(dog -> dog.additions()
                        .forEach(addition -> grams.merge(addition.food(), addition.gramsInBatch(), Double::sum)));
        Map<String, Double> kcal = new LinkedHashMap<>();
        FoodEnergy energy = source.knowledge().foodEnergy();
        FoodEnergy.Method method = source.household().foodEnergy();
        grams.forEach((food, amount) -> kcal.put(
                food, amount * energy.kcalPerGram(source.item(food).food().composition(), method)));
        return bars(kcal, 1);
    }

    /** Where the money goes: what is paid for each food, the largest first. */
    public static List<Bar> money(SheetSource source) {
        Map<String, Double> paid = new LinkedHashMap<>();
        source.plan().shopping().forEach(line -> paid.merge(line.food(), line.pays(), Double::sum));
        return bars(paid, 0.005);
    }

    private static List<Bar> bars(Map<String, Double> values, double noticeable) {
        double most =
                values.values().stream().mapToDouble(Double::doubleValue).max().orElse(1);
        return values.entrySet().stream()
                .filter(entry -> entry.getValue() >= noticeable)
                .map(entry -> new Bar(entry.getKey(), entry.getValue(), entry.getValue() / most))
                .sorted(Comparator.comparingDouble(bar -> -bar.value()))
                .toList();
    }

    /** The nutrients of a dog that have a minimum. */
    public static List<Band> nutrients(DogAudit dog) {
        List<Band> bands = new ArrayList<>();
        for (int i = 0; i < dog.nutrients().size(); i++) {
            NutrientLine line = dog.nutrients().get(i);
            Double least = line.minimum();
            if (least == null || least <= 0) {
                continue;
            }
            Double most = line.maximum();
            double times = line.got() / least;
            bands.add(new Band(
                    i,
                    line.key(),
                    place(1),
                    place(times),
                    most == null || most / least > MOST_TIMES ? null : place(most / least)));
        }
        return bands;
    }

    /** Where so many times the minimum lies on the scale. */
    public static double place(double times) {
        double kept = Math.min(MOST_TIMES, Math.max(LEAST_TIMES, times));
        return Math.log(kept / LEAST_TIMES) / Math.log(MOST_TIMES / LEAST_TIMES);
    }

    /** Bags in the freezer and thawing, day by day; the whole height is {@link #mostBags}. */
    public static List<Column> bags(SheetSource source) {
        double most = mostBags(source);
        return source.calendar().ledger().stream()
                .map(day -> new Column(day, List.of(day.freezerBags() / most, day.thawingBags() / most)))
                .toList();
    }

    /** The most bags that are frozen or thawing on one day. */
    public static int mostBags(SheetSource source) {
        return Math.max(
                1,
                source.calendar().ledger().stream()
                        .mapToInt(day -> day.freezerBags() + day.thawingBags())
                        .max()
                        .orElse(1));
    }

    /** Millilitres that one frozen bag takes, air between the bags included; null where the kitchen has no freezer. */
    public static @Nullable Double millilitresPerBag(SheetSource source) {
        Plan.Batch batch = source.plan().batch();
        Double taken = batch.freezerMl();
        return taken == null || batch.bagsFrozen() == 0 ? null : taken / batch.bagsFrozen();
    }

    /** The freezer's volume that bags take on its fullest day. */
    public static double mostFreezerMillilitres(SheetSource source) {
        Double each = millilitresPerBag(source);
        return each == null
                ? 0
                : each
                        * source.calendar().ledger().stream()
                                .mapToInt(FeedingCalendar.Day::freezerBags)
                                .max()
                                .orElse(0);
    }

    /** What bags take of the freezer on a day, as a share of what they take on its fullest. */
    public static double freezerShare(SheetSource source, FeedingCalendar.Day day) {
        Double each = millilitresPerBag(source);
        return each == null ? 0 : day.freezerBags() * each / Math.max(1, mostFreezerMillilitres(source));
    }

    /** Weight and energy of a dog over the coming weeks; empty for one that stays as it is. */
    public static List<Week> weeks(SheetSource source, String name) {
        Dog dog = source.household().dogs().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
        List<Week> weeks = new ArrayList<>();
        for (int week = 0; week <= WEEKS; week++) {
            int number = week;
            source.knowledge()
                    .overTime()
                    .on(dog, week * DAYS_PER_WEEK)
                    .ifPresent(then -> weeks.add(new Week(
                            number,
                            then.weightKg(),
                            source.knowledge()
                                    .energy()
                                    .need(
                                            then,
                                            source.household().maintenance(),
                                            source.household().growth())
                                    .kcalPerDay(),
                            0,
                            0)));
        }
        double heaviest = weeks.stream().mapToDouble(Week::weightKg).max().orElse(1);
        double most = weeks.stream().mapToDouble(Week::kcalPerDay).max().orElse(1);
        boolean changes = weeks.stream().anyMatch(week -> Math.abs(week.weightKg() - dog.weightKg()) > 1e-6);
        return changes
                ? weeks.stream()
                        .map(week -> new Week(
                                week.week(),
                                week.weightKg(),
                                week.kcalPerDay(),
                                week.weightKg() / heaviest,
                                week.kcalPerDay() / most))
                        .toList()
                : List.of();
    }
}
