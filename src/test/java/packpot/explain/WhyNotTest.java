package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.audit.PlanAudit;
import packpot.food.UnsafeFoods;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;
import packpot.household.Wish;
import packpot.needs.Needs;
import packpot.ration.RationModel;
import packpot.ration.RationPlanner;
import packpot.search.Search;
import packpot.solver.LinearModel;
import packpot.solver.LinearModel.Variable;
import packpot.solver.OrToolsSolver;
import packpot.solver.Solution;
import packpot.solver.SolveLimits;

/** Scenarios without a plan, one for each kind of wish and some with two clashes at once. */
class WhyNotTest {
    private static final Knowledge KNOWLEDGE = Knowledge.load();
    private static final double SECONDS = 180;
    /** Shared by all tests of mends, for each takes its time. */
    private static final Map<String, WhyNot.Answer> ANSWERS = new ConcurrentHashMap<>();

    /** Scenario, the kinds that its clashes must speak of, and how many clashes there are at least. */
    static Stream<Arguments> scenarios() {
        return Stream.of(
                Arguments.of("nutrient-minimum", List.of(Wish.Kind.NUTRIENT_MINIMUM), 1),
                Arguments.of("nutrient-maximum", List.of(Wish.Kind.RATIO, Wish.Kind.MUST_USE), 1),
                Arguments.of("food-limit", List.of(Wish.Kind.FOOD_LIMIT), 1),
                Arguments.of("must-use", List.of(Wish.Kind.MUST_USE), 1),
                Arguments.of("budget", List.of(Wish.Kind.BUDGET), 1),
                Arguments.of("stock", List.of(Wish.Kind.STOCK), 1),
                Arguments.of("bags", List.of(Wish.Kind.BAGS), 1),
                Arguments.of("freezer", List.of(Wish.Kind.FREEZER), 1),
                Arguments.of("number-of-foods", List.of(Wish.Kind.INGREDIENTS), 1),
                Arguments.of("cannot-share", List.of(Wish.Kind.AVOID), 1),
                Arguments.of("margin", List.of(Wish.Kind.NUTRIENT_MINIMUM), 1),
                Arguments.of("two-iodine-bags", List.of(Wish.Kind.NUTRIENT_MINIMUM, Wish.Kind.BAGS), 2),
                Arguments.of("two-eggshell-freezer", List.of(Wish.Kind.MUST_USE, Wish.Kind.FREEZER), 2),
                Arguments.of("two-carrots-iodine", List.of(Wish.Kind.NUTRIENT_MINIMUM, Wish.Kind.MUST_USE), 2));
    }

    private static Household household(String name) {
        try {
            return new ScenarioReader(KNOWLEDGE, LocalDate.of(2026, 3, 7))
                    .read(Path.of("src/test/resources/why-not", name + ".json"));
        } catch (ScenarioException e) {
            throw new IllegalStateException(e);
        }
    }

    static WhyNot.Answer answer(String name) {
        return ANSWERS.computeIfAbsent(
                name, key -> new WhyNot(KNOWLEDGE, new Search()).explain(household(key), SECONDS, says -> {}));
    }

    private static WhyNot.Answer.NoPlan noPlan(String name) {
        assertThat(answer(name)).isInstanceOf(WhyNot.Answer.NoPlan.class);
        return (WhyNot.Answer.NoPlan) answer(name);
    }

    /** Solves the scenario's own model with the rows of these wishes alone, and without any of the explanation's code. */
    private static Solution.Status solve(String name, Set<String> sentences) {
        Household household = household(name);
        Needs needs = Needs.of(household, KNOWLEDGE);
        LinearModel<Wish> model = RationModel.withLimitsAsRows(
                        household, KNOWLEDGE, needs, RationPlanner.sharesByNeed(needs))
                .linearModel();
        LinearModel<Wish> part = new LinearModel<>();
        for (Variable v : model.variables()) {
            if (v.integer()) {
                part.whole(v.name(), v.lower(), v.upper());
            } else {
                part.variable(v.name(), v.lower(), v.upper());
            }
        }
        model.rows().stream()
                .filter(row -> row.tag() == null || sentences.contains(row.tag().sentence()))
                .forEach(row -> part.row(row.name(), row.expression(), row.lower(), row.upper(), row.tag()));
        return new OrToolsSolver().solve(part, new SolveLimits(60, 1)).status();
    }

    /** The energy of all dogs is one wish of several sentences. */
    private static Set<String> sentences(Clash.Part part) {
        return part.wish().kind() == Wish.Kind.ENERGY
                ? Set.of(part.wish().sentence().split("; "))
                : Set.of(part.wish().sentence());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("scenarios")
    void theReportedSetCannotHoldAndDoesWithoutAnyOneMember(String name, List<Wish.Kind> kinds, int clashes) {
        for (Clash clash : noPlan(name).clashes()) {
            Set<String> all = new HashSet<>();
            clash.parts().forEach(part -> all.addAll(sentences(part)));
            assertThat(solve(name, all)).as("%s", all).isEqualTo(Solution.Status.INFEASIBLE);
            for (Clash.Part left : clash.parts()) {
                Set<String> others = new HashSet<>(all);
                others.removeAll(sentences(left));
                assertThat(solve(name, others)).as("without %s", left.wish()).isEqualTo(Solution.Status.OPTIMAL);
            }
            assertThat(clash.irreducible()).isTrue();
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("scenarios")
    void theClashesSpeakOfWhatIsWrongAndDoNotOverlap(String name, List<Wish.Kind> kinds, int clashes) {
        WhyNot.Answer.NoPlan answer = noPlan(name);
        assertThat(answer.clashes()).hasSizeGreaterThanOrEqualTo(clashes);
        assertThat(answer.allClashes()).isTrue();
        assertThat(answer.clashes().stream()
                        .flatMap(clash -> clash.parts().stream())
                        .map(part -> part.wish().kind()))
                .containsAll(kinds);
        List<Wish> wishes = answer.clashes().stream()
                .flatMap(clash -> clash.parts().stream())
                .map(Clash.Part::wish)
                .filter(wish -> wish.kind() != Wish.Kind.ENERGY)
                .toList();
        assertThat(wishes).doesNotHaveDuplicates();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("scenarios")
    void whatIsReachedFallsShortOfWhatIsAsked(String name, List<Wish.Kind> kinds, int clashes) {
        for (Clash clash : noPlan(name).clashes()) {
            for (Clash.Part part : clash.parts()) {
                Double asked = part.asked();
                Double reached = part.reached();
                if (asked != null && reached != null) {
                    assertThat(part.atLeast() ? asked - reached : reached - asked)
                            .as("%s: %s", part.wish().sentence(), part.figures())
                            .isPositive();
                }
            }
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("scenarios")
    void atLeastOneMendLeadsToAnAuditedPlan(String name, List<Wish.Kind> kinds, int clashes) {
        WhyNot.Answer.NoPlan answer = noPlan(name);
        assertThat(answer.mends()).isNotEmpty();
        for (Mend mend : answer.mends()) {
            assertThat(mend.planned()).isNotEmpty();
            mend.planned()
                    .forEach(planned -> assertThat(PlanAudit.check(planned.plan(), planned.household(), KNOWLEDGE)
                                    .findings())
                            .as("%s", mend.changes())
                            .isEmpty());
            assertThat(mend.changes()).isNotEmpty();
        }
        assertThat(answer.mends()).extracting(Mend::costPerDay).isSorted();
    }

    @ParameterizedTest
    @ValueSource(strings = {"nutrient-minimum", "stock"})
    void addedFoodsAreAllowedNewAndAtMostFive(String name) {
        WhyNot.Answer.NoPlan answer = noPlan(name);
        List<Mend> foods = answer.mends().stream()
                .filter(mend -> mend.kind() == Mend.Kind.ADD_FOOD)
                .toList();
        assertThat(foods).hasSizeBetween(1, 5);
        assertThat(answer.foodsTried()).isGreaterThan(150);
        Set<String> pantry = answer.household().pantry().stream()
                .map(item -> item.food().id())
                .collect(Collectors.toSet());
        for (Mend mend : foods) {
            var added = mend.planned().get(0).household().pantry().stream()
                    .filter(item -> !pantry.contains(item.food().id()))
                    .toList();
            assertThat(added).hasSize(1);
            assertThat(KNOWLEDGE.unsafeFoods().inName(added.get(0).food().name()))
                    .noneMatch(food -> food.rule() == UnsafeFoods.Rule.BLOCK);
            assertThat(mend.notes()).anyMatch(note -> note.contains("guessed as"));
        }
    }

    @Test
    void anUnneededLooseningIsNotTaken() {
        Mend mend = noPlan("bags").mends().stream()
                .filter(each -> each.kind() == Mend.Kind.LOOSEN)
                .findFirst()
                .orElseThrow();
        Integer bags = mend.planned().get(0).household().kitchen().mostBags();
        assertThat(bags).isNotNull();
        Household oneLess = household("bags");
        oneLess = oneLess.withKitchen(oneLess.kitchen().withMostBags(bags - 1));
        assertThat(new Planner(KNOWLEDGE, new Search()).plan(oneLess, new SolveLimits(60, 1)))
                .isInstanceOf(Planner.Result.NoPlan.class);
    }

    @Test
    void twoCookDaysMendTooFewBags() {
        assertThat(noPlan("bags").mends())
                .filteredOn(mend -> mend.kind() == Mend.Kind.SECOND_SESSION)
                .singleElement()
                .satisfies(mend ->
                        assertThat(mend.plans()).extracting(plan -> plan.days()).containsExactly(5, 5));
    }

    @Test
    void twoPotsMendDogsThatCannotShare() {
        assertThat(noPlan("cannot-share").mends())
                .filteredOn(mend -> mend.kind() == Mend.Kind.SECOND_POT)
                .singleElement()
                .satisfies(mend -> assertThat(mend.plans())
                        .flatExtracting(plan -> plan.dogs())
                        .extracting(dog -> dog.name())
                        .containsExactlyInAnyOrder("Moss", "Pip"));
    }

    @Test
    void aMarginGivesWayButNotThePublishedMinimum() {
        assertThat(noPlan("margin").mends())
                .filteredOn(mend -> mend.kind() == Mend.Kind.LOOSEN)
                .isNotEmpty()
                .allSatisfy(mend -> assertThat(
                                mend.planned().get(0).household().rules().margin())
                        .isBetween(0.0, 0.42));
    }

    @Test
    void aScenarioWithAPlanSaysSo() {
        assertThat(answer("has-a-plan"))
                .isInstanceOfSatisfying(
                        WhyNot.Answer.HasPlan.class,
                        has -> assertThat(has.planned().verdict().passed()).isTrue());
    }

    @ParameterizedTest
    @ValueSource(strings = {"has-a-plan", "bags", "stock", "cannot-share"})
    void limitsAsRowsAreTheSameModelAsTheUsualOne(String name) {
        Household household = household(name);
        Needs needs = Needs.of(household, KNOWLEDGE);
        var shares = RationPlanner.sharesByNeed(needs);
        SolveLimits exact = new SolveLimits(60, 1e-6);
        Solution usual = new OrToolsSolver()
                .solve(RationModel.of(household, KNOWLEDGE, needs, shares).linearModel(), exact);
        Solution rows = new OrToolsSolver()
                .solve(
                        RationModel.withLimitsAsRows(household, KNOWLEDGE, needs, shares)
                                .linearModel(),
                        exact);
        assertThat(rows.status()).isEqualTo(usual.status());
        if (usual.hasValues()) {
            assertThat(rows.objective())
                    .isCloseTo(usual.objective(), org.assertj.core.data.Percentage.withPercentage(0.01));
        }
    }
}
