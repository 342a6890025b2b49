package packpot.page;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;

/** A headless browser on the page, used as a person uses it: by what can be seen, clicked and typed. */
final class Browser implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(90);
    private static final int MOST_TABS = 600;
    private static final int MOST_TRIALS = 20;
    private static final JsonMapper JSON = new JsonMapper();

    private final ChromeDriver driver;

    private Browser(ChromeDriver driver) {
        this.driver = driver;
    }

    /** Where the browser is told to be; null where there is none to test with. */
    static @Nullable String program() {
        return System.getenv("PACKPOT_BROWSER");
    }

    static Browser start(boolean dark) {
        ChromeOptions options = new ChromeOptions();
        options.setBinary(String.valueOf(program()));
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--no-first-run",
                "--blink-settings=preferredColorScheme=" + (dark ? 0 : 1));
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(Path.of("/usr/bin/chromedriver").toFile())
                .usingAnyFreePort()
                .build();
        Browser browser = new Browser(new ChromeDriver(service, options));
        browser.size(1280, 900);
        return browser;
    }

    void size(int width, int height) {
        // A window is no narrower than 500; a page of a phone's width is asked for by the browser's own tools.
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
        driver.manage().window().setSize(new Dimension(Math.max(500, width), height));
    }

    void open(String address) {
        driver.get(address);
        await("the form", () -> !all("#form .step").isEmpty());
    }

    void reload() {
        driver.navigate().refresh();
        await("the form", () -> !all("#form .step").isEmpty());
    }

    /** Waits for something; the name says for what when it does not come. */
    void await(String what, java.util.concurrent.Callable<Boolean> there) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (System.nanoTime() < end) {
            try {
                if (there.call()) {
                    return;
                }
                Thread.sleep(40);
            } catch (org.openqa.selenium.WebDriverException notYet) {
                // What is looked for comes and goes while the page is built anew.
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        }
        throw new AssertionError(what + " did not come; the page says: " + text("body"));
    }

    List<WebElement> all(String css) {
        return driver.findElements(By.cssSelector(css));
    }

    WebElement one(String css) {
        return driver.findElement(By.cssSelector(css));
    }

    String text(String css) {
        return there(css, WebElement::getText);
    }

    /** What is said of an element; one that is built anew in that moment is looked for again. */
    private <T> T there(String css, java.util.function.Function<WebElement, T> look) {
        for (int i = 0; ; i++) {
            try {
                return look.apply(one(css));
            } catch (org.openqa.selenium.StaleElementReferenceException e) {
                if (i == MOST_TRIALS) {
                    throw e;
                }
            }
        }
    }

    /** The plan in a few words, which is shown on a phone alone. */
    String summary() {
        return String.valueOf(one("#summary").getDomProperty("textContent"));
    }

    /** Clicks, as a person does, on what stands still. */
    void click(String css) {
        there(css, element -> {
            script("arguments[0].scrollIntoView({block: 'center'})", element);
            for (int i = 0; i < MOST_TRIALS && !standsStill(element); i++) {
                script("arguments[0].scrollIntoView({block: 'center'})", element);
            }
            element.click();
            return element;
        });
    }

    /** Presses, does something, and lets go only then. */
    void hold(String css, Runnable meanwhile) {
        WebElement element = one(css);
        script("arguments[0].scrollIntoView({block: 'center'})", element);
        new Actions(driver).clickAndHold(element).perform();
        meanwhile.run();
        new Actions(driver).release().perform();
    }

    private boolean standsStill(WebElement element) {
        return Boolean.TRUE.equals(scriptLater("""
                const [element, done] = arguments;
                const before = element.getBoundingClientRect();
                setTimeout(() => {
                  const after = element.getBoundingClientRect();
                  done(before.top === after.top && before.left === after.left);
                }, 40);
                """, element));
    }

    void step(String id) {
        click("[data-step=" + id + "]");
    }

    /** Types into the field of a path as faults name it, and leaves it. */
    void type(String path, String text) {
        there("[data-path='" + path + "']", field -> {
            script("arguments[0].scrollIntoView({block: 'center'})", field);
            field.clear();
            field.sendKeys(text, org.openqa.selenium.Keys.TAB);
            return field;
        });
    }

    /** Finds a food, adds it, and gives its price and pack. */
    void type(String search, String[] food, int place) {
        WebElement field = one("#" + search);
        field.clear();
        field.sendKeys(food[0]);
        click("#" + search + "-found button");
        String pantry = "pantry[" + place + "].";
        type(pantry + "price", food[1]);
        if (!food[2].isEmpty()) {
            type(pantry + "pack", food[2]);
        }
    }

    /** Presses the tab key until something has the focus. */
    void tabTo(String css) {
        for (int i = 0; i < MOST_TABS; i++) {
            if (Boolean.TRUE.equals(script("return document.activeElement.matches(arguments[0])", css))) {
                return;
            }
            keys(org.openqa.selenium.Keys.TAB);
        }
        throw new AssertionError("the tab key does not come to " + css);
    }

    @Nullable
    Object script(String code, Object... arguments) {
        return ((JavascriptExecutor) driver).executeScript(code, arguments);
    }

    /** Runs a script that says itself when it is done, by its last argument. */
    @Nullable
    Object scriptLater(String code, Object... arguments) {
        driver.manage().timeouts().scriptTimeout(PATIENCE);
        return ((JavascriptExecutor) driver).executeAsyncScript(code, arguments);
    }

    void keys(CharSequence... keys) {
        driver.switchTo().activeElement().sendKeys(keys);
    }

    /** Waits until the plan of what stands on the page is there, or why there is none. */
    void planned() {
        // Changes are planned a moment after they are made.
        await("an answer", () -> {
            Thread.sleep(150);
            return !"true".equals(one("#plan").getAttribute("aria-busy"));
        });
    }

    void picture(Path file) throws IOException {
        Files.write(file, driver.getScreenshotAs(OutputType.BYTES));
    }

    /** The other windows are closed, this one stays. */
    String newTab(String address) {
        String before = driver.getWindowHandle();
        driver.switchTo().newWindow(org.openqa.selenium.WindowType.TAB);
        driver.get(address);
        return before;
    }

    void tab(String handle) {
        driver.switchTo().window(handle);
    }

    /** Violations of WCAG 2 levels A and AA that axe-core finds in what is shown. */
    List<String> violations() throws IOException {
        try (InputStream in = Browser.class.getResourceAsStream("/axe.min.js")) {
            script(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
        String told = String.valueOf(((JavascriptExecutor) driver)
                .executeAsyncScript("const done = arguments[0];"
                        + "axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa']}).then(r => done(JSON.stringify("
                        + "{passes: r.passes.length, violations: r.violations.map(v => v.id + ': ' +"
                        + " v.nodes.map(n => n.html.slice(0, 160)).slice(0, 3).join(' | '))})))"));
        JsonNode result = JSON.readTree(told);
        if (result.path("passes").intValue() < 10) {
            throw new IllegalStateException("axe-core looked at nothing: " + told);
        }
        List<String> violations = new ArrayList<>();
        result.path("violations").forEach(each -> violations.add(each.asText()));
        return violations;
    }

    @Override
    public void close() {
        driver.quit();
    }
}
