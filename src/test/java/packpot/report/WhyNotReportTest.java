package packpot.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.explain.Clash;
import packpot.explain.Mend;
import packpot.explain.MendEdits;
import packpot.explain.WhyNot;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;
import packpot.household.Wish;

/** What a person reads of clashes and mends that are made up here. */
class WhyNotReportTest {
    private static final Household HOUSEHOLD = household();

    private static final MendEdits EDITS = Demo.edits(Demo.file("tiny-freezer"));

    private static Household household() {
        try {
            return new ScenarioReader(Knowledge.load(), LocalDate.of(2026, 3, 7)).read(Demo.file("tiny-freezer"));
        } catch (ScenarioException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Clash.Part energy(double reached) {
        return new Clash.Part(
                new Wish(Wish.Kind.ENERGY, "", "energy", "Clover: 796 kcal a day; Rusk: 448 kcal a day", 1244),
                1244.0,
                reached,
                "kcal a day",
                true,
                "at most " + reached + " kcal a day can be reached");
    }

    private static Clash.Part part(Wish.Kind kind, String sentence) {
        return new Clash.Part(new Wish(kind, "", sentence, sentence, 1), null, null, "", true, "");
    }

    private static String text(Clash clash, Mend... mends) {
        return WhyNotReport.text(answer(clash, mends), EDITS);
    }

    private static WhyNot.Answer.NoPlan answer(Clash clash, Mend... mends) {
        return new WhyNot.Answer.NoPlan(HOUSEHOLD, List.of(clash), true, List.of(mends), 190, List.of());
    }

    private static Mend loosened(String change, double costPerDay, String... gaveWay) {
        return new Mend(
                Mend.Kind.LOOSEN, List.of(change), Set.of(gaveWay), List.of(), List.of(), true, costPerDay, 100);
    }

    @Test
    void whereNothingCanBeFedThatIsSaidInPlainWords() {
        Clash clash = new Clash(List.of(part(Wish.Kind.NUTRIENT_MINIMUM, "iodine at least 250 ug"), energy(0)), true);
        assertThat(text(clash))
                .contains("This cannot be had, whatever is fed of these foods:", "- iodine at least 250 ug")
                .doesNotContain("kcal a day");
    }

    @Test
    void whereSomeCanBeFedTheDogsEnergyIsOneFigure() {
        Clash clash = new Clash(List.of(part(Wish.Kind.BAGS, "at most 6 bags"), energy(779)), true);
        assertThat(text(clash))
                .contains("These cannot all be had together", "together 1,244 kcal a", "779.0 kcal a day can be")
                .doesNotContain("Rusk: 448");
    }

    @Test
    void ownWishesStandFirstAndTheEnergyLast() {
        Clash clash = new Clash(
                List.of(
                        energy(779),
                        part(Wish.Kind.SHAPE, "liver at most 5 %"),
                        part(Wish.Kind.NUTRIENT_MINIMUM, "iron at least 10 mg"),
                        part(Wish.Kind.FREEZER, "room for 3 bags")),
                true);
        assertThat(text(clash))
                .containsSubsequence("room for 3 bags", "iron at least", "liver at most", "all dogs get their energy");
    }

    @Test
    void ofLooseningsThatHardlyDifferOneIsShownAndProgramsGetAll() throws IOException {
        Clash clash = new Clash(List.of(part(Wish.Kind.MUST_USE, "use 6,000 g"), energy(779)), true);
        Mend[] mends = {
            loosened("carrots and margin", 4.51, "carrots", "margin"),
            loosened("carrots 3,715", 4.60, "carrots"),
            loosened("carrots 3,735", 6.63, "carrots"),
            loosened("bags", 9, "bags")
        };
        assertThat(text(clash, mends))
                .contains("1. carrots 3,715", "2. bags")
                .doesNotContain("carrots 3,735", "carrots and margin");
        JsonNode told = new JsonMapper()
                .readTree(WhyNotReport.json(answer(clash, mends), EDITS))
                .path("mends");
        assertThat(told)
                .extracting(mend -> mend.path("nearDouble").booleanValue())
                .containsExactly(true, false, true, false);
        assertThat(told).extracting(mend -> mend.path("number").asText()).containsExactly("null", "1", "null", "2");
    }

    @Test
    void aLooseningThatSavesMuchByGivingMoreIsShownToo() {
        Clash clash = new Clash(List.of(part(Wish.Kind.MUST_USE, "use 6,000 g"), energy(779)), true);
        assertThat(text(
                        clash,
                        loosened("carrots and margin", 4.51, "carrots", "margin"),
                        loosened("carrots 3,715", 6, "carrots")))
                .contains("carrots and margin", "carrots 3,715");
    }

    @Test
    void aLimitForSafetyIsMarkedAndAWishIsNot() {
        Wish cap = new Wish(Wish.Kind.FOOD_LIMIT, "Rusk", "salt", "Rusk: salt at most 0.8 g per 1000 kcal", 1);
        String text = text(new Clash(
                List.of(
                        part(Wish.Kind.NUTRIENT_MAXIMUM, "Rusk: sodium at most 1.25 g"),
                        part(Wish.Kind.BAGS, "at most 6 bags"),
                        new Clash.Part(cap, null, null, "", false, "")),
                true));
        String flat = text.replaceAll("\\s+", " ");
        assertThat(flat)
                .contains("sodium at most 1.25 g; it is for safety", "0.8 g per 1000 kcal; it is for safety")
                .doesNotContain("6 bags; it is for safety");
    }

    @Test
    void aMendThatIsNoChangeOfOneScenarioSaysSo() {
        Clash clash = new Clash(List.of(part(Wish.Kind.BAGS, "at most 6 bags"), energy(779)), true);
        Mend pots = new Mend(Mend.Kind.SECOND_POT, List.of("two pots"), Set.of(), List.of(), List.of(), true, 4, 100);
        assertThat(text(clash, pots).replaceAll("\\s+", " "))
                .contains("1. two pots:", "cannot be taken over")
                .doesNotContain("--apply");
    }
}
