package packpot.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import packpot.Demo;

/** The page as a person uses it, in a browser; axe-core looks at every step of it (WCAG 2.1, levels A and AA). */
@EnabledIfEnvironmentVariable(named = "PACKPOT_BROWSER", matches = ".+")
class PageTest {
    private static final List<String> STEPS = List.of("dogs", "pantry", "kitchen", "wishes", "recipe", "weeks", "text");
    private static final String[][] DOGS = {
        {"Juniper", "24 kg", "4 years"}, {"Sorrel", "11 kg", "7 years"}, {"Tansy", "6 kg", "3 years"}
    };
    private static final String[][] FOODS = {
        {"chicken thigh, skinless", "$8.40", "3 lb"},
        {"ground turkey, 93 % lean", "$13.00", "3 lb"},
        {"chicken liver", "$2.90", "20 oz"},
        {"beef heart", "$7.00", "2 lb"},
        {"egg, whole", "$3.60", ""},
        {"white rice, enriched, dry", "$4.00", "5 lb"},
        {"rolled oats, dry", "$4.50", "42 oz"},
        {"lentils, dry", "$1.80", "1 lb"},
        {"carrots", "$1.90", "2 lb"},
        {"spinach, frozen", "$2.00", "16 oz"},
        {"canola oil", "$4.50", ""},
        {"eggshell powder", "$5.00", "200 g"},
        {"salt, iodised, 45 ug per g", "$1.20", ""},
        {"kelp tablet, 150 ug iodine", "$9.00", "200 tablets"},
        {"zinc gluconate", "$7.00", ""},
        {"copper gluconate", "$6.00", ""},
        {"manganese gluconate", "$8.00", ""},
        {"vitamin E oil", "$10.00", ""},
        {"vitamin D3 drops", "$9.00", "300 drops"},
        {"potassium chloride", "$10.00", ""}
    };

    @Test
    void aHouseholdIsEnteredPlannedChangedMendedPrintedAndSaved(@TempDir Path folder) throws Exception {
        try (PageServer server = PageServer.start(folder, 0, Demo.knowledge());
                Browser page = Browser.start(false)) {
            page.open(server.address(null).toString());
            for (int i = 0; i < DOGS.length; i++) {
                page.click("#add-dog");
                page.type("dogs[" + i + "].name", DOGS[i][0]);
                page.type("dogs[" + i + "].weight", DOGS[i][1]);
                page.type("dogs[" + i + "].age", DOGS[i][2]);
            }
            page.await("the energy of a dog", () -> page.text("[data-dog='2']").contains("kcal a day"));
            // FEDIAF 2024, table VII-6: 110 kcal per kg^0.75 for moderate activity; 24^0.75 = 10.84.
            assertThat(page.text("[data-dog='0']")).contains("1,193 kcal a day");
            page.step("pantry");
            for (int i = 0; i < FOODS.length; i++) {
                page.type("food-search", FOODS[i], i);
            }
            page.planned();
            page.await("a plan", () -> !page.all("#plan-body .strike").isEmpty());
            assertThat(page.violations()).isEmpty();

            page.planned();
            String first = page.summary();
            String protein = page.text("#plan-body tbody th");
            page.click("#plan-body .strike");
            page.await("it struck out", () -> !page.text("#plan-body table").contains(protein));
            page.await(
                    "the plan without " + protein,
                    () -> !page.summary().equals(first) && page.one("#beside").isDisplayed());
            assertThat(page.text("#beside")).contains(protein, "put back", "kept");
            assertThat(page.text("#plan-body table")).doesNotContain(protein);
            page.click("#undo");
            page.await("the plan as it was", () -> page.summary().equals(first));
            assertThat(page.all("#beside:not([hidden])")).isEmpty();

            page.step("wishes");
            page.type("budget", "$9");
            page.await("no plan", () -> !page.all("#ask-why").isEmpty());
            page.click("#ask-why");
            page.await("mends", () -> !page.all("[data-mend]").isEmpty());
            assertThat(page.violations()).isEmpty();
            page.click("[data-mend]:not([disabled])");
            page.await("the mended plan", () -> !page.all("#plan-body .strike").isEmpty());
            page.planned();

            page.click("#save");
            page.await("saved", () -> page.text("#saved").equals("saved"));
            String summary = page.summary();
            String address = page.one("#sheets-html").getAttribute("href");
            page.reload();
            page.planned();
            page.await("the same plan", () -> page.summary().equals(summary));
            assertThat(Files.readString(folder.resolve("my-dogs.json"))).contains("Sorrel");
            String before = page.newTab(address);
            assertThat(page.text("body")).contains("Shopping list", "Juniper", "Cook day", "For the veterinarian");
            page.tab(before);
        }
    }

    @Test
    void everyStepIsForEverybody(@TempDir Path folder) throws Exception {
        Files.copy(Demo.file("tiny-freezer"), folder.resolve("home.json"));
        ObjectNode few = (ObjectNode)
                new JsonMapper().readTree(folder.resolve("home.json").toFile());
        List<JsonNode> foods = few.withArray("pantry").valueStream().limit(3).toList();
        few.putArray("pantry").addAll(foods);
        // So few foods have no plan, which leaves the steps alone to look at.
        Files.writeString(folder.resolve("few.json"), few.toString());
        for (boolean dark : new boolean[] {false, true}) {
            try (PageServer server = PageServer.start(folder, 0, Demo.knowledge());
                    Browser page = Browser.start(dark)) {
                page.open(server.address("few.json").toString());
                page.planned();
                for (String step : STEPS) {
                    page.step(step);
                    assertThat(page.violations())
                            .as(step + (dark ? ", dark" : ""))
                            .isEmpty();
                }
                page.open(server.address("home.json").toString());
                page.await("a plan", () -> !page.all("#plan-body .strike").isEmpty());
                assertThat(page.violations())
                        .as("the plan" + (dark ? ", dark" : ""))
                        .isEmpty();
                page.size(360, 740);
                for (String step : STEPS) {
                    page.step(step);
                    assertThat(page.script("return document.documentElement.scrollWidth"))
                            .as("the width of " + step + " on a phone")
                            .isInstanceOfSatisfying(
                                    Long.class, width -> assertThat(width).isLessThanOrEqualTo(360));
                }
            }
        }
    }

    @Test
    void theKeyboardAloneWillDo(@TempDir Path folder) throws Exception {
        Files.copy(Demo.file("tiny-freezer"), folder.resolve("home.json"));
        try (PageServer server = PageServer.start(folder, 0, Demo.knowledge());
                Browser page = Browser.start(false)) {
            page.open(server.address("home.json").toString());
            page.await("a plan", () -> !page.all("#plan-body .strike").isEmpty());
            String first = page.summary();
            page.tabTo("[data-path='dogs[0].weight']");
            page.keys(Keys.chord(Keys.CONTROL, "a"), "13 kg");
            page.await("another plan", () -> !page.summary().equals(first));
            page.tabTo("[data-step=pantry]");
            page.keys(Keys.ENTER);
            page.tabTo("#food-search");
            page.keys("pumpkin");
            page.tabTo("#food-search-found button");
            page.keys(Keys.ENTER);
            page.tabTo("[data-path='pantry[1].outOfStock']");
            page.keys(Keys.SPACE);
            page.planned();
            page.tabTo(".strike");
            page.keys(Keys.ENTER);
            page.planned();
            page.keys(Keys.chord(Keys.CONTROL, "s"));
            page.await("saved", () -> page.text("#saved").equals("saved"));
            assertThat(Files.readString(folder.resolve("home.json")))
                    .contains("13 kg", "pumpkin")
                    .containsPattern("\"outOfStock\": true[\\s\\S]*\"outOfStock\": true");
        }
    }

    /** A plan that comes while a button of the one before it is held down does not swallow the click. */
    @Test
    void aClickIsNotLostToAPlanThatComesMeanwhile(@TempDir Path folder) throws Exception {
        Files.copy(Demo.file("three-adults"), folder.resolve("home.json"));
        try (PageServer server = PageServer.start(folder, 0, Demo.knowledge());
                Browser page = Browser.start(false)) {
            page.open(server.address("home.json").toString());
            page.await("a plan", () -> !page.all("#plan-body .strike").isEmpty());
            page.planned();
            String food = page.text("#plan-body tbody th");
            page.hold("#plan-body .strike", () -> {
                page.script("""
                        const weight = document.querySelector("[data-path='dogs[0].weight']");
                        weight.value = '66 lb';
                        weight.dispatchEvent(new Event('input', { bubbles: true }));
                        weight.dispatchEvent(new Event('change', { bubbles: true }));
                        """);
                sleep(2500);
            });
            page.await("it struck out", () -> !page.text("#plan-body table").contains(food));
        }
    }

    private static void sleep(long milliseconds) {
        try {
            Thread.sleep(milliseconds);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void unsavedWorkSurvivesAReloadAndTheEndOfTheServer(@TempDir Path folder) throws Exception {
        Files.copy(Demo.file("tiny-freezer"), folder.resolve("home.json"));
        String onDisk = Files.readString(folder.resolve("home.json"));
        try (Browser page = Browser.start(false)) {
            try (PageServer server = PageServer.start(folder, 0, Demo.knowledge())) {
                page.open(server.address("home.json").toString());
                page.type("dogs[0].name", "Quill <b>& Co\"</b>");
                page.await("kept", () -> page.text("#saved").startsWith("not saved"));
                page.reload();
                page.await("the work", () -> page.text("#notices").contains("unsaved work"));
                assertThat(page.one("[data-path='dogs[0].name']").getAttribute("value"))
                        .isEqualTo("Quill <b>& Co\"</b>");
                page.planned();
                assertThat(page.all("#plan-body b"))
                        .noneMatch(each -> each.getText().equals("& Co\""));
            }
            // The server ends in the middle of a plan; what is typed then stays.
            page.type("dogs[0].weight", "9 kg");
            page.await("that nobody answers", () -> page.text("#plan-state").contains("does not answer"));
            assertThat(page.one("[data-path='dogs[0].weight']").getAttribute("value"))
                    .isEqualTo("9 kg");
            try (PageServer server = PageServer.start(folder, 0, Demo.knowledge())) {
                page.open(server.address("home.json").toString());
                page.await("the offer", () -> page.text("#notices").contains("unsaved work on home.json"));
                page.click("#notices button");
                page.await(
                        "the work",
                        () -> page.one("[data-path='dogs[0].name']")
                                .getAttribute("value")
                                .startsWith("Quill"));
            }
        }
        assertThat(Files.readString(folder.resolve("home.json"))).isEqualTo(onDisk);
    }

    @Test
    void theLaterOfTwoPagesIsToldAndLosesNothing(@TempDir Path folder) throws Exception {
        Files.copy(Demo.file("tiny-freezer"), folder.resolve("home.json"));
        try (PageServer server = PageServer.start(folder, 0, Demo.knowledge());
                Browser page = Browser.start(false)) {
            String address = server.address("home.json").toString();
            page.open(address);
            page.type("dogs[0].name", "First");
            String first = page.newTab(address);
            page.await("the form", () -> !page.all("#form .step").isEmpty());
            page.type("dogs[0].name", "Second");
            page.click("#save");
            page.await("saved", () -> page.text("#saved").equals("saved"));
            page.tab(first);
            page.click("#save");
            page.await("the clash", () -> page.text("#notices").contains("was changed since it was opened here"));
            assertThat(Files.readString(folder.resolve("home.json"))).contains("Second");
            assertThat(page.one("[data-path='dogs[0].name']").getAttribute("value"))
                    .isEqualTo("First");
        }
    }

    @Test
    void aBrokenFileOpensWithItsFaultsAndNothingIsLost(@TempDir Path folder) throws Exception {
        String broken = Files.readString(Demo.file("tiny-freezer")).replaceFirst("\"dogs\": \\[", "\"dogs\" [");
        Files.writeString(folder.resolve("broken.json"), broken);
        Files.writeString(
                folder.resolve("faults.json"),
                Files.readString(Demo.file("tiny-freezer")).replaceFirst("\"weight\": \"[^\"]*\"", "\"weight\": 12"));
        try (PageServer server = PageServer.start(folder, 0, Demo.knowledge());
                Browser page = Browser.start(false)) {
            page.open(server.address("broken.json").toString());
            assertThat(page.text("#text-broken")).contains("not valid JSON");
            assertThat(page.one("#text").getAttribute("value")).isEqualTo(broken);
            page.open(server.address("faults.json").toString());
            page.await(
                    "the fault",
                    () -> page.text("[data-fault='dogs[0].weight']").contains("expected"));
            assertThat(page.one("[data-path='dogs[0].weight']").getAttribute("value"))
                    .isEqualTo("12");
            assertThat(page.text("#faults")).contains("dogs[0].weight");
        }
    }
}
