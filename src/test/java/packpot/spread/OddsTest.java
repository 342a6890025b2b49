package packpot.spread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Demo;
import packpot.audit.DogAudit;
import packpot.audit.NutrientLine;
import packpot.audit.Verdict;
import packpot.plan.Plan;

/** Real plans: draws against the formula, and both against what the audit reckoned. */
class OddsTest {
    private static final int DRAWS = 10_000;
    /** Among some 600 minimums the farthest is rarely farther. */
    private static final double STANDARD_ERRORS = 4;
    /** Beyond this share of the mean factors reach nothing now and then, and the sum is not quite normal. */
    private static final double NEARLY_NORMAL = 0.3;

    private static final double NOT_QUITE = 0.01;

    static Stream<Demo.Planned> demos() {
        return Demo.all();
    }

    private static Odds odds(Demo.Planned demo, Spread spread, int draws) {
        return Odds.of(demo.plan(), demo.verdict(), demo.household(), Demo.knowledge(), spread, draws, 1, 0.95);
    }

    private static List<Odds.OfMinimum> minimums(Odds odds) {
        return odds.dogs().stream().flatMap(dog -> dog.minimums().stream()).toList();
    }

    @ParameterizedTest
    @MethodSource("demos")
    void drawsAgreeWithTheFormulaForASumOfNormals(Demo.Planned demo) {
        Odds odds = odds(demo, Spread.load(), DRAWS);
        assertThat(minimums(odds)).hasSizeGreaterThan(35);
        for (Odds.OfDog dog : odds.dogs()) {
            assertThat(dog.minimums()).isSortedAccordingTo(Comparator.comparingInt(Odds.OfMinimum::met));
            assertThat(dog.minimums()).allMatch(minimum -> minimum.share() == (double) minimum.met() / DRAWS);
        }
        for (Odds.OfMinimum minimum : minimums(odds)) {
            double formula = minimum.formula();
            double error = Math.sqrt(formula * (1 - formula) / DRAWS) + 1.0 / DRAWS;
            double allowed = minimum.spread() > NEARLY_NORMAL * minimum.mean() ? NOT_QUITE : 0;
            assertThat(minimum.share())
                    .as("%s, %s", demo, minimum)
                    .isCloseTo(formula, within(STANDARD_ERRORS * error + allowed));
        }
    }

    @ParameterizedTest
    @MethodSource("demos")
    void nearlyNormalErrorsAgreeToTheLastStandardError(Demo.Planned demo) {
        Spread narrow = Spread.load().withFoods(0.1);
        for (Odds.OfMinimum minimum : minimums(odds(demo, narrow, DRAWS))) {
            double formula = minimum.formula();
            double error = Math.sqrt(formula * (1 - formula) / DRAWS) + 1.0 / DRAWS;
            assertThat(minimum.share()).as("%s, %s", demo, minimum).isCloseTo(formula, within(STANDARD_ERRORS * error));
        }
    }

    @ParameterizedTest
    @MethodSource("demos")
    void meansAndMinimumsAreThoseOfTheAudit(Demo.Planned demo) {
        Odds odds = odds(demo, Spread.load(), 1);
        for (DogAudit dog : demo.verdict().dogs()) {
            List<Odds.OfMinimum> found = odds.dogs().stream()
                    .filter(each -> each.dog().equals(dog.dog()))
                    .findFirst()
                    .orElseThrow()
                    .minimums();
            List<NutrientLine> asked = dog.nutrients().stream()
                    .filter(line -> line.minimum() != null)
                    .toList();
            assertThat(found)
                    .extracting(Odds.OfMinimum::key)
                    .containsExactlyInAnyOrderElementsOf(
                            asked.stream().map(NutrientLine::key).toList());
            for (NutrientLine line : asked) {
                Odds.OfMinimum minimum = found.stream()
                        .filter(each -> each.key().equals(line.key()))
                        .findFirst()
                        .orElseThrow();
                double least = line.minimum() == null ? 0 : line.minimum();
                assertThat(minimum.mean()).as(line.key()).isCloseTo(line.got() / least, within(1e-9));
                double perDay = line.unit().isEmpty() ? least : least * dog.kcalPerDay() / 1000;
                assertThat(minimum.minimum()).as(line.key()).isCloseTo(perDay, within(1e-9 * perDay));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("demos")
    void withoutSpreadAndErrorAnAuditedPlanIsSure(Demo.Planned demo) {
        Spread none =
                Spread.load().withFoods(0).withSupplements(0).withScale(0, 0).withMeasures(0);
        Odds odds = odds(demo, none, 200);
        assertThat(odds.allMet()).isEqualTo(200);
        assertThat(minimums(odds)).allMatch(minimum -> minimum.met() == 200 && minimum.formula() == 1);
        assertThat(minimums(odds)).allMatch(minimum -> minimum.spread() == 0 && minimum.marginNeeded() == 0);
    }

    @ParameterizedTest
    @MethodSource("demos")
    void aLargerSpreadIsNeverMoreCertain(Demo.Planned demo) {
        List<Spread> wider = new ArrayList<>();
        for (double share : new double[] {0.02, 0.05, 0.1, 0.2}) {
            wider.add(Spread.load()
                    .withFoods(share)
                    .withSupplements(share)
                    .withScale(share, 1)
                    .withMeasures(share));
        }
        Odds last = odds(demo, wider.get(0), DRAWS);
        for (Spread spread : wider.subList(1, wider.size())) {
            Odds next = odds(demo, spread, DRAWS);
            for (Odds.OfDog dog : last.dogs()) {
                for (Odds.OfMinimum before : dog.minimums()) {
                    Odds.OfMinimum after = next.dogs().stream()
                            .filter(each -> each.dog().equals(dog.dog()))
                            .flatMap(each -> each.minimums().stream())
                            .filter(each -> each.key().equals(before.key()))
                            .findFirst()
                            .orElseThrow();
                    assertThat(after.spread()).as(before.key()).isGreaterThan(before.spread());
                    assertThat(after.formula()).as(before.key()).isLessThanOrEqualTo(before.formula());
                    assertThat(after.share())
                            .as(before.key())
                            .isLessThanOrEqualTo(before.share() + STANDARD_ERRORS * before.standardError());
                }
            }
            last = next;
        }
    }

    @Test
    void portionsAndDosesAreAveragedAndEachFoodIsWeighedOnce() {
        Demo.Planned demo = Demo.planned("three-adults");
        Spread spread = Spread.load().withScale(0.1, 0).withMeasures(0.2);
        Intakes intakes = Intakes.of(demo.plan(), demo.verdict(), demo.household(), Demo.knowledge(), spread);
        int meals = demo.plan().mealsPerDay() * demo.plan().days();
        assertThat(meals).isEqualTo(28);
        int seldom = 0;
        for (int d = 0; d < intakes.eaters().size(); d++) {
            Intakes.Eater eater = intakes.eaters().get(d);
            assertThat(eater.portionSpread()).isCloseTo(0.1 / Math.sqrt(28), within(1e-12));
            List<Plan.Addition> additions = demo.plan().dogs().get(d).additions();
            for (int a = 0; a < additions.size(); a++) {
                int times = additions.get(a).onDays().size();
                seldom += times < 14 ? 1 : 0;
                assertThat(eater.doses().get(a).spread()).isCloseTo(0.2 / Math.sqrt(times), within(1e-12));
            }
        }
        assertThat(seldom).isPositive();
        assertThat(intakes.sources()).hasSize((int) Stream.concat(
                        demo.plan().pot().stream().map(Plan.Ingredient::food),
                        demo.plan().dogs().stream()
                                .flatMap(dog -> dog.additions().stream())
                                .map(Plan.Addition::food))
                .distinct()
                .count());
        for (int f = 0; f < demo.plan().pot().size(); f++) {
            if (!demo.plan().pot().get(f).stirredIn()) {
                assertThat(intakes.sources().get(f).potSpread()).isEqualTo(0.1);
            }
        }
    }

    @Test
    void aRatioIsHeldToItsOwnMinimum() {
        Demo.Planned demo = Demo.planned("three-adults");
        DogAudit dog = demo.verdict().dogs().get(0);
        NutrientLine line = dog.nutrients().stream()
                .filter(each -> each.key().equals("calcium-phosphorus-ratio"))
                .findFirst()
                .orElseThrow();
        NutrientLine stricter = new NutrientLine(
                line.key(), line.label(), "", 1.2, line.got(), line.got(), null, line.got(), 0, List.of(), false);
        Verdict verdict = new Verdict(
                List.of(),
                List.of(new DogAudit(
                        dog.dog(), dog.targetKcalPerDay(), dog.kcalPerDay(), dog.dryGramsPerDay(), List.of(stricter))));
        Odds odds = Odds.of(demo.plan(), verdict, demo.household(), Demo.knowledge(), Spread.load(), DRAWS, 1, 0.95);
        Odds.OfMinimum minimum = odds.dogs().get(0).minimums().get(0);
        assertThat(minimum.mean()).isCloseTo(line.got() / 1.2, within(1e-9));
        assertThat(minimum.minimum()).isEqualTo(1.2);
        assertThat(minimum.share()).isCloseTo(minimum.formula(), within(0.02)).isBetween(0.5, 0.9);
    }
}
