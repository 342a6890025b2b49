package packpot.page;

import java.nio.file.Path;
import packpot.household.Knowledge;

/** Pictures of the page at a desk's and a phone's width: {@code mvn test-compile exec} or from an editor; no test. */
final class PageLook {
    private PageLook() {}

    public static void main(String[] arguments) throws Exception {
        Path to = Path.of(arguments[1]);
        try (PageServer server = PageServer.start(Path.of(arguments[0]), 0, Knowledge.load());
                Browser browser = Browser.start(false)) {
            browser.open(server.address("three-adults.json").toString());
            browser.planned();
            browser.picture(to.resolve("desk.png"));
            for (String step : new String[] {"pantry", "kitchen", "wishes", "recipe", "weeks", "text"}) {
                browser.step(step);
                browser.picture(to.resolve("desk-" + step + ".png"));
                System.out.println(step + " " + browser.violations());
            }
            browser.click(".strike");
            browser.planned();
            browser.picture(to.resolve("desk-beside.png"));
            System.out.println(browser.violations());
            browser.size(360, 800);
            browser.step("dogs");
            browser.picture(to.resolve("phone.png"));
            System.out.println(browser.script("return document.documentElement.scrollWidth"));
            browser.click("#summary");
            Thread.sleep(500);
            browser.picture(to.resolve("phone-plan.png"));
        }
    }
}
