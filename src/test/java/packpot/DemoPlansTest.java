package packpot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.audit.DogAudit;
import packpot.audit.NutrientLine;
import packpot.explain.Clash;
import packpot.explain.Mend;
import packpot.explain.Planner;
import packpot.explain.WhyNot;
import packpot.food.Food;
import packpot.food.Supplement;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.plan.Plan;
import packpot.report.JsonReport;
import packpot.report.WhyNotReport;

/** Every demo of the folder scenarios/, planned from its file to the printed plan. */
class DemoPlansTest {
    private static final double CLOSE = 1e-6;

    static Stream<Path> files() {
        return Demo.files().stream();
    }

    static Stream<Demo.Planned> demos() {
        return Demo.all();
    }

    @Test
    void thereAreDemos() {
        assertThat(Demo.files()).isNotEmpty();
    }

    @ParameterizedTest
    @MethodSource("demos")
    void thePlanPassesTheAudit(Demo.Planned demo) {
        assertThat(demo.verdict().findings()).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("demos")
    void theCostIsProvedToLieWithinTheGap(Demo.Planned demo) {
        Plan.Proof proof = demo.plan().proof();
        assertThat(proof.provedOptimal()).isTrue();
        assertThat(proof.gapShare()).isLessThanOrEqualTo(Demo.GAP);
        assertThat(proof.noPlanBelow()).isBetween(proof.cost() * (1 - Demo.GAP), proof.cost());
    }

    @ParameterizedTest
    @MethodSource("demos")
    void everyDogGetsItsEnergyWithinOnePercent(Demo.Planned demo) {
        assertThat(demo.verdict().dogs()).hasSameSizeAs(demo.household().dogs());
        for (DogAudit dog : demo.verdict().dogs()) {
            assertThat(dog.kcalPerDay())
                    .as(dog.dog())
                    .isCloseTo(dog.targetKcalPerDay(), within(0.01 * dog.targetKcalPerDay()));
        }
    }

    @ParameterizedTest
    @MethodSource("demos")
    void noMinimumIsMissedAndNoMaximumPassed(Demo.Planned demo) {
        for (DogAudit dog : demo.verdict().dogs()) {
            assertThat(dog.nutrients()).hasSizeGreaterThan(30);
            for (NutrientLine line : dog.nutrients()) {
                Double minimum = line.minimum();
                Double maximum = line.maximum();
                String what = dog.dog() + ", " + line.label();
                if (minimum != null) {
                    assertThat(line.got()).as(what).isGreaterThanOrEqualTo(minimum * (1 - CLOSE));
                }
                if (maximum != null) {
                    assertThat(line.gotAgainstMaximum()).as(what).isLessThanOrEqualTo(maximum * (1 + CLOSE));
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("demos")
    void thePotHasFiveToTenFoodsAndFewSupplements(Demo.Planned demo) {
        assertThat(demo.plan().pot().stream().filter(each -> !each.stirredIn())).hasSizeBetween(5, 10);
        assertThat(demo.plan().pot().stream().filter(Plan.Ingredient::stirredIn))
                .hasSizeLessThanOrEqualTo(6);
    }

    @ParameterizedTest
    @MethodSource("demos")
    void additionsStayUnderATwentiethOfEachBowl(Demo.Planned demo) {
        Plan plan = demo.plan();
        for (Plan.DogPlan dog : plan.dogs()) {
            double added = dog.additions().stream()
                    .mapToDouble(Plan.Addition::gramsInBatch)
                    .sum();
            assertThat(added).as(dog.name()).isLessThan(0.05 * (added + (double) dog.potGramsPerDay() * plan.days()));
        }
    }

    @ParameterizedTest
    @MethodSource("demos")
    void everyDoseIsAWholeNumberOfTheSmallestPart(Demo.Planned demo) {
        for (Plan.DogPlan dog : demo.plan().dogs()) {
            for (Plan.Addition addition : dog.additions()) {
                double parts = addition.gramsPerDose()
                        / supplement(demo, addition.food()).smallestDoseGrams();
                assertThat(parts).as(dog.name() + ", " + addition.label()).isGreaterThan(0.5);
                assertThat(parts).as(dog.name() + ", " + addition.label()).isCloseTo(Math.rint(parts), within(CLOSE));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("files")
    void theScenarioFollowsItsSchema(Path file) {
        assertThat(faults("scenario.schema.json", Demo.text(file))).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("demos")
    void thePlanForProgramsFollowsItsSchema(Demo.Planned demo) {
        assertThat(faults("plan.schema.json", JsonReport.plan(demo.plan(), demo.verdict())))
                .isEmpty();
    }

    private static Clash clash(Wish.Kind kind) {
        Wish wish = new Wish(kind, "Moss", "what", "a sentence", 1);
        return new Clash(
                List.of(
                        new Clash.Part(wish, 1.5, 1.2, "g", true, "in words"),
                        new Clash.Part(wish, null, null, "", false, "")),
                true);
    }

    @Test
    void theReportOfNoPlanFollowsTheSameSchema() {
        assertThat(faults("plan.schema.json", WhyNotReport.briefJson("A household", null)))
                .isEmpty();
    }

    @Test
    void thePlanSchemaKnowsEveryKindOfWish() {
        for (Wish.Kind kind : Wish.Kind.values()) {
            assertThat(faults("plan.schema.json", WhyNotReport.briefJson("A household", clash(kind))))
                    .as(kind.name())
                    .isEmpty();
        }
    }

    @Test
    void whyNotForProgramsFollowsItsSchema() {
        Demo.Planned demo = Demo.planned("tiny-freezer");
        Planner.Result.Planned planned =
                new Planner.Result.Planned(demo.household().withBudget(1000.0), demo.plan(), demo.verdict());
        Mend mend = new Mend(
                Mend.Kind.LOOSEN,
                List.of("spend more"),
                Set.of("BUDGET"),
                List.of("a note"),
                List.of(planned),
                true,
                1.5,
                20);
        WhyNot.Answer.NoPlan answer = new WhyNot.Answer.NoPlan(
                demo.household(), List.of(clash(Wish.Kind.BUDGET)), true, List.of(mend), 3, List.of("a second pot"));
        String json = WhyNotReport.json(answer, Demo.edits(Demo.file("tiny-freezer")));
        assertThat(json).contains("\"path\" : \"/budget\"");
        assertThat(faults("why-not.schema.json", json)).isEmpty();
        assertThat(faults("why-not.schema.json", WhyNotReport.hasPlanJson(demo.plan(), true)))
                .isEmpty();
    }

    @Test
    void thePlanSchemaRefusesWhatItDoesNotDescribe() {
        String json = JsonReport.plan(
                Demo.planned("tiny-freezer").plan(),
                Demo.planned("tiny-freezer").verdict());
        assertThat(faults("plan.schema.json", json.replace("\"pot\" :", "\"bowl\" :")))
                .isNotEmpty();
        assertThat(faults("plan.schema.json", json.replaceFirst("\"grams\" : [0-9.]+", "\"grams\" : \"much\"")))
                .isNotEmpty();
        assertThat(faults("plan.schema.json", json.replaceFirst("\"bags\" :", "\"crates\" : 1, \"bags\" :")))
                .isNotEmpty();
    }

    private static Supplement supplement(Demo.Planned demo, String food) {
        return demo.household().pantry().stream()
                .map(PantryItem::food)
                .filter(each -> each.id().equals(food))
                .map(Food::supplement)
                .filter(Objects::nonNull)
                .findFirst()
                .orElseThrow();
    }

    private static List<Error> faults(String schema, String json) {
        Schema loaded = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Demo.text(Path.of("models", schema)), InputFormat.JSON);
        return loaded.validate(json, InputFormat.JSON);
    }
}
