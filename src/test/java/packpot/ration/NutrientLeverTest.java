package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.food.Nutrient;
import packpot.household.Household;
import packpot.household.Wish;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.needs.Requirement;
import packpot.profile.Limit;
import packpot.solver.LinearModel.Row;
import packpot.solver.Variant;

/**
 * Moving a figure of a profile gives its row as the model of another profile has it. A minimum that rises is moved by
 * itself: the plain minimum that it rises from stays in it.
 */
class NutrientLeverTest {
    private final Household household = Tiny.household();
    private final Needs needs = Needs.of(household, Demo.knowledge());
    private final DogNeed ash = needs.dogs().get(0);
    private final Build build = build(needs);

    private Build build(Needs of) {
        Build built = new Build(household, Demo.knowledge(), of, RationPlanner.sharesByNeed(of));
        PotRows.add(built);
        BowlRows.add(built);
        DogRows.add(built);
        return built;
    }

    /** The same dogs, but for one figure of Ash's. */
    private Needs with(Requirement old, Requirement other) {
        List<Requirement> requirements = new ArrayList<>(ash.requirements());
        requirements.set(requirements.indexOf(old), other);
        DogNeed same = new DogNeed(
                1,
                ash.dog(),
                ash.energy(),
                ash.kcalPerDay(),
                ash.firstDay(),
                ash.days(),
                ash.profile(),
                ash.raisedBy(),
                requirements);
        return new Needs(List.of(same, needs.dogs().get(1)));
    }

    private static Requirement at(Requirement old, double figure) {
        Limit limit = old.limit();
        Limit other = new Limit(
                limit.nutrient(),
                limit.kind(),
                figure,
                limit.per(),
                limit.threshold(),
                limit.found(),
                limit.source(),
                "");
        return new Requirement(other, figure, old.raised());
    }

    private static double figure(Requirement requirement) {
        return requirement.limit().kind() == Limit.Kind.DEPENDENT_MINIMUM
                ? requirement.limit().value()
                : requirement.per1000Kcal();
    }

    private Lever lever(Requirement requirement) {
        Limit limit = requirement.limit();
        var nutrients = Demo.knowledge().nutrients();
        String label = nutrients.isRatio(limit.nutrient())
                ? nutrients.ratio(limit.nutrient()).label()
                : nutrients.get(limit.nutrient()).label();
        String side = switch (limit.kind()) {
            case MINIMUM -> " at least ";
            case MAXIMUM -> " at most ";
            case DEPENDENT_MINIMUM -> " rising with ";
        };
        return MovedRow.lever(build, "Ash: " + label + side);
    }

    @Test
    void everyFigureMovesAsFarAsItIsMoved() {
        for (Requirement requirement : ash.requirements()) {
            double to = figure(requirement) * (requirement.limit().kind() == Limit.Kind.MAXIMUM ? 1.01 : 0.99);
            MovedRow.assertSame(build, lever(requirement), to, build(with(requirement, at(requirement, to))));
        }
        assertThat(ash.requirements().stream().map(each -> each.limit().kind()).distinct())
                .contains(Limit.Kind.values());
    }

    @Test
    void everyFigureIsSaidInItsOwnUnitWithAHandyStepThatLoosensIt() {
        int ratios = 0;
        for (Requirement requirement : ash.requirements()) {
            Limit limit = requirement.limit();
            Lever lever = lever(requirement);
            String unit;
            if (Demo.knowledge().nutrients().isRatio(limit.nutrient())) {
                unit = ": 1";
                ratios++;
            } else {
                Nutrient nutrient = Demo.knowledge().nutrients().get(limit.nutrient());
                unit = limit.kind() == Limit.Kind.DEPENDENT_MINIMUM
                        ? "IU per g of polyunsaturated fat"
                        : nutrient.unit() + " per 1000 kcal";
            }
            double loosens = limit.kind() == Limit.Kind.MAXIMUM ? 1 : -1;
            MovedRow.assertStands(lever, figure(requirement), unit, loosens * Lever.handy(figure(requirement)));
        }
        assertThat(ratios).isGreaterThan(1);
    }

    /** A gram per 1000 kcal more is 0.997 g more, the reserve kept. */
    @Test
    void aSupplementsOwnLimitMovesToo() {
        Lever lever = MovedRow.lever(build, "Ash: salt, iodised, 45 ug per g at most");
        Row<Wish> moved = lever.moved(new Variant<>(build.model), lever.figure() + 1).model().rows().stream()
                .filter(row -> row.name().equals(lever.row().name()))
                .findFirst()
                .orElseThrow();
        var kcal = Tiny.variable(build, "kcal of Ash");
        assertThat(moved.expression().coefficient(kcal)
                        - lever.row().expression().coefficient(kcal))
                .isCloseTo(-0.997 / 1000, within(1e-12));
        assertThat(lever.unit()).isEqualTo("g per 1000 kcal");
    }

    @Test
    void aHandyStepIsAboutATenth() {
        assertThat(Lever.handy(45)).isCloseTo(2, within(1e-12));
        assertThat(Lever.handy(50)).isCloseTo(5, within(1e-12));
        assertThat(Lever.handy(20)).isCloseTo(2, within(1e-12));
        assertThat(Lever.handy(1.25)).isCloseTo(0.1, within(1e-12));
        assertThat(Lever.handy(-0.3)).isCloseTo(0.02, within(1e-12));
        assertThat(Lever.handy(1000)).isCloseTo(100, within(1e-9));
    }
}
