package packpot.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.data.ModelFiles;
import packpot.food.Constituent;
import packpot.plan.FeedingCalendar;
import packpot.plan.Plan;
import packpot.words.Texts;

/** The work of a cook day, and what labels and tables say of it. */
class CookDayTest {
    private static final SheetSource SOURCE = DemoSheets.source("foster-home");
    private static final CookDay DAY = CookDay.of(SOURCE);

    private static CookDay.Step step(String label) {
        return DAY.cooked().stream()
                .filter(step -> step.food().label().equals(label))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void whatCooksLongestComesFirst() {
        assertThat(DAY.cooked())
                .isSortedAccordingTo(Comparator.comparingInt((CookDay.Step step) -> -step.minutes()))
                .extracting(CookDay.Step::minutes)
                .contains(60, 10);
        assertThat(DAY.cooked().size() + DAY.after().size())
                .isEqualTo(SOURCE.plan().pot().size());
        assertThat(DAY.after()).allMatch(step -> step.food().method().equals("as-is"));
    }

    /**
     * US safe minimum internal temperatures (S-TEMP): poultry and its giblets 165 F, whole pork 145 F and ground 160 F, of
     * which the higher is taken, egg dishes 160 F.
     */
    @Test
    void theMiddleReachesThePublishedTemperature() {
        assertThat(step("chicken thigh, skinless").celsius()).hasValue(74);
        assertThat(step("chicken liver").celsius()).hasValue(74);
        assertThat(step("pork loin, lean").celsius()).hasValue(71);
        assertThat(step("egg, whole").celsius()).hasValue(71);
        assertThat(step("carrots").celsius()).isEmpty();
    }

    @Test
    void waterIsWhatFoodTakesUpInThePot() {
        CookDay.Step oats = step("rolled oats, dry");
        assertThat(oats.waterGrams())
                .isCloseTo(oats.food().cookedGrams() - oats.food().grams(), within(1e-9))
                .isPositive();
        assertThat(step("pork loin, lean").waterGrams()).isZero();
        // What is boiled in plenty of water has a pan of its own, and its water goes down the drain.
        assertThat(step("spinach, frozen").apart()).isTrue();
        assertThat(step("spinach, frozen").waterGrams()).isZero();
        assertThat(oats.apart()).isFalse();
        assertThat(DAY.soak()).extracting(step -> step.food().label()).containsExactly("lentils, dry");
    }

    @Test
    void poisonsStandOnTheSheet() {
        assertThat(DAY.never()).contains("Garlic", "Xylitol (birch sugar, E967)", "Cooked bones");
    }

    @Test
    void everyFamilyThatIsCookedHasItsMinutes() {
        Set<String> timed = ModelFiles.table("cook_minutes.csv").stream()
                .filter(row -> row.text("words").isEmpty())
                .map(row -> row.required("family"))
                .collect(Collectors.toSet());
        assertThat(timed)
                .containsAll(ModelFiles.table("preparations.csv").stream()
                        .map(row -> row.required("family"))
                        .toList());
    }

    /** Supplements are counted or measured by spoon; the grams of a tablet are those of its salt alone. */
    @Test
    void tabletsAreCountedAndPowdersWeighed() {
        Sheets sheets = DemoSheets.sheets(SOURCE, java.util.Locale.US, Paper.LETTER);
        assertThat(sheets.isCounted("kelp-tablet-150ug")).isTrue();
        assertThat(sheets.isCounted("copper-gluconate")).isTrue();
        assertThat(sheets.isCounted("vitamin-d3-drops")).isTrue();
        assertThat(sheets.isCounted("salt-iodised-45")).isFalse();
        assertThat(sheets.isCounted("oil-canola")).isFalse();
    }

    /** Dry matter by definition: what of the fed grams is not water, food by food. */
    @Test
    void dryMatterIsWhatIsNotWater() {
        for (int i = 0; i < SOURCE.plan().dogs().size(); i++) {
            Plan.DogPlan dog = SOURCE.plan().dogs().get(i);
            double share = dog.potGramsInBatch() / SOURCE.plan().batch().cookedGrams();
            double dry = 0;
            for (Plan.Ingredient each : SOURCE.plan().pot()) {
                dry += share * each.grams() * (1 - water(each.food()));
            }
            for (Plan.Addition addition : dog.additions()) {
                dry += addition.gramsInBatch() * (1 - water(addition.food()));
            }
            assertThat(SOURCE.verdict().dogs().get(i).dryGramsPerDay())
                    .isCloseTo(dry / dog.daysFed(), within(1e-6 * dry));
        }
    }

    private static double water(String food) {
        return SOURCE.item(food).food().composition().perGram(Constituent.WATER_G);
    }

    /** A night that a bag waits for the freezer is one that it does not keep once it is thawed. */
    @Test
    void nightsBeforeTheFreezerAreTakenOff() {
        SheetSource tiny = DemoSheets.source("tiny-freezer");
        int keeps = (int) Demo.knowledge().kitchen().number("daysAfterFridgeThawDefault");
        List<Labels.Label> labels = Labels.of(tiny, Texts.of(Locale.US));
        int late = 0;
        for (FeedingCalendar.Event event : tiny.calendar().events()) {
            if (event.kind() == FeedingCalendar.Kind.FREEZE) {
                int waited = (int) ChronoUnit.DAYS.between(tiny.plan().start(), event.date());
                late = Math.max(late, waited);
                event.bags()
                        .forEach(bag -> assertThat(labels.get(bag - 1).daysOnceThawed())
                                .isEqualTo(Math.max(1, keeps - waited)));
            }
        }
        assertThat(late).isPositive();
        assertThat(labels.get(labels.size() - 1).useBy())
                .isEqualTo(tiny.plan().start().plusDays((long)
                        Demo.knowledge().kitchen().freezerDays()));
        assertThat(labels.get(0).useBy())
                .isEqualTo(
                        tiny.plan().start().plusDays(tiny.household().kitchen().fridgeDays()));
    }

    @Test
    void aNutrientLiesOnItsScale() {
        assertThat(Charts.place(0.5)).isZero();
        assertThat(Charts.place(50)).isEqualTo(1);
        assertThat(Charts.place(5)).isCloseTo(0.5, within(1e-12));
        for (Charts.Band band : Charts.nutrients(SOURCE.verdict().dogs().get(0))) {
            assertThat(band.got()).isGreaterThanOrEqualTo(band.minimum());
            if (band.maximum() != null) {
                assertThat(band.got()).isLessThanOrEqualTo(band.maximum());
            }
        }
    }
}
