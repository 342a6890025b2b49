package packpot.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import packpot.household.Freezer;
import packpot.household.GuessedPrices;
import packpot.household.Household;
import packpot.household.Kitchen;
import packpot.household.PantryItem;
import packpot.household.Rules;
import packpot.household.Shape;
import packpot.household.Wish;
import packpot.units.Show;

/**
 * Wishes made weaker. Published limits of nutrients, limits that protect a dog and foods that it must not get are never
 * loosened; of a nutrient's minimum only the margin above it can go.
 */
final class Loosening {
    private static final double GRAM_STEP = 5;
    private static final double MONEY_STEP = 0.5;
    private static final double CLOSE = 1e-6;

    /**
     * A household with one wish made weaker.
     *
     * @param sentence what was changed
     * @param note what a person should know beside; empty when there is nothing
     */
    record Change(Household household, String sentence, String note) {}

    private final GuessedPrices guesses;

    Loosening(GuessedPrices guesses) {
        this.guesses = guesses;
    }

    /** Whether a household can give way in this wish at all. */
    static boolean possible(Demand demand, Household household) {
        Wish wish = demand.wish();
        return switch (demand.kind()) {
            case ENERGY, NUTRIENT_MAXIMUM, RATIO, AVOID, RECIPE -> false;
            case NUTRIENT_MINIMUM -> household.rules().margin() > 0;
            case SHAPE -> !wish.what().equals("energy density");
            case ADDITIONS -> wish.what().equals("additions");
            case FOOD_LIMIT -> wish.who().isEmpty() && (isOwn(demand, household) || isOneFoodMost(demand, household));
            case MUST_USE, INGREDIENTS, POT, BIN, BAGS, FREEZER, BUDGET, STOCK -> true;
        };
    }

    /** A limit of grams or whole packs that the scenario gives. */
    private static boolean isOwn(Demand demand, Household household) {
        return demand.wish().what().endsWith(" by whole packs")
                || item(household, demand.wish().what())
                        .map(item -> item.atMostGrams() != null
                                && demand.wish().sentence().startsWith("at most "))
                        .orElse(false);
    }

    private static boolean isOneFoodMost(Demand demand, Household household) {
        return item(household, demand.wish().what())
                .map(item ->
                        item.food().kitchen().mostShare() > household.shape().oneFoodMost())
                .orElse(false);
    }

    private static Optional<PantryItem> item(Household household, String label) {
        return household.pantry().stream()
                .filter(item -> item.food().label().equals(label))
                .findFirst();
    }

    /**
     * Makes a wish as weak as it must be.
     *
     * @param reached what the nearest solution reaches of the wish, in the unit of {@code asked}
     * @param miss the same as a share of the wish
     * @param wider a little more than needed, as a share, for what the kitchen rounds
     */
    Optional<Change> loosen(
            Household household,
            Demand demand,
            Measure.@Nullable Asked asked,
            double reached,
            double miss,
            double wider) {
        double figure = reached * (Measure.isAtLeast(demand) ? 1 - wider : 1 + wider);
        Kitchen kitchen = household.kitchen();
        return Optional.ofNullable(
                switch (demand.kind()) {
                    case ENERGY, NUTRIENT_MAXIMUM, RATIO, AVOID, RECIPE -> null;
                    case NUTRIENT_MINIMUM -> margin(household, miss, wider);
                    case SHAPE -> shape(household, demand, figure, miss, wider);
                    case FOOD_LIMIT -> foodLimit(household, demand, figure);
                    case MUST_USE -> mustUse(household, demand, figure);
                    case STOCK -> stock(household, demand, reached);
                    case INGREDIENTS -> ingredients(household, demand, (int) Math.round(reached));
                    case ADDITIONS -> additions(household, demand, (int) Math.round(reached));
                    case POT -> pot(household, figure);
                    case BIN -> {
                        double bin = up(figure, 100);
                        yield new Change(
                                household.withKitchen(new Kitchen(
                                        kitchen.days(),
                                        kitchen.mealsPerDay(),
                                        kitchen.potMl(),
                                        kitchen.potFillShare(),
                                        kitchen.mostPotLoads(),
                                        bin,
                                        kitchen.bagName(),
                                        kitchen.bagUsableMl(),
                                        kitchen.mostBags(),
                                        kitchen.freezer(),
                                        kitchen.fridgeDays(),
                                        kitchen.mixDensityGramsPerMl())),
                                "a mixing bin of " + Show.volume(bin, household.units())
                                        + was(household, kitchen.binMl()),
                                "");
                    }
                    case BAGS -> {
                        int bags = (int) Math.ceil(figure - CLOSE);
                        yield new Change(
                                household.withKitchen(with(kitchen, bags, kitchen.freezer())),
                                "at most " + bags + " bags, not " + kitchen.mostBags(),
                                "");
                    }
                    case FREEZER -> freezer(household, asked, figure);
                    case BUDGET -> {
                        double budget = up(figure, MONEY_STEP);
                        Double old = household.budget();
                        yield new Change(
                                household.withBudget(budget),
                                "spend up to " + Show.money(budget, household.currency())
                                        + (old == null
                                                ? ""
                                                : ", " + Show.money(budget - old, household.currency()) + " more"),
                                "");
                    }
                });
    }

    private static String was(Household household, @Nullable Double ml) {
        return ml == null ? "" : ", not " + Show.volume(ml, household.units());
    }

    private static double up(double figure, double step) {
        return Math.ceil(figure / step - CLOSE) * step;
    }

    private static double down(double figure, double step) {
        return Math.max(0, Math.floor(figure / step + CLOSE) * step);
    }

    private static Kitchen with(Kitchen kitchen, @Nullable Integer bags, @Nullable Freezer freezer) {
        return new Kitchen(
                kitchen.days(),
                kitchen.mealsPerDay(),
                kitchen.potMl(),
                kitchen.potFillShare(),
                kitchen.mostPotLoads(),
                kitchen.binMl(),
                kitchen.bagName(),
                kitchen.bagUsableMl(),
                bags,
                freezer,
                kitchen.fridgeDays(),
                kitchen.mixDensityGramsPerMl());
    }

    private static @Nullable Change margin(Household household, double miss, double wider) {
        Rules rules = household.rules();
        double margin = down(rules.margin() - miss / (1 + rules.roundingReserve()) - wider / 10, 0.001);
        if (margin >= rules.margin()) {
            return null;
        }
        return new Change(
                household.withRules(new Rules(
                        margin,
                        rules.energyBand(),
                        rules.roundingReserve(),
                        rules.sodiumMostGramsPer1000Kcal(),
                        rules.leftoverWorthShare(),
                        rules.foodRoundingGrams(),
                        rules.oilRoundingGrams())),
                "keep a margin of " + Show.number(100 * margin) + " % above the minimums, not "
                        + Show.number(100 * rules.margin()) + " %",
                "less is kept in hand for foods that vary and scales that are coarse");
    }

    private static @Nullable Change shape(
            Household household, Demand demand, double figure, double miss, double wider) {
        Shape shape = household.shape();
        String what = demand.wish().what();
        if (what.startsWith("smallest amount")) {
            boolean minor = what.endsWith("minor food");
            double old = minor ? shape.smallestUsefulShareMinor() : shape.smallestUsefulShare();
            double share = down(old * (1 - miss - wider), 0.0005);
            return new Change(
                    household.withShape(new Shape(
                            shape.bands(),
                            shape.oneFoodMost(),
                            shape.fewestFoods(),
                            shape.mostFoods(),
                            shape.mostStirredIn(),
                            shape.mostAdditions(),
                            shape.mostAdditionsSpecialNeeds(),
                            shape.additionsMostMassShare(),
                            shape.additionsMostEnergyShare(),
                            minor ? shape.smallestUsefulShare() : share,
                            minor ? share : Math.min(share, shape.smallestUsefulShareMinor()),
                            shape.minorGroups(),
                            shape.usualKcalPerGram())),
                    "use foods from " + Show.number(100 * share) + " % of the batch on, not from "
                            + Show.number(100 * old) + " %",
                    "");
        }
        boolean atLeast = Measure.isAtLeast(demand);
        List<Shape.Band> bands = new ArrayList<>();
        String sentence = "";
        for (Shape.Band band : shape.bands()) {
            if (band.label().equals(what)) {
                double share = Math.min(1, (atLeast ? down(figure, 0.5) : up(figure, 0.5)) / 100);
                bands.add(new Shape.Band(
                        band.key(),
                        band.label(),
                        band.groups(),
                        atLeast ? share : Math.min(band.least(), share),
                        atLeast ? band.most() : share,
                        false));
                sentence = what + (atLeast ? " at least " : " at most ") + Show.number(100 * share)
                        + " % of cooked mass, not " + Show.number(100 * (atLeast ? band.least() : band.most())) + " %";
            } else {
                bands.add(band);
            }
        }
        return sentence.isEmpty()
                ? null
                : new Change(household.withShape(shape(shape, bands, shape.oneFoodMost())), sentence, "");
    }

    private static Shape shape(Shape shape, List<Shape.Band> bands, double oneFoodMost) {
        return counts(
                shape,
                bands,
                oneFoodMost,
                shape.fewestFoods(),
                shape.mostFoods(),
                shape.mostStirredIn(),
                shape.mostAdditions(),
                shape.mostAdditionsSpecialNeeds());
    }

    private static Shape counts(
            Shape shape,
            List<Shape.Band> bands,
            double oneFoodMost,
            int fewest,
            int most,
            int stirredIn,
            int additions,
            int additionsSpecialNeeds) {
        return new Shape(
                bands,
                oneFoodMost,
                fewest,
                most,
                stirredIn,
                additions,
                additionsSpecialNeeds,
                shape.additionsMostMassShare(),
                shape.additionsMostEnergyShare(),
                shape.smallestUsefulShare(),
                shape.smallestUsefulShareMinor(),
                shape.minorGroups(),
                shape.usualKcalPerGram());
    }

    /** More additions to the bowls of all dogs. */
    static Shape moreAdditions(Shape shape, int adults, int others) {
        return counts(
                shape,
                shape.bands(),
                shape.oneFoodMost(),
                shape.fewestFoods(),
                shape.mostFoods(),
                shape.mostStirredIn(),
                adults,
                others);
    }

    private static @Nullable Change foodLimit(Household household, Demand demand, double figure) {
        String what = demand.wish().what();
        if (what.endsWith(" by whole packs")) {
            String label = what.substring(0, what.length() - " by whole packs".length());
            return new Change(
                    change(
                            household,
                            label,
                            item -> with(
                                    item,
                                    item.onHandGrams(),
                                    item.mustUseGrams(),
                                    item.atMostGrams(),
                                    false,
                                    item.outOfStock())),
                    "leave a part of a pack of " + label,
                    "");
        }
        if (isOwn(demand, household)) {
            double grams = up(figure, GRAM_STEP);
            return new Change(
                    change(
                            household,
                            what,
                            item -> with(
                                    item,
                                    item.onHandGrams(),
                                    item.mustUseGrams(),
                                    grams,
                                    item.wholePacksOnly(),
                                    item.outOfStock())),
                    "up to " + Show.grams(grams) + " of " + what + ", not "
                            + item(household, what)
                                    .map(PantryItem::atMostGrams)
                                    .map(Show::grams)
                                    .orElse("so little"),
                    "");
        }
        Shape shape = household.shape();
        double share = Math.min(1, up(figure, 0.5) / 100);
        return new Change(
                household.withShape(shape(shape, shape.bands(), share)),
                "one food up to " + Show.number(100 * share) + " % of cooked mass, not "
                        + Show.number(100 * shape.oneFoodMost()) + " %",
                "");
    }

    private static Change mustUse(Household household, Demand demand, double figure) {
        String label = demand.wish().what();
        double grams = down(figure, GRAM_STEP);
        return new Change(
                change(
                        household,
                        label,
                        item -> with(
                                item,
                                item.onHandGrams(),
                                grams,
                                item.atMostGrams(),
                                item.wholePacksOnly(),
                                item.outOfStock())),
                (grams > 0 ? "use " + Show.grams(grams) + " of " + label : "use no " + label) + ", not "
                        + item(household, label)
                                .map(item -> Show.grams(item.mustUseGrams()))
                                .orElse("as much"),
                "");
    }

    /** What cannot be bought is bought after all: at the household's price, or at a guess where it has none. */
    private Change stock(Household household, Demand demand, double needed) {
        String label = demand.wish().what();
        String[] note = {""};
        Household changed = change(household, label, item -> {
            if (item.pricePerGram() > 0) {
                return with(
                        item,
                        item.onHandGrams(),
                        item.mustUseGrams(),
                        item.atMostGrams(),
                        item.wholePacksOnly(),
                        false);
            }
            PantryItem offer = guesses.item(item.food(), item.preparation(), item.place());
            note[0] = guesses.words(offer, household.currency());
            return new PantryItem(
                    item.food(),
                    item.preparation(),
                    offer.packGrams(),
                    offer.packAsBoughtGrams(),
                    offer.packName(),
                    offer.packPrice(),
                    item.onHandGrams(),
                    item.mustUseGrams(),
                    item.atMostGrams(),
                    false,
                    false,
                    item.place());
        });
        double more =
                item(household, label).map(item -> needed - item.onHandGrams()).orElse(needed);
        return new Change(changed, "get more " + label + ", at least " + Show.grams(up(more, GRAM_STEP)), note[0]);
    }

    private static PantryItem with(
            PantryItem item,
            double onHand,
            double mustUse,
            @Nullable Double atMost,
            boolean wholePacks,
            boolean outOfStock) {
        return new PantryItem(
                item.food(),
                item.preparation(),
                item.packGrams(),
                item.packAsBoughtGrams(),
                item.packName(),
                item.packPrice(),
                onHand,
                mustUse,
                atMost,
                wholePacks,
                outOfStock,
                item.place());
    }

    private static Household change(Household household, String label, UnaryOperator<PantryItem> change) {
        return household.withPantry(household.pantry().stream()
                .map(item -> item.food().label().equals(label) ? change.apply(item) : item)
                .toList());
    }

    private static Change ingredients(Household household, Demand demand, int count) {
        Shape shape = household.shape();
        boolean supplements = demand.wish().what().equals("supplements");
        boolean fewest = Measure.isAtLeast(demand);
        Shape other = counts(
                shape,
                shape.bands(),
                shape.oneFoodMost(),
                fewest ? count : shape.fewestFoods(),
                fewest || supplements ? shape.mostFoods() : count,
                supplements ? count : shape.mostStirredIn(),
                shape.mostAdditions(),
                shape.mostAdditionsSpecialNeeds());
        return new Change(
                household.withShape(other),
                (fewest ? "at least " : "at most ")
                        + count
                        + (supplements
                                ? " supplements stirred into the batch, not " + shape.mostStirredIn()
                                : " foods in the pot, not " + (fewest ? shape.fewestFoods() : shape.mostFoods())),
                "");
    }

    private static Change additions(Household household, Demand demand, int count) {
        Shape shape = household.shape();
        // A limit holds for all dogs of a kind; the wish of one of them says which of the two limits it is.
        boolean adults = demand.rows().get(0).upper() == shape.mostAdditions();
        Shape other = moreAdditions(
                shape,
                adults ? Math.max(count, shape.mostAdditions()) : shape.mostAdditions(),
                Math.max(count, shape.mostAdditionsSpecialNeeds()));
        return new Change(
                household.withShape(other),
                demand.wish().who() + " may have " + count + " additions to the bowl, not "
                        + Math.round(demand.rows().get(0).upper()),
                "");
    }

    private static @Nullable Change pot(Household household, double figure) {
        Kitchen kitchen = household.kitchen();
        Double pot = kitchen.potMl();
        if (pot == null) {
            return null;
        }
        int loads = (int) Math.ceil(kitchen.mostPotLoads() * figure / pot - CLOSE);
        return new Change(
                household.withKitchen(new Kitchen(
                        kitchen.days(),
                        kitchen.mealsPerDay(),
                        pot,
                        kitchen.potFillShare(),
                        loads,
                        kitchen.binMl(),
                        kitchen.bagName(),
                        kitchen.bagUsableMl(),
                        kitchen.mostBags(),
                        kitchen.freezer(),
                        kitchen.fridgeDays(),
                        kitchen.mixDensityGramsPerMl())),
                "fill the pot " + loads + " times, not " + kitchen.mostPotLoads(),
                "");
    }

    private static @Nullable Change freezer(Household household, Measure.@Nullable Asked asked, double bags) {
        Kitchen kitchen = household.kitchen();
        Freezer freezer = kitchen.freezer();
        if (freezer == null) {
            return null;
        }
        double room = Math.ceil(bags - CLOSE) * kitchen.bagUsableMl();
        double more = room / freezer.packingShare()
                - Math.max(0, freezer.ratedMl() * freezer.usableShare() - freezer.takenMl())
                + 1;
        Freezer other = freezer.takenMl() >= more
                ? new Freezer(
                        freezer.ratedMl(), freezer.usableShare(), freezer.takenMl() - more, freezer.packingShare())
                : new Freezer(
                        freezer.ratedMl() + more / freezer.usableShare(),
                        freezer.usableShare(),
                        freezer.takenMl(),
                        freezer.packingShare());
        return new Change(
                household.withKitchen(with(kitchen, kitchen.mostBags(), other)),
                "free another " + Show.volume(more, household.units()) + " in the freezer, room for "
                        + Math.round(Math.ceil(bags - CLOSE)) + " bags"
                        + (asked == null ? "" : ", not " + Math.round(asked.figure())),
                "");
    }
}
