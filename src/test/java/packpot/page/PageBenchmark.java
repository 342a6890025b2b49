package packpot.page;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import org.junit.jupiter.api.io.TempDir;
import packpot.Demo;

/**
 * How long it takes from a change, or from a file picked out of the list, to a plan on the screen, measured in the browser:
 * {@code mvn -q test -Dtest=PageBenchmark}. Not part of the ordinary tests.
 */
@EnabledIfEnvironmentVariable(named = "PACKPOT_BROWSER", matches = ".+")
class PageBenchmark {
    private static final int WARM_UP = 8;
    private static final List<String> PICKED = List.of("three-adults", "tiny-freezer", "growing-puppy", "foster-home");
    /** Sets a field as a person does, and tells when a first and when the last plan of it has been painted. */
    private static final String CHANGE = """
            const [selector, value, done] = arguments;
            const field = document.querySelector(selector);
            const times = {};
            const begun = performance.now();
            const listener = (e) => requestAnimationFrame(() => requestAnimationFrame(() => {
              times[e.detail.first ? 'first' : 'last'] ??= performance.now() - begun;
              times.first ??= times.last;
              if (times.last !== undefined) {
                removeEventListener('planned', listener);
                done(times);
              }
            }));
            addEventListener('planned', listener);
            if (field.type === 'checkbox') {
              field.click();
            } else {
              field.value = value;
              field.dispatchEvent(new Event('input'));
              field.dispatchEvent(new Event('change'));
            }
            """;

    private static final String[][] CHANGES = {
        {"dogs[0].weight", "66 lb"}, {"dogs[0].weight", "70 lb"}, {"dogs[1].weight", "23 lb"},
        {"dogs[2].weight", "12 lb"}, {"pantry[1].outOfStock", ""}, {"pantry[1].outOfStock", ""},
        {"pantry[0].price", "$11.50"}, {"pantry[13].outOfStock", ""}, {"kitchen.days", "12"},
        {"kitchen.days", "13"}, {"kitchen.freezer.volume", "6 cu ft"}, {"pantry[4].outOfStock", ""},
        {"pantry[4].outOfStock", ""}, {"dogs[0].weight", "64 lb"}, {"dogs[1].weight", "20 lb"},
        {"pantry[11].outOfStock", ""}, {"pantry[1].price", "$9.90"}, {"pantry[1].price", "$7.10"},
        {"dogs[2].weight", "10.5 lb"}, {"pantry[7].price", "$5.00"}, {"pantry[19].price", "$8.00"},
        {"kitchen.freezer.volume", "7 cu ft"}, {"dogs[1].treats", "60 kcal"}, {"dogs[0].weight", "72 lb"},
        {"pantry[3].outOfStock", ""}, {"pantry[8].price", "$3.90"}, {"kitchen.mostBags", "44"},
        {"dogs[0].weight", "68 lb"}, {"pantry[10].price", "$2.20"}, {"margin", "6 %"}
    };

    @Test
    void fromAChangeToTheNewPlanOnTheScreen(@TempDir Path folder) throws Exception {
        Files.copy(Demo.file("three-adults"), folder.resolve("home.json"));
        try (PageServer server = PageServer.start(folder, 0, Demo.knowledge())) {
            // As the command does it: the plan is begun while the browser starts.
            String address = server.address("home.json").toString();
            try (Browser page = Browser.start(false)) {
                measure(page, address);
            }
        }
    }

    /** Each file is picked once, as a person begins: the first by a program that has planned nothing yet. */
    @Test
    void fromAFilePickedOutOfTheListToItsPlanOnTheScreen(@TempDir Path folder) throws Exception {
        for (String name : PICKED) {
            Files.copy(Demo.file(name), folder.resolve(name + ".json"));
        }
        try (PageServer server = PageServer.start(folder, 0, Demo.knowledge());
                Browser page = Browser.start(false)) {
            page.open(server.address(null).toString());
            page.await("the list", () -> page.all("#file option").size() > PICKED.size());
            for (String name : PICKED) {
                Map<?, ?> times = (Map<?, ?>) page.scriptLater(CHANGE, "#file", name + ".json");
                System.out.printf(
                        Locale.ROOT,
                        "picked %-16s first plan, checked %5.0f ms, proved plan %5.0f ms%n",
                        name,
                        ((Number) times.get("first")).doubleValue(),
                        ((Number) times.get("last")).doubleValue());
            }
        }
    }

    private static String field(String path) {
        return "[data-path=\"" + path + "\"]";
    }

    private static void measure(Browser page, String address) throws Exception {
        long opened = System.nanoTime();
        page.open(address);
        page.await("a plan", () -> !page.all("#plan-body .strike").isEmpty());
        System.out.printf(Locale.ROOT, "first plan on the screen: %.2f s%n", (System.nanoTime() - opened) / 1e9);
        page.planned();
        Object weight = page.script("return performance.getEntriesByType('resource')"
                + ".concat(performance.getEntriesByType('navigation'))"
                + ".reduce((sum, each) => sum + each.transferSize, 0)");
        System.out.printf(Locale.ROOT, "sent to the page, first plan included: %s bytes%n", weight);
        for (int i = 0; i < WARM_UP; i++) {
            page.scriptLater(CHANGE, field("dogs[0].weight"), (60 + i) + " lb");
        }
        List<Double> first = new ArrayList<>();
        List<Double> last = new ArrayList<>();
        for (String[] change : CHANGES) {
            Map<?, ?> times = (Map<?, ?>) page.scriptLater(CHANGE, field(change[0]), change[1]);
            first.add(((Number) times.get("first")).doubleValue());
            last.add(((Number) times.get("last")).doubleValue());
            System.out.printf(
                    Locale.ROOT,
                    "%-28s %-10s %5.0f %5.0f ms%n",
                    change[0],
                    change[1],
                    first.get(first.size() - 1),
                    last.get(last.size() - 1));
        }
        told("first plan, checked", first);
        told("proved plan", last);
    }

    private static void told(String what, List<Double> times) {
        List<Double> sorted = new ArrayList<>(times);
        Collections.sort(sorted);
        System.out.printf(
                Locale.ROOT,
                "%s: median %.0f ms, 95th percentile %.0f ms, of %d%n",
                what,
                sorted.get(sorted.size() / 2),
                sorted.get((int) Math.ceil(0.95 * sorted.size()) - 1),
                sorted.size());
    }
}
