package packpot.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import nu.validator.client.EmbeddedValidator;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Demo;

/** The page against the HTML standard (checked by the Nu Html Checker) and WCAG 2.2 level A and AA (checked by axe-core). */
class SheetPageTest {
    private static final int MOST_BYTES = 400_000;

    static Stream<Arguments> pages() {
        return Stream.of("three-adults", "tiny-freezer", "growing-puppy", "foster-home")
                .flatMap(demo -> Stream.of(
                        Arguments.of(demo, Locale.US, Paper.LETTER), Arguments.of(demo, Locale.GERMANY, Paper.A4)));
    }

    private static List<JsonNode> faults(String html) throws Exception {
        EmbeddedValidator validator = new EmbeddedValidator();
        validator.setOutputFormat(EmbeddedValidator.OutputFormat.JSON);
        String told = validator.validate(new ByteArrayInputStream(html.getBytes(StandardCharsets.UTF_8)));
        List<JsonNode> faults = new ArrayList<>();
        for (JsonNode message : new JsonMapper().readTree(told).path("messages")) {
            // That <br/> ends in a slash makes the page XML too, from which the PDF is made.
            if (!message.path("message").asText().startsWith("Trailing slash on void elements")) {
                faults.add(message);
            }
        }
        return faults;
    }

    @ParameterizedTest
    @MethodSource("pages")
    void thePageIsValid(String demo, Locale locale, Paper paper) throws Exception {
        String html = DemoSheets.html(demo, locale, paper);
        assertThat(faults(html)).isEmpty();
        assertThat(html.getBytes(StandardCharsets.UTF_8)).hasSizeLessThan(MOST_BYTES);
        assertThat(html).doesNotContain("<script").doesNotContainPattern("(?:src|href)=\"(?!#|data:)");
        assertThat(faults(html.replace("<tbody>", "<tbodi>"))).isNotEmpty();
    }

    @Test
    void noOneIsShutOut(@TempDir Path folder) throws Exception {
        String english = DemoSheets.html("foster-home", Locale.US, Paper.LETTER);
        assertThat(violations(english, folder, false)).isEmpty();
        assertThat(violations(english, folder, true)).isEmpty();
        String german = DemoSheets.html("growing-puppy", Locale.GERMANY, Paper.A4);
        assertThat(violations(german, folder, false)).isEmpty();
    }

    @Test
    void axeFindsPlantedBarriers(@TempDir Path folder) throws Exception {
        String html = DemoSheets.html("tiny-freezer", Locale.US, Paper.A4);
        String faint = html.replace("</head>", "<style>td { color: #cccccc }</style></head>");
        assertThat(violations(faint, folder, false)).anyMatch(each -> each.startsWith("color-contrast"));
        String noLanguage = html.replace(" lang=\"en-US\"", "");
        assertThat(violations(noLanguage, folder, false)).anyMatch(each -> each.startsWith("html-has-lang"));
    }

    /** Rules of level A and AA that the page breaks, as axe-core finds them in a browser without a network. */
    private static List<String> violations(String html, Path folder, boolean dark) throws Exception {
        Path browser = Path.of("/usr/bin/chromium");
        if (System.getenv("PACKPOT_BROWSER") == null) {
            assumeTrue(Files.isExecutable(browser), "no Chromium on this machine");
        }
        String axe;
        try (InputStream in = SheetPageTest.class.getResourceAsStream("/axe.min.js")) {
            axe = new String(java.util.Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
        }
        String run = "<script>" + axe + "</script><script>axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a',"
                + " 'wcag21aa', 'wcag22aa']}).then(r => { let p = document.createElement('pre'); p.id = 'axe-result';"
                + " p.textContent = JSON.stringify({violations: r.violations.map(v => v.id + ': '"
                + " + v.nodes.slice(0, 2).map(n => n.html)), passes: r.passes.map(v => v.id)});"
                + " document.body.appendChild(p); })</script></body>";
        Path page = folder.resolve("page.html");
        Files.writeString(page, html.replace("</body>", run));
        Path out = folder.resolve("dom.html");
        Process process = new ProcessBuilder(
                        browser.toString(),
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--no-first-run",
                        "--disable-background-networking",
                        "--disable-component-update",
                        "--disable-sync",
                        "--blink-settings=preferredColorScheme=" + (dark ? 0 : 1),
                        "--user-data-dir=" + folder.resolve("profile"),
                        "--virtual-time-budget=30000",
                        "--dump-dom",
                        page.toUri().toString())
                .redirectOutput(out.toFile())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        assertThat(process.waitFor(90, TimeUnit.SECONDS)).isTrue();
        String result = Jsoup.parse(Files.readString(out)).select("#axe-result").text();
        JsonNode told = new JsonMapper().readTree(result);
        assertThat(told.path("passes")).as("axe ran").hasSizeGreaterThan(10);
        List<String> violations = new ArrayList<>();
        told.path("violations").forEach(each -> violations.add(each.asText()));
        return violations;
    }

    @Test
    void theDogsAndFoodsStandInTheSheets() {
        String text = Jsoup.parse(DemoSheets.html("foster-home", Locale.US, Paper.LETTER))
                .text();
        Demo.planned(Demo.file("foster-home"))
                .plan()
                .dogs()
                .forEach(dog -> assertThat(text).contains(dog.name()));
        Demo.planned(Demo.file("foster-home"))
                .plan()
                .shopping()
                .forEach(line -> assertThat(text).contains(line.label()));
        assertThat(text).contains("Never into the pot", "165 °F (74 °C)", "within 2 hours", "not a veterinarian");
    }
}
