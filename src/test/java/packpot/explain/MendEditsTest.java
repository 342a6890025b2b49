package packpot.explain;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.Demo;
import packpot.audit.PlanAudit;
import packpot.household.Edit;
import packpot.household.Freezer;
import packpot.household.Household;
import packpot.household.Kitchen;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;
import packpot.household.Shape;
import packpot.search.Search;
import packpot.solver.SolveLimits;

/** Mends of scenarios without a plan, taken over into the scenario's file and read back from it. */
class MendEditsTest {
    private static final Knowledge KNOWLEDGE = Knowledge.load();
    /** Amounts are written in so many digits that they are hardly looser than the mend's. */
    private static final double HARDLY = 0.01;

    private static final double NOISE = 1e-9;

    static Stream<String> scenarios() {
        return WhyNotTest.scenarios().map(each -> (String) each.get()[0]);
    }

    private static Path file(String name) {
        return Path.of("src/test/resources/why-not", name + ".json");
    }

    private static WhyNot.Answer.NoPlan answer(String name) {
        return (WhyNot.Answer.NoPlan) WhyNotTest.answer(name);
    }

    private static Household read(String name, List<Edit> edits) throws ScenarioException {
        String text = Demo.edits(file(name)).text(edits);
        return new ScenarioReader(KNOWLEDGE, LocalDate.of(2026, 3, 7))
                .read(name, text.getBytes(StandardCharsets.UTF_8));
    }

    @ParameterizedTest
    @MethodSource("scenarios")
    void aMendTakenOverIsReadBackAsItIsAndItsPlanPassesTheAudit(String name) throws ScenarioException {
        MendEdits all = Demo.edits(file(name));
        for (Mend mend : answer(name).mends()) {
            Optional<List<Edit>> edits = all.of(mend);
            assertThat(edits.isPresent()).as("%s", mend.changes()).isEqualTo(mend.kind() != Mend.Kind.SECOND_POT);
            if (edits.isPresent()) {
                Planner.Result.Planned planned = mend.planned().get(0);
                Household read = read(name, edits.get());
                isNoTighter(read, planned.household());
                assertThat(PlanAudit.check(planned.plan(), read, KNOWLEDGE).findings())
                        .as("%s", edits.get())
                        .isEmpty();
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"stock", "two-eggshell-freezer", "margin"})
    void theFileOfAMendIsPlannedForNoMoreThanTheMendSays(String name) throws ScenarioException {
        MendEdits all = Demo.edits(file(name));
        Mend mend = answer(name).told().stream()
                .filter(each -> each.plans().size() == 1)
                .findFirst()
                .orElseThrow();
        Household read = read(name, all.of(mend).orElseThrow());
        assertThat(new Planner(KNOWLEDGE, new Search()).plan(read, new SolveLimits(60, Repair.PLAN_GAP)))
                .isInstanceOfSatisfying(Planner.Result.Planned.class, again -> {
                    assertThat(again.verdict().passed()).isTrue();
                    assertThat(again.plan().cost().perDay())
                            .isLessThanOrEqualTo(mend.costPerDay() * (1 + Repair.PLAN_GAP));
                });
    }

    @ParameterizedTest
    @MethodSource("scenarios")
    void whatNoEditSpeaksOfStaysAsItIs(String name) throws Exception {
        JsonNode before = new JsonMapper().readTree(file(name).toFile());
        MendEdits all = Demo.edits(file(name));
        for (Mend mend : answer(name).mends()) {
            List<Edit> edits = all.of(mend).orElse(List.of());
            JsonNode after = new JsonMapper().readTree(all.text(edits));
            before.properties().forEach(field -> {
                String path = "/" + field.getKey();
                if (edits.stream()
                        .noneMatch(
                                edit -> edit.path().equals(path) || edit.path().startsWith(path + "/"))) {
                    assertThat(after.get(field.getKey())).isEqualTo(field.getValue());
                }
            });
            assertThat(List.copyOf(names(after)).subList(0, before.size())).isEqualTo(names(before));
        }
    }

    private static List<String> names(JsonNode node) {
        return node.properties().stream().map(field -> field.getKey()).toList();
    }

    /** Everything that the model reads. */
    private static void isNoTighter(Household read, Household mended) {
        assertThat(read.withKitchen(mended.kitchen())
                        .withPantry(mended.pantry())
                        .withShape(mended.shape())
                        .withRules(mended.rules())
                        .withBudget(mended.budget()))
                .usingRecursiveComparison()
                .ignoringFields("defaults", "cautions", "pantry", "dogs")
                .isEqualTo(mended);
        assertThat(read.dogs()).isEqualTo(mended.dogs());
        most(read.budget(), mended.budget());
        least(read.rules().margin(), mended.rules().margin());
        assertThat(read.rules().withMargin(0)).isEqualTo(mended.rules().withMargin(0));
        kitchen(read.kitchen(), mended.kitchen());
        shape(read.shape(), mended.shape());
        assertThat(read.pantry()).hasSameSizeAs(mended.pantry());
        for (int i = 0; i < read.pantry().size(); i++) {
            item(read.pantry().get(i), mended.pantry().get(i));
        }
    }

    private static void kitchen(Kitchen read, Kitchen mended) {
        most(read.binMl(), mended.binMl());
        Freezer freezer = read.freezer();
        Freezer wanted = mended.freezer();
        most(freezer == null ? null : freezer.freeForFoodMl(), wanted == null ? null : wanted.freeForFoodMl());
        assertThat(read.withBinMl(null).withFreezer(null))
                .isEqualTo(mended.withBinMl(null).withFreezer(null));
    }

    private static void shape(Shape read, Shape mended) {
        most(read.oneFoodMost(), mended.oneFoodMost());
        least(read.smallestUsefulShare(), mended.smallestUsefulShare());
        least(read.smallestUsefulShareMinor(), mended.smallestUsefulShareMinor());
        for (int i = 0; i < mended.bands().size(); i++) {
            least(read.bands().get(i).least(), mended.bands().get(i).least());
            most(read.bands().get(i).most(), mended.bands().get(i).most());
        }
        assertThat(read.withBands(mended.bands())
                        .withOneFoodMost(mended.oneFoodMost())
                        .withSmallestUseful(mended.smallestUsefulShare(), mended.smallestUsefulShareMinor()))
                .isEqualTo(mended);
    }

    private static void item(PantryItem read, PantryItem mended) {
        most(read.atMostGrams(), mended.atMostGrams());
        least(read.mustUseGrams(), mended.mustUseGrams());
        least(read.packPrice(), mended.packPrice());
        assertThat(read.withAtMost(null).withMustUse(0))
                .usingRecursiveComparison()
                .ignoringFields("packPrice")
                .isEqualTo(mended.withAtMost(null).withMustUse(0));
    }

    private static void most(Double read, Double mended) {
        assertThat(read == null).isEqualTo(mended == null);
        if (read != null && mended != null) {
            assertThat(read).isBetween(mended * (1 - NOISE), mended * (1 + HARDLY));
        }
    }

    private static void least(double read, double mended) {
        assertThat(read).isBetween(mended * (1 - HARDLY), mended * (1 + NOISE));
    }
}
