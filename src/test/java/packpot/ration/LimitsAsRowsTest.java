package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static packpot.ration.ByHand.ANY_SHAPE;
import static packpot.ration.ByHand.CHALK;
import static packpot.ration.ByHand.MEAT;
import static packpot.ration.ByHand.RICE;
import static packpot.ration.ByHand.dog;
import static packpot.ration.ByHand.gone;
import static packpot.ration.ByHand.household;
import static packpot.ration.ByHand.most;
import static packpot.ration.ByHand.need;
import static packpot.ration.ByHand.needs;
import static packpot.ration.ByHand.yielding;
import static packpot.ration.Tiny.coefficient;
import static packpot.ration.Tiny.row;
import static packpot.ration.Tiny.variable;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import packpot.food.Constituent;
import packpot.food.FoodGroup;
import packpot.food.Place;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.needs.Needs;
import packpot.solver.LinearModel.Row;

/** The model for explanations: what is a bound of a variable in the usual one can be lifted here. */
class LimitsAsRowsTest {
    private final Needs ash = needs(need("Ash", 1000));

    private Build rows(PantryItem... pantry) {
        return ByHand.rows(household(ash, pantry), ash);
    }

    private static double upper(Build build, String variable) {
        return variable(build, variable).upper();
    }

    private static void assertWish(Row<Wish> row, Wish.Kind kind, String who, String what, double size) {
        assertThat(row.tag()).isNotNull();
        assertThat(row.tag().kind()).isEqualTo(kind);
        assertThat(row.tag().who()).isEqualTo(who);
        assertThat(row.tag().what()).isEqualTo(what);
        assertThat(row.tag().size()).isCloseTo(size, within(1e-9));
    }

    @Test
    void aBatchMayBeThickerOrThinnerThanAny() {
        Build build = rows(yielding(MEAT, 0.8).withMustUse(1000));
        assertThat(upper(build, "kcal of the pot")).isInfinite();
        assertThat(upper(build, "kcal of Ash")).isInfinite();
        // Twice the thinnest batch, and what must be used, cooked.
        assertThat(upper(build, "cooked grams")).isCloseTo(40_800, within(1e-6));
        Row<Wish> thinnest = row(build, "a batch holds at least 0.5 kcal per gram of cooked food");
        assertThat(thinnest.upper()).isCloseTo(20_000, within(1e-6));
        assertThat(thinnest.expression().coefficient(build.cookedGrams)).isEqualTo(1);
        assertWish(thinnest, Wish.Kind.SHAPE, "", "energy density", 20_000);
        assertThat(Tiny.hasRow(
                        ByHand.build(household(ash, MEAT), ash),
                        "a batch holds at least 0.5 kcal per gram of cooked food"))
                .isFalse();
    }

    @Test
    void ofAFoodThereIsRoomForMoreThanItsLimitsAllow() {
        assertThat(upper(rows(yielding(MEAT, 0.8)), "meat g")).isCloseTo(50_000, within(1e-6));
        assertThat(coefficient(rows(yielding(MEAT, 0.8)), "meat only when used", "meat used"))
                .isCloseTo(-50_000, within(1e-6));
        // Ten times what a dog bears of 60 g of protein per 1000 kcal, 2448 g, or what must be used.
        Needs bears = needs(need("Ash", 1000, most("protein", 60)));
        assertThat(upper(ByHand.rows(household(bears, MEAT), bears), "meat g")).isCloseTo(24_480, within(1e-6));
        assertThat(upper(ByHand.rows(household(bears, MEAT.withMustUse(30_000)), bears), "meat g"))
                .isEqualTo(30_000);
        // A supplement up to its tenth of the thinnest batch, in no more steps than there are.
        PantryItem chalk = CHALK.withPlace(Place.EITHER);
        assertThat(upper(rows(RICE, gone(chalk, 50)), "chalk g")).isCloseTo(2000, within(1e-6));
        assertThat(upper(rows(RICE, gone(chalk, 50)), "chalk steps")).isEqualTo(2000);
        assertThat(upper(rows(RICE, gone(yielding(chalk, 2), 50)), "chalk steps"))
                .isEqualTo(1000);
        assertThat(coefficient(rows(RICE, gone(chalk, 3)), "chalk can be weighed", "chalk used"))
                .isEqualTo(-3);
    }

    @Test
    void aUsefulAmountIsAWish() {
        PantryItem oil = ByHand.loose(ByHand.food("oil", FoodGroup.OIL, Map.of(Constituent.FAT_G, 100.0)), 0.003);
        var shape = ANY_SHAPE.withSmallestUseful(0.02, 0.003);
        Build build = ByHand.rows(household(ash, MEAT, oil).withShape(shape), ash);
        Row<Wish> meat = row(build, "meat a useful amount");
        assertWish(meat, Wish.Kind.SHAPE, "", "smallest amount of a food", 200);
        assertThat(meat.tag().sentence()).isEqualTo("a food that is used is at least 2 % of the usual batch");
        Row<Wish> minor = row(build, "oil a useful amount");
        assertWish(minor, Wish.Kind.SHAPE, "", "smallest amount of a minor food", 30);
        assertThat(minor.tag().sentence())
                .endsWith("other minor food that is used is at least 0.3 % of the usual batch");
        assertThat(row(ByHand.build(household(ash, MEAT).withShape(shape), ash), "meat a useful amount")
                        .tag())
                .isNull();
    }

    @Test
    void whatADogMustNotGetIsHeldAtNothing() {
        Needs two = needs(need("Ash", 500), need(dog("Elm", "meat", "chalk"), 500));
        var household = household(two, MEAT, RICE, CHALK);
        Build build = ByHand.rows(household, two);
        Row<Wish> meat = row(build, "Elm must not get meat, meat g");
        assertThat(meat.upper()).isZero();
        assertThat(meat.expression().coefficient(variable(build, "meat g"))).isEqualTo(1);
        assertWish(meat, Wish.Kind.AVOID, "Elm", "meat", 1);
        Row<Wish> chalk = row(build, "Elm must not get chalk, chalk for Elm doses");
        assertThat(chalk.expression().coefficient(variable(build, "chalk for Elm doses")))
                .isEqualTo(1);
        assertThat(chalk.upper()).isZero();
        // Ash may have both, and rice harms nobody.
        assertThat(build.model.rows().stream().filter(row -> row.name().contains("must not get")))
                .hasSize(2);
        Build usual = ByHand.build(household, two);
        assertThat(usual.model.rows()).noneMatch(row -> row.name().contains("must not get"));
        assertThat(usual.model.variables()).noneMatch(v -> v.name().equals("meat g"));
        assertThat(usual.dosesOf(two.dogs().get(1))).isEmpty();
    }

    @Test
    void dosesAreBoundedByWhatAnyoneCounts() {
        Needs bears = needs(need("Ash", 1000, most("calcium", 2)));
        assertThat(upper(ByHand.rows(household(bears, RICE, gone(CHALK, 25)), bears), "chalk for Ash doses"))
                .isEqualTo(12);
    }

    @Test
    void whatIsInTheHouseIsAWish() {
        Build build = rows(gone(MEAT, 700), RICE.withOnHand(100), gone(CHALK, 0));
        Row<Wish> meat = row(build, "no more meat than the 700 g in the house");
        assertThat(meat.upper()).isEqualTo(700);
        assertThat(meat.expression().coefficient(variable(build, "meat from hand")))
                .isEqualTo(1);
        assertThat(upper(build, "meat from hand")).isInfinite();
        assertThat(coefficient(build, "meat used", "meat from hand")).isEqualTo(-1);
        assertWish(meat, Wish.Kind.STOCK, "", "meat", 700);
        Row<Wish> chalk = row(build, "no chalk to be had");
        assertThat(chalk.upper()).isZero();
        assertWish(chalk, Wish.Kind.STOCK, "", "chalk", 1);
        // What can be bought besides is as in the usual model.
        assertThat(upper(build, "rice from hand")).isEqualTo(100);
        assertThat(List.of("meat from packs", "chalk from packs"))
                .noneMatch(name -> build.model.variables().stream()
                        .anyMatch(variable -> variable.name().equals(name)));
    }

    @Test
    void wholePacksAreAWish() {
        PantryItem meat = ByHand.packs(MEAT, 1500, 6);
        PantryItem whole = new PantryItem(
                meat.food(), meat.preparation(), 1500.0, 1500.0, "pack", 6, 0, 0, null, true, false, meat.place());
        assertWish(row(rows(whole), "meat whole packs"), Wish.Kind.FOOD_LIMIT, "", "meat by whole packs", 1500);
        assertThat(row(ByHand.build(household(ash, whole), ash), "meat whole packs")
                        .tag())
                .isNull();
    }
}
