package packpot.explain;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.household.Shape;
import packpot.household.Wish;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.needs.Requirement;
import packpot.profile.Limit;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;
import packpot.solver.Solution;
import packpot.units.Show;

/** Wishes as figures in the household's own units. */
final class Measure {
    private static final double CLOSE = 1e-6;
    /** Below this a sum of terms is nothing. */
    private static final double NOTHING = 1e-9;

    private final Household household;
    private final Knowledge knowledge;
    private final Needs needs;

    Measure(Household household, Knowledge knowledge, Needs needs) {
        this.household = household;
        this.knowledge = knowledge;
        this.needs = needs;
    }

    /**
     * What a wish asks for.
     *
     * @param step how finely people count in it; 0 when any figure will do
     */
    record Asked(double figure, String unit, double step) {}

    /** The figure of a wish; empty where it has none. */
    Optional<Asked> asked(Demand demand) {
        Wish wish = demand.wish();
        return Optional.ofNullable(
                switch (wish.kind()) {
                    case ENERGY -> any(needs.kcalPerDay(), "kcal a day");
                    case RECIPE -> null;
                    case NUTRIENT_MINIMUM -> nutrient(wish, Limit.Kind.MINIMUM);
                    case NUTRIENT_MAXIMUM -> nutrient(wish, Limit.Kind.MAXIMUM);
                    case RATIO -> nutrient(wish, isAtLeast(demand) ? Limit.Kind.MINIMUM : Limit.Kind.MAXIMUM);
                    case SHAPE -> shape(wish, isAtLeast(demand));
                    case FOOD_LIMIT -> foodLimit(demand);
                    case MUST_USE, STOCK -> any(bound(demand.rows().get(0)), "g");
                    case AVOID -> demand.rows().size() == 1 ? any(0, "g") : null;
                    case INGREDIENTS -> new Asked(bound(demand.rows().get(0)), wish.what(), 1);
                    case ADDITIONS -> additions(demand);
                    case POT -> volume(household.kitchen().potMl());
                    case BIN -> volume(household.kitchen().binMl());
                    case BAGS -> {
                        Integer bags = household.kitchen().mostBags();
                        yield bags == null ? null : new Asked(bags, "bags", 1);
                    }
                    case FREEZER -> new Asked(freezerBags(), "bags", 1);
                    case BUDGET -> {
                        Double budget = household.budget();
                        yield budget == null ? null : any(budget, household.currency());
                    }
                });
    }

    private static boolean bags(Demand demand) {
        return demand.kind() == Wish.Kind.BAGS || demand.kind() == Wish.Kind.FREEZER;
    }

    private double gramsPerBag() {
        return household.kitchen().bagUsableMl()
                * household.kitchen().mixDensityGramsPerMl()
                * (1 - household.rules().roundingReserve());
    }

    /** Bags that the freezer has room for. */
    double freezerBags() {
        var freezer = household.kitchen().freezer();
        return freezer == null
                ? 0
                : Math.floor(freezer.freeForFoodMl() / household.kitchen().bagUsableMl());
    }

    /** A wish of a clash, with what a solution that misses nothing but it reaches. */
    Clash.Part part(Demand demand, @Nullable Solution nearest) {
        Asked asked = asked(demand).orElse(null);
        Double reached = asked == null || nearest == null ? null : reached(demand, asked, nearest);
        return new Clash.Part(
                demand.wish(),
                asked == null ? null : (Double) asked.figure(),
                reached,
                asked == null ? "" : asked.unit(),
                tooLittle(demand, asked, reached),
                words(demand, asked, reached));
    }

    private String words(Demand demand, @Nullable Asked asked, @Nullable Double reached) {
        if (asked == null || reached == null) {
            return "";
        }
        boolean minimum =
                demand.kind() == Wish.Kind.NUTRIENT_MINIMUM || (demand.kind() == Wish.Kind.RATIO && isAtLeast(demand));
        // The wish itself says what the figures are a share of.
        String unit = asked.unit().replace(" per 1000 kcal", "").replaceFirst("^% of .*", "%");
        String margin = minimum && household.rules().margin() > 0
                ? text(asked.figure(), unit) + " with the margin of "
                        + Show.number(100 * household.rules().margin()) + " %, "
                : "";
        boolean tooLittle = tooLittle(demand, asked, reached);
        String figure = text(reached, unit);
        return margin
                + (tooLittle && reached < NOTHING
                        ? "none can be reached"
                        : tooLittle
                                ? "at most " + figure + " can be reached"
                                : "at least " + figure + " would be needed");
    }

    /** Energy is wished neither less nor more; which of the two it comes to shows what is reached. */
    private static boolean tooLittle(Demand demand, @Nullable Asked asked, @Nullable Double reached) {
        if (demand.kind() == Wish.Kind.ENERGY && asked != null && reached != null) {
            return reached <= asked.figure();
        }
        return isAtLeast(demand);
    }

    /** A figure with its unit, for people. */
    String text(double figure, String unit) {
        if (unit.equals(household.currency())) {
            return Show.money(figure, unit);
        }
        if (unit.equals("ml")) {
            return Show.volume(figure, household.units());
        }
        return Show.number(figure) + " " + unit;
    }

    /** The figure that a solution reaches of a wish. */
    double reached(Demand demand, Asked asked, Solution solution) {
        double[] values =
                solution.values().stream().mapToDouble(Double::doubleValue).toArray();
        double figure = asked.figure();
        boolean first = true;
        for (Row<Wish> row : demand.rows()) {
            double ratio = ratio(row, values);
            double reached = bags(demand)
                    ? row.expression().value(values) / gramsPerBag()
                    : Double.isNaN(ratio) ? row.expression().value(values) : asked.figure() * ratio;
            double off = Math.abs(reached - asked.figure());
            boolean worse = off > Math.abs(figure - asked.figure());
            if (first || worse) {
                figure = reached;
                first = false;
            }
        }
        if (asked.step() > 0) {
            double steps = figure / asked.step();
            figure = asked.step() * (isAtLeast(demand) ? Math.floor(steps + CLOSE) : Math.ceil(steps - CLOSE));
        }
        return figure;
    }

    /**
     * How much of what is asked a row reaches: 1 is just enough. A row without a figure of its own weighs what there is
     * against what the limit allows for it, so their ratio is that of reached and asked. Not a number where nothing is
     * allowed at all.
     */
    static double ratio(Row<Wish> row, double[] values) {
        double bound = bound(row);
        if (bound != 0) {
            return row.expression().value(values) / bound;
        }
        double[] sums = {0, 0};
        row.expression().forEach((Variable v, Double coefficient) -> {
            double term = coefficient * values[v.index()];
            sums[coefficient > 0 ? 0 : 1] += Math.abs(term);
        });
        return sums[1] > NOTHING ? sums[0] / sums[1] : sums[0] > NOTHING ? Double.NaN : 1;
    }

    static boolean isAtLeast(Demand demand) {
        return !Double.isInfinite(demand.rows().get(0).lower());
    }

    private static double bound(Row<Wish> row) {
        if (Double.isInfinite(row.lower())) {
            return row.upper();
        }
        return Double.isInfinite(row.upper()) ? row.lower() : (row.lower() + row.upper()) / 2;
    }

    private static Asked any(double figure, String unit) {
        return new Asked(figure, unit, 0);
    }

    private static @Nullable Asked volume(@Nullable Double ml) {
        return ml == null ? null : any(ml, "ml");
    }

    private @Nullable Asked nutrient(Wish wish, Limit.Kind kind) {
        for (DogNeed dog : needs.dogs()) {
            for (Requirement requirement : dog.requirements()) {
                String key = requirement.limit().nutrient();
                boolean ratio = knowledge.nutrients().isRatio(key);
                String label = ratio
                        ? knowledge.nutrients().ratio(key).label()
                        : knowledge.nutrients().get(key).label();
                if (dog.dog().name().equals(wish.who())
                        && label.equals(wish.what())
                        && requirement.limit().kind() == kind) {
                    double margin =
                            kind == Limit.Kind.MINIMUM ? household.rules().margin() : 0;
                    String unit = ratio ? ": 1" : knowledge.nutrients().get(key).unit() + " per 1000 kcal";
                    return any(requirement.per1000Kcal() * (1 + margin), unit);
                }
            }
        }
        return null;
    }

    private @Nullable Asked shape(Wish wish, boolean atLeast) {
        for (Shape.Band band : household.shape().bands()) {
            if (band.label().equals(wish.what())) {
                return any(100 * (atLeast ? band.least() : band.most()), "% of cooked mass");
            }
        }
        return null;
    }

    private @Nullable Asked foodLimit(Demand demand) {
        double bound = bound(demand.rows().get(0));
        for (PantryItem item : household.pantry()) {
            if (item.food().label().equals(demand.wish().what())) {
                var supplement = item.food().supplement();
                if (!demand.wish().who().isEmpty()) {
                    return supplement == null
                            ? null
                            : any(
                                    growing(demand.wish().who())
                                            ? supplement.mostGramsPer1000KcalGrowing()
                                            : supplement.mostGramsPer1000Kcal(),
                                    "g per 1000 kcal");
                }
                return bound != 0 || item.food().isSupplement()
                        ? any(bound, "g")
                        : any(
                                100
                                        * Math.min(
                                                household.shape().oneFoodMost(),
                                                item.food().kitchen().mostShare()),
                                "% of cooked mass");
            }
        }
        return null;
    }

    private boolean growing(String dog) {
        return needs.dogs().stream()
                .anyMatch(need ->
                        need.dog().name().equals(dog) && need.energy().stage().builds());
    }

    private @Nullable Asked additions(Demand demand) {
        return switch (demand.wish().what()) {
            case "additions" -> new Asked(bound(demand.rows().get(0)), "additions", 1);
            case "energy of additions" -> any(100 * household.shape().additionsMostEnergyShare(), "% of the bowl");
            default -> any(100 * household.shape().additionsMostMassShare(), "% of the bowl");
        };
    }
}
