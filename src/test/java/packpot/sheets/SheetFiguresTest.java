package packpot.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.report.CalendarReport;
import packpot.report.JsonReport;

/**
 * The page is read back, and every figure that says where it is from (a JSON pointer in data-of) is held against the plan's
 * JSON, to half of its last printed digit. Grams of a pound and an ounce, and millilitres of a quart: NIST Handbook 44,
 * appendix C.
 */
class SheetFiguresTest {
    private static final Pattern FIGURE = Pattern.compile("\\d[\\d.,\\u00a0\\u202f’']*");
    private static final double POUND_GRAMS = 453.59237;
    private static final double OUNCE_GRAMS = 28.349523125;
    private static final double QUART_MILLILITRES = 946.352946;

    static Stream<Arguments> pages() {
        return Stream.of("three-adults", "tiny-freezer", "growing-puppy", "foster-home")
                .flatMap(demo -> Stream.of(
                        Arguments.of(demo, Locale.US, Paper.LETTER),
                        Arguments.of(demo, Locale.GERMANY, Paper.A4),
                        Arguments.of(demo, Locale.forLanguageTag("de-CH"), Paper.A4)));
    }

    @ParameterizedTest
    @MethodSource("pages")
    void everyFigureIsThatOfThePlan(String demo, Locale locale, Paper paper) throws Exception {
        SheetSource source = DemoSheets.source(demo);
        ObjectNode json = (ObjectNode) new JsonMapper().readTree(JsonReport.plan(source.plan(), source.verdict()));
        json.set(
                "calendar",
                new JsonMapper()
                        .readTree(CalendarReport.json(source.calendar(), List.of()))
                        .get("calendar"));
        Document page = Jsoup.parse(DemoSheets.html(demo, locale, paper));
        List<String> wrong = new ArrayList<>();
        List<Element> figures = page.select("[data-of]");
        for (Element figure : figures) {
            double expected = expected(json, figure);
            if (!agrees(figure.text(), expected, locale, figure.attr("data-of"))) {
                wrong.add(figure.attr("data-of") + ": page " + figure.text() + ", plan " + expected);
            }
        }
        assertThat(wrong).isEmpty();
        int nutrients = source.verdict().dogs().size()
                * source.verdict().dogs().get(0).nutrients().size();
        assertThat(figures)
                .hasSizeGreaterThan(2 * nutrients + 5 * source.plan().pot().size());
        // Figures twice as large would be noticed, but for those that are next to nothing.
        assertThat(figures.stream()
                        .filter(figure -> expected(json, figure) != 0)
                        .filter(figure ->
                                agrees(figure.text(), 2 * expected(json, figure), locale, figure.attr("data-of")))
                        .map(figure -> figure.attr("data-of") + ": " + figure.text()))
                .hasSizeLessThan(figures.size() / 20);
    }

    /** What the pictures add up: the money is that of the till, the energy that of all bowls. */
    @ParameterizedTest
    @ValueSource(strings = {"three-adults", "growing-puppy", "foster-home"})
    void thePicturesAddUp(String demo) {
        SheetSource source = DemoSheets.source(demo);
        assertThat(Charts.money(source).stream().mapToDouble(Charts.Bar::value).sum())
                .isCloseTo(source.plan().cost().atTheTill(), within(0.01));
        double bowls = 0;
        for (int dog = 0; dog < source.plan().dogs().size(); dog++) {
            bowls += source.verdict().dogs().get(dog).kcalPerDay()
                    * source.plan().dogs().get(dog).daysFed();
        }
        double spare =
                source.plan().batch().spareGrams() / source.plan().batch().cookedGrams();
        assertThat(Charts.energy(source).stream().mapToDouble(Charts.Bar::value).sum())
                .isCloseTo(bowls, withinPercentage(100 * spare + 0.05));
    }

    private static double expected(JsonNode json, Element figure) {
        double value = json.at(figure.attr("data-of")).asDouble(Double.NaN);
        if (figure.hasAttr("data-less")) {
            value -= json.at(figure.attr("data-less")).asDouble(Double.NaN);
        }
        if (figure.hasAttr("data-parts")) {
            value /= Double.parseDouble(figure.attr("data-parts"));
        }
        if (figure.hasAttr("data-percent")) {
            value *= 100;
        }
        if (figure.hasAttr("data-dry")) {
            JsonNode dog = json.at("/audit/dogs/" + figure.attr("data-dry"));
            value *= dog.get("kcalPerDay").asDouble()
                    / 1000
                    / (dog.get("dryGramsPerDay").asDouble() / 100);
        }
        return value;
    }

    /** Whether a printed figure is the value rounded. */
    private static boolean agrees(String printed, double value, Locale locale, String of) {
        Matcher matcher = FIGURE.matcher(printed);
        double sum = 0;
        double half = 0;
        while (matcher.find()) {
            String figure = matcher.group();
            String unit = printed.substring(matcher.end()).strip();
            char point =
                    locale.getLanguage().equals("de") && locale.getCountry().equals("DE") ? ',' : '.';
            String plain = figure.replaceAll("[^\\d" + (point == '.' ? "." : ",") + "]", "")
                    .replace(',', '.');
            plain = plain.endsWith(".") ? plain.substring(0, plain.length() - 1) : plain;
            int decimals = plain.contains(".") ? plain.length() - plain.indexOf('.') - 1 : 0;
            double size = size(unit, of);
            sum += Double.parseDouble(plain) * size;
            half = 0.5 * Math.pow(10, -decimals) * size;
        }
        // Beyond four significant digits a table says no more.
        double slack = Math.max(half, value >= 100 && of.contains("nutrients") ? 0.5 : 0);
        return Math.abs(sum - value) <= slack * (1 + 1e-9) + 1e-9;
    }

    private static double size(String unit, String of) {
        if (of.endsWith("weightKg")) {
            return unit.startsWith("lb") ? POUND_GRAMS / 1000 : 1;
        }
        if (of.contains("nutrients")) {
            return 1;
        }
        if (unit.startsWith("mg")) {
            return 1e-3;
        }
        if (unit.startsWith("kg")) {
            return 1000;
        }
        if (unit.startsWith("lb")) {
            return POUND_GRAMS;
        }
        if (unit.startsWith("oz")) {
            return OUNCE_GRAMS;
        }
        if (unit.startsWith("qt")) {
            return QUART_MILLILITRES;
        }
        return unit.startsWith("l") ? 1000 : 1;
    }
}
